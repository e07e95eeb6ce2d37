package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Runs the very jar that ships: merged services, multi-release classes, the whole wheel in it. */
class JarIT {
    @TempDir
    Path home;

    private Run jar(String... args) throws IOException, InterruptedException {
        return jar(Files.createTempFile("out", ""), args);
    }

    private Run jar(Path out, String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                Path.of("target", "benchlore.jar").toString()));
        command.addAll(List.of(args));
        command.addAll(List.of("--home", home.toString()));
        Path err = Files.createTempFile("err", "");
        int code = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start()
                .waitFor();
        String said = Files.isRegularFile(out) ? Files.readString(out, StandardCharsets.UTF_8) : "";
        return new Run(code, said, Files.readString(err, StandardCharsets.UTF_8));
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void an_answer_that_a_full_disk_swallowed_is_no_success() throws IOException, InterruptedException {
        Run export = jar(Path.of("/dev/full"), "quality");
        assertThat(export.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(export.err())
                .startsWith("benchlore: the answer could not be written out (")
                .hasLineCount(1);
    }

    @Test
    void ranks_records_searches_and_stays_quiet_on_stderr() throws IOException, InterruptedException {
        Run rank = jar("rank", "--json", "green light, no 12 V, controller silent");
        assertThat(rank.code()).as(rank.err()).isZero();
        assertThat(rank.out()).startsWith("{\"schema\":\"benchlore/ranking/1\"");
        assertThat(rank.err()).isEmpty();

        Run outcome =
                jar("outcome", "no 12 V, controller silent", "--cause", "reset-supervisor-failed", "--ended", "fixed");
        assertThat(outcome.code()).as(outcome.err()).isZero();

        Run search = jar("search", "controller silent");
        assertThat(search.code()).as(search.err()).isZero();
        assertThat(search.out()).contains("case");
        assertThat(search.err()).isEmpty();
    }
}
