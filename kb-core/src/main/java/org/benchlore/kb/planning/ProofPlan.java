package org.benchlore.kb.planning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.reading.Reading.Condition;

/**
 * The proof of a fix: what to check and what came of it, how long to run, and what is believed by now.
 *
 * @param known what it starts from
 * @param confidence asked for
 * @param priorNotCured probability, before the run, that the fix did not cure
 * @param run how long to run; empty while it is not known how often the fault was seen
 * @param checklist the fix's own proof steps in its order, then what else was checked
 */
public record ProofPlan(
        ProofRecord known, double confidence, double priorNotCured, Optional<Run> run, List<Item> checklist) {
    private static final Optional<Checked.Result> FAILED = Optional.of(Checked.Result.FAILED);
    private static final Optional<Checked.Result> NOT_DONE = Optional.of(Checked.Result.NOT_DONE);

    public ProofPlan {
        checklist = List.copyOf(checklist);
    }

    /**
     * How long to run.
     *
     * @param hours hours without fault, the rate as uncertain as so few sightings leave it
     * @param hoursAtMeanRate the same, were the rate known to be sightings over hours
     * @param stillThere probability now that the fault is still there; 1 once a check has failed
     * @param hoursLeft further hours until that is at most 1 − confidence and the run by itself, whatever was thought of the
     *     fix before, would have shown the fault with that confidence: what nobody ran is not proven
     */
    public record Run(double hours, double hoursAtMeanRate, double stillThere, double hoursLeft) {}

    /**
     * A step of the proof.
     *
     * @param step in the fix's words, or in those of whoever checked
     * @param ofFix whether it is one of the fix's own
     * @param result the latest; empty while there is none
     * @param failedBefore whether it failed before that
     * @param hours run during it, all told
     * @param conditions under which it was checked last
     */
    public record Item(
            String step,
            boolean ofFix,
            Optional<Checked.Result> result,
            boolean failedBefore,
            double hours,
            List<Condition> conditions) {
        public Item {
            conditions = List.copyOf(conditions);
        }
    }

    /**
     * A plan.
     *
     * @param verify the fix's own proof steps
     * @throws IllegalArgumentException as {@link ProofRun}
     */
    public static ProofPlan of(ProofRecord known, double confidence, double priorNotCured, List<String> verify) {
        ProofRun.check(confidence, priorNotCured);
        Optional<Run> run = known.seen() > 0 && known.seenHours() > 0
                ? Optional.of(run(known, confidence, priorNotCured))
                : Optional.empty();
        return new ProofPlan(known, confidence, priorNotCured, run, items(known.checks(), verify));
    }

    private static Run run(ProofRecord known, double confidence, double prior) {
        int seen = known.seen();
        double in = known.seenHours();
        double toShow = ProofRun.hours(seen, in, confidence);
        double toBelieve = ProofRun.hoursToBelieve(prior, seen, in, 1 - confidence);
        return new Run(
                toShow,
                ProofRun.hours(in / seen, confidence),
                known.failed() ? 1 : ProofRun.stillThere(prior, seen, in, known.cleanHours()),
                Math.max(0, Math.max(toShow, toBelieve) - known.cleanHours()));
    }

    private static List<Item> items(List<Checked> checks, List<String> verify) {
        Map<String, Item> items = new LinkedHashMap<>();
        verify.forEach(v -> items.put(v, new Item(v, true, Optional.empty(), false, 0, List.of())));
        for (Checked check : checks) {
            if (!check.isRun()) {
                Item old = items.get(check.item());
                Double hours = check.hours();
                items.put(
                        check.item(),
                        new Item(
                                check.item(),
                                old != null && old.ofFix(),
                                Optional.of(check.result()),
                                old != null
                                        && (old.failedBefore() || old.result().equals(FAILED)),
                                (old == null ? 0 : old.hours()) + (hours == null ? 0 : hours),
                                check.conditions()));
            }
        }
        return new ArrayList<>(items.values());
    }

    /** The step that holds all of two words or more, whatever else it says; empty where none or several do. */
    public Optional<Item> called(String words) {
        Set<String> given = words(words);
        List<Item> fit = given.size() < 2
                ? List.of()
                : checklist.stream()
                        .filter(i -> words(i.step()).containsAll(given))
                        .toList();
        return fit.size() == 1 ? Optional.of(fit.get(0)) : Optional.empty();
    }

    private static Set<String> words(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+", -1))
                .filter(word -> !word.isEmpty())
                .collect(Collectors.toSet());
    }

    /** Steps of the checklist that nobody has done. */
    public List<Item> open() {
        return checklist.stream()
                .filter(i -> i.result().isEmpty() || i.result().equals(NOT_DONE))
                .toList();
    }
}
