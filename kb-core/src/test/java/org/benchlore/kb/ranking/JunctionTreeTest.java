package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The posterior beside a general inference library's: Weka 3.8.6, junction tree. */
class JunctionTreeTest {
    /** Weka keeps its tables as doubles and multiplies them without logarithms; twelve findings lose a few digits. */
    private static final double PEER_TOLERANCE = 1e-9;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void random_networks_have_the_same_posterior(long seed) {
        Random random = new Random(seed);
        Knowledge knowledge = Worlds.random(seed, 2 + random.nextInt(40), 1 + random.nextInt(12));
        RankingModel model = RankingModel.of(knowledge, RankingSettings.DEFAULT.doubting(0))
                .learn(Worlds.lessons(random, knowledge, 60));
        List<Finding> findings = Worlds.findings(random, knowledge);

        double[] ours = model.probabilities(RankingQuery.of(findings));
        double[] theirs = new JunctionTree(model, knowledge, findings).posterior();

        assertThat(ours).hasSameSizeAs(theirs);
        for (int c = 0; c < ours.length; c++) {
            assertThat(ours[c]).as("cause %d", c).isCloseTo(theirs[c], within(PEER_TOLERANCE));
        }
    }
}
