package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Words after some work that say that it did not help. */
class InVainTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "swapped speaker relay, still the same",
                "no change",
                "New belts in. No better.",
                "did not help, left channel still gone",
                "made it worse",
                "worked for a minute, then no change",
            })
    void say_so(String text) {
        assertThat(InVain.told(text)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "12 V rail 12.1 V",
                "runs an hour",
                "works again",
                "no change at first, works now",
                "is it still the same?",
                "not the same as before",
                "if no change, replace the driver",
            })
    void do_not(String text) {
        assertThat(InVain.told(text)).isFalse();
    }
}
