package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

class BenchRecordTest {
    private static final Knowledge KNOWLEDGE = BenchWorld.KNOWLEDGE;
    private static final List<String> CAUSES = List.of("lead-broken", "board-dead", "core-loose", "no-such-cause");

    private static <T> T any(List<T> of, Random random) {
        return of.get(random.nextInt(of.size()));
    }

    private static CaseWork work(Random random) {
        List<CaseWork.Trial> fixes = new ArrayList<>();
        List<CaseWork.Use> tests = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            fixes.add(new CaseWork.Trial(
                    any(List.of("replace-lead", "replace-board", "no-such-fix"), random),
                    any(CAUSES, random),
                    random.nextBoolean(),
                    DeviceScope.parse(any(List.of("player", "player/corvane", "recorder"), random)),
                    any(List.of("bench", "elsewhere"), random),
                    any(List.of(TriedFix.Result.HELPED, TriedFix.Result.CAME_BACK, TriedFix.Result.MADE_WORSE), random),
                    minutes(random)));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            tests.add(new CaseWork.Use(
                    any(List.of("measure-feed", "no-such-test"), random),
                    List.of(Finding.of("feed", any(List.of("present", "absent", "no-such-state"), random))),
                    Optional.of(any(CAUSES, random)).filter(c -> random.nextBoolean()),
                    minutes(random)));
        }
        return new CaseWork(fixes, tests);
    }

    private static Optional<Double> minutes(Random random) {
        return Optional.of(random.nextInt(8) / 3.0).filter(m -> random.nextBoolean());
    }

    /** Every answer that hangs on cases. */
    private static List<Object> answers(BenchRecord record) {
        List<Object> all = new ArrayList<>();
        for (String origin : List.of("", "bench")) {
            for (String scope : List.of("any", "player", "player/corvane")) {
                all.add(record.fixes(
                        DeviceScope.parse(scope), Optional.of(origin).filter(o -> !o.isEmpty())));
            }
        }
        KNOWLEDGE.tests().forEach(test -> all.addAll(List.of(record.testMinutes(test), record.errors(test))));
        KNOWLEDGE.fixes().forEach(fix -> all.addAll(List.of(record.fixMinutes(fix), record.worsens(fix))));
        KNOWLEDGE
                .causes()
                .forEach(cause -> cause.fixedBy().forEach(remedy -> all.add(record.works(cause.id(), remedy))));
        return all;
    }

    @Test
    void a_lesser_fix_seldom_cures_where_a_better_one_failed_and_a_better_one_most_of_the_rest() {
        Knowledge both = BenchWorld.with("""
causes:
  - {id: lead-broken, refines: true, fixed-by: [{fix: replace-lead, works: 0.9}, {fix: replace-board, works: 0.6}]}
""");
        BenchRecord record = BenchRecord.none(both);
        Cause lead = both.cause("lead-broken").orElseThrow();
        assertThat(record.works(lead, lead.fixedBy().get(1), List.of("replace-lead")))
                .as("0.8 that both work on one part: 1 - (0.8 · 0.1 + 0.2 · 0.1 · 0.4) / 0.1")
                .isCloseTo(0.12, within(1e-12));
        assertThat(record.works(lead, lead.fixedBy().get(0), List.of("replace-board")))
                .as("1 - (0.8 · 0.1 + 0.2 · 0.4 · 0.1) / 0.4")
                .isCloseTo(0.78, within(1e-12));
        assertThat(record.works(lead, lead.fixedBy().get(0), List.of())).isEqualTo(0.9);
        assertThat(record.tried(List.of("replace-lead", "replace-board")).get("lead-broken"))
                .isCloseTo(0.088, within(1e-12));
    }

    @Test
    void a_record_followed_case_by_case_is_the_one_made_anew_to_the_last_bit() {
        Random random = new Random(11);
        List<CaseWork> cases = new ArrayList<>();
        BenchRecord followed = BenchRecord.none(KNOWLEDGE);
        for (int step = 0; step < 400; step++) {
            if (!cases.isEmpty() && random.nextInt(3) == 0) {
                followed = followed.unlearn(List.of(cases.remove(random.nextInt(cases.size()))));
            } else {
                CaseWork work = work(random);
                cases.add(work);
                followed = followed.learn(List.of(work));
            }
            assertThat(answers(followed))
                    .isEqualTo(answers(BenchRecord.none(KNOWLEDGE).learn(cases)));
        }
        assertThat(answers(followed)).isNotEqualTo(answers(BenchRecord.none(KNOWLEDGE)));
        assertThat(answers(followed.unlearn(cases))).isEqualTo(answers(BenchRecord.none(KNOWLEDGE)));
    }

    @Test
    void what_was_never_learnt_cannot_be_taken_back() {
        CaseWork work = CaseWork.of(BenchWorld.history("a", "board-dead", "fix:replace-board", "fixed"));
        assertThatThrownBy(() -> BenchRecord.none(KNOWLEDGE).unlearn(List.of(work)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("never learnt");
    }
}
