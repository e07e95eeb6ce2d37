package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
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
            one.put("id", event.head().eventId());
            one.put("at", event.head().at().toString());
            one.put("kind", kind(event));
        });
        return root;
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
