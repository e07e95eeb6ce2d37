package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DeviceScopeTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"any", "player", "player/corvane", "player/corvane/corvane-300", "player/corvane/corvane-300/2"})
    void what_is_written_is_what_is_shown(String text) {
        assertThat(DeviceScope.parse(text)).hasToString(text);
    }

    @Test
    void any_is_the_root_however_written() {
        assertThat(DeviceScope.parse(" any ")).isEqualTo(DeviceScope.ANY);
        assertThat(DeviceScope.parse("")).isEqualTo(DeviceScope.ANY);
        assertThat(DeviceScope.ANY.depth()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"Player", "a//b", "/a", "a/", "a b", "a--b", "-a", "a_b", "a/b/c/d/e"})
    void what_is_no_scope_is_refused(String text) {
        assertThatThrownBy(() -> DeviceScope.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("device scope ");
    }

    @Test
    void a_label_is_answered_with_how_it_is_written() {
        assertThatThrownBy(() -> DeviceScope.parse("amplifier/Valmora Konzert 54"))
                .hasMessageEndingWith("as in 'valmora-konzert-54'");
    }

    @Test
    void a_scope_contains_itself_and_what_is_below() {
        DeviceScope family = DeviceScope.parse("player/corvane");

        assertThat(family.contains(family)).isTrue();
        assertThat(family.contains(DeviceScope.parse("player/corvane/corvane-300")))
                .isTrue();
        assertThat(DeviceScope.ANY.contains(family)).isTrue();
        assertThat(family.contains(DeviceScope.ANY)).isFalse();
        assertThat(family.contains(DeviceScope.parse("player"))).isFalse();
        assertThat(family.contains(DeviceScope.parse("player/corvane-300")))
                .as("steps, not letters")
                .isFalse();
    }

    @Test
    void the_lineage_runs_inwards_from_any() {
        assertThat(DeviceScope.parse("player/corvane").lineage())
                .containsExactly(DeviceScope.ANY, DeviceScope.parse("player"), DeviceScope.parse("player/corvane"));
        assertThat(DeviceScope.ANY.lineage()).containsExactly(DeviceScope.ANY);
    }

    @Test
    void order_is_that_of_the_text() {
        List<DeviceScope> scopes =
                new ArrayList<>(List.of(DeviceScope.parse("player"), DeviceScope.parse("amp/x"), DeviceScope.ANY));

        assertThat(scopes.stream().sorted().map(DeviceScope::toString)).containsExactly("amp/x", "any", "player");
    }

    @Test
    void the_path_is_a_copy() {
        List<String> path = new ArrayList<>(List.of("player"));
        DeviceScope scope = new DeviceScope(path);

        path.add("corvane");

        assertThat(scope.depth()).isEqualTo(1);
    }
}
