package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Words that tell of something put right. */
class PutRightTest {
    private static final List<String> WAYS =
            List.of("took|taken pack|battery out", "pack|battery is|was out", "opened ... washed ... dry|dried");

    private static boolean told(String text) {
        return PutRight.in(text).told(WAYS, 0);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "took the old swollen pack out",
                "Battery is now out.",
                "swollen; have taken the battery out, charged nothing",
                "opened it up. Washed the board with spirit, then dried it two days",
            })
    void small_words_and_faults_may_stand_between_and_dots_stand_for_anything(String text) {
        assertThat(told(text)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "pack cover is out",
                "took the cover off. pack out of date",
                "pack is not out yet",
                "is the pack out?",
                "the pack was to be taken out",
                "if the battery is out it starts",
                "customer took the battery out",
                "washed, opened, dry",
                "dried in rice",
            })
    void what_is_planned_asked_denied_or_told_otherwise_was_not_put_right(String text) {
        assertThat(told(text)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 29, 30})
    void it_counts_behind_a_place_only(int from) {
        String text = "took the battery out, pack is out, swollen";
        assertThat(PutRight.in(text).told(WAYS, from)).isEqualTo(from <= text.indexOf(", swollen"));
        assertThat(PutRight.in(text).told(WAYS, text.length())).isFalse();
    }
}
