package org.benchlore.kb.cases;

/** An event that no store takes as it is. The message reads "what; remedy". */
final class UnfitEventException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    UnfitEventException(String message) {
        super(message);
    }

    /** @throws UnfitEventException if it names a unit by a tag that is too long */
    static void requireUnit(CaseEvent event) {
        CaseEvent told = event instanceof CaseEvent.Corrected corrected ? corrected.replacement() : event;
        if (told instanceof CaseEvent.Opened opened && opened.unit().length() > CaseEvent.Opened.MAX_UNIT) {
            throw new UnfitEventException("unit of case '" + event.head().caseId() + "' is "
                    + opened.unit().length() + " characters long; give its serial number or tag in at most "
                    + CaseEvent.Opened.MAX_UNIT);
        }
    }
}
