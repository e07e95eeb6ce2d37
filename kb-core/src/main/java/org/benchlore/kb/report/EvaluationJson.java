package org.benchlore.kb.report;

import org.benchlore.kb.ranking.Estimate;
import org.benchlore.kb.ranking.Evaluation;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** How well the ranking would have done, as JSON. */
final class EvaluationJson {
    private EvaluationJson() {}

    static ObjectNode evaluation(Evaluation evaluation) {
        ObjectNode root = JsonNodes.root("evaluation");
        root.put("scored", evaluation.scored());
        root.put("learnt", evaluation.learnt());
        root.put("tooFew", evaluation.tooFew());
        root.put("tells", evaluation.tells());
        figures(root.putObject("baseline"), evaluation.baseline());
        figures(root.putObject("packs"), evaluation.packs());
        figures(root.putObject("cases"), evaluation.cases());
        figures(root.putObject("both"), evaluation.both());
        estimate(root, "gain", evaluation.gain());
        ArrayNode bins = root.putArray("calibration");
        for (Evaluation.Bin b : evaluation.calibration()) {
            ObjectNode node = bins.addObject();
            node.put("from", b.from());
            node.put("to", b.to());
            node.put("cases", b.cases());
            node.put("said", b.said());
            estimate(node, "right", b.right());
        }
        ArrayNode curve = root.putArray("curve");
        for (Evaluation.Stretch s : evaluation.curve()) {
            ObjectNode node = curve.addObject();
            node.put("from", s.from());
            node.put("to", s.to());
            node.put("packs", s.packs());
            node.put("cases", s.cases());
            node.put("both", s.both());
            node.put("top1", s.top1());
        }
        ArrayNode reviews = root.putArray("reviews");
        for (Evaluation.Review r : evaluation.reviews()) {
            ObjectNode node = reviews.addObject();
            node.put("cause", r.causeId());
            if (!r.symptomId().isEmpty()) {
                node.put("symptom", r.symptomId());
                node.put("state", r.stateId());
                node.put("linked", r.linked());
            }
            node.put("opinion", r.opinion());
            node.put("experience", r.experience());
            node.put("cases", r.cases());
            node.put("decibans", r.decibans());
        }
        return root;
    }

    private static void figures(ObjectNode node, Evaluation.Figures figures) {
        estimate(node, "top1", figures.top1());
        estimate(node, "top3", figures.top3());
        estimate(node, "logLoss", figures.logLoss());
        estimate(node, "brier", figures.brier());
        node.put("ece", figures.calibrationError());
    }

    /** Ends of an interval that nothing bounds are left out: JSON has no infinity. */
    private static void estimate(ObjectNode parent, String name, Estimate estimate) {
        ObjectNode node = parent.putObject(name);
        node.put("value", estimate.value());
        if (Double.isFinite(estimate.low())) {
            node.put("low", estimate.low());
            node.put("high", estimate.high());
        }
    }
}
