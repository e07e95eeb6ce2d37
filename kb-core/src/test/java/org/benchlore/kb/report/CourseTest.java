package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.UnitQueries;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading.Source;
import org.junit.jupiter.api.Test;

class CourseTest {
    private static final Knowledge KNOWLEDGE = SheetFixture.knowledge("front lamp");
    private static final Reader READER = Reader.of(KNOWLEDGE);
    private static final RankingModel MODEL = RankingModel.of(KNOWLEDGE, RankingSettings.DEFAULT);

    /** Every unknown code stands in the cases of one cause. */
    private static final UnitQueries QUERIES = new UnitQueries(
            KNOWLEDGE,
            MODEL,
            BenchRecord.none(KNOWLEDGE),
            (codes, scope, except) -> codes.stream()
                    .map(code -> new CodeRecord(
                            code, new TreeMap<>(Map.of("fuse-open", 3L)), new TreeMap<>(Map.of("fuse-open", 4L))))
                    .toList());

    private final List<CaseEvent> events = new ArrayList<>();

    private CaseEvent.Head head() {
        int step = events.size();
        return new CaseEvent.Head(
                "e" + step, "job-1", Instant.parse("2026-11-25T10:00:00Z").plusSeconds(600L * step));
    }

    private Course course() {
        CaseHistory history = CaseHistory.fold(events).orElseThrow();
        return Course.of(history, MODEL, QUERIES, new Readings(READER, history));
    }

    private RankingQuery known() {
        CaseHistory history = CaseHistory.fold(events).orElseThrow();
        return QUERIES.of(history, text -> Optional.of(READER.read(text, history.scope())));
    }

    private void noted(String words, String symptom, String state) {
        events.add(new CaseEvent.Noted(head(), words, Source.SEEN, List.of(Finding.of(symptom, state))));
    }

    @Test
    void the_last_ranking_is_that_of_all_that_is_known_of_the_case() {
        events.add(new CaseEvent.Opened(
                head(), DeviceScope.parse("player/corvane"), "smells of tar", "", CaseHistory.OWN, false));
        noted("", "lamp", "dark");
        assertThat(course().last()).contains(MODEL.rank(known()));

        noted("2026-11-24 11:30:00 K-9\n", "log-trip", "recurring");
        assertThat(known().codes()).isNotEmpty();
        assertThat(course().last()).contains(MODEL.rank(known()));

        events.add(new CaseEvent.FixApplied(head(), "new-fuse", "fuse-open", null, ""));
        noted("", "rail-12v", "absent");
        assertThat(course().last()).as("nothing says yet that the fix failed").contains(MODEL.rank(known()));
        assertThat(known().findings()).extracting(Finding::symptomId).doesNotContain("rail-12v");

        events.add(new CaseEvent.Ended(head(), Outcome.NOT_FIXED, null, ""));
        assertThat(known().tried()).containsKey("fuse-open");
        assertThat(course().last()).contains(MODEL.rank(known()));
        assertThat(course().steps())
                .extracting(step -> step.query().isPresent())
                .containsExactly(false, true, true, false, false, true);
    }
}
