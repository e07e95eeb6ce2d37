package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.reading.Finding;

/**
 * A question for a forum or a colleague. It is made of the packs' words, states and readings alone: no free text, tag,
 * serial number, case id, date or shop, since any of these may name somebody.
 */
final class QuestionSheet {
    private static final int TOP = 3;
    private static final int MOST_OPEN = 5;

    private final CaseHistory history;
    private final Course course;
    private final Terms terms;
    private final Evidence evidence;
    private final ProofWords proof;
    private final List<Sheet.Block> blocks = new ArrayList<>();

    private QuestionSheet(CaseHistory history, Course course, Terms terms, Evidence evidence, ProofWords proof) {
        this.history = history;
        this.course = course;
        this.terms = terms;
        this.evidence = evidence;
        this.proof = proof;
    }

    /**
     * The question.
     *
     * @param next tests that would tell something, best first
     */
    static Sheet of(
            CaseHistory history,
            Course course,
            Terms terms,
            Evidence evidence,
            LogDigest log,
            ProofWords proof,
            List<TestProposal> next) {
        QuestionSheet sheet = new QuestionSheet(history, course, terms, evidence, proof);
        sheet.unit();
        sheet.findings();
        sheet.tests();
        sheet.fixes();
        sheet.ranking();
        sheet.unknown(next);
        sheet.log(log);
        return new Sheet(
                "Question: " + sheet.subject(),
                "What have you seen with these findings, and what would you measure next?",
                sheet.blocks,
                "Left out on purpose: serial number, names, dates and free text. Mind the hazards of whatever you suggest.");
    }

    /** The abnormal findings, so that the title says what is asked. */
    private String subject() {
        String findings = history.findings().stream()
                .filter(f -> !terms.normal(f))
                .limit(TOP)
                .map(terms::brief)
                .collect(Collectors.joining(", "));
        return findings.isEmpty() ? "nothing out of order found so far" : findings;
    }

    private void unit() {
        blocks.add(new Sheet.Section("Unit"));
        blocks.add(new Sheet.Facts(List.of(
                new Sheet.Fact("Device", terms.devicePath(history.scope(), course.kinds())),
                new Sheet.Fact("Worked on before", history.workedOnBefore() ? "yes" : "not known"))));
    }

    private void findings() {
        blocks.add(new Sheet.Section("Findings"));
        List<Evidence.Known> known = evidence.known(course);
        blocks.add(new Sheet.Bullets(
                known.isEmpty()
                        ? List.of("None so far.")
                        : known.stream()
                                .map(k -> terms.finding(k.finding())
                                        + (k.value().isEmpty() ? "" : " (" + k.value() + ")")
                                        + (k.before().isEmpty() ? "" : "; before: " + String.join(", ", k.before())))
                                .toList()));
    }

    private void tests() {
        List<List<String>> rows = new ArrayList<>();
        for (CaseEvent.Tested test : course.all(CaseEvent.Tested.class).values()) {
            Map<String, String> values = evidence.values(test);
            rows.add(List.of(
                    terms.test(test.testId()),
                    test.findings().isEmpty()
                            ? "no result"
                            : test.findings().stream()
                                    .map(f -> terms.finding(f)
                                            + (values.containsKey(f.symptomId())
                                                    ? " (" + values.get(f.symptomId()) + ")"
                                                    : ""))
                                    .collect(Collectors.joining("; ")),
                    terms.knowledge().test(test.testId()).map(BenchTest::expect).orElse("–")));
        }
        blocks.add(new Sheet.Section("Tested"));
        blocks.add(
                rows.isEmpty()
                        ? new Sheet.Words("Nothing yet beyond the findings above.")
                        : new Sheet.Table(List.of("Test", "Result", "A sound unit"), rows));
    }

    private void fixes() {
        List<String> fixes = course.all(CaseEvent.FixApplied.class).values().stream()
                .map(f -> terms.fix(f.fixId()) + ", for: " + terms.cause(f.causeId()))
                .toList();
        if (!fixes.isEmpty()) {
            blocks.add(new Sheet.Section("Tried"));
            blocks.add(new Sheet.Bullets(
                    Stream.concat(fixes.stream(), proof.forOthers().stream()).toList()));
            Stream.ofNullable(history.outcome())
                    .forEach(o -> blocks.add(new Sheet.Words("How it ended: " + Terms.words(o) + ".")));
        }
    }

    private void ranking() {
        Optional<Ranking> last = course.last();
        if (last.isEmpty()) {
            return;
        }
        // whoever leads is suspected, whatever speaks against it; the others stand on one list only
        List<RankedCause> first = last.get().causes().stream().limit(TOP).toList();
        List<Evidence.Out> out = evidence.ruledOut(last.get()).stream()
                .filter(o -> first.stream().limit(1).noneMatch(c -> c.id().equals(o.causeId())))
                .toList();
        Set<String> outIds = out.stream().map(Evidence.Out::causeId).collect(Collectors.toSet());
        blocks.add(new Sheet.Section("Suspected"));
        blocks.add(new Sheet.Bullets(Stream.concat(
                        first.stream().filter(c -> !outIds.contains(c.id())),
                        Stream.of(last.get().unlisted()))
                .map(c -> Terms.capital(c.name()) + ", " + Terms.share(c.probability()))
                .toList()));
        blocks.add(new Sheet.Section("Ruled out, as far as can be"));
        blocks.add(new Sheet.Bullets(
                out.isEmpty()
                        ? List.of("Nothing that would otherwise be in question.")
                        : out.stream()
                                .map(o -> o.cause() + ", because " + o.against())
                                .toList()));
    }

    private void unknown(List<TestProposal> next) {
        Set<String> known = new HashSet<>();
        history.findings().forEach(f -> known.add(f.symptomId()));
        List<String> unknown = new ArrayList<>();
        for (Finding finding : history.findings()) {
            if (!finding.certain()) {
                unknown.add(terms.finding(finding));
            }
        }
        next.stream()
                .limit(MOST_OPEN)
                .map(p -> p.test().name() + ": would show "
                        + p.test().reveals().stream()
                                .filter(s -> !known.contains(s))
                                .limit(MOST_OPEN)
                                .map(terms::symptom)
                                .collect(Collectors.joining(", ")))
                .forEach(unknown::add);
        blocks.add(new Sheet.Section("Not yet known"));
        blocks.add(new Sheet.Bullets(unknown.isEmpty() ? List.of("No test known here would tell more.") : unknown));
    }

    private void log(LogDigest log) {
        List<Sheet.Block> summary = log.withoutDates();
        if (!summary.isEmpty()) {
            blocks.add(new Sheet.Section("Log, summarised"));
            blocks.addAll(summary);
        }
    }
}
