package org.benchlore.kb.cases;

import org.benchlore.kb.knowledge.KnowledgeBaseException;

/** An event id that is already recorded with another body; give the new event its own id, or record a correction. */
public final class EventConflictException extends KnowledgeBaseException {
    private static final long serialVersionUID = 1L;

    private final String eventId;

    EventConflictException(String where, CaseEvent recorded, CaseEvent given) {
        super(where + ": " + what(recorded, given) + "; " + REMEDY + "; nothing of the batch was stored", null);
        this.eventId = given.head().eventId();
    }

    static final String REMEDY = "give the event its own id, or record a correction of the first";

    static String what(CaseEvent recorded, CaseEvent given) {
        String elsewhere = recorded.head().caseId().equals(given.head().caseId())
                ? ""
                : ", in case '" + recorded.head().caseId() + "',";
        return "event id '" + given.head().eventId() + "' of case '"
                + given.head().caseId() + "' is already recorded" + elsewhere + " and says something else";
    }

    /** The id that is taken. */
    public String eventId() {
        return eventId;
    }
}
