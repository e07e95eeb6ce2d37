package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.reading.Finding;

/** An event in a sentence, for the bench's own eyes: it may hold people's own words. */
record EventWords(Terms terms) implements CaseEvent.Fold<String> {
    @Override
    public String opened(CaseEvent.Opened event) {
        return "Came in";
    }

    @Override
    public String noted(CaseEvent.Noted event) {
        String read = read(event.findings());
        return event.text().isBlank()
                ? "Noted" + read
                : "Noted (" + Terms.words(event.source()) + "): “"
                        + event.text().strip() + "”" + read;
    }

    @Override
    public String tested(CaseEvent.Tested event) {
        return "Tested: " + terms.test(event.testId()) + read(event.findings());
    }

    private String read(List<Finding> findings) {
        return findings.isEmpty() ? "" : " → " + terms.findings(findings);
    }

    @Override
    public String concluded(CaseEvent.Concluded event) {
        return "Concluded: " + terms.cause(event.causeId()) + ", " + Terms.words(event.certainty())
                + (event.causeId().equals(CaseEvent.Concluded.UNLISTED)
                                && !event.note().isBlank()
                        ? ": " + event.note().strip()
                        : "");
    }

    @Override
    public String fixApplied(CaseEvent.FixApplied event) {
        return "Fix: " + terms.work(event);
    }

    @Override
    public String checked(CaseEvent.Checked event) {
        return "Checked: " + ProofWords.item(event) + ", " + ProofWords.how(event);
    }

    @Override
    public String weighed(CaseEvent.Weighed event) {
        return "Weighed: " + terms.fix(event.fixId()) + ", decided: " + Terms.words(event.decided());
    }

    @Override
    public String ended(CaseEvent.Ended event) {
        return "Ended: " + CaseSheet.ending(event);
    }

    @Override
    public String withdrawn(CaseEvent.Withdrawn event) {
        return "Withdrawn";
    }

    @Override
    public String corrected(CaseEvent.Corrected event) {
        return "Corrected";
    }
}
