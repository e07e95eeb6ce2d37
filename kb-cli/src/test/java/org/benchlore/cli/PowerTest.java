package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Units that must not be powered now, by the packs that ship. */
class PowerTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Knowledge KNOWLEDGE = PackReader.read(ShippedPacks.all());

    @TempDir
    Path home;

    private String text(String... args) {
        return Run.text(home, args);
    }

    @ParameterizedTest
    @CsvSource({
        "'laptop battery swollen, runs ten minutes',swollen-pack",
        "'beer spilled into the laptop yesterday, no start',wet-inside",
        "'tv dead, smells burnt',smells-burnt",
        "'toaster gives a shock from the case',gives-shocks",
        "'camcorder straight from the cold car, will not run, lens misted',condensed-inside",
        "'battery gets hot, battery temperature 25 degrees now',hot-pack",
    })
    void nothing_that_powers_the_unit_is_proposed(String words, String rule) {
        JsonNode next = JSON.readTree(text("next", words, "--top", "30", "--json"));
        List<String> rules = new ArrayList<>();
        next.get("hold").get("reasons").forEach(r -> rules.add(r.get("ruleId").asString()));
        assertThat(rules).contains(rule);
        assertThat(next.get("hold").get("tests").asInt()).isPositive();
        next.get("tests")
                .forEach(t -> assertThat(KNOWLEDGE
                                .test(t.get("test").get("id").asString())
                                .map(BenchTest::powers))
                        .contains(false));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "cordless drill, battery pack is bulging a bit and gets hot on the charger",
                "drill, battery pack swollen",
                "laptop, pack swollen and coffee spilled into it",
            })
    void a_bad_pack_goes_out_before_any_question_or_look(String words) {
        JsonNode next = JSON.readTree(text("next", words, "--json"));
        assertThat(next.get("stopTesting").asBoolean()).isTrue();
        assertThat(next.get("hold").get("fixesInOrder").get(0).asString())
                .isIn("retire-swollen-pack", "replace-lithium-pack");
        assertThat(text("next", words)).containsPattern("Do next, to make it safe: (Take out|Replace the lithium)");
    }

    @Test
    void what_still_stands_after_the_first_step_is_told_with_it() {
        assertThat(text("next", "laptop, pack swollen and coffee spilled into it"))
                .contains("Then, for what keeps power off besides: ");
        JsonNode hold = JSON.readTree(text("next", "drill, pack swollen and gets hot on the charger", "--json"))
                .get("hold");
        assertThat(hold.get("reasons").size()).isGreaterThan(1);
        assertThat(hold.get("fixesInOrder").size()).as("one fix lifts both").isEqualTo(1);
    }

    @Test
    void it_is_said_in_next_plan_and_rank() {
        for (String command : List.of("next", "plan", "rank")) {
            assertThat(text(command, "laptop battery swollen, runs ten minutes"))
                    .contains("Power stays off: a swollen pack can catch fire")
                    .contains("It may come on once this is noted as done: ")
                    .contains("[retire-swollen-pack]")
                    .doesNotContainPattern("[0-9] tests");
        }
        assertThat(text("next", "laptop runs ten minutes")).doesNotContain("Power stays off");
        assertThat(text("show", "wet-inside"))
                .contains("Power stays off while ")
                .contains("[wash-board]")
                .contains("Link: benchlore:power-off-rule/wet-inside");
        assertThat(text("show", "pack-bulge")).contains("Power stays off while it is present: a swollen pack");
    }

    @Test
    void a_plan_without_power_is_the_step_that_makes_it_safe_and_no_verdict() {
        assertThat(text("plan", "tv smells burnt, scorched place in the supply, no caps bulging"))
                .contains("Plan while power stays off")
                .contains("The rest is planned once power may come on.")
                .doesNotContain("STOP")
                .doesNotContain("still there")
                .doesNotContain("Expected minutes");
        assertThat(text("next", "tv smells burnt, scorched place in the supply, no caps bulging"))
                .contains("Do next: ")
                .contains("Without that look, what makes it safe: ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "juice spilled in it last week, opened and washed it, dry now, still dead",
                "phone battery was swollen, i took it out and put a new one in, still won't charge",
                "laptop battery swollen, new battery fitted, runs ten minutes",
                "lithium cell 1.9 V, took the pack out",
                "radio got rained on years ago, has run daily since, now the volume pot crackles",
            })
    void words_that_tell_it_was_put_right_let_power_on(String words) {
        assertThat(text("next", words)).doesNotContain("Power stays off");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "AA toy dog does not bark, cells 1.52 V",
                "remote control, two new AAA cells at 1.58 V each, no infrared seen",
                "alarm box, cell stack 14.6 V",
            })
    void loose_cells_and_stacks_are_no_lithium_cells(String words) {
        assertThat(text("next", words)).doesNotContain("Power stays off");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "juice spilled in it last week, has not worked since",
                "juice spilled in it last week, dried in rice, still dead",
                "laptop battery swollen, will fit a new battery",
                "new battery fitted last month, now it is swollen",
                "phone washed with the jeans, dried in rice, dead, water got in",
            })
    void half_of_it_or_a_plan_does_not(String words) {
        assertThat(text("next", words)).contains("Power stays off");
    }

    @Test
    void a_case_lets_power_on_again_after_the_fix_and_not_after_the_next_spill() {
        String told = text("case", "open", "beer spilled into the laptop, no start");
        String id = told.replaceAll(".*?(\\d{8}-\\w+).*", "$1");
        assertThat(text("next", "--case", id)).contains("Power stays off");
        text("outcome", "--case", id, "--cause", "spill-residue-leaks", "--fix", "wash-board", "--ended", "not-fixed");
        assertThat(text("next", "--case", id)).doesNotContain("Power stays off");
        assertThat(text("next", "--case", id, "juice spilled into it again")).contains("Power stays off");
        text("case", "note", id, "juice spilled into it again");
        assertThat(text("next", "--case", id)).contains("Power stays off");
        text("case", "note", id, "opened, washed with distilled water and ipa, dried 3 days");
        assertThat(text("next", "--case", id)).doesNotContain("Power stays off");
    }

    @Test
    void a_look_lets_power_on_until_what_it_answered_is_told_again() {
        String told = text("case", "open", "beer spilled into the laptop, no start");
        String id = told.replaceAll(".*?(\\d{8}-\\w+).*", "$1");
        text("case", "note", id, "opened it, no deposit on the boards");
        assertThat(text("next", "--case", id)).doesNotContain("Power stays off");
        assertThat(text("next", "--case", id, "juice spilled into it again")).contains("Power stays off");
        text("case", "note", id, "juice spilled into it again");
        assertThat(text("next", "--case", id)).contains("Power stays off");
        assertThat(text("next", "--case", id, "no deposit on the boards")).doesNotContain("Power stays off");
    }
}
