package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** How a case ended: the step that teaches. */
@Command(
        name = "outcome",
        description = {
            "Record how a case ended, and learn from it.",
            "On an open case:  benchlore outcome --case ID --cause CAUSE --fix FIX --ended fixed",
            "In one step:      benchlore outcome WORDS --cause CAUSE --fix FIX --ended fixed"
        },
        mixinStandardHelpOptions = true)
final class OutcomeCommand extends BenchCommand {
    @Parameters(
            arity = "0..*",
            paramLabel = "WORDS",
            description = "What was seen and measured, for a case in one step.")
    List<String> words = new ArrayList<>();

    @Option(
            names = "--case",
            paramLabel = "ID",
            description =
                    "The open case; with WORDS, the id of the new one, so that repeating the command changes nothing.")
    @Nullable
    String id;

    @Option(names = "--cause", paramLabel = "CAUSE", description = "Id of the cause, or 'unlisted'.")
    @Nullable
    String cause;

    @Option(names = "--fix", paramLabel = "FIX", description = "Id of the fix that was applied last.")
    @Nullable
    String fix;

    @Option(
            names = "--ended",
            paramLabel = "OUTCOME",
            required = true,
            description =
                    "fixed-and-proven, fixed, not-fixed, came-back, recovered-by-itself, no-fault-found, made-worse,"
                            + " not-worth-it or given-up.")
    String ended = "";

    @Option(
            names = "--certainty",
            paramLabel = "HOW",
            description = "How sure of the cause: suspected, likely or proven (default: likely, proven once fixed).")
    @Nullable
    Certainty certainty;

    @Option(names = "--after-days", paramLabel = "N", description = "For came-back: days since hand-over.")
    @Nullable
    Integer afterDays;

    @Option(names = "--minutes", paramLabel = "N", description = "Bench time the fix took.")
    @Nullable
    Double minutes;

    @Option(names = "--note", paramLabel = "WORDS", defaultValue = "", description = "Anything worth keeping.")
    String note = "";

    @Option(
            names = "--device",
            paramLabel = "SCOPE",
            description = "For a case in one step: class/family/model/revision.")
    @Nullable
    String device;

    @Option(names = "--finding", paramLabel = "SYMPTOM=STATE", description = "A finding by id; may be repeated.")
    List<String> findings = new ArrayList<>();

    OutcomeCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        Outcome outcome = outcome();
        String text = words(words);
        boolean oneStep = !text.isBlank() || !findings.isEmpty();
        String given = id;
        if (!oneStep && given == null) {
            throw new UsageException("outcome of what? Give --case ID, or the words of a case in one step");
        }
        try (KnowledgeBase kb = open()) {
            checkIds(kb);
            String caseId = given == null ? kb.newCaseId() : given;
            List<CaseEvent> events = new ArrayList<>();
            if (oneStep) {
                DeviceScope scope = scope(device);
                List<Finding> picked = findings(kb, findings);
                events.add(new CaseEvent.Opened(head(kb, caseId, "1-opened"), scope, text, "", CaseHistory.OWN, false));
                List<Finding> read =
                        RankCommand.query(kb.read(text, scope), picked, scope).findings();
                events.add(new CaseEvent.Noted(head(kb, caseId, "2-noted"), text, Reading.Source.SEEN, read));
            } else {
                CaseCommand.known(kb, caseId);
            }
            ending(kb, caseId, outcome, events);
            return record(kb, caseId, events);
        }
    }

    private Outcome outcome() {
        try {
            return Outcome.parse(ended);
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    private void checkIds(KnowledgeBase kb) {
        String causeId = cause;
        if (causeId != null
                && !causeId.equals(RankingModel.UNLISTED)
                && kb.knowledge().cause(causeId).isEmpty()) {
            throw new UsageException("no cause '" + causeId + "'; "
                    + nearest(
                            causeId,
                            kb.knowledge().causes().stream().map(Cause::id).toList()));
        }
        String fixId = fix;
        if (fixId != null && kb.knowledge().fix(fixId).isEmpty()) {
            throw new UsageException("no fix '" + fixId + "'; "
                    + nearest(
                            fixId,
                            kb.knowledge().fixes().stream().map(f -> f.id()).toList()));
        }
        if (fixId != null && causeId == null) {
            throw new UsageException("--fix needs --cause: which cause was it meant for?");
        }
    }

    private void ending(KnowledgeBase kb, String caseId, Outcome outcome, List<CaseEvent> events) {
        boolean fixed = outcome == Outcome.FIXED || outcome == Outcome.FIXED_AND_PROVEN;
        if (cause != null) {
            Certainty sure = certainty != null ? certainty : fixed ? Certainty.PROVEN : Certainty.LIKELY;
            events.add(new CaseEvent.Concluded(head(kb, caseId, "3-concluded"), cause, sure, ""));
            if (fix != null) {
                events.add(new CaseEvent.FixApplied(head(kb, caseId, "4-fix"), fix, cause, minutes, ""));
            }
        }
        events.add(new CaseEvent.Ended(head(kb, caseId, "5-ended"), outcome, afterDays, note));
    }

    /** A case in one step with an id of the caller's has event ids of its own, so that repeating it is known. */
    private CaseEvent.Head head(KnowledgeBase kb, String caseId, String step) {
        CaseEvent.Head fresh = kb.head(caseId);
        boolean repeatable = id != null && !(words.isEmpty() && findings.isEmpty());
        return repeatable ? new CaseEvent.Head(caseId + ":" + step, caseId, fresh.at()) : fresh;
    }

    private Integer record(KnowledgeBase kb, String caseId, List<CaseEvent> events) {
        List<Finding> seen = Stream.concat(
                        kb.history(caseId).stream().flatMap(h -> h.findings().stream()),
                        events.stream()
                                .filter(CaseEvent.Noted.class::isInstance)
                                .flatMap(e -> ((CaseEvent.Noted) e).findings().stream()))
                .collect(Collectors.toMap(Finding::symptomId, f -> f, (a, b) -> b))
                .values()
                .stream()
                .toList();
        boolean known = kb.history(caseId).map(h -> h.outcome() != null).orElse(false)
                && events.get(0) instanceof CaseEvent.Opened;
        DeviceScope scope = kb.history(caseId).map(CaseHistory::scope).orElseGet(() -> scope(device));
        RankingQuery query = new RankingQuery(seen, scope, true);
        double before = probability(kb, query);
        if (!known) {
            kb.record(events);
        }
        double after = probability(kb, query);
        CaseHistory history = kb.history(caseId).orElseThrow();
        if (json) {
            bench.out().println(Json.outcome(history, cause == null ? "" : cause, before, after));
            return ExitCode.DONE;
        }
        Page page = bench.page();
        page.text(0, (known ? "Already recorded: case " : "Recorded: case ") + caseId + " " + outcome(history) + ".");
        if (cause != null) {
            page.text(
                    0,
                    String.format(
                            Locale.ROOT,
                            "For these findings %s is now %s likely; it was %s before.",
                            cause,
                            Page.percent(after),
                            Page.percent(before)));
        }
        return ExitCode.DONE;
    }

    private static String outcome(CaseHistory history) {
        Outcome outcome = history.outcome();
        return outcome == null ? "is open" : outcome.id();
    }

    private double probability(KnowledgeBase kb, RankingQuery query) {
        String causeId = cause;
        if (causeId == null) {
            return 0;
        }
        Ranking ranking = kb.rank(query);
        return Stream.concat(ranking.causes().stream(), Stream.of(ranking.unlisted()))
                .filter(c -> c.id().equals(causeId))
                .mapToDouble(Ranking.RankedCause::probability)
                .findFirst()
                .orElse(0);
    }
}
