package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;

/** Ranks again with each single finding that could still be made. */
final class Turns {
    /** A finding less likely than this is no answer to "what would change this". */
    private static final double LEAST_CHANCE = 0.01;

    private final RankingModel model;
    private final Catalogue catalogue;
    private final Outset outset;

    Turns(RankingModel model, Catalogue catalogue, Outset outset) {
        this.model = model;
        this.catalogue = catalogue;
        this.outset = outset;
    }

    List<Turn> strongest(RankingQuery query, int limit) {
        double[] now = model.probabilities(outset, query);
        int leader = first(now);
        List<Turn> turns = new ArrayList<>();
        for (int s = 0; s < catalogue.symptoms(); s++) {
            Symptom symptom = catalogue.symptom(s);
            if (query.findings().stream().anyMatch(f -> f.symptomId().equals(symptom.id()))) {
                continue;
            }
            ScopeView.Column column = outset.scope().column(s);
            for (int x = 0; x < column.p.length; x++) {
                double chance = 0;
                for (int c = 0; c < now.length; c++) {
                    chance += now[c] * column.p[x][c];
                }
                // A finding lowers the leader only where the leader shows it less than the rest do.
                if (chance >= LEAST_CHANCE && column.p[x][leader] < chance) {
                    turns.add(turn(query, symptom, symptom.states().get(x), chance, now, leader));
                }
            }
        }
        turns.sort(Comparator.comparing(Turn::overturns)
                .reversed()
                .thenComparingDouble(Turn::after)
                .thenComparing(Turn::symptomId)
                .thenComparing(Turn::stateId));
        return List.copyOf(turns.subList(0, Math.min(limit, turns.size())));
    }

    private Turn turn(RankingQuery query, Symptom symptom, State state, double chance, double[] now, int leader) {
        List<Finding> findings = new ArrayList<>(query.findings());
        findings.add(Finding.of(symptom.id(), state.id()));
        double[] then = model.probabilities(outset, query.with(findings));
        int next = first(then);
        return new Turn(symptom.id(), state.id(), chance, id(leader), now[leader], then[leader], id(next), then[next]);
    }

    private String id(int c) {
        return c == catalogue.unlisted()
                ? RankingModel.UNLISTED
                : catalogue.cause(c).id();
    }

    private static int first(double[] p) {
        int first = 0;
        for (int c = 1; c < p.length; c++) {
            first = p[c] > p[first] ? c : first;
        }
        return first;
    }
}
