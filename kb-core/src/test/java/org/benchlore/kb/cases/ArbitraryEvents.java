package org.benchlore.kb.cases;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;

/** Arbitrary event streams from a seed: all kinds, tied times, withdrawals of withdrawals, circles, odd texts. */
final class ArbitraryEvents {
    private static final String[] TEXTS = {
        "", "no 12 V", "a \"quoted\" \\ word\nand a line", "Ω ±5 % \u2028 \u0000 \t", "😀 done", "half \ud83d pair"
    };
    private static final Instant START = Instant.parse("2024-02-28T23:59:59.5Z");

    private final Random random;

    ArbitraryEvents(long seed) {
        this.random = new Random(seed);
    }

    /** Events of one case with the ids {@code caseId:0}, {@code caseId:1} and so on; opened first. */
    List<CaseEvent> ofCase(String caseId, int count) {
        List<CaseEvent> events = new ArrayList<>();
        events.add(opened(head(caseId, 0)));
        for (int i = 1; i < count; i++) {
            Head head = head(caseId, i);
            events.add(
                    switch (random.nextInt(10)) {
                        case 0, 1, 2 -> new CaseEvent.Withdrawn(head, target(caseId, count), text());
                        case 3, 4 -> new CaseEvent.Corrected(head, someId(caseId, count), plain(head(caseId, 900 + i)));
                        default -> plain(head);
                    });
        }
        return events;
    }

    private Head head(String caseId, int number) {
        // few different times, so that the id has to break ties
        return new Head(caseId + ":" + number, caseId, START.plusMillis(random.nextInt(6) * 700L));
    }

    private @Nullable String target(String caseId, int count) {
        return random.nextInt(12) == 0 ? null : someId(caseId, count);
    }

    private String someId(String caseId, int count) {
        return caseId + ":" + random.nextInt(count + 1); // the last one does not exist
    }

    private CaseEvent opened(Head head) {
        return new CaseEvent.Opened(
                head,
                DeviceScope.parse(pick("any", "bench-supply", "bench-supply/demo-200/rev-b")),
                text(),
                pick("", "S/N 0042"),
                pick(CaseHistory.OWN, "other-shop"),
                random.nextBoolean());
    }

    private CaseEvent plain(Head head) {
        return switch (random.nextInt(9)) {
            case 0 -> opened(head);
            case 1, 2 -> new CaseEvent.Noted(head, text(), any(Reading.Source.values()), findings());
            case 3 -> new CaseEvent.Tested(head, pick("measure-12v", "esr-bulk"), findings(), minutes(), text());
            case 4 ->
                new CaseEvent.Concluded(
                        head,
                        pick("dry-bulk-capacitor", CaseEvent.Concluded.UNLISTED),
                        any(Certainty.values()),
                        text());
            case 5 -> new CaseEvent.FixApplied(head, "replace-bulk", "dry-bulk-capacitor", minutes(), text());
            case 6 -> checked(head);
            case 7 ->
                new CaseEvent.Weighed(
                        head,
                        "replace-bulk",
                        random.nextBoolean() ? null : new Stakes(120.5, -3, 0, 15, random.nextInt(60)),
                        random.nextDouble() * 0.7,
                        random.nextDouble() * 0.3,
                        any(Decision.values()),
                        text());
            default -> ended(head);
        };
    }

    private CaseEvent checked(Head head) {
        CaseEvent.Checked.Result result = any(CaseEvent.Checked.Result.values());
        boolean done = result != CaseEvent.Checked.Result.NOT_DONE;
        boolean failed = result == CaseEvent.Checked.Result.FAILED;
        return new CaseEvent.Checked(
                head,
                text(),
                result,
                failed && random.nextBoolean() ? 1 + random.nextInt(5) : null,
                done ? minutes() : null,
                random.nextBoolean()
                        ? List.of()
                        : List.of(Reading.Condition.UNDER_LOAD, Reading.Condition.WARM, Reading.Condition.WARM),
                text());
    }

    private CaseEvent ended(Head head) {
        Outcome outcome = any(Outcome.values());
        Integer days = outcome == Outcome.CAME_BACK && random.nextBoolean() ? random.nextInt(400) : null;
        return new CaseEvent.Ended(head, outcome, days, text());
    }

    private List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            String symptom = pick("rail-12v", "power-lamp", "fan-behaviour");
            if (random.nextBoolean()) {
                findings.add(Finding.of(symptom, pick("absent", "low", "in-tolerance")));
            } else {
                TreeMap<String, Double> soft = new TreeMap<>();
                soft.put("low", random.nextDouble() + 1e-9);
                soft.put("in-tolerance", random.nextDouble() + 1e-9);
                findings.add(Finding.soft(symptom, soft));
            }
        }
        return findings;
    }

    private @Nullable Double minutes() {
        return random.nextInt(3) == 0 ? null : random.nextInt(90) / 4.0;
    }

    private <T> T any(T[] from) {
        return from[random.nextInt(from.length)];
    }

    private String text() {
        return pick(TEXTS);
    }

    private String pick(String... from) {
        return from[random.nextInt(from.length)];
    }

    /** The same events in another order, some of them more than once. */
    List<CaseEvent> disturbed(List<CaseEvent> events) {
        List<CaseEvent> disturbed = new ArrayList<>(events);
        for (CaseEvent event : events) {
            if (random.nextInt(3) == 0) {
                disturbed.add(event);
            }
        }
        Collections.shuffle(disturbed, random);
        return disturbed;
    }
}
