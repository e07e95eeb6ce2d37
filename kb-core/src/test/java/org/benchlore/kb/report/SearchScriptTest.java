package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.io.Resources;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingSettings;
import org.graalvm.polyglot.Context;
import org.graalvm.polyglot.Engine;
import org.graalvm.polyglot.Value;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The search of the exported pages, its script run as it stands on a page made of stand-ins. */
class SearchScriptTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** Keeps what was parsed for the next page. */
    private static final Engine ENGINE = Engine.newBuilder("js")
            .option("engine.WarnInterpreterOnly", "false")
            .build();

    private final Context browser = Context.newBuilder("js").engine(ENGINE).build();

    @AfterEach
    void close() {
        browser.close();
    }

    private void open(Knowledge knowledge) {
        SortedMap<String, String> files =
                new KnowledgePages(knowledge, RankingModel.of(knowledge, RankingSettings.DEFAULT)).files();
        try {
            browser.eval(
                    "js",
                    Resources.toString(
                            Resources.getResource(SearchScriptTest.class, "fake-page.js"), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        browser.eval("js", files.getOrDefault("search-index.js", ""));
        browser.eval("js", files.getOrDefault("search.js", ""));
    }

    private void open() {
        open(SheetFixture.knowledge("front lamp"));
    }

    private JsonNode call(String name, Object... values) {
        Value shown = browser.eval("js", name).execute(values);
        return JSON.readTree(shown.asString());
    }

    private static List<String> names(JsonNode shown) {
        List<String> names = new ArrayList<>();
        shown.get("hits").forEach(hit -> names.add(hit.get("name").asString()));
        return names;
    }

    @Test
    void names_come_before_texts_and_lead_to_their_pages() {
        open();
        JsonNode shown = call("typed", "fuse", "");

        assertThat(names(shown)).startsWith("Fuse open", "New fuse");
        assertThat(shown.get("hits").get(0).get("href").asString()).isEqualTo("cause/fuse-open.html");
        assertThat(shown.get("browse").asBoolean()).isFalse();
        assertThat(shown.get("hash").asString()).isEqualTo("#q=fuse");
    }

    @ParameterizedTest
    @ValueSource(strings = {"FUSE", "fuses", "the fuse", "füse", "ＦＵＳＥ", "fus", " fuse?! "})
    void case_plural_accents_and_fillers_change_nothing(String words) {
        open();
        assertThat(names(call("typed", words, ""))).startsWith("Fuse open");
    }

    @Test
    void a_kind_narrows_it() {
        open();
        assertThat(names(call("typed", "fuse", "fix"))).containsExactly("New fuse");
    }

    @Test
    void what_no_entry_has_is_said() {
        open();
        assertThat(call("typed", "fuse zebra", "").get("status").asString()).startsWith("No entry has all words; ");
        JsonNode none = call("typed", "zebra", "");
        assertThat(none.get("status").asString()).isEqualTo("Nothing found. Try fewer or other words.");
        assertThat(none.get("browse").asBoolean()).isTrue();
        JsonNode empty = call("typed", "  ", "");
        assertThat(empty.get("status").asString()).isEmpty();
        assertThat(empty.get("hash").asString()).isEmpty();
    }

    @Test
    void a_stored_link_leads_to_its_entry() {
        open();
        assertThat(call("opened", "#benchlore:cause/fuse-open").get("gone").asString())
                .isEqualTo("cause/fuse-open.html");
        assertThat(call("opened", "#benchlore:cause/none").get("status").asString())
                .isEqualTo("There is no entry benchlore:cause/none here.");
        assertThat(names(call("opened", "#q=new%20fuse&kind=fix"))).containsExactly("New fuse");
        assertThat(call("opened", "#q=50%").get("typed").asString()).isEqualTo("50%");
    }

    @Test
    void arrows_walk_through_what_was_found() {
        open();
        call("typed", "fuse", "");
        browser.eval("js", "parts.q.focus()");
        assertThat(browser.eval("js", "pressed('ArrowDown')").asString()).isEqualTo("Fuse open");
        assertThat(browser.eval("js", "pressed('ArrowDown')").asString()).isEqualTo("New fuse");
        assertThat(browser.eval("js", "pressed('ArrowUp')").asString()).isEqualTo("Fuse open");
    }

    @Test
    void the_sign_of_a_voltage_counts() {
        open(SheetFixture.knowledge("-12 V rail"));
        assertThat(names(call("typed", "12 V rail", ""))).first().isEqualTo("12 V rail");
        assertThat(names(call("typed", "-12 V rail", ""))).first().isEqualTo("-12 V rail");
        assertThat(names(call("typed", "\u221212V", ""))).first().isEqualTo("-12 V rail");
    }

    /** Java folds the index, the script what is typed: both must cut and fold alike. The page refuses markup. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Überspannung 12V3 ﬁlter",
                "İstanbul ÅNGSTRÖM ½",
                "<img src=x onerror=alert(1)>",
                "</script><script>alert(1)</script>",
                "Widerstand R12: 4k7 (Größe)",
                "конденсатор ёлка"
            })
    void every_name_is_found_by_typing_it(String name) {
        open(SheetFixture.knowledge(name));
        assertThat(names(call("typed", name, "symptom")).get(0)).isEqualToIgnoringCase(name);
    }
}
