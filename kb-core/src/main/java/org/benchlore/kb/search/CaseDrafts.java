package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;

/** Cases as drafts: what was said, written, done and concluded. */
final class CaseDrafts {
    private static final int TITLE_LENGTH = 90;

    private final Knowledge knowledge;
    private final FindingWeights weights;

    CaseDrafts(Knowledge knowledge) {
        this.knowledge = knowledge;
        this.weights = new FindingWeights(knowledge);
    }

    Draft of(CaseHistory history) {
        List<String> notes = new ArrayList<>(List.of(history.complaint()));
        List<String> conclusion = new ArrayList<>();
        for (CaseEvent event : history.events()) {
            take(event, notes, conclusion);
        }
        String cause = history.causeId() == null ? "" : causeName(history.causeId());
        conclusion.add(0, cause);
        Map<String, List<String>> texts = new LinkedHashMap<>();
        texts.put(Fields.CODES, List.of(history.id(), history.unit()));
        texts.put(Fields.CONCLUSION, conclusion.stream().distinct().toList());
        texts.put(Fields.NOTES, notes);
        return new Draft(
                HitKind.CASE,
                history.id(),
                title(history, cause),
                history.scope(),
                history.outcome(),
                history.causeId(),
                texts,
                weights.of(history.findings()));
    }

    private void take(CaseEvent event, List<String> notes, List<String> conclusion) {
        if (event instanceof CaseEvent.Noted noted) {
            notes.add(noted.text());
        } else if (event instanceof CaseEvent.Tested tested) {
            notes.add(knowledge.test(tested.testId()).map(BenchTest::name).orElse(tested.testId()));
            notes.add(tested.note());
        } else if (event instanceof CaseEvent.Concluded concluded) {
            notes.add(concluded.note());
        } else if (event instanceof CaseEvent.FixApplied applied) {
            if (!applied.fixId().equals(CaseEvent.FixApplied.UNLISTED)) {
                conclusion.add(knowledge.fix(applied.fixId()).map(Fix::name).orElse(applied.fixId()));
            }
            notes.add(applied.note());
        } else if (event instanceof CaseEvent.Checked checked) {
            notes.add(checked.item());
            notes.add(checked.note());
        } else if (event instanceof CaseEvent.Weighed weighed) {
            notes.add(weighed.note());
        } else if (event instanceof CaseEvent.Ended ended) {
            notes.add(ended.note());
        }
    }

    private String causeName(String causeId) {
        return causeId.equals(CaseEvent.Concluded.UNLISTED)
                ? ""
                : knowledge.cause(causeId).map(Cause::name).orElse(causeId);
    }

    private static String title(CaseHistory history, String cause) {
        String text = history.complaint().isBlank() ? cause : history.complaint();
        String line = text.replaceAll("\\s+", " ").trim();
        if (line.isEmpty()) {
            return history.id();
        }
        return line.length() <= TITLE_LENGTH ? line : Snippets.cut(line, 0, TITLE_LENGTH) + "…";
    }
}
