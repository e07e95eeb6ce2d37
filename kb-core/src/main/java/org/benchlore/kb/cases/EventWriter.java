package org.benchlore.kb.cases;

import java.util.List;
import java.util.Map;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonGenerator;

/** Writes one event as a JSON object; {@link EventReader} reads it. The generator answers for the next writer. */
final class EventWriter implements CaseEvent.Fold<JsonGenerator> {
    private final JsonGenerator json;

    private EventWriter(JsonGenerator json) {
        this.json = json;
    }

    static void write(CaseEvent event, JsonGenerator json) {
        json.writeStartObject();
        json.writeStringProperty("schema", CaseJson.EVENT);
        json.writeStringProperty("id", event.head().eventId());
        json.writeStringProperty("case", event.head().caseId());
        json.writeStringProperty("at", event.head().at().toString());
        event.fold(new EventWriter(json)).writeEndObject();
    }

    private void kind(String kind) {
        json.writeStringProperty("kind", kind);
    }

    private void text(String key, String text) {
        if (!text.isEmpty()) {
            json.writeStringProperty(key, text);
        }
    }

    private void minutes(@Nullable Double minutes) {
        if (minutes != null) {
            json.writeNumberProperty("minutes", minutes.doubleValue());
        }
    }

    private void findings(List<Finding> findings) {
        if (findings.isEmpty()) {
            return;
        }
        json.writeName("findings").writeStartArray();
        for (Finding finding : findings) {
            json.writeStartObject().writeStringProperty("symptom", finding.symptomId());
            if (finding.certain()) {
                json.writeStringProperty("state", finding.state());
            } else {
                json.writeName("likelihoods").writeStartObject();
                for (Map.Entry<String, Double> e : finding.likelihoods().entrySet()) {
                    json.writeNumberProperty(e.getKey(), e.getValue().doubleValue());
                }
                json.writeEndObject();
            }
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    @Override
    public JsonGenerator opened(CaseEvent.Opened event) {
        kind("opened");
        json.writeStringProperty("scope", event.scope().toString());
        text("complaint", event.complaint());
        text("unit", event.unit());
        json.writeStringProperty("origin", event.origin());
        return json.writeBooleanProperty("workedOnBefore", event.workedOnBefore());
    }

    @Override
    public JsonGenerator noted(CaseEvent.Noted event) {
        kind("noted");
        text("text", event.text());
        json.writeStringProperty("source", JsonFields.kebab(event.source()));
        findings(event.findings());
        return json;
    }

    @Override
    public JsonGenerator tested(CaseEvent.Tested event) {
        kind("tested");
        json.writeStringProperty("test", event.testId());
        findings(event.findings());
        minutes(event.minutes());
        text("note", event.note());
        return json;
    }

    @Override
    public JsonGenerator concluded(CaseEvent.Concluded event) {
        kind("concluded");
        json.writeStringProperty("cause", event.causeId());
        json.writeStringProperty("certainty", JsonFields.kebab(event.certainty()));
        text("note", event.note());
        return json;
    }

    @Override
    public JsonGenerator fixApplied(CaseEvent.FixApplied event) {
        kind("fix-applied");
        json.writeStringProperty("fix", event.fixId());
        json.writeStringProperty("cause", event.causeId());
        minutes(event.minutes());
        text("note", event.note());
        return json;
    }

    @Override
    public JsonGenerator checked(CaseEvent.Checked event) {
        kind("checked");
        text("item", event.item());
        json.writeStringProperty("result", JsonFields.kebab(event.result()));
        Integer seen = event.seen();
        if (seen != null) {
            json.writeNumberProperty("seen", seen.intValue());
        }
        Double hours = event.hours();
        if (hours != null) {
            json.writeNumberProperty("hours", hours.doubleValue());
        }
        if (!event.conditions().isEmpty()) {
            json.writeName("conditions").writeStartArray();
            event.conditions().forEach(c -> json.writeString(JsonFields.kebab(c)));
            json.writeEndArray();
        }
        text("note", event.note());
        return json;
    }

    @Override
    public JsonGenerator weighed(CaseEvent.Weighed event) {
        kind("weighed");
        json.writeStringProperty("fix", event.fixId());
        Stakes stakes = event.stakes();
        if (stakes != null) {
            json.writeName("stakes").writeStartObject();
            json.writeNumberProperty("repaired", stakes.repaired());
            json.writeNumberProperty("leftAlone", stakes.leftAlone());
            json.writeNumberProperty("madeWorse", stakes.madeWorse());
            json.writeNumberProperty("forParts", stakes.forParts());
            json.writeNumberProperty("cost", stakes.cost());
            json.writeEndObject();
        }
        json.writeNumberProperty("success", event.success());
        json.writeNumberProperty("worse", event.worse());
        json.writeStringProperty("decided", JsonFields.kebab(event.decided()));
        text("note", event.note());
        return json;
    }

    @Override
    public JsonGenerator ended(CaseEvent.Ended event) {
        kind("ended");
        json.writeStringProperty("outcome", event.outcome().id());
        Integer afterDays = event.afterDays();
        if (afterDays != null) {
            json.writeNumberProperty("afterDays", afterDays.intValue());
        }
        text("note", event.note());
        return json;
    }

    @Override
    public JsonGenerator withdrawn(CaseEvent.Withdrawn event) {
        kind("withdrawn");
        String target = event.targetEventId();
        if (target != null) {
            json.writeStringProperty("target", target);
        }
        text("reason", event.reason());
        return json;
    }

    /** The replacement is of the same case, so it repeats neither the case nor the schema. */
    @Override
    public JsonGenerator corrected(CaseEvent.Corrected event) {
        kind("corrected");
        json.writeStringProperty("target", event.targetEventId());
        json.writeName("replacement").writeStartObject();
        json.writeStringProperty("id", event.replacement().head().eventId());
        json.writeStringProperty("at", event.replacement().head().at().toString());
        return event.replacement().fold(this).writeEndObject();
    }
}
