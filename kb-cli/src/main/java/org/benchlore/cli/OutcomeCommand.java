package org.benchlore.cli;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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
    /** What the id of the opening event of a case in one step ends in. */
    private static final String OPENED = ":1-opened";

    /** Gives each event its head; a case in one step has event ids of its own, so that repeating it is known. */
    private interface Heads {
        CaseEvent.Head of(String step);
    }

    @Mixin
    SeenOptions seen = new SeenOptions();

    @Option(
            names = "--case",
            paramLabel = "ID",
            description =
                    "The open case, to which WORDS are noted; or the id of a new one, so that repeating the command"
                            + " changes nothing.")
    @Nullable
    String id;

    @Option(names = "--cause", paramLabel = "CAUSE", description = "Id of the cause, or 'unlisted'.")
    @Nullable
    String cause;

    @Option(names = "--fix", paramLabel = "FIX", description = "Id of the fix that was applied last.")
    @Nullable
    String fix;

    @Option(
            names = "--cause-note",
            paramLabel = "WORDS",
            defaultValue = "",
            description = "What was wrong, in your words; without --cause, a cause that no pack knows.")
    String causeNote = "";

    @Option(
            names = "--fix-note",
            paramLabel = "WORDS",
            defaultValue = "",
            description =
                    "What you did, in your words; without --fix, work that no pack knows, which then counts for no fix.")
    String fixNote = "";

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
            description =
                    "How sure of the cause: suspected, likely or proven (default: likely; proven once fixed by a fix"
                            + " that the case holds).")
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

    OutcomeCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        if (cause == null && !causeNote.isBlank()) {
            cause = RankingModel.UNLISTED;
        }
        if (fix == null && !fixNote.isBlank()) {
            fix = CaseEvent.FixApplied.UNLISTED;
        }
        if (seen.nothing() && id == null) {
            throw new UsageException("outcome of what? Give --case ID, or the words of a case in one step");
        }
        try (KnowledgeBase kb = open()) {
            Outcome outcome = checked(kb);
            String caseId = id == null ? kb.newCaseId() : id;
            Optional<CaseHistory> before = kb.history(caseId);
            if (seen.nothing() || before.isPresent()) {
                CaseCommand.standing(kb, caseId);
            }
            boolean oneStep = !seen.nothing()
                    && before.map(h -> h.events().stream()
                                    .anyMatch(e -> e.head().eventId().equals(caseId + OPENED)))
                            .orElse(true);
            Heads heads = step -> head(kb, caseId, oneStep && id != null ? step : "");
            List<CaseEvent> events = new ArrayList<>();
            if (!seen.nothing()) {
                DeviceScope scope = seen.scope(before.map(CaseHistory::scope).orElse(DeviceScope.ANY));
                warnOfUnknown(kb, scope);
                SeenOptions.Seen told = seen.read(kb, this, scope);
                String text = told.reading().text();
                if (oneStep) {
                    events.add(new CaseEvent.Opened(heads.of(OPENED), scope, text, "", CaseHistory.OWN, false));
                }
                events.add(new CaseEvent.Noted(heads.of(":2-noted"), text, Reading.Source.SEEN, told.findings()));
            }
            boolean known = oneStep && before.isPresent() && before.get().outcome() != null;
            List<CaseEvent> whole = new ArrayList<>(
                    oneStep ? List.of() : before.map(CaseHistory::events).orElseThrow());
            whole.addAll(events);
            CaseHistory held = CaseHistory.fold(whole).orElseThrow();
            if (outcome == Outcome.CAME_BACK && !oneStep && held.outcome() == null) {
                throw new UsageException(
                        "case " + caseId + " has not ended yet, so it cannot have come back; say first how"
                                + " it ended, such as --ended fixed, or --ended not-fixed where the fault never left");
            }
            List<CaseEvent> ending = ending(heads, outcome, oneStep ? Optional.empty() : held.cure());
            events.addAll(ending);
            whole.addAll(ending);
            CaseHistory told = CaseHistory.fold(whole).orElseThrow();
            return record(kb, events, known ? told : held, told, known);
        }
    }

    /** @param step what its id ends in behind the case's; empty for an id of its own */
    private static CaseEvent.Head head(KnowledgeBase kb, String caseId, String step) {
        try {
            CaseEvent.Head fresh = kb.head(caseId);
            return step.isEmpty() ? fresh : new CaseEvent.Head(caseId + step, caseId, fresh.at());
        } catch (IllegalArgumentException e) {
            throw new UsageException("--case: " + e.getMessage());
        }
    }

    /** The outcome, all that is wrong with the options told at once. */
    private Outcome checked(KnowledgeBase kb) {
        List<String> wrong = new ArrayList<>();
        Outcome outcome = null;
        try {
            outcome = Outcome.parse(ended);
        } catch (IllegalArgumentException e) {
            wrong.add(String.valueOf(e.getMessage()));
        }
        if (cause != null && !cause.equals(RankingModel.UNLISTED)) {
            UnitOptions.noCause(kb, cause)
                    .map(no -> no + " (one that no pack knows: --cause-note \"what was wrong\")")
                    .ifPresent(wrong::add);
        }
        boolean ownWork = CaseEvent.FixApplied.UNLISTED.equals(fix);
        if (ownWork && fixNote.isBlank()) {
            wrong.add("--fix unlisted needs --fix-note: what did you do?");
        }
        if (fix != null && !ownWork) {
            UnitOptions.noFix(kb, fix)
                    .map(no -> no + " (work that no pack knows: --fix-note \"what you did\")")
                    .ifPresent(wrong::add);
            if (cause == null) {
                wrong.add("--fix needs --cause: which cause was it meant for?");
            }
        }
        if (afterDays != null && afterDays < 0) {
            wrong.add("--after-days " + afterDays + ": give the days since hand-over, 0 or more");
        }
        if (afterDays != null && outcome != null && outcome != Outcome.CAME_BACK) {
            wrong.add("--after-days goes with --ended came-back: days since hand-over");
        }
        UnitOptions.noMinutes(minutes).ifPresent(wrong::add);
        if (certainty != null && cause == null) {
            wrong.add("--certainty goes with --cause: it is how sure you are of the cause");
        }
        if (minutes != null && fix == null) {
            wrong.add("--minutes goes with --fix or --fix-note: it is the bench time the fix took");
        }
        if (outcome == null || !wrong.isEmpty()) {
            throw new UsageException(String.join("\n", wrong));
        }
        return outcome;
    }

    /** @param standing a fix that is noted already; the same one named again is not done twice, but for this cause */
    private List<CaseEvent> ending(Heads heads, Outcome outcome, Optional<CaseEvent.FixApplied> standing) {
        List<CaseEvent> events = new ArrayList<>();
        boolean cured = outcome.cured() && (fix != null || standing.isPresent());
        String meantFor = cause == null ? CaseEvent.FixApplied.UNKNOWN_CAUSE : cause;
        if (cause != null) {
            Certainty sure = certainty != null ? certainty : cured ? Certainty.PROVEN : Certainty.LIKELY;
            events.add(new CaseEvent.Concluded(heads.of(":3-concluded"), cause, sure, causeNote));
        }
        if (fix != null) {
            events.add(fix(heads.of(":4-fix"), fix, meantFor, standing));
        }
        events.add(new CaseEvent.Ended(heads.of(":5-ended"), outcome, afterDays, note));
        return events;
    }

    private CaseEvent fix(CaseEvent.Head head, String fixId, String causeId, Optional<CaseEvent.FixApplied> standing) {
        return standing.filter(s -> s.fixId().equals(fixId)
                        && (!fixId.equals(CaseEvent.FixApplied.UNLISTED)
                                || s.note().equals(fixNote)))
                .<CaseEvent>map(s -> new CaseEvent.Corrected(
                        head,
                        s.head().eventId(),
                        new CaseEvent.FixApplied(
                                s.head(),
                                fixId,
                                causeId,
                                minutes == null ? s.minutes() : minutes,
                                fixNote.isBlank() ? s.note() : fixNote)))
                .orElseGet(() -> new CaseEvent.FixApplied(head, fixId, causeId, minutes, fixNote));
    }

    /**
     * @param soFar the case before what is about to be recorded
     * @param told the case with it
     * @param known whether it is recorded already
     */
    private Integer record(
            KnowledgeBase kb, List<CaseEvent> events, CaseHistory soFar, CaseHistory told, boolean known) {
        RankingQuery like = kb.query(soFar).about("").tried(Collections.emptySortedMap());
        double before = probability(kb, like);
        if (!known) {
            kb.record(events);
        }
        double after = probability(kb, like);
        CaseHistory history = kb.history(told.id()).orElseThrow();
        String lacking = history.outcome() == Outcome.FIXED_AND_PROVEN ? lacking(kb, history) : "";
        if (!lacking.isEmpty() && json) {
            bench.tell(lacking);
        }
        Optional<String> still = history.outcome() != null && history.outcome().cured()
                ? StillThere.warning(kb.knowledge(), bench.page(), history)
                : Optional.empty();
        still.ifPresent(warning -> bench.tell(warning));
        if (json) {
            bench.out().println(Json.outcome(history, cause == null ? "" : cause, before, after));
            return ExitCode.DONE;
        }
        Page page = bench.page();
        page.text(
                0, (known ? "Already recorded: case " : "Recorded: case ") + told.id() + " " + outcome(history) + ".");
        if (!lacking.isEmpty()) {
            page.text(0, lacking + ".");
        }
        if (cause != null && !Page.percent(after).equals(Page.percent(before))) {
            page.text(
                    0,
                    String.format(
                            Locale.ROOT,
                            "For another unit like this one, %s is now %s likely; it was %s before.",
                            new Names(kb.knowledge()).cause(cause),
                            Page.percent(after),
                            Page.percent(before)));
        }
        return ExitCode.DONE;
    }

    /** What the proof of a case that is told to be proven lacks; empty where it is complete or nothing was run at all. */
    private String lacking(KnowledgeBase kb, CaseHistory history) {
        ProofRecord known = ProofRecord.of(history);
        if (!known.somethingPassed()) {
            bench.tell("case " + history.id()
                    + " holds no check and no run after the work, so nothing in it"
                    + " shows that it is proven, and the owner's sheet says so; 'benchlore proof --case "
                    + history.id() + " --hours N' notes a run");
            return "";
        }
        ProofPlan proof = kb.proof(known, ProofCommand.CONFIDENCE, Optional.empty(), history.id());
        List<String> lacking = new ArrayList<>();
        int open = proof.open().size();
        if (open > 0) {
            lacking.add(open + " of " + proof.checklist().size() + " steps not done");
        }
        double hours = proof.run().map(ProofPlan.Run::hoursLeft).orElse(0.0);
        if (hours > 0) {
            lacking.add(ProofPage.hours(hours) + " left to run");
        }
        return lacking.isEmpty()
                ? ""
                : "The proof is not complete: " + String.join(", ", lacking) + "; 'benchlore proof --case "
                        + history.id() + "' shows what is left";
    }

    private static String outcome(CaseHistory history) {
        Outcome outcome = history.outcome();
        return outcome == null ? "is open" : Page.words(outcome);
    }

    /** @param like what was known of the unit before its ending: what was tried on it is not tried on another like it */
    private double probability(KnowledgeBase kb, RankingQuery like) {
        String causeId = cause;
        if (causeId == null) {
            return 0;
        }
        Ranking ranking = kb.rank(like);
        return Stream.concat(ranking.causes().stream(), Stream.of(ranking.unlisted()))
                .filter(c -> c.id().equals(causeId))
                .mapToDouble(Ranking.RankedCause::probability)
                .findFirst()
                .orElse(0);
    }
}
