package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What proves a fix, and for how long to run. */
@Command(
        name = "proof",
        description = {
            "Plan the proof of a fix and record it: what to check, how long to run, what is believed by now.",
            "With --case, fix, sightings and hours are the case's, and what was checked is stored there:",
            "  benchlore proof --case CASE --passed 1 --hours 2 --condition cold",
            "A check that failed says that the fix did not cure.",
            "Before a fix, 'case note CASE --seen N --in HOURS' keeps how often the fault is seen."
        },
        mixinStandardHelpOptions = true)
final class ProofCommand extends BenchCommand {
    /** Asked for where nobody says; our choice. */
    static final double CONFIDENCE = 0.9;

    @Option(names = "--case", paramLabel = "CASE", description = "The case.")
    @Nullable
    String caseId;

    @Option(names = "--fix", paramLabel = "FIX", description = "Without a case: the fix that was done.")
    @Nullable
    String fix;

    @Option(
            names = "--seen",
            paramLabel = "N",
            description = "Times the fault was seen before the fix (default: as the case tells).")
    @Nullable
    Integer seen;

    @Option(names = "--in", paramLabel = "HOURS", description = "In so many hours of run.")
    @Nullable
    Double seenHours;

    @Option(
            names = "--passed",
            paramLabel = "STEP",
            description = "With --case: a step that passed, by its number or in your words; may be repeated.")
    List<String> passed = new ArrayList<>();

    @Option(names = "--failed", paramLabel = "STEP", description = "With --case: a step that failed, or what you saw.")
    List<String> failed = new ArrayList<>();

    @Option(names = "--not-done", paramLabel = "STEP", description = "With --case: a step that is left out.")
    List<String> notDone = new ArrayList<>();

    @Option(
            names = "--hours",
            paramLabel = "HOURS",
            description = "Hours run since the fix: without fault, or during the one step given.")
    @Nullable
    Double hours;

    @Option(
            names = "--condition",
            paramLabel = "HOW",
            description = "How it ran: cold, warm, under-load, after-a-while or standby; may be repeated.")
    List<String> conditions = new ArrayList<>();

    @Option(names = "--note", paramLabel = "WORDS", defaultValue = "", description = "Anything worth keeping with it.")
    String note = "";

    @Option(
            names = "--confidence",
            paramLabel = "C",
            defaultValue = "" + CONFIDENCE,
            description = "Confidence asked for (default ${DEFAULT-VALUE}).")
    double confidence;

    @Option(
            names = "--not-cured",
            paramLabel = "P",
            description =
                    "Probability that the fix did not cure (default: its record, else what the packs say of it, else 0.5).")
    @Nullable
    Double notCured;

    ProofCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        List<Condition> how = conditions(conditions);
        if (caseId != null && fix != null) {
            throw new UsageException("--fix goes without --case; the case knows its fix");
        }
        if ((seen == null) != (seenHours == null)) {
            throw new UsageException("--seen and --in go together: so many times in so many hours");
        }
        if (seen != null && seenHours != null && !(seen > 0 && seenHours > 0)) {
            throw new UsageException("a fault seen " + seen + " times in " + ProofPage.hours(seenHours)
                    + " gives nothing to prove against; give 1 time or more in more than 0 hours");
        }
        if (hours != null && !(hours > 0)) {
            throw new UsageException("a run of " + ProofPage.hours(hours) + " tells nothing; give more than 0");
        }
        try (KnowledgeBase kb = open()) {
            ProofRecord known = caseId == null ? asGiven(kb) : ofCase(kb, caseId, how);
            Optional<Double> prior = Optional.ofNullable(notCured);
            ProofPlan proof =
                    caseId == null ? kb.proof(known, confidence, prior) : kb.proof(known, confidence, prior, caseId);
            if (json) {
                bench.out().println(Json.proof(proof));
            } else {
                print(kb, proof);
            }
            return ExitCode.DONE;
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    private ProofRecord asGiven(KnowledgeBase kb) {
        if (!(passed.isEmpty() && failed.isEmpty() && notDone.isEmpty() && conditions.isEmpty() && note.isEmpty())) {
            throw new UsageException("checks are stored in a case; name it with --case");
        }
        if (seen == null || seenHours == null) {
            throw new UsageException(
                    "how often was the fault seen? Give --seen N --in HOURS, or --case for what the case tells");
        }
        Optional<String> id = Optional.ofNullable(fix).map(f -> UnitOptions.fixId(kb, f));
        return ProofRecord.of(id, seen, seenHours, hours == null ? 0 : hours);
    }

    private ProofRecord ofCase(KnowledgeBase kb, String id, List<Condition> how) {
        List<CaseEvent> checks = checks(kb, id, how);
        if (checks.isEmpty() && !(how.isEmpty() && note.isEmpty())) {
            throw new UsageException("--condition and --note go with a step or with --hours");
        }
        if (!checks.isEmpty()) {
            CaseCommand.standing(kb, id);
        }
        kb.record(checks);
        ProofRecord known = ProofRecord.of(CaseCommand.known(kb, id));
        return seen == null || seenHours == null ? known : known.seen(seen, seenHours);
    }

    private List<CaseEvent> checks(KnowledgeBase kb, String id, List<Condition> how) {
        ProofRecord before = ProofRecord.of(CaseCommand.known(kb, id));
        int steps = passed.size() + failed.size() + notDone.size();
        if (steps + (hours == null ? 0 : 1) > 0 && before.fixId().isEmpty()) {
            throw new UsageException("case " + id + " has no fix to prove yet; 'outcome' or 'work' notes one,"
                    + " 'case note " + id + " --seen N --in HOURS' how often the fault is seen");
        }
        if (hours != null && steps > 1) {
            throw new UsageException("--hours goes with one step, else the same hours would count " + steps + " times");
        }
        ProofPlan list = kb.proof(before, confidence, Optional.ofNullable(notCured), id);
        List<CaseEvent> checks = new ArrayList<>();
        passed.forEach(s -> checks.add(check(kb, id, step(s, list), Checked.Result.PASSED, how)));
        failed.forEach(s -> checks.add(check(kb, id, step(s, list), Checked.Result.FAILED, how)));
        notDone.forEach(s -> checks.add(check(kb, id, step(s, list), Checked.Result.NOT_DONE, how)));
        if (hours != null && steps == 0) {
            checks.add(check(kb, id, "", Checked.Result.PASSED, how));
        }
        return checks;
    }

    private Checked check(KnowledgeBase kb, String id, String step, Checked.Result result, List<Condition> how) {
        return new Checked(kb.head(id), step, result, null, hours, how, note);
    }

    private static String step(String given, ProofPlan proof) {
        List<ProofPlan.Item> list = proof.checklist();
        if (!given.matches("\\d{1,3}")) {
            if (given.isBlank()) {
                throw new UsageException("which step? Give its number, or say it in words");
            }
            return proof.called(given).map(ProofPlan.Item::step).orElse(given);
        }
        int number = Integer.parseInt(given);
        if (number < 1 || number > list.size()) {
            throw new UsageException("step " + given + " is not on the list of " + list.size()
                    + "; 'benchlore proof --case CASE' shows it");
        }
        return list.get(number - 1).step();
    }

    /** Conditions by name. */
    static List<Condition> conditions(List<String> names) {
        List<Condition> conditions = new ArrayList<>();
        for (String name : names) {
            Condition found = null;
            for (Condition c : Condition.values()) {
                found = c != Condition.INTERMITTENT && name.strip().equalsIgnoreCase(id(c)) ? c : found;
            }
            if (found == null) {
                throw new UsageException(
                        "no condition '" + name + "'; use cold, warm, under-load, after-a-while or standby");
            }
            conditions.add(found);
        }
        return conditions;
    }

    private static String id(Condition condition) {
        return condition.name().replace('_', '-');
    }

    private void print(KnowledgeBase kb, ProofPlan proof) {
        new ProofPage(kb.knowledge(), bench.page()).print(proof);
        ProofRecord known = proof.known();
        if (known.fixId().isEmpty() && caseId != null) {
            bench.page().text(2, "No fix was noted in this case yet.");
        }
        if (proof.run().isEmpty() && !known.failed()) {
            bench.page()
                    .text(
                            2,
                            "How often the fault was seen is not in the case, so there is no figure for the hours to run."
                                    + " For a fault that comes and goes give --seen N --in HOURS.");
        }
    }
}
