package org.benchlore.kb.data;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Ten thousand plain ways to say what a symptom shows, with all kinds of units as the subject, are read. The packs were taught
 * on them, so this says that nothing plain is lost, not how other words fare.
 */
class PlainStatementsTest {
    private static final Path STATEMENTS = Path.of("src/test/resources/org/benchlore/kb/data/plain-statements.tsv");

    @TempDir
    Path home;

    @Test
    void what_is_said_plainly_is_read_as_meant() throws IOException {
        List<String> lines;
        try (Stream<String> all = Files.lines(STATEMENTS)) {
            lines = all.filter(line -> !line.startsWith("#")).toList();
        }
        List<String> missed = new ArrayList<>();
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            for (String line : lines) {
                String[] f = line.split("\t", -1);
                if (!kb.read(f[0]).findings().contains(Finding.of(f[1], f[2]))) {
                    missed.add(line);
                }
            }
        }
        assertThat(lines).hasSizeGreaterThan(10_000);
        assertThat(missed).as("%d of %d", missed.size(), lines.size()).hasSizeLessThan(lines.size() / 50);
    }
}
