package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.cases.ImportResult;
import org.junit.jupiter.api.Test;

/** Whatever the text, a review comes back or one clear refusal, and storing it twice changes nothing. */
class ImportFuzzTest {
    private static final int TEXTS = 600;

    private static final List<String> PIECES = List.of(
            "12.3.2024 ",
            "2024-03-12",
            "31.2.2024",
            "3/4/24 ",
            "# ",
            "## ",
            "- ",
            "* ",
            "---\n",
            "===\n",
            "\n",
            "\n\n",
            "  ",
            "\t",
            ",",
            ";",
            "\"",
            "\"\"",
            "|",
            ": ",
            "{",
            "}",
            "[",
            "]",
            "\\",
            "{\"notes\":\"no 12 V\"}\n",
            "sep=;\n",
            "no 12 V",
            "corvane 300 ",
            "rev c ",
            "sn C3-1 ",
            "#17 ",
            "Cause: ",
            "Work: ",
            "Result: ",
            "Date: ",
            "Serial: ",
            "**",
            "> ",
            "found start resistor open",
            " replaced ",
            "it",
            "C412",
            " ok",
            " not ",
            "ran two days",
            " came back after 3 weeks ",
            "given up",
            "?",
            "!",
            ".",
            " and ",
            " then ",
            "\u202e",
            "\u0007",
            "\ud83d",
            "\u0000x".substring(1),
            "é",
            "㎷",
            "ﬁ",
            "date,notes\n",
            "a".repeat(300),
            "1".repeat(40),
            "-12 V",
            "12V/5V",
            "=cmd|' /C calc'!A0",
            "\r\n",
            "\r",
            "\uFEFF");

    @Test
    void any_text_is_reviewed_or_refused_and_storing_it_twice_changes_nothing() {
        Random random = new Random(20240312);
        for (int n = 0; n < TEXTS; n++) {
            StringBuilder made = new StringBuilder();
            int length = random.nextInt(120);
            for (int i = 0; i < length; i++) {
                made.append(PIECES.get(random.nextInt(PIECES.size())));
            }
            String text = made.toString();
            for (ImportKind kind : ImportKind.values()) {
                check(text, kind);
            }
        }
    }

    private static void check(String text, ImportKind kind) {
        try (CaseStore store = CaseStore.inMemory()) {
            Importer importer = Workshop.importer(store);
            ImportReview review;
            try {
                review = Workshop.review(importer, text, "f", ImportSettings.of(kind));
            } catch (BadImportException e) {
                assertThat(e.getMessage()).matches("(?s)f:(\\d+:)? .+; .+");
                return;
            }
            assertThat(store.position()).isZero();
            assertThat(review.drafts()).allSatisfy(d -> {
                assertThat(d.events()).isNotEmpty();
                assertThat(d.line()).isPositive();
            });
            assertThat(review.drafts()).extracting(ImportDraft::caseId).doesNotHaveDuplicates();
            ImportResult first = importer.store(review, CaseHistory.OWN, true);
            assertThat(first.added()).isEqualTo(first.events());
            review.drafts().forEach(d -> assertThat(store.eventsOf(d.caseId())).hasSameElementsAs(d.events()));
            ImportResult second = importer.store(
                    Workshop.review(importer, text, "f", ImportSettings.of(kind)), CaseHistory.OWN, true);
            assertThat(second.added()).isZero();
        }
    }

    /** Texts that would cost a careless reader the square of their length; the test is that it ends. */
    @Test
    void long_monotonous_texts_are_read() {
        for (String piece : List.of(
                "replaced ",
                "found open ",
                "and ",
                "12.3.2024 ",
                "\"",
                "(",
                "#",
                "- ",
                "sn ",
                "no ",
                "Cause:",
                "ran two days ",
                "1",
                "x",
                ".",
                "\n",
                ",",
                "corvane 300 ")) {
            String text = piece.repeat(60_000 / piece.length());
            Workshop.diary(text);
            Workshop.diary("1.2.2024 " + text);
            try {
                Workshop.table("date,notes\n1.2.2024," + text);
            } catch (BadImportException e) {
                assertThat(e.getMessage()).startsWith("source");
            }
        }
    }
}
