package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;

/** What of a name is enough to name its entry. */
class NameIndexTest {
    @Test
    void a_part_of_another_is_not_named_without_it() {
        assertThat(NameIndex.readings("tweeter or its capacitor"))
                .containsExactlyInAnyOrder(Set.of("tweeter"), Set.of("tweeter", "capacitor"));
    }

    @Test
    void either_of_two_things_is_enough() {
        assertThat(NameIndex.readings("worn or stuck key"))
                .containsExactlyInAnyOrder(Set.of("wear", "key"), Set.of("stick", "key"));
    }
}
