package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.planning.Worth;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What to do with a unit, as JSON. */
final class DecisionJson {
    private DecisionJson() {}

    static ObjectNode next(NextStep next) {
        return JsonNodes.decision("next", next);
    }

    static ObjectNode plan(Plan plan) {
        ObjectNode root = JsonNodes.decision("plan", plan);
        step(root.get("root"));
        return root;
    }

    /** Leaves out what a step of its kind has none of: an ending takes no minutes, and a test no parts. */
    private static void step(JsonNode step) {
        if (step instanceof ObjectNode node) {
            String action = node.get("action").asString();
            if (!action.equals(JsonNodes.lower(Plan.Action.FIX))) {
                node.remove("priceMinutes");
            }
            if (!node.has("id")) {
                node.remove(List.of("minutes", "openingMinutes"));
            }
            node.get("branches").forEach(branch -> step(branch.get("step")));
        }
    }

    static ObjectNode worth(Worth worth) {
        return JsonNodes.decision("worth", worth);
    }

    static ObjectNode fixes(List<FixRecord> fixes) {
        ObjectNode root = JsonNodes.root("fixes");
        root.set("fixes", JsonNodes.tree(fixes));
        return root;
    }

    static ObjectNode proof(ProofPlan proof) {
        ObjectNode root = JsonNodes.root("proof");
        ProofRecord known = proof.known();
        known.fixId().ifPresent(id -> root.put("fixId", id));
        root.put("failed", known.failed());
        if (known.seen() > 0 || known.seenHours() > 0) {
            root.put("seen", known.seen());
            root.put("seenHours", known.seenHours());
        }
        JsonNodes.conditions(root, known.conditions());
        root.put("cleanHours", known.cleanHours());
        root.put("otherHours", known.otherHours());
        root.put("confidence", proof.confidence());
        root.put("priorNotCured", proof.priorNotCured());
        proof.run().ifPresent(run -> {
            root.put("hours", run.hours());
            root.put("hoursAtMeanRate", run.hoursAtMeanRate());
            root.put("stillThere", run.stillThere());
            root.put("hoursLeft", run.hoursLeft());
        });
        ArrayNode checklist = root.putArray("checklist");
        for (ProofPlan.Item item : proof.checklist()) {
            ObjectNode node = checklist.addObject();
            node.put("step", item.step());
            node.put("ofFix", item.ofFix());
            item.result().ifPresent(r -> node.put("result", JsonNodes.lower(r)));
            node.put("failedBefore", item.failedBefore());
            node.put("hours", item.hours());
            JsonNodes.conditions(node, item.conditions());
        }
        return root;
    }
}
