package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/** What speaks for what in a case: findings with the values behind them, reasons, and causes that one finding shut out. */
final class Evidence {
    /** A weight below this says next to nothing. */
    private static final double LEAST_DECIBANS = 1;

    private static final int REASONS = 3;

    /** A cause is called unlikely below this share ... */
    private static final double UNLIKELY = 0.03;
    /** ... and worth naming if without its worst finding it would be above this. */
    private static final double ELSE_LIKELY = 0.05;

    private static final int MOST_OUT = 6;

    private final Terms terms;
    private final Readings readings;

    Evidence(Terms terms, Readings readings) {
        this.terms = terms;
        this.readings = readings;
    }

    /**
     * A finding with where it came from.
     *
     * @param finding the latest of its symptom
     * @param step number of the event that brought it
     * @param by who says it, or the test
     * @param value the reading behind it, or empty
     * @param before earlier findings of the symptom that differ
     */
    record Known(Finding finding, int step, String by, String value, List<String> before) {}

    /** The findings that stand, in order of when they came. */
    List<Known> known(Course course) {
        Map<String, Known> known = new LinkedHashMap<>();
        for (Course.Step step : course.steps()) {
            Map<String, String> values = values(step.event());
            for (Finding finding : step.findings()) {
                Known old = known.remove(finding.symptomId());
                List<String> before = new ArrayList<>(old == null ? List.of() : old.before());
                if (old != null && !old.finding().state().equals(finding.state())) {
                    before.add(terms.state(old.finding()));
                }
                String value = values.getOrDefault(finding.symptomId(), "");
                known.put(finding.symptomId(), new Known(finding, step.number(), by(step.event()), value, before));
            }
        }
        return List.copyOf(known.values());
    }

    private String by(CaseEvent event) {
        return event instanceof CaseEvent.Tested tested
                ? "test: " + terms.test(tested.testId())
                : event instanceof CaseEvent.Noted noted ? Terms.words(noted.source()) : "";
    }

    /** Readings in an event's words, by symptom: "3.26 V on 3.3 V ±5 %: in tolerance". Nothing else of the words. */
    Map<String, String> values(CaseEvent event) {
        Map<String, String> values = new LinkedHashMap<>();
        readings.of(Readings.found(event)).ifPresent(reading -> {
            for (Reading.Understood u : reading.understood()) {
                if (!u.note().isEmpty()) {
                    values.merge(u.finding().symptomId(), u.note(), (a, b) -> a + "; " + b);
                }
            }
        });
        return values;
    }

    /** Whether a meter's reading stands in a text. */
    boolean measured(String text) {
        return readings.of(text).stream()
                .flatMap(reading -> reading.understood().stream())
                .anyMatch(u -> u.source() == Reading.Source.MEASURED);
    }

    /** What speaks for ({@code sign} 1) or against (-1) a cause, strongest first, how the notes are worded last; may be empty. */
    String reasons(RankedCause cause, int sign) {
        Stream<String> findings = cause.evidence().stream()
                .filter(e -> sign * e.decibans() >= LEAST_DECIBANS)
                .sorted(Comparator.comparingDouble((Ranking.Evidence e) -> -sign * e.decibans())
                        .thenComparing(Ranking.Evidence::symptomId))
                .limit(REASONS)
                .map(e ->
                        terms.finding(e.symptomId(), terms.state(e.symptomId(), e.stateId())) + decibans(e.decibans()));
        Stream<String> wording = Stream.of(cause.wordingDecibans())
                .filter(w -> sign * w >= LEAST_DECIBANS)
                .map(w -> "the wording of the notes" + decibans(w));
        return Stream.concat(findings, wording).collect(Collectors.joining(", "));
    }

    private static String decibans(double decibans) {
        return String.format(Locale.ROOT, " (%+.0f dB)", decibans);
    }

    /**
     * A cause that would be in question were it not for one finding.
     *
     * @param causeId the cause
     * @param cause its name
     * @param share its share now
     * @param against the finding, in words
     */
    record Out(String causeId, String cause, double share, String against) {}

    /** Causes that a single finding made unlikely; those that would lead without it first. */
    List<Out> ruledOut(Ranking ranking) {
        record Candidate(double without, Out out) {}
        List<Candidate> candidates = new ArrayList<>();
        for (RankedCause cause : ranking.causes()) {
            Optional<Ranking.Evidence> worst = cause.evidence().stream()
                    .min(Comparator.comparingDouble(Ranking.Evidence::decibans)
                            .thenComparing(Ranking.Evidence::symptomId));
            if (cause.probability() < UNLIKELY && worst.isPresent()) {
                double without = without(cause, worst.get());
                if (without > ELSE_LIKELY) {
                    String against = terms.symptom(worst.get().symptomId()) + ": "
                            + terms.state(worst.get().symptomId(), worst.get().stateId());
                    candidates.add(
                            new Candidate(without, new Out(cause.id(), cause.name(), cause.probability(), against)));
                }
            }
        }
        candidates.sort(Comparator.comparingDouble((Candidate c) -> -c.without())
                .thenComparing(c -> c.out().cause()));
        return candidates.stream().limit(MOST_OUT).map(Candidate::out).toList();
    }

    /** Roughly the share a cause would have without one finding, the others unchanged. */
    private static double without(RankedCause cause, Ranking.Evidence finding) {
        double odds = cause.probability() / (1 - cause.probability()) * Math.pow(10, -finding.decibans() / 10);
        return odds / (1 + odds);
    }
}
