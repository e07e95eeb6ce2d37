package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.importing.ImportDraft;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.ImportDraft.Likeness;
import org.benchlore.kb.importing.ImportDraft.Told;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;

/** What an import would bring, case by case, and what it did. */
final class ImportPage {
    private static final int MOST_LEFT_OUT = 20;

    private final Bench bench;
    private final Knowledge knowledge;
    private final Page page;

    ImportPage(Bench bench, Knowledge knowledge) {
        this.bench = bench;
        this.knowledge = knowledge;
        this.page = bench.page();
    }

    /** @param keep whether near-duplicates would be stored */
    void review(ImportReview review, boolean keep) {
        review.mapping().ifPresent(mapping -> {
            page.heading(review.guessed() ? "Columns, guessed" : "Columns, as mapped");
            mapping.text().lines().filter(l -> !l.startsWith("#")).forEach(l -> page.line("  " + l));
            if (review.guessed()) {
                page.text(
                        0,
                        "If that is wrong: --write-mapping FILE, correct the file, give it back with --mapping FILE.");
            }
            page.blank();
        });
        for (ImportDraft draft : review.drafts()) {
            draft(review.source(), draft, keep);
            page.blank();
        }
        understood(review);
        long known = review.known();
        long duplicates = review.duplicates();
        long fresh = review.drafts().size() - known - (keep ? 0 : duplicates);
        page.text(
                0,
                counted(fresh, "case") + " would be stored"
                        + (known > 0 ? ", " + known + " stored already" : "")
                        + (duplicates > 0
                                ? ", " + counted(duplicates, "near-duplicate") + (keep ? " among them" : " left out")
                                : "")
                        + ". Nothing was stored; leave out --dry-run to store.");
    }

    private void draft(String source, ImportDraft draft, boolean keep) {
        page.heading(source + ":" + draft.line() + "  "
                + draft.date().map(d -> d.toString()).orElse("no date") + "  "
                + draft.device().map(d -> d.toString()).orElseGet(() -> kinds(draft))
                + draft.unit().map(u -> "  " + u).orElse(""));
        String findings =
                told(draft, Item.FINDING).map(t -> finding(t.id()) + words(t)).collect(Collectors.joining("; "));
        if (!findings.isEmpty()) {
            row("seen", findings);
        }
        told(draft, Item.DEVICE)
                .filter(t -> t.id().isEmpty())
                .forEach(t -> row("device", "none that the packs know" + words(t)));
        draft.told().forEach(this::act);
        if (!draft.unknown().isEmpty()) {
            row(
                    "unknown",
                    draft.unknown().stream()
                            .map(item -> item == Item.DEVICE && !draft.kinds().isEmpty() ? "model" : item(item))
                            .collect(Collectors.joining(", ")));
        }
        if (!draft.unread().isEmpty()) {
            row("not read", draft.unread().stream().map(w -> "\"" + w + "\"").collect(Collectors.joining(", ")));
        }
        if (draft.stored()) {
            page.text(2, "stored already as " + draft.caseId());
        }
        for (Likeness like : draft.likenesses()) {
            page.caution(like(like) + (like.duplicate() ? (keep ? "; stored all the same" : "; left out") : ""));
        }
    }

    private String kinds(ImportDraft draft) {
        String names = draft.kinds().stream()
                .flatMap(id -> knowledge.deviceClass(id).stream())
                .map(Device::name)
                .collect(Collectors.joining(" or "));
        return names.isEmpty() ? "device unknown" : names;
    }

    /** Tests, causes, fixes and endings as they came: what failed before what helped. */
    private void act(Told told) {
        switch (told.item()) {
            case TEST -> row("test", name(told) + words(told));
            case CAUSE -> row("cause", cause(told));
            case FIX -> row("fix", name(told) + words(told));
            case OUTCOME -> row("ended", told.id() + words(told));
            case DATE, DEVICE, UNIT, FINDING -> {}
        }
    }

    private static Stream<Told> told(ImportDraft draft, Item item) {
        return draft.told().stream().filter(t -> t.item() == item);
    }

    private void row(String label, String text) {
        page.hanging(String.format(Locale.ROOT, "  %-8s ", label), 11, text);
    }

    private static String words(Told told) {
        return told.words().isEmpty() ? "" : " (\"" + told.words() + "\")";
    }

    private String cause(Told told) {
        String name = name(told);
        return told.words().isEmpty() && !told.id().isEmpty()
                ? name + " (by the fix that cured it)"
                : name + words(told);
    }

    private String name(Told told) {
        String id = told.id();
        return switch (told.item()) {
            case CAUSE ->
                id.isEmpty()
                        ? "none that the packs know by these words"
                        : knowledge.cause(id).map(Cause::name).orElse(id);
            case FIX ->
                id.isEmpty()
                        ? "none that the packs know by these words"
                        : knowledge.fix(id).map(Fix::name).orElse(id);
            case TEST -> knowledge.test(id).map(BenchTest::name).orElse(id);
            case DATE, DEVICE, UNIT, FINDING, OUTCOME -> id;
        };
    }

    private String finding(String id) {
        int sign = id.indexOf('=');
        String state = id.substring(sign + 1);
        return knowledge
                .symptom(id.substring(0, sign))
                .map(s -> s.name() + " " + TestPage.stateName(s, state))
                .orElse(id);
    }

    private static String item(Item item) {
        return switch (item) {
            case UNIT -> "serial number";
            case FINDING -> "findings";
            case DATE, DEVICE, TEST, CAUSE, FIX, OUTCOME -> Page.words(item);
        };
    }

    private static String like(Likeness like) {
        String other = like.line() > 0 ? "line " + like.line() : "case " + like.caseId();
        String what = like.duplicate()
                ? "near-duplicate of " + other
                : (like.sameUnit() ? "same unit as " : "much like ") + other;
        return what + String.format(Locale.ROOT, " (%.0f %% of the words)", 100 * like.share());
    }

    /** How much was understood of how many. */
    void understood(ImportReview review) {
        List<ImportDraft> drafts = review.drafts();
        if (drafts.isEmpty()) {
            return;
        }
        page.text(
                0,
                "Understood of " + counted(drafts.size(), "case") + ": findings in " + with(drafts, Item.FINDING)
                        + ", cause in " + with(drafts, Item.CAUSE) + ", fix in " + with(drafts, Item.FIX)
                        + ", outcome in "
                        + with(drafts, Item.OUTCOME) + ", device or its kind in " + with(drafts, Item.DEVICE)
                        + ", date in "
                        + with(drafts, Item.DATE) + ". The rest is marked unknown.");
    }

    private static long with(List<ImportDraft> drafts, Item item) {
        Predicate<ImportDraft> unknown = d ->
                d.unknown().contains(item) && (item != Item.DEVICE || d.kinds().isEmpty());
        return drafts.stream().filter(unknown.negate()).count();
    }

    private static String counted(long n, String what) {
        return n + " " + what + (n == 1 ? "" : "s");
    }

    void done(String source, ImportResult result) {
        page.text(
                0,
                source + ": " + counted(result.cases(), "case") + ", " + result.added() + " new events, "
                        + result.known()
                        + " known already"
                        + (result.leftOut() > 0 ? ", " + counted(result.leftOut(), "near-duplicate") + " left out" : "")
                        + ".");
    }

    /** The near-duplicates that were not stored. */
    void leftOut(ImportReview review) {
        List<ImportDraft> left = review.drafts().stream()
                .filter(d -> !d.stored() && d.duplicate())
                .toList();
        left.stream()
                .limit(MOST_LEFT_OUT)
                .forEach(d -> page.hanging(
                        2,
                        4,
                        review.source() + ":" + d.line() + ": "
                                + like(d.likenesses().get(0))));
        if (left.size() > MOST_LEFT_OUT) {
            page.text(2, "and " + (left.size() - MOST_LEFT_OUT) + " more");
        }
        if (!left.isEmpty()) {
            page.text(0, "To store them all the same: --near-duplicates keep.");
        }
    }

    void problems(List<ImportProblem> problems, long more, String source) {
        problems.forEach(p -> bench.tell(p.toString()));
        if (more > 0) {
            bench.tell(source + ": " + more + " more bad records");
        }
    }
}
