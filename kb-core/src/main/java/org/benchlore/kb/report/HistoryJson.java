package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.reading.Finding;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Cases as they stand, as JSON. */
final class HistoryJson {
    private HistoryJson() {}

    static ObjectNode history(CaseHistory history) {
        ObjectNode root = history(JsonNodes.root("case-state"), history);
        ArrayNode events = root.putArray("events");
        history.events().forEach(event -> {
            ObjectNode one = events.addObject();
            head(one, event);
            one.put("kind", kind(event));
            List<Finding> found = Course.findings(event);
            if (!found.isEmpty()) {
                ArrayNode findings = one.putArray("findings");
                found.forEach(f -> JsonNodes.finding(findings.addObject(), f));
            }
        });
        return root;
    }

    static ObjectNode history(CaseHistory history, List<CaseEvent> recorded) {
        ObjectNode root = history(history);
        ArrayNode withdrawals = root.putArray("withdrawals");
        for (CaseEvent event : recorded) {
            if (event instanceof CaseEvent.Withdrawn withdrawn) {
                ObjectNode one = withdrawals.addObject();
                head(one, event);
                if (withdrawn.targetEventId() != null) {
                    one.put("of", withdrawn.targetEventId());
                }
                if (!withdrawn.reason().isBlank()) {
                    one.put("reason", withdrawn.reason());
                }
            }
        }
        return root;
    }

    private static void head(ObjectNode node, CaseEvent event) {
        node.put("id", event.head().eventId());
        node.put("at", event.head().at().toString());
    }

    /** As events are named where they are exported, such as {@code fix-applied}. */
    private static String kind(CaseEvent event) {
        return event.getClass()
                .getSimpleName()
                .replaceAll("(?<=[a-z])(?=[A-Z])", "-")
                .toLowerCase(Locale.ROOT);
    }

    static ObjectNode histories(List<CaseHistory> histories) {
        ObjectNode root = JsonNodes.root("case-list");
        ArrayNode list = root.putArray("cases");
        histories.forEach(h -> history(list.addObject(), h));
        return root;
    }

    private static ObjectNode history(ObjectNode node, CaseHistory history) {
        node.put("id", history.id());
        node.put("opened", history.openedAt().toString());
        node.put("scope", history.scope().toString());
        node.put("complaint", history.complaint());
        if (!history.unit().isBlank()) {
            node.put("unit", history.unit());
        }
        node.put("origin", history.origin());
        ArrayNode findings = node.putArray("findings");
        history.findings().forEach(f -> JsonNodes.finding(findings.addObject(), f));
        if (history.causeId() != null) {
            node.put("cause", history.causeId());
        }
        if (history.certainty() != null) {
            node.put("certainty", JsonNodes.lower(history.certainty()));
        }
        if (history.outcome() != null) {
            node.put("outcome", history.outcome().id());
        }
        node.put("withdrawn", history.withdrawn());
        return node;
    }

    static ObjectNode outcome(CaseHistory history, String causeId, double before, double after) {
        ObjectNode root = JsonNodes.root("outcome");
        root.put("id", history.id());
        root.put("cause", causeId);
        root.put("before", before);
        root.put("after", after);
        if (history.outcome() != null) {
            root.put("outcome", history.outcome().id());
        }
        return root;
    }
}
