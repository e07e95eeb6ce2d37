package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;

class TurnsTest {
    @Test
    void no_single_finding_does_more_than_the_first_turn() {
        Knowledge knowledge = Worlds.random(9, 8, 6);
        Random random = new Random(9);
        RankingModel model =
                RankingModel.of(knowledge, RankingSettings.DEFAULT).learn(Worlds.lessons(random, knowledge, 30));
        RankingQuery query = RankingQuery.of(List.of(Finding.of("f0", "s1")));
        List<Turn> turns = model.turns(query, 100);

        assertThat(turns).isNotEmpty();
        double least = 1;
        double leastOverturning = 1;
        for (Symptom symptom : knowledge.symptoms()) {
            for (int x = 0; x < symptom.states().size() && !symptom.id().equals("f0"); x++) {
                List<Finding> more = new ArrayList<>(query.findings());
                more.add(Finding.of(symptom.id(), "s" + x));
                Ranking then = model.rank(RankingQuery.of(more));
                double after = then.unlisted().probability();
                String first = RankingModel.UNLISTED;
                double best = after;
                for (Ranking.RankedCause c : then.causes()) {
                    after = c.id().equals(turns.get(0).leaderId()) ? c.probability() : after;
                    first = c.probability() > best ? c.id() : first;
                    best = Math.max(best, c.probability());
                }
                least = Math.min(least, after);
                if (!first.equals(turns.get(0).leaderId())) {
                    leastOverturning = Math.min(leastOverturning, after);
                }
            }
        }
        boolean overturns = turns.get(0).overturns();
        assertThat(turns.get(0).after()).isCloseTo(overturns ? leastOverturning : least, within(1e-12));
        assertThat(turns).allMatch(t -> t.after() < t.before() && t.chance() > 0 && t.chance() < 1);
        assertThat(turns).noneMatch(t -> t.symptomId().equals("f0"));
        assertThat(model.turns(query, 2)).isEqualTo(turns.subList(0, 2));
    }
}
