package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Caution;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.jspecify.annotations.Nullable;

/** The technician's sheet: everything the case holds, the ranking and why. */
final class CaseSheet {
    private static final int TOP = 5;
    private static final int MOST_WORDS = 1500;
    private static final int MOST_CELL = 400;

    private final CaseHistory history;
    private final Course course;
    private final Terms terms;
    private final Evidence evidence;
    private final LogDigest log;
    private final List<Sheet.Block> decisions;
    private final ProofWords proof;
    private final List<Sheet.Block> blocks = new ArrayList<>();

    private CaseSheet(
            CaseHistory history,
            Course course,
            Terms terms,
            Evidence evidence,
            LogDigest log,
            List<Sheet.Block> decisions,
            ProofWords proof) {
        this.history = history;
        this.course = course;
        this.terms = terms;
        this.evidence = evidence;
        this.log = log;
        this.decisions = decisions;
        this.proof = proof;
    }

    static Sheet of(
            CaseHistory history,
            Course course,
            Terms terms,
            Evidence evidence,
            LogDigest log,
            List<Sheet.Block> decisions,
            ProofWords proof) {
        CaseSheet sheet = new CaseSheet(history, course, terms, evidence, log, decisions, proof);
        sheet.unit();
        sheet.result();
        sheet.findings();
        sheet.tests();
        sheet.ranking();
        sheet.decisions();
        sheet.fixes();
        sheet.proof();
        sheet.course();
        sheet.log();
        sheet.cautions();
        return new Sheet(
                "Case sheet " + history.id(),
                Stream.of(
                                history.scope().depth() == 0 ? "" : terms.device(history.scope(), course.kinds()),
                                history.unit().isBlank() ? "" : "unit " + history.unit())
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining(", ")),
                sheet.blocks,
                "Times are UTC. Shares say what this bench's packs and other cases make of the findings; this case's own"
                        + " outcome is not among them. They are not a verdict. Local rules and licensed practice decide"
                        + " who may do what.");
    }

    private void unit() {
        List<Sheet.Fact> facts = new ArrayList<>();
        facts.add(new Sheet.Fact("Device", terms.devicePath(history.scope(), course.kinds())));
        facts.add(new Sheet.Fact("Unit", history.unit().isBlank() ? "no tag" : history.unit()));
        facts.add(new Sheet.Fact("Came in", Terms.time(history.openedAt())));
        facts.add(new Sheet.Fact("Worked on before", history.workedOnBefore() ? "yes" : "not known"));
        if (!history.origin().equals(CaseHistory.OWN)) {
            facts.add(new Sheet.Fact("Case of", history.origin()));
        }
        Set<String> hazards = hazards().stream()
                .map(c -> Hazards.name(c.hazard()))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (!hazards.isEmpty()) {
            facts.add(new Sheet.Fact("Hazards", String.join(", ", hazards) + " (see Cautions)"));
        }
        blocks.add(new Sheet.Facts(facts));
        if (!history.complaint().isBlank()) {
            blocks.add(new Sheet.Section("Complaint"));
            blocks.add(new Sheet.Quote(Escape.clip(history.complaint(), MOST_WORDS)));
        }
    }

    private void result() {
        blocks.add(new Sheet.Section("Conclusion and outcome"));
        String cause = history.causeId();
        String end = history.withdrawn()
                ? "Withdrawn; counts for nothing."
                : history.outcome() == null ? "Still open." : "Outcome: " + Terms.words(history.outcome()) + ".";
        blocks.add(new Sheet.Verdict((cause == null
                        ? "No cause concluded. "
                        : "Cause: " + terms.cause(cause)
                                + (history.certainty() == null
                                        ? ". "
                                        : " (" + Terms.words(history.certainty()) + "). "))
                + end));
        List<String> said = new ArrayList<>();
        for (Course.Step step : course.steps()) {
            if (step.event() instanceof CaseEvent.Concluded concluded) {
                said.add("Step " + step.number() + ", concluded " + terms.cause(concluded.causeId()) + ", "
                        + Terms.words(concluded.certainty()) + and(concluded.note()));
            } else if (step.event() instanceof CaseEvent.Ended ended) {
                said.add("Step " + step.number() + ", " + ending(ended));
            }
        }
        if (!said.isEmpty()) {
            blocks.add(new Sheet.Bullets(said));
        }
    }

    static String ending(CaseEvent.Ended event) {
        return Terms.words(event.outcome())
                + (event.afterDays() == null ? "" : " after " + Terms.count(event.afterDays(), "day", "days"))
                + and(event.note());
    }

    private static String and(String note) {
        return note.isBlank() ? "" : ": " + Escape.clip(note.strip(), MOST_CELL);
    }

    private void findings() {
        List<Evidence.Known> known = evidence.known(course);
        if (known.isEmpty()) {
            return;
        }
        blocks.add(new Sheet.Section("Findings"));
        blocks.add(new Sheet.Table(
                List.of("What", "State", "From", "Step"),
                known.stream()
                        .map(k -> List.of(
                                terms.symptom(k.finding().symptomId()),
                                (terms.normal(k.finding()) ? "" : "▲ ")
                                        + terms.state(k.finding())
                                        + (k.value().isEmpty() ? "" : "; " + k.value())
                                        + (k.before().isEmpty() ? "" : "; before: " + String.join(", ", k.before())),
                                k.by(),
                                Integer.toString(k.step())))
                        .toList()));
        blocks.add(new Sheet.Words("▲ is not what a sound unit shows."));
    }

    private void tests() {
        List<List<String>> rows = new ArrayList<>();
        course.all(CaseEvent.Tested.class)
                .forEach((n, e) -> rows.add(List.of(
                        Integer.toString(n),
                        terms.test(e.testId()),
                        e.findings().isEmpty() ? "no result noted" : terms.findings(e.findings()),
                        terms.knowledge()
                                .test(e.testId())
                                .map(BenchTest::expect)
                                .orElse("–"),
                        minutes(e.minutes()),
                        e.note().isBlank() ? "–" : Escape.clip(e.note(), MOST_CELL))));
        if (!rows.isEmpty()) {
            blocks.add(new Sheet.Section("Tests"));
            blocks.add(new Sheet.Table(List.of("Step", "Test", "Result", "A sound unit", "Minutes", "Note"), rows));
        }
    }

    private static String minutes(@Nullable Double minutes) {
        return minutes == null ? "–" : Long.toString(Math.round(minutes));
    }

    private void ranking() {
        Optional<Ranking> last = course.last();
        if (last.isEmpty()) {
            return;
        }
        blocks.add(new Sheet.Section("Ranking and why"));
        String concluded = history.causeId() == null ? "" : history.causeId();
        course.ranks(concluded).ifPresent(blocks::add);
        Ranking ranking = last.get();
        Stream<RankedCause> shown = ranking.causes().stream().limit(TOP);
        int place = place(ranking, concluded);
        if (place > TOP) {
            shown = Stream.concat(shown, Course.find(ranking, concluded).stream());
        }
        List<List<String>> rows = new ArrayList<>(shown.map(this::row).toList());
        rows.add(row(ranking.unlisted()));
        blocks.add(new Sheet.Table(List.of("Cause", "Share (90 % interval)", "Past cases", "For", "Against"), rows));
        if (place > TOP) {
            blocks.add(new Sheet.Words("The cause concluded stands at place " + place + " of the ranking."));
        }
        List<Evidence.Out> out = evidence.ruledOut(ranking);
        if (!out.isEmpty()) {
            blocks.add(new Sheet.Words("Unlikely because of one finding:"));
            blocks.add(new Sheet.Bullets(out.stream()
                    .map(o -> o.cause() + " (" + Terms.share(o.share()) + "): " + o.against())
                    .toList()));
        }
    }

    private static int place(Ranking ranking, String causeId) {
        for (int i = 0; i < ranking.causes().size(); i++) {
            if (ranking.causes().get(i).id().equals(causeId)) {
                return i + 1;
            }
        }
        return 0;
    }

    private List<String> row(RankedCause cause) {
        return List.of(
                Terms.capital(cause.name()),
                Terms.share(cause.probability()) + " ("
                        + Terms.range(cause.interval().low(), cause.interval().high()) + ")",
                Long.toString(cause.cases()),
                dash(evidence.reasons(cause, 1)),
                dash(evidence.reasons(cause, -1)));
    }

    private static String dash(String text) {
        return text.isEmpty() ? "–" : text;
    }

    private void fixes() {
        List<List<String>> rows = new ArrayList<>();
        course.all(CaseEvent.FixApplied.class)
                .forEach((n, e) -> rows.add(List.of(
                        Integer.toString(n),
                        terms.fix(e.fixId()),
                        terms.cause(e.causeId()),
                        minutes(e.minutes()),
                        e.note().isBlank() ? "–" : Escape.clip(e.note(), MOST_CELL))));
        if (!rows.isEmpty()) {
            blocks.add(new Sheet.Section("Fixes"));
            blocks.add(new Sheet.Table(List.of("Step", "Fix", "For", "Minutes", "Note"), rows));
        }
    }

    private void decisions() {
        blocks.addAll(decisions);
    }

    private void proof() {
        blocks.addAll(proof.forTechnician(course));
    }

    private void course() {
        blocks.add(new Sheet.Section("Course of the case"));
        blocks.add(course.events());
        blocks.add(new Sheet.Table(
                List.of("Step", "When", "What"),
                course.steps().stream()
                        .map(s -> List.of(
                                Integer.toString(s.number()),
                                Terms.time(s.event().head().at()),
                                Escape.clip(s.event().fold(new EventWords(terms)), MOST_CELL)))
                        .toList()));
    }

    private void log() {
        if (!log.isEmpty()) {
            blocks.add(new Sheet.Section("Log"));
            blocks.addAll(log.blocks());
        }
    }

    private List<Caution> hazards() {
        return Hazards.of(history, terms.knowledge());
    }

    private void cautions() {
        List<Caution> cautions = hazards();
        if (cautions.isEmpty()) {
            return;
        }
        blocks.add(new Sheet.Section("Cautions"));
        blocks.add(new Sheet.Warnings(cautions.stream()
                .map(c -> Terms.capital(Hazards.name(c.hazard())) + ": "
                        + c.text().strip())
                .toList()));
    }
}
