package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is not ours is never overwritten, removed or followed. */
class PageFolderTest {
    private static final SortedMap<String, String> PAGES =
            new TreeMap<>(Map.of("index.html", "front", "cause/a.html", "a", "cause/b.html", "b"));

    @TempDir
    Path dir;

    private KnowledgePages.Written write(Path folder, SortedMap<String, String> pages) throws IOException {
        return new PageFolder(folder).write(pages);
    }

    private static SortedMap<String, String> held(Path folder) throws IOException {
        SortedMap<String, String> held = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                held.put(folder.relativize(file).toString().replace('\\', '/'), Files.readString(file));
            }
        }
        held.remove(PageFolder.OURS);
        return held;
    }

    private void refused(Path folder, String what) throws IOException {
        SortedMap<String, String> before = held(folder);
        assertThatThrownBy(() -> write(folder, PAGES))
                .isInstanceOf(ForeignFilesException.class)
                .hasMessageContaining(what)
                .hasMessageContaining("choose a new or empty folder");
        assertThat(held(folder)).isEqualTo(before);
    }

    @Test
    void a_new_folder_and_then_again() throws IOException {
        Path folder = dir.resolve("new/pages");
        assertThat(write(folder, PAGES)).isEqualTo(new KnowledgePages.Written(3, 3, 0));
        assertThat(held(folder)).isEqualTo(PAGES);
        assertThat(write(folder, PAGES)).isEqualTo(new KnowledgePages.Written(3, 0, 0));
    }

    @Test
    void what_changed_is_replaced_and_what_went_is_removed() throws IOException {
        write(dir, PAGES);
        SortedMap<String, String> later =
                new TreeMap<>(Map.of("index.html", "other", "cause/a.html", "a", "fix/c.html", "c"));

        assertThat(write(dir, later)).isEqualTo(new KnowledgePages.Written(3, 2, 1));
        assertThat(held(dir)).isEqualTo(later);
    }

    @Test
    void files_that_somebody_added_stay() throws IOException {
        write(dir, PAGES);
        Files.writeString(dir.resolve("notes.txt"), "mine");
        Files.writeString(dir.resolve("cause/own.html"), "mine");

        write(dir, new TreeMap<>(Map.of("index.html", "front")));
        assertThat(held(dir)).containsOnlyKeys("index.html", "notes.txt", "cause/own.html");
    }

    @Test
    void a_folder_of_others_is_refused() throws IOException {
        Files.writeString(dir.resolve("index.html"), "theirs");
        refused(dir, "not pages of ours");
    }

    @Test
    void a_file_of_others_in_our_place_is_refused() throws IOException {
        write(dir, new TreeMap<>(Map.of("index.html", "front")));
        Files.createDirectories(dir.resolve("cause"));
        Files.writeString(dir.resolve("cause/b.html"), "theirs");
        refused(dir, "b.html: is not a page of ours");
    }

    @Test
    void links_are_not_followed() throws IOException {
        Path outside = Files.createDirectories(dir.resolve("outside"));
        Files.writeString(outside.resolve("a.html"), "theirs");
        Path folder = dir.resolve("pages");
        write(folder, PAGES);
        Files.delete(folder.resolve("cause/a.html"));
        Files.createSymbolicLink(folder.resolve("cause/a.html"), outside.resolve("a.html"));
        refused(folder, "a.html: is not a page of ours");

        Files.delete(folder.resolve("cause/a.html"));
        Files.delete(folder.resolve("cause/b.html"));
        Files.delete(folder.resolve("cause"));
        Files.createSymbolicLink(folder.resolve("cause"), outside);
        refused(folder, "cause: is not a folder of ours");
        write(folder, new TreeMap<>(Map.of("index.html", "front")));
        assertThat(outside.resolve("a.html")).hasContent("theirs");
    }

    @Test
    void a_list_that_reaches_out_is_refused() throws IOException {
        write(dir, PAGES);
        Path list = dir.resolve(PageFolder.OURS);
        Files.writeString(list, Files.readString(list) + "../outside.html\n");
        refused(dir, "is not the list that we wrote");
        Files.writeString(list, "index.html\n");
        refused(dir, "is not the list that we wrote");
    }

    @Test
    void a_run_that_broke_off_can_be_done_again() throws IOException {
        write(dir, PAGES);
        Files.delete(dir.resolve("cause/b.html"));
        Files.writeString(dir.resolve("cause/b.html.part"), "half");

        assertThat(write(dir, PAGES)).isEqualTo(new KnowledgePages.Written(3, 1, 0));
        assertThat(held(dir)).isEqualTo(PAGES);
    }
}
