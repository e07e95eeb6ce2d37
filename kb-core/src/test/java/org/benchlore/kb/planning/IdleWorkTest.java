package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.junit.jupiter.api.Test;

/** Tests and fixes for which the unit lacks a part. */
class IdleWorkTest {
    private static final Knowledge KNOWLEDGE = BenchWorld.with("""
tests:
  - {id: measure-feed, refines: true, needs: socket}
fixes:
  - {id: replace-lead, refines: true, needs: socket}
devices:
  - {scope: player, name: player, called: [player], has: [socket]}
  - {scope: candle, name: candle, called: [candle], has: [wick]}
""");
    private static final TestPlanner PLANNER =
            new TestPlanner(KNOWLEDGE, RankingModel.of(KNOWLEDGE, RankingSettings.DEFAULT.doubting(0)));
    private static final RankingQuery DARK = BenchWorld.query("lamp=dark");

    @Test
    void what_the_unit_has_no_part_for_is_not_proposed() {
        RankingQuery candle = DARK.ofKinds(List.of("candle"));
        NextStep next = PLANNER.next(candle, BenchConditions.DEFAULT);
        assertThat(next.tests()).isEmpty();
        assertThat(next.withheld()).isEmpty();
        assertThat(PLANNER.plan(candle, BenchConditions.DEFAULT).order())
                .extracting(NextStep.FixChoice::fixId)
                .doesNotContain("replace-lead")
                .contains("replace-board");
    }

    @Test
    void a_unit_that_has_it_or_of_which_nothing_is_known_is_planned_as_ever() {
        NextStep next = PLANNER.next(DARK, BenchConditions.DEFAULT);
        Plan plan = PLANNER.plan(DARK, BenchConditions.DEFAULT);
        assertThat(next.tests()).extracting(t -> t.test().id()).containsExactly("measure-feed");
        for (List<String> kinds : List.of(List.of("player"), List.of("thing"), List.of("candle", "player"))) {
            assertThat(PLANNER.next(DARK.ofKinds(kinds), BenchConditions.DEFAULT))
                    .as("%s", kinds)
                    .isEqualTo(next);
            assertThat(PLANNER.plan(DARK.ofKinds(kinds), BenchConditions.DEFAULT))
                    .isEqualTo(plan);
        }
    }
}
