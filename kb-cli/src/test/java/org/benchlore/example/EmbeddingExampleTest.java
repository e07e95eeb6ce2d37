package org.benchlore.example;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.data.ShippedPacks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddingExampleTest {
    @Test
    void the_example_runs_and_what_it_recorded_is_there_afterwards(@TempDir Path home) {
        EmbeddingExample.run(home);

        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            assertThat(kb.caseCount()).isEqualTo(1);
        }
    }

    @Test
    void the_readme_shows_the_example_as_it_compiles() throws IOException {
        List<String> source = Files.readAllLines(Path.of("src/test/java/org/benchlore/example/EmbeddingExample.java"));
        int begin = source.indexOf("        // begin");
        int end = source.indexOf("        // end");
        String region = Stream.concat(
                        source.stream().filter(line -> line.startsWith("import ")),
                        source.subList(begin + 1, end).stream())
                .map(String::strip)
                .collect(Collectors.joining(" "));

        String readme = Files.readString(Path.of("../README.md"));
        String shown = readme.substring(readme.indexOf("```java") + 7);
        shown = shown.substring(0, shown.indexOf("```"));

        assertThat(shown).isEqualToIgnoringWhitespace(region);
    }
}
