package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.reading.Finding;

/** Bench tests as plain text. */
final class TestPage {
    /** A longer name, or a state of so many words, takes a colon between them. */
    private static final int LONG = 3;

    private static final double LEAST_SAVING = 0.5;

    private final Knowledge knowledge;
    private final Page page;

    TestPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
    }

    /** Whether a test saves any time to speak of: half a minute of repair. */
    static boolean saves(TestProposal test) {
        return test.savingMinutes() >= LEAST_SAVING;
    }

    /** One line of a list. */
    void summary(int place, TestProposal proposal) {
        page.hanging(String.format(Locale.ROOT, "%2d. ", place), 4, facts(proposal.test(), proposal.minutes()));
        page.text(
                4,
                proposal.bits() < 0.05
                        ? "tells less than 0.1 bit of what the fault is"
                        : String.format(Locale.ROOT, "tells %.1f bit of what the fault is", proposal.bits()));
    }

    /** The whole procedure, with what each reading means. */
    void full(BenchTest test) {
        procedure(test);
        for (BenchTest.ReadingMeans reading : test.readings()) {
            page.hanging(4, 6, "- " + state(reading.symptomId(), reading.stateId()) + ": " + reading.means());
        }
        warnings(test);
    }

    /** The procedure without its readings, for whoever asks for them as a choice. */
    void steps(BenchTest test) {
        procedure(test);
        warnings(test);
    }

    private void procedure(BenchTest test) {
        page.hanging(2, 4, facts(test, test.minutes()));
        page.hanging(2, 4, "Set-up: " + test.setup());
        page.numbered(2, test.steps());
        page.hanging(2, 4, "Expect: " + test.expect());
    }

    private void warnings(BenchTest test) {
        test.fools().forEach(f -> page.hanging(2, 4, "What fools people: " + f));
        if (!test.stopWhen().isBlank()) {
            page.hanging(2, 4, "Stop when: " + test.stopWhen());
        }
        test.cautions().stream().flatMap(id -> knowledge.caution(id).stream()).forEach(c -> page.caution(c.text()));
    }

    /** " and 10 to open the unit", where that is still to be done. */
    static String toOpen(double minutes) {
        return minutes == 0 ? "" : String.format(Locale.ROOT, " and %.0f to open the unit", minutes);
    }

    /** ", parts worth 60 min", where they are worth counting. */
    static String parts(double minutes) {
        return minutes == 0 ? "" : String.format(Locale.ROOT, ", parts worth %.0f min", minutes);
    }

    private static String facts(BenchTest test, double minutes) {
        return String.format(
                Locale.ROOT,
                "%s [%s]: about %.0f min%s, %s; risk to the unit: %s",
                test.name(),
                test.id(),
                minutes,
                test.opens() ? " once the unit is open" : "",
                test.tools().isEmpty() ? "no tools" : String.join(", ", test.tools()),
                Page.words(test.risk()));
    }

    String state(String symptomId, String stateId) {
        return states(symptomId, Set.of(stateId));
    }

    /** "12 V rail absent or low". */
    String states(String symptomId, Set<String> stateIds) {
        return knowledge
                .symptom(symptomId)
                .map(s ->
                        phrase(s, stateIds.stream().map(id -> stateName(s, id)).collect(Collectors.joining(" or "))))
                .orElseGet(() -> symptomId + " " + String.join(" or ", stateIds));
    }

    /** A finding with the states worth naming; "not clear" where that is all of them. */
    String finding(Finding finding) {
        List<String> likely = finding.likely();
        return knowledge
                .symptom(finding.symptomId())
                .map(s -> likely.size() > 1 && likely.size() == s.states().size()
                        ? phrase(s, "not clear")
                        : phrase(s, likely.stream().map(id -> stateName(s, id)).collect(Collectors.joining(" or ")))
                                + (finding.certain() ? "" : ", not certain"))
                .orElse(finding.symptomId() + " " + finding.state());
    }

    /** "12 V rail absent", a colon between longer names, and no stammer where the state's name says all. */
    static String phrase(Symptom symptom, String states) {
        if (states.toLowerCase(Locale.ROOT).startsWith(symptom.name().toLowerCase(Locale.ROOT))) {
            return states;
        }
        if (symptom.name().toLowerCase(Locale.ROOT).startsWith(states.toLowerCase(Locale.ROOT))) {
            return symptom.name();
        }
        boolean shortNames = words(symptom.name()) <= LONG && words(states) < LONG;
        return symptom.name() + (shortNames ? " " : ": ") + states;
    }

    private static long words(String text) {
        return 1 + text.chars().filter(c -> c == ' ').count();
    }

    static String stateName(Symptom symptom, String stateId) {
        return symptom.state(stateId).map(State::name).orElse(stateId);
    }
}
