package org.benchlore.kb.cases;

/** An event that no store takes as it is. The message reads "what; remedy". */
final class UnfitEventException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    UnfitEventException(String message) {
        super(message);
    }

    /** @throws UnfitEventException if it names a unit by a tag or a device scope that is too long */
    static void requireUnit(CaseEvent event) {
        CaseEvent told = event instanceof CaseEvent.Corrected corrected ? corrected.replacement() : event;
        if (told instanceof CaseEvent.Opened opened) {
            require(opened, "unit", opened.unit(), "give its serial number or tag");
            require(opened, "device scope", opened.scope().toString(), "write class/family/model/revision");
        }
    }

    private static void require(CaseEvent.Opened opened, String what, String text, String remedy) {
        if (text.length() > CaseEvent.Opened.MAX_UNIT) {
            throw new UnfitEventException(what + " of case '" + opened.head().caseId() + "' is " + text.length()
                    + " characters long; " + remedy + " in at most " + CaseEvent.Opened.MAX_UNIT);
        }
    }
}
