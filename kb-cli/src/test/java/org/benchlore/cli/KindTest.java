package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The kind of unit, from the words or the device, in rankings and what follows from them. */
class KindTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    Path home;

    private String text(String... args) {
        return Run.text(home, args);
    }

    private JsonNode json(String... args) {
        return JSON.readTree(
                text(Stream.concat(Stream.of(args), Stream.of("--json")).toArray(String[]::new)));
    }

    private static List<String> texts(JsonNode list) {
        List<String> texts = new ArrayList<>();
        list.forEach(node -> texts.add(node.asString()));
        return texts;
    }

    private static List<String> ids(JsonNode list, int most) {
        List<String> ids = new ArrayList<>();
        list.forEach(node -> ids.add(node.get("id").asString()));
        return ids.subList(0, Math.min(most, ids.size()));
    }

    @Test
    void a_ranking_says_the_kind_and_how_to_settle_it() {
        assertThat(text("rank", "inkjet printer, fan noisy"))
                .contains("Kind of unit: ink printer (taken from your words; --device settles it)");
        assertThat(text("rank", "fan noisy", "--device", "printer"))
                .contains("Kind of unit: printer ")
                .doesNotContain("taken from your words");
        assertThat(text("rank", "fan noisy")).doesNotContain("Kind of unit");
    }

    @Test
    void a_test_of_several_symptoms_leaves_out_those_that_such_a_unit_cannot_show() {
        String keys = "keys on the front do nothing, display lit";
        assertThat(text("next", keys, "--device", "television", "--top", "24", "--json"))
                .contains("\"remote-control\"");
        JsonNode next = json("next", keys, "--device", "synthesiser", "--top", "24");
        for (JsonNode test : next.get("tests")) {
            test.get("results")
                    .forEach(r -> assertThat(r.get("symptomId").asString()).doesNotStartWith("remote-"));
        }
    }

    @Test
    void what_such_a_unit_lacks_is_said_beside_the_cause() {
        assertThat(text("rank", "printer: backlight flickers", "--top", "400"))
                .contains("a printer has no picture panel");
        JsonNode ranking = json("rank", "printer: backlight flickers", "--top", "400");
        assertThat(texts(ranking.get("kinds"))).containsExactly("printer");
        List<List<String>> lacking = new ArrayList<>();
        for (JsonNode cause : ranking.get("causes")) {
            if (cause.get("id").asString().equals("backlight-led-open")) {
                lacking.add(texts(cause.get("lacking")));
            }
        }
        assertThat(lacking).containsExactly(List.of("picture-panel", "backlight"));
    }

    @ParameterizedTest
    @CsvSource({
        "printer: dark stripes,backlight-led-open,shine-torch-on-panel",
        "printer squeals,tape-itself-bad,play-test-tape",
        "valve radio gets very hot,standby-rectifier-faulty,scope-controller-supply-ripple",
        "drill smells burnt,drive-board-dead,measure-standby-rail",
        "e-bike charger does nothing,usb-lead-without-data,prove-usb-lead",
    })
    void what_the_unit_cannot_have_is_neither_ranked_nor_tested_first(String words, String cause, String test) {
        JsonNode ranking = json("rank", words);
        assertThat(ids(ranking.get("causes"), 5)).doesNotContain(cause);
        assertThat(ids(ranking.get("nextTests"), 3)).doesNotContain(test);
    }

    @ParameterizedTest
    @CsvSource({
        "sewing machine does nothing at all,measure-standby-rail",
        "valve radio dead,measure-standby-rail",
        "valve radio dead,read-and-date-codes",
        "laptop does not switch on,prove-the-remote",
        "kettle dead,measure-main-rails",
        "drill does nothing,listen-to-supply",
    })
    void a_test_that_has_nothing_to_read_in_such_a_unit_is_not_proposed(String words, String test) {
        List<String> proposed = new ArrayList<>();
        json("next", words)
                .get("tests")
                .forEach(t -> proposed.add(t.get("test").get("id").asString()));
        assertThat(proposed).isNotEmpty().doesNotContain(test);
    }

    @Test
    void a_case_tells_its_kind_by_its_words_and_its_device() {
        String told = text("case", "open", "printer dead, no lamp");
        String id = told.replaceAll(".*?(\\d{8}-\\w+).*", "$1");
        assertThat(texts(json("rank", "--case", id).get("kinds"))).containsExactly("printer");
        assertThat(texts(json("rank", "--case", id, "--device", "tv").get("kinds")))
                .containsExactly("tv");
    }

    @Test
    void an_entry_says_what_it_needs() {
        assertThat(text("show", "stylus-worn")).contains("Needs: record drive");
        assertThat(texts(json("show", "stylus-worn").get("entry").get("needs"))).containsExactly("record-drive");
        assertThat(text("show", "measure-standby-rail")).contains("Needs: standby supply");
        assertThat(text("show", "repair-minus-rail")).contains("Needs: rails");
    }
}
