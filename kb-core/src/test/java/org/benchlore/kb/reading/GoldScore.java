package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.GoldText.Code;
import org.benchlore.kb.reading.GoldText.Counter;
import org.benchlore.kb.reading.GoldText.Expected;
import org.benchlore.kb.reading.GoldText.Kind;
import org.benchlore.kb.reading.GoldText.Mark;
import org.benchlore.kb.reading.GoldText.Quantity;
import org.benchlore.kb.reading.GoldText.Said;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.reading.Reading.Span;
import org.benchlore.kb.reading.Reading.Understood;

/** How near the reader comes to gold texts. What is counted how is described in {@code kb-core/docs/reading.md}. */
final class GoldScore {
    /** Relative difference of quantities that are the same: what adding prefixes costs in doubles, with room. */
    private static final double SAME = 1e-9;

    /** States less likely than this, beside the one said, show doubt. */
    private static final double DOUBTED = 0.9;

    final Map<Kind, Tally> kinds = new EnumMap<>(Kind.class);

    /** Findings of every kind, without quantities, codes and conditions. */
    final Tally findings = new Tally();

    final Tally.Share spans = new Tally.Share();
    final Tally.Share marks = new Tally.Share();
    final Tally.Share sources = new Tally.Share();

    /** Texts without a finding, and what was found in them all the same. */
    int emptyTexts;

    int invented;

    /** What was missed or invented, one line each. */
    final List<String> misses = new ArrayList<>();

    private final Reader reader;
    private final Set<String> codeSymptoms = new HashSet<>();

    private GoldScore(Knowledge knowledge) {
        this.reader = Reader.of(knowledge);
        for (Kind kind : Kind.values()) {
            kinds.put(kind, new Tally());
        }
        for (Device device : knowledge.devices()) {
            device.codes().forEach(code -> codeSymptoms.add(code.symptomId()));
        }
    }

    static GoldScore of(Knowledge knowledge, List<GoldText> texts) {
        GoldScore score = new GoldScore(knowledge);
        texts.forEach(score::read);
        return score;
    }

    Tally all() {
        Tally all = new Tally();
        kinds.values().forEach(all::add);
        return all;
    }

    private Tally of(Kind kind) {
        return Objects.requireNonNull(kinds.get(kind));
    }

    private void read(GoldText gold) {
        Reading reading = reader.read(gold.text(), gold.scope());
        int before = misses.size();
        findings(gold, reading);
        quantities(gold, reading);
        codes(gold, reading);
        if (misses.size() > before) {
            misses.add(before, gold.line() + ": " + gold.text());
        }
    }

    private void findings(GoldText gold, Reading reading) {
        List<Understood> left = new ArrayList<>(reading.understood());
        IdentityHashMap<Expected, Understood> hits = new IdentityHashMap<>();
        for (boolean exact : new boolean[] {true, false}) {
            for (Expected expected : gold.expected()) {
                if (!hits.containsKey(expected)) {
                    left.stream()
                            .filter(u -> expected.said().contains(Said.of(u)))
                            .filter(u -> !exact || u.span().text().equals(expected.span()))
                            .findFirst()
                            .ifPresent(hit -> {
                                hits.put(expected, hit);
                                left.remove(hit);
                            });
                }
            }
        }
        for (Expected expected : gold.expected()) {
            of(expected.kind()).wanted++;
            findings.wanted++;
            Understood hit = hits.get(expected);
            if (hit == null) {
                misses.add("  MISSED " + shown(expected));
            } else {
                of(expected.kind()).found++;
                of(expected.kind()).right++;
                findings.found++;
                findings.right++;
                right(expected, hit);
            }
        }
        emptyTexts += gold.holdsNothing() ? 1 : 0;
        left.removeIf(u -> gold.arguable().contains(Said.of(u)));
        for (Understood extra : left) {
            invented += gold.holdsNothing() ? 1 : 0;
            Kind kind = chargedTo(gold, reading, extra);
            of(kind).found++;
            findings.found++;
            misses.add("  INVENTED (" + kind.label() + ") " + shown(extra));
        }
    }

    /** The finer points of a finding that was read rightly. */
    private void right(Expected expected, Understood hit) {
        Tally conditions = of(Kind.CONDITION);
        conditions.wanted += expected.conditions().size();
        conditions.found += hit.conditions().size();
        Set<Condition> common = EnumSet.noneOf(Condition.class);
        common.addAll(expected.conditions());
        common.retainAll(hit.conditions());
        conditions.right += common.size();
        boolean wrong = !expected.conditions().equals(Set.copyOf(hit.conditions()));
        if (!expected.span().isEmpty()) {
            boolean exact = hit.span().text().equals(expected.span());
            spans.count(exact);
            wrong |= !exact;
        }
        boolean mark = fits(expected.mark(), hit);
        marks.count(mark);
        wrong |= !mark;
        if (expected.source().isPresent()) {
            boolean source = hit.source() == expected.source().get();
            sources.count(source);
            wrong |= !source;
        }
        if (wrong) {
            misses.add("  INEXACT " + shown(expected) + " READ " + shown(hit));
        }
    }

    /** A measured value is soft for its own reasons; only its time can be wrong. */
    private static boolean fits(Mark mark, Understood hit) {
        if (hit.past() || mark == Mark.PAST) {
            return hit.past() && mark == Mark.PAST;
        }
        boolean measured = !hit.note().isEmpty();
        return measured || (mark == Mark.DOUBTED) == doubted(hit);
    }

    /** Whether states are possible that the words do not name; "not red" leaves several that are about as likely. */
    private static boolean doubted(Understood hit) {
        return hit.finding().likelihoods().values().stream().anyMatch(p -> p < DOUBTED);
    }

    private Kind chargedTo(GoldText gold, Reading reading, Understood extra) {
        if (extra.span().text().isEmpty()
                || codeSymptoms.contains(extra.finding().symptomId())) {
            return Kind.CODE;
        }
        boolean negation = gold.expected().stream()
                .filter(e -> e.kind() == Kind.NEGATION)
                .anyMatch(e -> overlaps(gold.text(), e.span(), extra.span()));
        if (negation) {
            return Kind.NEGATION;
        }
        boolean value = reading.quantities().stream()
                .anyMatch(q -> q.span().start() >= extra.span().start()
                        && q.span().end() <= extra.span().end());
        return value ? Kind.VALUE : Kind.STATE;
    }

    private static boolean overlaps(String text, String words, Span span) {
        for (int at = text.indexOf(words); at >= 0 && !words.isEmpty(); at = text.indexOf(words, at + 1)) {
            if (at < span.end() && span.start() < at + words.length()) {
                return true;
            }
        }
        return false;
    }

    private static String shown(Expected expected) {
        return expected.mark() + " " + expected.said() + " [" + expected.span() + "] "
                + expected.kind().label() + " " + expected.conditions();
    }

    private static String shown(Understood u) {
        String mark = u.past() ? "PAST" : doubted(u) ? "DOUBTED" : "SAID";
        return mark + " " + Said.of(u) + " [" + u.span().text() + "] " + u.conditions() + " " + u.source();
    }

    private void quantities(GoldText gold, Reading reading) {
        List<Quantity> left = new ArrayList<>(gold.quantities());
        Tally tally = of(Kind.VALUE);
        tally.wanted += left.size();
        for (Reading.Value value : reading.quantities()) {
            tally.found++;
            Quantity hit = left.stream()
                    .filter(q -> q.unit().equals(value.unit()))
                    .filter(q -> Math.abs(q.value() - value.value()) <= SAME * Math.abs(q.value()))
                    .findFirst()
                    .orElse(null);
            if (hit == null) {
                misses.add("  QUANTITY INVENTED " + value.value() + " " + value.unit() + " ["
                        + value.span().text() + "]");
            } else {
                tally.right++;
                left.remove(hit);
            }
        }
        left.forEach(q -> misses.add("  QUANTITY MISSED " + q.value() + " " + q.unit() + " [" + q.span() + "]"));
    }

    private void codes(GoldText gold, Reading reading) {
        List<Object> left = new ArrayList<>();
        left.addAll(gold.codes());
        left.addAll(gold.counters());
        if (gold.clockDoubtful()) {
            left.add("clock doubtful");
        }
        Tally tally = of(Kind.CODE);
        tally.wanted += left.size();
        for (Object found : codesOf(gold, reading)) {
            tally.found++;
            if (left.remove(found)) {
                tally.right++;
            } else {
                misses.add("  CODE INVENTED " + found);
            }
        }
        left.forEach(wanted -> misses.add("  CODE MISSED " + wanted));
    }

    private List<Object> codesOf(GoldText gold, Reading reading) {
        List<Object> found = new ArrayList<>();
        reading.codes().forEach(seen -> found.add(Code.of(seen)));
        LogReading log = reader.readLog(gold.text(), gold.scope());
        log.starts().ifPresent(n -> found.add(new Counter("starts", n)));
        log.cleanStops().ifPresent(n -> found.add(new Counter("clean-stops", n)));
        log.hours().ifPresent(n -> found.add(new Counter("hours", n)));
        // it follows from the other two; only asked about where the gold names it
        log.uncleanStops().ifPresent(n -> {
            Counter unclean = new Counter("unclean-stops", n);
            if (gold.counters().contains(unclean)) {
                found.add(unclean);
            }
        });
        if (!log.implausible().isEmpty()) {
            found.add("clock doubtful");
        }
        return found;
    }
}
