package org.benchlore.kb.cases;

import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;

/** Reads one event from a JSON object that {@link EventWriter} wrote, or a person. */
final class EventReader {
    private EventReader() {}

    /** @param fields the whole line; its {@code schema} was read by the caller */
    static CaseEvent read(JsonFields fields) {
        CaseEvent event = fields.checked(
                () -> event(fields, new Head(fields.text("id"), fields.text("case"), fields.instant("at"))));
        fields.done();
        return event;
    }

    private static CaseEvent event(JsonFields fields, Head head) {
        String kind = fields.text("kind");
        return switch (kind) {
            case "opened" ->
                new CaseEvent.Opened(
                        head,
                        DeviceScope.parse(fields.text("scope", "any")),
                        fields.text("complaint", ""),
                        fields.text("unit", ""),
                        fields.text("origin", CaseHistory.OWN),
                        fields.flag("workedOnBefore"));
            case "noted" ->
                new CaseEvent.Noted(
                        head,
                        fields.text("text", ""),
                        fields.choice("source", Reading.Source.values()),
                        fields.findings());
            case "tested" -> tested(fields, head);
            case "concluded" -> concluded(fields, head);
            case "fix-applied" -> fixApplied(fields, head);
            case "checked" -> checked(fields, head);
            case "weighed" ->
                new CaseEvent.Weighed(
                        head,
                        fields.text("fix"),
                        stakes(fields.object("stakes")),
                        fields.requiredNumber("success"),
                        fields.requiredNumber("worse"),
                        fields.choice("decided", Decision.values()),
                        fields.text("note", ""));
            case "ended" -> ended(fields, head);
            case "withdrawn" -> new CaseEvent.Withdrawn(head, fields.optionalText("target"), fields.text("reason", ""));
            case "corrected" ->
                new CaseEvent.Corrected(head, fields.text("target"), replacement(fields, head.caseId()));
            default ->
                throw new BadLineException(
                        "event is of the unknown kind '" + JsonFields.shown(kind) + "'",
                        "use one of: opened, noted, tested, concluded, fix-applied, checked, weighed, ended, withdrawn, corrected;"
                                + " if a newer version wrote it, update",
                        null);
        };
    }

    private static @Nullable Stakes stakes(@Nullable JsonFields fields) {
        if (fields == null) {
            return null;
        }
        Stakes stakes = fields.checked(() -> new Stakes(
                fields.requiredNumber("repaired"),
                fields.requiredNumber("leftAlone"),
                fields.requiredNumber("madeWorse"),
                fields.requiredNumber("forParts"),
                fields.requiredNumber("cost")));
        fields.done();
        return stakes;
    }

    private static CaseEvent replacement(JsonFields fields, String caseId) {
        JsonFields inner = fields.object("replacement");
        if (inner == null) {
            throw new BadLineException(
                    "event corrects without a 'replacement'", "add the event as it should have been", null);
        }
        CaseEvent event = inner.checked(() -> event(inner, new Head(inner.text("id"), caseId, inner.instant("at"))));
        inner.done();
        return event;
    }

    // The same keys in an event and in a whole case:

    static CaseEvent tested(JsonFields fields, Head head) {
        return new CaseEvent.Tested(
                head, fields.text("test"), fields.findings(), fields.number("minutes"), fields.text("note", ""));
    }

    static CaseEvent concluded(JsonFields fields, Head head) {
        return new CaseEvent.Concluded(
                head, fields.text("cause"), fields.choice("certainty", Certainty.values()), fields.text("note", ""));
    }

    static CaseEvent fixApplied(JsonFields fields, Head head) {
        return new CaseEvent.FixApplied(
                head, fields.text("fix"), fields.text("cause"), fields.number("minutes"), fields.text("note", ""));
    }

    static CaseEvent checked(JsonFields fields, Head head) {
        return new CaseEvent.Checked(
                head,
                fields.text("item", ""),
                fields.choice("result", CaseEvent.Checked.Result.values()),
                fields.whole("seen"),
                fields.number("hours"),
                fields.choices("conditions", Reading.Condition.values()),
                fields.text("note", ""));
    }

    static CaseEvent ended(JsonFields fields, Head head) {
        return new CaseEvent.Ended(
                head, fields.choice("outcome", Outcome.values()), fields.whole("afterDays"), fields.text("note", ""));
    }
}
