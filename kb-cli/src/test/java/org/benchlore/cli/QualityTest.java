package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The quality report from the command line. */
class QualityTest {
    @TempDir
    Path home;

    @Test
    void it_reads_well_at_eighty_columns() {
        Run.of("demo", "--home", home.toString());
        Run run = Run.of("quality", "--home", home.toString(), "--top", "3");

        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out())
                .containsSubsequence(
                        "By device scope",
                        "Testability",
                        "Ambiguity groups",
                        "Alike even so",
                        "What symptoms tell",
                        "Where the numbers come from",
                        "say nearly the same",
                        "Readability",
                        "Links one way only")
                .contains("disc-recorder/corvane/corvane-300/rev-b", "--top ");
        assertThat(run.out().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(110));
        assertThat(Run.of("quality", "--top", "0", "--home", home.toString()).code())
                .isEqualTo(ExitCode.USAGE);
    }
}
