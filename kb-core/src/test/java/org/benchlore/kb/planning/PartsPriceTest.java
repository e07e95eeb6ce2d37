package org.benchlore.kb.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.junit.jupiter.api.Test;

/** What the parts of a fix cost, in minutes that the money would buy. */
class PartsPriceTest {
    private static final RankingQuery DARK = BenchWorld.query("lamp=dark", "feed=present");

    private static TestPlanner priced(int price) {
        Knowledge knowledge = BenchWorld.with("""
fixes:
  - {id: replace-board, refines: true, parts: [board], price: %d}
""".formatted(price));
        return new TestPlanner(knowledge, RankingModel.of(knowledge, RankingSettings.DEFAULT.doubting(0)));
    }

    private static NextStep.FixChoice board(List<NextStep.FixChoice> order) {
        return order.stream()
                .filter(f -> f.fixId().equals("replace-board"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void it_counts_as_cost_and_is_told_apart_from_the_minutes() {
        Plan free = priced(0).plan(DARK, BenchConditions.DEFAULT);
        Plan dear = priced(30).plan(DARK, BenchConditions.DEFAULT);
        assertThat(board(free.order()).priceMinutes()).isZero();
        assertThat(board(dear.order()).priceMinutes()).isEqualTo(30);
        assertThat(board(dear.order()).minutes()).isEqualTo(60);
        assertThat(free.root().id()).isEqualTo("replace-board");
        assertThat(dear.root().priceMinutes()).isEqualTo(30);
        assertThat(dear.minutes()).isCloseTo(free.minutes() + 30, within(1e-9));
        NextStep next = priced(30).next(DARK, BenchConditions.DEFAULT);
        assertThat(next.minutesUntested())
                .isCloseTo(priced(0).next(DARK, BenchConditions.DEFAULT).minutesUntested() + 30, within(1e-9));
        assertThat(next.repair().orElseThrow().priceMinutes()).isEqualTo(30);
    }

    @Test
    void a_dear_part_waits_for_the_cheap_one() {
        RankingQuery either = BenchWorld.query("lamp=dark");
        assertThat(priced(0).plan(either, BenchConditions.DEFAULT).order())
                .extracting(NextStep.FixChoice::fixId)
                .startsWith("replace-lead", "replace-board");
        assertThat(priced(400).plan(either, BenchConditions.DEFAULT).order())
                .extracting(NextStep.FixChoice::fixId)
                .doesNotContain("replace-board");
    }
}
