package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.search.EntryLink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

class KnowledgePagesTest {
    private static final Set<String> ATTRIBUTES = Set.of(
            "action",
            "aria-controls",
            "aria-hidden",
            "aria-label",
            "autocomplete",
            "charset",
            "checked",
            "class",
            "content",
            "data-head",
            "defer",
            "for",
            "href",
            "http-equiv",
            "id",
            "lang",
            "method",
            "name",
            "open",
            "placeholder",
            "rel",
            "role",
            "scope",
            "spellcheck",
            "src",
            "type",
            "value");

    private static SortedMap<String, String> files(Knowledge knowledge) {
        return new KnowledgePages(knowledge, RankingModel.of(knowledge, RankingSettings.DEFAULT)).files();
    }

    private static SortedMap<String, String> files() {
        return files(SheetFixture.knowledge("front lamp"));
    }

    private static String text(SortedMap<String, String> files, String name) {
        String page = files.get(name);
        assertThat(page).as(name).isNotNull();
        return page == null ? "" : page;
    }

    @Test
    void every_entry_has_a_page_where_its_link_says() {
        SortedMap<String, String> files = files();

        for (EntryLink link : List.of(
                new EntryLink("cause", "fuse-open"),
                new EntryLink("symptom", "rail-12v"),
                new EntryLink("test", "measure-rail"),
                new EntryLink("fix", "new-fuse"),
                new EntryLink("caution", "mains"))) {
            String path = link.uri().substring("benchlore:".length()) + ".html";
            assertThat(text(files, path)).contains("<code>" + link.uri() + "</code>");
        }
        assertThat(files)
                .containsKeys(
                        "index.html",
                        "causes.html",
                        "device/player.corvane.html",
                        "pages.css",
                        "search.js",
                        "search-index.js");
    }

    @Test
    void the_same_packs_give_the_same_bytes() {
        assertThat(files()).isEqualTo(files());
    }

    @Test
    void a_cause_says_how_often_in_words_and_numbers_and_where_they_come_from() {
        String page = text(files(), "cause/fuse-open.html");

        assertThat(page)
                .contains("200 of 1000 units that come in (memory, worth 20 cases)")
                .contains("<b>absent</b> nearly always, 95 % <span class=\"usual\">any unit 15 %</span>")
                .contains("memory, 4 cases")
                .contains("Works nearly always, 90 % (memory)")
                .contains("Expect 12 V rail: absent")
                .contains("Mains can kill. Unplug first.")
                .contains("Extract at the joint.")
                .as("cautions of its test and fix stand before the findings")
                .containsSubsequence("Mains can kill", "What it shows", "Confirm with", "Fix with");
    }

    @Test
    void a_symptom_says_what_each_state_speaks_for() {
        String page = text(files(), "symptom/rail-12v.html");

        assertThat(page)
                .contains("12 V ± 5 %")
                .contains("1.2 V to 11.4 V · in any unit 5 %")
                .contains("below 1.2 V · in any unit 15 %")
                .containsSubsequence("id=\"state-absent\"", "Fuse open", "id=\"state-low\"", "Regulator tired");
    }

    @Test
    void every_link_leads_somewhere() throws Exception {
        SortedMap<String, String> files = files();
        Map<String, Set<String>> anchors = new HashMap<>();
        List<String> links = new ArrayList<>();
        for (var file : files.entrySet()) {
            if (!file.getKey().endsWith(".html")) {
                continue;
            }
            Set<String> ids = new HashSet<>();
            for (Element element : elements(parse(file.getValue()))) {
                if (element.hasAttribute("id")) {
                    assertThat(ids.add(element.getAttribute("id")))
                            .as("once in " + file.getKey())
                            .isTrue();
                }
                for (String name : List.of("href", "src", "action")) {
                    if (element.hasAttribute(name)) {
                        links.add(target(file.getKey(), element.getAttribute(name)));
                    }
                }
            }
            anchors.put(file.getKey(), ids);
        }
        assertThat(links).hasSizeGreaterThan(100).allSatisfy(link -> {
            String[] parts = link.split("#", -1);
            assertThat(files).containsKey(parts[0]);
            if (parts.length > 1) {
                assertThat(anchors.getOrDefault(parts[0], Set.of())).as(link).contains(parts[1]);
            }
        });
    }

    private static String target(String page, String href) {
        if (href.startsWith("#")) {
            return page + href;
        }
        return href.startsWith("../") ? href.substring(3) : href;
    }

    @Test
    void only_the_front_page_runs_a_script_and_none_loads_anything_from_elsewhere() {
        files().forEach((name, text) -> {
            assertThat(text).as(name).doesNotContain("http:", "https:", "//www", "innerHTML", "eval(");
            if (name.endsWith(".html")) {
                assertThat(text)
                        .contains("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
                        .doesNotContain("unsafe-inline");
                assertThat(text.contains("<script")).as(name).isEqualTo(name.equals("index.html"));
            }
        });
    }

    @Test
    void the_search_finds_by_folded_words() {
        String script = text(files(), "search-index.js");
        String json = script.substring(script.indexOf('{'), script.lastIndexOf(';'));
        JsonNode index = JsonMapper.builder().build().readTree(json);

        List<String> symptoms = new ArrayList<>();
        index.get("entries").forEach(entry -> {
            if (index.get("kinds").get(entry.get(0).asInt()).asString().equals("symptom")) {
                symptoms.add(entry.get(1).asString() + ": " + entry.get(2).asString());
            }
        });
        assertThat(symptoms).containsExactly("rail-12v: 12 V rail", "lamp: Front lamp", "log-trip: Trip code");
        assertThat(SearchData.folded("12V, Größe: 4k7 µF ﬁne"))
                .containsExactly("12", "v", "große", "4", "k", "7", "μf", "fine");
        assertThat(SearchData.folded("I\u0307 İ")).containsExactly("i", "i");
    }

    static Stream<String> hostile() {
        return HostileTextTest.hostile()
                .filter(words -> words.length() < 160)
                .filter(words -> words.codePoints().noneMatch(c -> {
                    int type = Character.getType(c); // the reader of packs refuses these
                    return type == Character.CONTROL
                            || type == Character.FORMAT
                            || type == Character.SURROGATE
                            || c > 0x2000;
                }));
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void words_of_a_pack_are_shown_and_never_obeyed(String words) throws Exception {
        SortedMap<String, String> files = files(SheetFixture.spoilt(words));
        assertThat(files.keySet()).isEqualTo(new TreeSet<>(files().keySet()));
        for (var file : files.entrySet()) {
            if (file.getKey().endsWith(".html")) {
                harmless(file.getKey(), parse(file.getValue()), parse(text(files(), file.getKey())));
            }
        }
        assertThat(text(files, "search-index.js")).doesNotContain("<", ">", "\u2028", "\u2029");
    }

    /** The same elements as with harmless words, and only attributes of ours. */
    private static void harmless(String name, Document hostile, Document plain) {
        List<Element> elements = elements(hostile);
        assertThat(elements.stream().map(Element::getTagName))
                .as(name)
                .containsExactlyElementsOf(
                        elements(plain).stream().map(Element::getTagName).toList());
        for (Element element : elements) {
            for (int a = 0; a < element.getAttributes().getLength(); a++) {
                assertThat(ATTRIBUTES).contains(element.getAttributes().item(a).getNodeName());
            }
            assertThat(element.getAttribute("href")).matches("(\\.\\./)?[a-z0-9./-]*(#[a-z0-9-]+)?");
        }
    }

    /** Pages are well-formed but for the doctype. */
    private static Document parse(String page) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(page.replace("<!DOCTYPE html>\n", ""))));
    }

    private static List<Element> elements(Document page) {
        NodeList all = page.getElementsByTagName("*");
        return Stream.iterate(0, i -> i < all.getLength(), i -> i + 1)
                .map(i -> (Element) all.item(i))
                .toList();
    }
}
