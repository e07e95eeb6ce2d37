package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.planning.UnitQueries;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;

/**
 * A case step by step: its events numbered from 1, and what was known after each one that brought findings.
 *
 * @param steps in order
 * @param kinds ids of the classes that the unit is known or told to be of
 * @param model ranks what was known
 */
record Course(List<Step> steps, List<String> kinds, RankingModel model) {
    /** Curves that a reader can still tell apart. */
    private static final int MOST_CURVES = 5;

    /**
     * One event.
     *
     * @param number from 1
     * @param event the event
     * @param findings what it brought; may be empty
     * @param query all that was known by then, as {@link UnitQueries} puts it together; empty if this event told nothing
     *     new of the fault, as after a fix that nothing says failed, or if there is no finding yet
     * @param done ids of the fixes done by then
     */
    record Step(int number, CaseEvent event, List<Finding> findings, Optional<RankingQuery> query, List<String> done) {}

    Course {
        steps = List.copyOf(steps);
        kinds = List.copyOf(kinds);
    }

    /** Asks again, with one model, what was known after each event that told something new of the fault. */
    static Course of(CaseHistory history, RankingModel model, UnitQueries queries, Readings readings) {
        List<Step> steps = new ArrayList<>();
        List<String> done = new ArrayList<>();
        RankingQuery known = new RankingQuery(List.of(), history.scope(), true);
        List<String> kinds = UnitQueries.kinds(history.scope(), List.of());
        for (CaseEvent event : history.events()) {
            if (event instanceof CaseEvent.FixApplied fix) {
                done.add(fix.fixId());
            }
            int number = steps.size() + 1;
            RankingQuery query = queries.of(history.upTo(number), readings::of);
            Optional<RankingQuery> news =
                    query.findings().isEmpty() || query.equals(known) ? Optional.empty() : Optional.of(query);
            steps.add(new Step(number, event, findings(event), news, List.copyOf(done)));
            known = query;
            kinds = query.kinds();
        }
        return new Course(steps, kinds, model);
    }

    static List<Finding> findings(CaseEvent event) {
        return event instanceof CaseEvent.Noted noted
                ? noted.findings()
                : event instanceof CaseEvent.Tested tested ? tested.findings() : List.of();
    }

    /** The latest finding of each symptom seen after the last fix; empty without one. */
    List<Finding> sinceWork() {
        Map<String, Finding> since = new LinkedHashMap<>();
        boolean fixed = false;
        for (Step step : steps) {
            if (step.event() instanceof CaseEvent.FixApplied) {
                since.clear();
                fixed = true;
            } else if (fixed) {
                step.findings().forEach(finding -> since.put(finding.symptomId(), finding));
            }
        }
        return List.copyOf(since.values());
    }

    /** The ranking for everything known; empty if nothing could be ranked. */
    Optional<Ranking> last() {
        return steps.stream()
                .flatMap(s -> s.query().stream())
                .reduce((a, b) -> b)
                .map(model::rank);
    }

    /** Events of one kind, with their numbers. */
    <E extends CaseEvent> Map<Integer, E> all(Class<E> kind) {
        Map<Integer, E> all = new LinkedHashMap<>();
        steps.stream().filter(s -> kind.isInstance(s.event())).forEach(s -> all.put(s.number(), kind.cast(s.event())));
        return all;
    }

    /**
     * The shares of those that lead now, of the cause concluded, and of those that led before; at most five.
     *
     * @param causeId the cause concluded, or empty
     */
    Optional<Sheet.Ranks> ranks(String causeId) {
        List<Step> ranked = steps.stream().filter(s -> s.query().isPresent()).toList();
        if (ranked.isEmpty()) {
            return Optional.empty();
        }
        List<Ranking> rankings =
                ranked.stream().map(s -> model.rank(s.query().orElseThrow())).toList();
        Ranking last = rankings.get(rankings.size() - 1);
        Set<String> ids = new LinkedHashSet<>();
        last.causes().stream().limit(2).forEach(c -> ids.add(c.id()));
        if (find(last, causeId).isPresent()) {
            ids.add(causeId);
        }
        rankings.forEach(r -> r.causes().stream().limit(1).forEach(c -> add(ids, c.id())));
        last.causes().stream().limit(MOST_CURVES).forEach(c -> add(ids, c.id()));
        return Optional.of(new Sheet.Ranks(
                ranked.stream().map(Step::number).toList(),
                last.causes().stream()
                        .filter(c -> ids.contains(c.id()))
                        .map(c -> new Sheet.Curve(
                                c.name(),
                                rankings.stream()
                                        .map(r -> find(r, c.id())
                                                .map(RankedCause::probability)
                                                .orElse(0.0))
                                        .toList()))
                        .toList()));
    }

    private static void add(Set<String> ids, String id) {
        if (ids.size() < MOST_CURVES) {
            ids.add(id);
        }
    }

    static Optional<RankedCause> find(Ranking ranking, String causeId) {
        return ranking.causes().stream().filter(c -> c.id().equals(causeId)).findFirst();
    }

    /** The events along time. */
    Sheet.Events events() {
        Lane lane = new Lane();
        return new Sheet.Events(
                Lane.NAMES,
                steps.stream()
                        .map(s -> new Sheet.Mark(
                                s.number(),
                                s.event().fold(lane),
                                s.event().head().at()))
                        .toList());
    }

    /** Which line of the picture an event stands on. */
    private static final class Lane implements CaseEvent.Fold<Integer> {
        static final List<String> NAMES =
                List.of("came in", "noted", "tested", "concluded", "weighed", "fixed", "checked", "ended");

        @Override
        public Integer opened(CaseEvent.Opened event) {
            return 0;
        }

        @Override
        public Integer noted(CaseEvent.Noted event) {
            return 1;
        }

        @Override
        public Integer tested(CaseEvent.Tested event) {
            return 2;
        }

        @Override
        public Integer concluded(CaseEvent.Concluded event) {
            return 3;
        }

        @Override
        public Integer weighed(CaseEvent.Weighed event) {
            return 4;
        }

        @Override
        public Integer fixApplied(CaseEvent.FixApplied event) {
            return 5;
        }

        @Override
        public Integer checked(CaseEvent.Checked event) {
            return 6;
        }

        @Override
        public Integer ended(CaseEvent.Ended event) {
            return 7;
        }

        @Override
        public Integer withdrawn(CaseEvent.Withdrawn event) {
            return 1;
        }

        @Override
        public Integer corrected(CaseEvent.Corrected event) {
            return 1;
        }
    }
}
