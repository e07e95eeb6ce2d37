package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All that ships and the invented workshop as pages. */
class ExportPagesTest {
    private static final Pattern HREF = Pattern.compile(" href=\"([^\"#]*)(?:#([^\"]*))?\"");

    @TempDir
    Path dir;

    private Run export(String... more) {
        String[] all = new String[more.length + 3];
        all[0] = "export";
        System.arraycopy(more, 0, all, 1, more.length);
        all[more.length + 1] = "--home";
        all[more.length + 2] = dir.resolve("home").toString();
        return Run.of(all);
    }

    @Test
    void every_link_between_the_pages_leads_somewhere() throws IOException {
        Run.of("demo", "--home", dir.resolve("home").toString());
        Path pages = dir.resolve("pages");
        Run run = export("--html", pages.toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).isEmpty();

        Set<String> targets = new HashSet<>();
        int read = 0;
        try (Stream<Path> files = Files.walk(pages)) {
            for (Path page : files.filter(f -> f.toString().endsWith(".html")).toList()) {
                read++;
                Matcher href = HREF.matcher(Files.readString(page));
                while (href.find()) {
                    Path to = href.group(1).isEmpty()
                            ? page
                            : page.resolveSibling(href.group(1)).normalize();
                    targets.add(to + "#" + (href.group(2) == null ? "" : href.group(2)));
                }
            }
        }
        assertThat(read).isGreaterThan(1400);
        for (String target : targets) {
            String[] parts = target.split("#", -1);
            assertThat(Path.of(parts[0])).exists();
            if (!parts[1].isEmpty()) {
                assertThat(Files.readString(Path.of(parts[0]))).as(target).contains(" id=\"" + parts[1] + "\"");
            }
        }

        assertThat(export("--html", pages.toString()).err()).contains(", 0 of them new or changed, 0 removed");
    }

    @Test
    void a_folder_of_others_and_mixed_wishes_are_refused() throws IOException {
        Files.writeString(dir.resolve("letter.txt"), "theirs");
        Run foreign = export("--html", dir.toString());
        assertThat(foreign.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(foreign.err()).contains("holds files that are not pages of ours; choose a new or empty folder");
        assertThat(export("--html", dir.resolve("p").toString(), "cases.jsonl").code())
                .isEqualTo(ExitCode.USAGE);
        assertThat(export("--html", dir.resolve("p").toString(), "--anonymous").code())
                .isEqualTo(ExitCode.USAGE);
    }
}
