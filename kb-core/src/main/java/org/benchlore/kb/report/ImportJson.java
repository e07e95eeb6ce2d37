package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.importing.ImportDraft;
import org.benchlore.kb.importing.ImportDraft.Likeness;
import org.benchlore.kb.importing.ImportReview;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The review of an import and what the import did, as JSON. */
final class ImportJson {
    private ImportJson() {}

    static ObjectNode imported(String source, ImportResult result) {
        ObjectNode root = JsonNodes.root("import");
        root.put("source", source);
        root.put("cases", result.cases());
        root.put("events", result.events());
        root.put("added", result.added());
        root.put("known", result.known());
        root.put("leftOut", result.leftOut());
        problems(root, result.problems(), result.moreProblems());
        return root;
    }

    static ObjectNode importReview(ImportReview review) {
        ObjectNode root = JsonNodes.root("import-review");
        root.put("source", review.source());
        root.put("kind", review.kind().id());
        review.mapping().ifPresent(mapping -> {
            root.put("mapping", mapping.text());
            root.put("guessed", review.guessed());
        });
        ArrayNode cases = root.putArray("cases");
        review.drafts().forEach(draft -> draft(cases.addObject(), draft));
        root.put("known", review.known());
        root.put("nearDuplicates", review.duplicates());
        problems(root, review.problems(), review.moreProblems());
        return root;
    }

    private static void draft(ObjectNode node, ImportDraft draft) {
        node.put("line", draft.line());
        node.put("case", draft.caseId());
        node.put("stored", draft.stored());
        ArrayNode told = node.putArray("told");
        for (ImportDraft.Told t : draft.told()) {
            ObjectNode one = told.addObject();
            one.put("item", JsonNodes.lower(t.item()));
            if (!t.id().isEmpty()) {
                one.put("id", t.id());
            }
            if (!t.words().isEmpty()) {
                one.put("words", t.words());
            }
        }
        JsonNodes.texts(node, "kinds", draft.kinds());
        JsonNodes.texts(
                node, "unknown", draft.unknown().stream().map(JsonNodes::lower).toList());
        JsonNodes.texts(node, "notUnderstood", draft.unread());
        ArrayNode alike = node.putArray("alike");
        for (Likeness l : draft.likenesses()) {
            ObjectNode one = alike.addObject();
            one.put("case", l.caseId());
            if (l.line() > 0) {
                one.put("line", l.line());
            }
            one.put("share", l.share());
            one.put("sameUnit", l.sameUnit());
            one.put("nearDuplicate", l.duplicate());
        }
    }

    private static void problems(ObjectNode root, List<ImportProblem> problems, long more) {
        ArrayNode list = root.putArray("problems");
        for (ImportProblem p : problems) {
            ObjectNode node = list.addObject();
            node.put("file", p.source());
            node.put("line", p.line());
            node.put("what", p.what());
            node.put("remedy", p.remedy());
        }
        root.put("moreProblems", more);
    }
}
