package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

class CodeRecordTest {
    private static final Knowledge WORLD = Worlds.random(4, 6, 5);
    private static final RankingModel MODEL = RankingModel.of(WORLD, RankingSettings.DEFAULT);
    private static final String CAUSE = WORLD.causes().iterator().next().id();

    private static CodeRecord always(String code) {
        return new CodeRecord(
                code, new TreeMap<>(Map.of(CAUSE, 30L)), new TreeMap<>(Map.of(CAUSE, 30L, "another", 5000L)));
    }

    private static double share(int codes) {
        List<CodeRecord> records =
                IntStream.range(0, codes).mapToObj(i -> always("X-" + i)).toList();
        RankingQuery query = RankingQuery.of(List.of(Finding.of("f0", "s1"))).withCodes(records);
        return MODEL.rank(query).causes().stream()
                .filter(cause -> cause.id().equals(CAUSE))
                .findFirst()
                .orElseThrow()
                .probability();
    }

    @Test
    void a_log_full_of_codes_ranks_and_leaves_doubt() {
        assertThat(share(1)).isGreaterThan(share(0));
        assertThat(share(400)).isGreaterThan(share(1)).isLessThan(1);
    }

    @Test
    void codes_of_one_unit_repeat_each_other() {
        CodeRecord one = always("X-1");
        double alone = CodeRecord.together(List.of(one)).applyAsDouble(CAUSE);
        double usual = 30.5 / 5031;
        assertThat(alone).isCloseTo(Math.log((30 + 3 * usual) / 33 / usual), within(1e-12));
        assertThat(CodeRecord.together(Collections.nCopies(3, one)).applyAsDouble(CAUSE))
                .isCloseTo(alone * (1 + 1 / 2.0 + 1 / 3.0), within(1e-9));
    }
}
