package org.benchlore.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/** Takes the proposed test: shows it, asks for the result, stores it. */
final class TestTurn {
    /** A test that could read more states than this lists only those it says something about. */
    private static final int MOST_CHOICES = 12;

    private static final String QUESTION = "result> ";

    private static final String HELP = "A number of the list, or what the test showed in words or as a reading with its"
            + " unit. 'other' shows another test, Enter leaves this one; fix, undo, end and the other commands leave it,"
            + " too.";

    private final WorkCase work;
    private final Lines lines;
    private final Page page;
    private final WorkPage show;

    private Optional<String> command = Optional.empty();

    /** A state that the test can show, with what it means. */
    private record Choice(Symptom symptom, State state, String means) {
        Finding finding() {
            return Finding.of(symptom.id(), state.id());
        }

        String text() {
            return symptom.name() + ": " + state.name() + (means.isEmpty() ? "" : " - " + means);
        }
    }

    /** What was typed for a result: findings, and the words they came from. */
    private record Result(List<Finding> findings, String words) {}

    TestTurn(WorkCase work, Lines lines, Page page, WorkPage show) {
        this.work = work;
        this.lines = lines;
        this.page = page;
        this.show = show;
    }

    /** The command that was given in place of a result, to be obeyed now. */
    Optional<String> command() {
        return command;
    }

    /** Whether a result was stored. */
    boolean take() {
        List<TestProposal> proposals = work.next().inOrder(Integer.MAX_VALUE);
        for (TestProposal proposal : proposals) {
            BenchTest test = proposal.test();
            page.heading("Next test");
            new TestPage(work.kb().knowledge(), page).steps(test);
            List<Choice> choices = choices(test);
            page.text(
                    0,
                    "What did it show? Numbers from this list, or words or a reading with its unit (4.9 V)."
                            + " 'other' for another test, Enter to leave it.");
            show.numbered(choices.stream().map(Choice::text).toList());
            Optional<String> answer = lines.ask(QUESTION, HELP);
            while (answer.isPresent()
                    && !answer.get().isEmpty()
                    && !answer.get().equalsIgnoreCase("other")) {
                if (WorkWords.obeyed(answer.get())) {
                    page.text(0, "The test is left without a result.");
                    command = answer;
                    return false;
                }
                Optional<Result> result = result(test, choices, answer.get());
                if (result.isPresent()) {
                    work.record(new CaseEvent.Tested(
                            work.head(),
                            test.id(),
                            result.get().findings(),
                            null,
                            result.get().words()));
                    page.text(0, "Stored.");
                    show.findings(result.get().findings());
                    return true;
                }
                answer = lines.ask(QUESTION, HELP);
            }
            if (answer.isEmpty() || answer.get().isEmpty()) {
                return false;
            }
        }
        page.text(0, "No further test here would tell anything. See 'why', or go on with 'fix' or 'end'.");
        return false;
    }

    private List<Choice> choices(BenchTest test) {
        List<Choice> all = new ArrayList<>();
        for (String symptomId : test.reveals()) {
            work.kb()
                    .knowledge()
                    .symptom(symptomId)
                    .ifPresent(symptom -> symptom.states()
                            .forEach(state -> all.add(new Choice(symptom, state, means(test, symptomId, state.id())))));
        }
        return all.size() <= MOST_CHOICES
                ? all
                : all.stream().filter(c -> !c.means().isEmpty()).toList();
    }

    private static String means(BenchTest test, String symptomId, String stateId) {
        return test.readings().stream()
                .filter(r -> r.symptomId().equals(symptomId) && r.stateId().equals(stateId))
                .map(BenchTest.ReadingMeans::means)
                .findFirst()
                .orElse("");
    }

    private Optional<Result> result(BenchTest test, List<Choice> choices, String answer) {
        List<Integer> picked = Lines.picked(answer, choices.size());
        if (!picked.isEmpty()) {
            List<Finding> findings =
                    picked.stream().map(p -> choices.get(p).finding()).toList();
            Set<String> symptoms = new HashSet<>();
            if (!findings.stream().allMatch(f -> symptoms.add(f.symptomId()))) {
                page.text(0, "These exclude each other; pick one state of each.");
                return Optional.empty();
            }
            return Optional.of(new Result(findings, ""));
        }
        if (answer.matches("[\\d\\s,;]+")) {
            page.text(
                    0,
                    "A bare number picks a line from 1 to " + choices.size()
                            + "; give a reading with its unit, such as 4.9 V.");
            return Optional.empty();
        }
        Optional<String> entry = entry(answer);
        if (entry.isPresent()) {
            page.text(0, entry.get());
            return Optional.empty();
        }
        List<Finding> findings = read(test, answer);
        List<Finding> others = findings.stream()
                .filter(f -> !test.reveals().contains(f.symptomId()))
                .toList();
        if (!others.isEmpty()) {
            page.text(0, "This test does not read what that says:");
            show.findings(others);
            page.text(0, "y stores it all the same, Enter does not.");
            if (!lines.yes("store> ", "y or Enter.")) {
                page.text(0, "Not stored; say the result without it.");
                return Optional.empty();
            }
        }
        if (findings.isEmpty()) {
            page.text(
                    0,
                    "Not understood as a result of this test, and not stored. Pick a number, or name the thing: "
                            + test.reveals().stream()
                                    .findFirst()
                                    .map(this::name)
                                    .orElse("") + " ...");
        }
        return findings.isEmpty() ? Optional.empty() : Optional.of(new Result(findings, answer));
    }

    /** What to say of an entry's id, which is no result. */
    private Optional<String> entry(String answer) {
        Knowledge knowledge = work.kb().knowledge();
        String id = answer.toLowerCase(Locale.ROOT);
        return knowledge.fix(id).isPresent()
                ? Optional.of("That is a fix and no result, and not stored; 'fix' notes one.")
                : knowledge.cause(id).isPresent()
                        ? Optional.of("That is a cause and no result, and not stored; 'cause' names it.")
                        : knowledge.test(id).isPresent()
                                ? Optional.of(
                                        "That is a test and no result, and not stored; 'other' shows another one.")
                                : Optional.empty();
    }

    private String name(String symptomId) {
        return work.kb().knowledge().symptom(symptomId).map(Symptom::name).orElse(symptomId);
    }

    /** "3.9 V" or "missing" alone is meant for what the test reads, if only one thing there can be so. */
    private List<Finding> read(BenchTest test, String answer) {
        Reading plain = work.kb().read(answer, work.history().scope());
        if (!plain.findings().isEmpty()) {
            return plain.findings();
        }
        Set<String> units = new HashSet<>();
        plain.quantities().forEach(q -> units.add(q.unit()));
        List<Finding> named = new ArrayList<>();
        for (String symptomId : test.reveals()) {
            work.kb()
                    .knowledge()
                    .symptom(symptomId)
                    .filter(s -> units.isEmpty() || measuredIn(s, units))
                    .ifPresent(s -> named.addAll(named(s, answer)));
        }
        return named.size() == 1 ? named : List.of();
    }

    private static boolean measuredIn(Symptom symptom, Set<String> units) {
        Quantity quantity = symptom.quantity();
        return quantity != null && units.contains(quantity.unit());
    }

    /** Read with the symptom's name before it; what the name alone says does not count. */
    private List<Finding> named(Symptom symptom, String answer) {
        String name = symptom.name() + " ";
        return work.kb().read(name + answer, work.history().scope()).understood().stream()
                .filter(u -> u.span().end() > name.length())
                .map(Reading.Understood::finding)
                .filter(f -> f.symptomId().equals(symptom.id()))
                .limit(1)
                .toList();
    }
}
