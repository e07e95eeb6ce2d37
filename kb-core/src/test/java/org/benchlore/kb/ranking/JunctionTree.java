package org.benchlore.kb.ranking;

import java.util.List;
import java.util.stream.IntStream;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import weka.classifiers.bayes.net.EditableBayesNet;
import weka.classifiers.bayes.net.MarginCalculator;

/**
 * A model's prior and tables as a Bayesian network in Weka 3.8.6 (GPL, test scope only), asked by its junction tree: the
 * cause is a node, each finding of a query a child of it, a soft one with an observed child of its own (Pearl 1988, section
 * 2.2.2, virtual evidence).
 */
final class JunctionTree {
    private static final int CAUSE = 0;

    private final MarginCalculator tree = new MarginCalculator();
    private final int[] observedNodes;
    private final int[] observedStates;

    /** The network for the symptoms of a query; answers nothing yet. */
    JunctionTree(RankingModel model, Knowledge knowledge, List<Finding> findings) {
        try {
            EditableBayesNet net = new EditableBayesNet(true);
            double[] prior = model.probabilities(RankingQuery.of(List.of()));
            net.addNode("cause", prior.length);
            net.setDistribution(CAUSE, new double[][] {prior});
            observedNodes = new int[findings.size()];
            observedStates = new int[findings.size()];
            int nodes = 1;
            for (int i = 0; i < findings.size(); i++) {
                Finding finding = findings.get(i);
                StateTable table = model.states(finding.symptomId(), DeviceScope.ANY);
                List<String> states = knowledge.symptom(finding.symptomId()).orElseThrow().states().stream()
                        .map(s -> s.id())
                        .toList();
                int symptom = nodes++;
                net.addNode(finding.symptomId(), states.size());
                net.addArc(CAUSE, symptom);
                net.setDistribution(
                        symptom,
                        IntStream.range(0, prior.length)
                                .mapToObj(c -> IntStream.range(0, states.size())
                                        .mapToDouble(x -> table.given(x, c))
                                        .toArray())
                                .toArray(double[][]::new));
                observedNodes[i] = symptom;
                observedStates[i] = states.indexOf(finding.state());
                if (!finding.certain()) {
                    int report = nodes++;
                    net.addNode("report of " + finding.symptomId(), 2);
                    net.addArc(symptom, report);
                    net.setDistribution(
                            report,
                            states.stream()
                                    .map(s -> finding.likelihoods().getOrDefault(s, 0.0))
                                    .map(l -> new double[] {l / 2, 1 - l / 2})
                                    .toArray(double[][]::new));
                    observedNodes[i] = report;
                    observedStates[i] = 0;
                }
            }
            tree.calcMargins(net);
        } catch (Exception e) { // Weka declares no narrower one
            throw new IllegalStateException(e);
        }
    }

    /** Posterior of the causes in the order of {@link RankingModel#probabilities}. */
    double[] posterior() {
        try {
            for (int i = 0; i < observedNodes.length; i++) {
                tree.setEvidence(observedNodes[i], observedStates[i]);
            }
            return tree.getMargin(CAUSE);
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }
}
