package org.benchlore.kb.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.benchlore.kb.search.HitKind.CASE;
import static org.benchlore.kb.search.HitKind.CAUSE;
import static org.benchlore.kb.search.HitKind.FIX;
import static org.benchlore.kb.search.HitKind.SYMPTOM;
import static org.benchlore.kb.search.HitKind.TEST;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a search finds, in what order, and how it is told. */
final class SearchIndexTest {
    private static final Finding NO_STANDBY = Finding.of("rail-standby", "absent");
    private static final Finding STANDBY_FINE = Finding.of("rail-standby", "in-tolerance");
    private static final Finding NO_12V = Finding.of("rail-12v", "absent");

    private final SearchIndex index = SearchIndex.inMemory(Bench.knowledge());

    @AfterEach
    void close() {
        index.close();
    }

    @Test
    void a_name_finds_its_entry_first_and_marks_the_words() {
        SearchHit first = first("start resistor");
        assertThat(first.uri()).isEqualTo("benchlore:fix/replace-start-resistor");
        SearchHit cause = hit("start resistor", CAUSE, "standby-converter-dead");
        assertThat(marked(cause)).containsExactly("start", "resistor");
        assertThat(cause.snippet().text()).contains("The start resistor drifts");
    }

    @Test
    void other_names_find_what_speaks_of_the_same_thing() {
        assertThat(uris("5VSB")).contains("benchlore:symptom/rail-standby", "benchlore:cause/standby-converter-dead");
        assertThat(uris("housekeeping supply")).contains("benchlore:test/measure-standby");
    }

    @Test
    void short_forms_and_regional_words_find_the_same_without_a_pack_saying_so() {
        assertThat(uris("trafo stays silent")).startsWith("benchlore:cause/main-converter-dead");
        SearchHit hit = hit("trafo stays silent", CAUSE, "main-converter-dead");
        assertThat(marked(hit)).containsExactly("transformer", "stays", "silent");
    }

    @Test
    void a_word_that_is_most_of_a_name_counts_for_more_than_one_among_many() {
        String pack = Bench.PACK
                .replace("name: Replace the start resistor", "name: Replace the rotor")
                .replace(
                        "Lift the old one and fit a new one of the same power rating.",
                        "Note which way the old one sat and lift it. ".repeat(9))
                .replace(
                        "name: Replace the main switching transistor",
                        "name: Replace, centre and balance the rotor with its shaft and both bushes");
        try (SearchIndex other = SearchIndex.inMemory(Bench.knowledge(pack))) {
            assertThat(other.search(SearchQuery.of("rotor bent").only(FIX)).hits())
                    .extracting(SearchHit::id)
                    .startsWith("replace-start-resistor");
        }
    }

    @Test
    void having_all_that_was_asked_counts_for_more_than_one_word_over_and_over() {
        String pack = Bench.PACK
                .replace("Standby lives, the big transformer stays silent.", "Board, board. ".repeat(10))
                .replace("The diode of the minus branch fails, everything else runs.", """
                        The diode of the minus branch fails. A drop of solder wanders over the board until the next track
                        is joined, so that nobody sees where the current goes; after years of warm and cold the pad lifts,
                        the sleeve tears, the foil curls, the screw turns, the bush slides, and a magpie nest stays.
                        """.replace("\n", " ")
                        .strip());
        try (SearchIndex other = SearchIndex.inMemory(Bench.knowledge(pack))) {
            assertThat(other.search(SearchQuery.of("board magpie nest").only(CAUSE))
                            .hits())
                    .extracting(SearchHit::id)
                    .startsWith("serial-supply-open", "main-converter-dead");
        }
    }

    @Test
    void the_same_findings_in_other_words_find_the_same_entries() {
        List<SearchHit> plain = index.search(SearchQuery.of("no standby")
                        .with(List.of(NO_STANDBY, NO_12V))
                        .only(CAUSE))
                .hits();
        List<SearchHit> other = index.search(SearchQuery.of("purring nowhere")
                        .with(List.of(NO_STANDBY, NO_12V))
                        .only(CAUSE))
                .hits();
        assertThat(plain.get(0).id()).isEqualTo("standby-converter-dead");
        assertThat(other.get(0).id()).isEqualTo("standby-converter-dead");
        assertThat(index.search(SearchQuery.of("")
                                .with(List.of(STANDBY_FINE, NO_12V))
                                .only(CAUSE))
                        .hits()
                        .get(0)
                        .id())
                .isEqualTo("main-converter-dead");
    }

    @Test
    void signs_and_colons_are_words_not_operators() {
        assertThat(first("-12V missing").id()).isEqualTo("rail-minus-12v");
        assertThat(first("+12V").id()).isEqualTo("rail-12v");
        assertThat(first("12 volts").id()).isEqualTo("rail-12v");
        assertThat(uris("12V/5V")).contains("benchlore:symptom/rail-12v");
        index.update(List.of(Bench.open("c1", "any", "R12: open, K-207 in the log")), new Reached(1, "e1"));
        assertThat(uris("R12: open")).contains("benchlore:case/c1");
        assertThat(uris("k207")).containsExactly("benchlore:case/c1");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "*",
                "?",
                "\"",
                "\"unclosed",
                "a AND (",
                "NOT",
                "[1 TO",
                "foo~2^",
                "field:",
                "\\",
                "/re[/",
                "&& || !",
                "\u0000\u0007\u001b[31m",
                "\ud800",
                "🧰 lamp",
                "%$#@",
                "' OR 1=1 --",
                "{!lucene}",
                "...",
                "-",
                "+-+"
            })
    void hostile_words_are_only_words(String words) {
        SearchResult result = index.search(SearchQuery.of(words));
        for (SearchHit hit : result.hits()) {
            assertThat(hit.snippet().text().chars()).noneMatch(Character::isISOControl);
        }
        index.suggest(words, 10);
    }

    @Test
    void words_without_end_are_cut_not_refused() {
        String endless = "standby ".repeat(100_000) + "x".repeat(1_000_000);
        assertThat(uris(endless)).contains("benchlore:symptom/rail-standby");
        assertThat(index.suggest(endless, 10)).isEmpty();
        StringBuilder many = new StringBuilder("standby");
        for (int i = 0; i < 600; i++) {
            many.append(" w").append(i);
        }
        assertThat(uris(many.toString())).contains("benchlore:symptom/rail-standby");
        List<Finding> findings = new ArrayList<>(List.of(NO_12V));
        for (int i = 0; i < 600; i++) {
            findings.add(Finding.soft("s" + i, Map.of("a", 1.0, "b", 0.5)));
        }
        assertThat(index.search(SearchQuery.of(many.toString()).with(findings)).total())
                .isPositive();
        assertThat(index.similar(findings, DeviceScope.ANY, 10)).isEmpty();
        index.update(List.of(Bench.open("c1", "any", endless)), new Reached(1, "e1"));
        assertThat(index.search(SearchQuery.of("standby").only(CASE)).total()).isEqualTo(1);
    }

    @Test
    void nothing_asked_lists_everything_by_id_and_nonsense_nothing() {
        SearchResult all = index.search(SearchQuery.of("  ").page(100, 0));
        assertThat(all.total()).isEqualTo(11);
        assertThat(all.hits()).extracting(SearchHit::id).isSorted();
        assertThat(all.kinds()).isEqualTo(Map.of(SYMPTOM, 4L, CAUSE, 3L, TEST, 2L, FIX, 2L));
        assertThat(index.search(SearchQuery.of("!!! ???")).hits()).isEmpty();
        assertThat(index.search(SearchQuery.of("xylophone")).total()).isZero();
    }

    @Test
    void pages_follow_on() {
        List<String> whole = new ArrayList<>();
        index.search(SearchQuery.of("rail").page(100, 0)).hits().forEach(h -> whole.add(h.uri()));
        List<String> pages = new ArrayList<>();
        for (int offset = 0; offset < whole.size(); offset += 2) {
            index.search(SearchQuery.of("rail").page(2, offset)).hits().forEach(h -> pages.add(h.uri()));
        }
        assertThat(whole).hasSizeGreaterThan(5);
        assertThat(pages).isEqualTo(whole);
    }

    @Test
    void scope_keeps_out_strangers_and_prefers_the_near() {
        index.update(
                List.of(
                        Bench.open("a-near", "disc-player/slim/m2", "ticking noise"),
                        Bench.open("b-inside", "disc-player/slim/m2/r1", "ticking noise"),
                        Bench.open("c-family", "disc-player/slim", "ticking noise"),
                        Bench.open("d-cousin", "disc-player/slim/m3", "ticking noise"),
                        Bench.open("e-any", "any", "ticking noise"),
                        Bench.open("f-stranger", "amplifier", "ticking noise")),
                new Reached(6, "e6"));
        SearchQuery query = SearchQuery.of("ticking noise").in(DeviceScope.parse("disc-player/slim/m2"));
        assertThat(index.search(query).hits())
                .extracting(SearchHit::id)
                .containsExactly("a-near", "b-inside", "c-family", "e-any");
        assertThat(index.search(SearchQuery.of("negative rectifier")
                                .in(DeviceScope.parse("amplifier"))
                                .only(CAUSE))
                        .hits())
                .isEmpty();
        assertThat(index.search(SearchQuery.of("ticking")).scopes())
                .containsEntry(DeviceScope.parse("amplifier"), 1L)
                .hasSize(6);
    }

    @Test
    void outcomes_filter_and_are_counted() {
        index.update(
                List.of(
                        Bench.ended("c1", "any", "hum", "main-converter-dead", Outcome.FIXED, NO_12V),
                        Bench.ended("c2", "any", "hum", "main-converter-dead", Outcome.CAME_BACK, NO_12V),
                        Bench.open("c3", "any", "hum", NO_12V)),
                new Reached(3, "e3"));
        SearchResult all = index.search(SearchQuery.of("hum"));
        assertThat(all.outcomes()).isEqualTo(Map.of(Outcome.FIXED, 1L, Outcome.CAME_BACK, 1L));
        SearchResult back = index.search(SearchQuery.of("").ended(Outcome.CAME_BACK));
        assertThat(back.hits()).extracting(SearchHit::id).containsExactly("c2");
        assertThat(back.hits().get(0).outcome()).contains(Outcome.CAME_BACK);
        assertThat(uris("main converter")).contains("benchlore:case/c1");
    }

    @Test
    void a_changed_case_replaces_itself_and_a_withdrawn_one_goes() {
        index.update(List.of(Bench.open("c1", "any", "ticking")), new Reached(1, "e1"));
        index.update(List.of(Bench.open("c1", "any", "whining")), new Reached(2, "e2"));
        assertThat(uris("ticking")).isEmpty();
        assertThat(uris("whining")).containsExactly("benchlore:case/c1");
        assertThat(index.search(SearchQuery.of("whining")).reached()).isEqualTo(new Reached(2, "e2"));
        index.update(List.of(Bench.withdrawn("c1")), new Reached(3, "e3"));
        assertThat(uris("whining")).isEmpty();
        index.rebuild(
                List.of(Bench.withdrawn("c1"), Bench.open("c2", "any", "whining"))
                        .iterator(),
                new Reached(2, "x2"));
        assertThat(uris("whining")).containsExactly("benchlore:case/c2");
        assertThat(index.reached()).isEqualTo(new Reached(2, "x2"));
    }

    @Test
    void older_news_changes_nothing() {
        index.update(List.of(Bench.open("c1", "any", "ticking")), new Reached(5, "e5"));
        index.update(List.of(Bench.open("c1", "any", "whining")), new Reached(4, "e4"));
        assertThat(index.reached().position()).isEqualTo(5);
        assertThat(uris("whining")).isEmpty();
    }

    @Test
    void equal_hits_come_in_order_of_id_whatever_the_order_they_came_in() {
        List<CaseHistory> cases = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            cases.add(Bench.open(String.format(Locale.ROOT, "c%02d", i), "any", "ticking when warm", NO_12V));
        }
        for (int seed = 0; seed < 5; seed++) {
            List<CaseHistory> shuffled = new ArrayList<>(cases);
            Collections.shuffle(shuffled, new Random(seed));
            try (SearchIndex other = SearchIndex.inMemory(Bench.knowledge())) {
                for (int i = 0; i < shuffled.size(); i += 20) { // several segments
                    other.update(shuffled.subList(i, i + 20), new Reached(i + 1, "e" + i));
                }
                SearchQuery query = SearchQuery.of("ticking")
                        .with(List.of(NO_12V))
                        .only(CASE)
                        .page(100, 0);
                assertThat(other.search(query).hits())
                        .extracting(SearchHit::id)
                        .isSorted()
                        .hasSize(60);
                assertThat(other.similar(List.of(NO_12V), DeviceScope.ANY, 60))
                        .extracting(SearchHit::id)
                        .isSorted();
            }
        }
    }

    @Test
    void similar_cases_share_rare_findings_and_leave_the_case_itself_out() {
        Finding dark = Finding.of("power-lamp", "off");
        CaseHistory here = Bench.open("here", "any", "ticks when warm", NO_STANDBY, dark);
        index.update(
                List.of(
                        here,
                        Bench.open("both", "any", "something else", NO_STANDBY, dark),
                        Bench.open("rare", "any", "something else", NO_STANDBY),
                        Bench.open("common", "any", "something else", dark),
                        Bench.open("words", "any", "ticks when warm"),
                        Bench.open("none", "any", "quite different", STANDBY_FINE)),
                new Reached(6, "e6"));
        assertThat(index.similar(here, 10))
                .extracting(SearchHit::id)
                .startsWith("both", "rare", "common")
                .contains("words")
                .doesNotContain("here", "none");
    }

    @Test
    void a_long_history_does_not_hide_a_case_with_just_these_findings() {
        Finding dark = Finding.of("power-lamp", "off");
        index.update(
                List.of(
                        Bench.open(
                                "a-long", "any", "", NO_STANDBY, dark, NO_12V, Finding.of("rail-minus-12v", "absent")),
                        Bench.open("b-exact", "any", "", NO_STANDBY, dark)),
                new Reached(2, "e2"));
        assertThat(index.similar(List.of(NO_STANDBY, dark), DeviceScope.ANY, 10))
                .extracting(SearchHit::id)
                .containsExactly("b-exact", "a-long");
    }

    private static Optional<String> didYouMean(SearchIndex index, String words) {
        return index.search(SearchQuery.of(words)).didYouMean();
    }

    @Test
    void slips_of_the_pen_are_mended_and_said() {
        SearchResult result = index.search(SearchQuery.of("stanby convreter"));
        assertThat(result.didYouMean()).contains("standby converter");
        assertThat(result.hits().get(0).id()).isEqualTo("standby-converter-dead");
        assertThat(didYouMean(index, "stanby lamp, plase")).contains("standby lamp, plase");
        assertThat(didYouMean(index, "standby")).isEmpty();
        assertThat(didYouMean(index, "R12 12V 5VSB")).isEmpty();
        index.update(List.of(Bench.open("c1", "any", "convreter")), new Reached(1, "e1"));
        assertThat(didYouMean(index, "convreter")).isEmpty(); // somebody writes it so
    }

    @Test
    void suggestions_begin_so_and_names_of_entries_come_first() {
        assertThat(index.suggest("stan", 4))
                .extracting(Suggestion::text)
                .containsExactly(
                        "standby rail", "Standby converter does not start", "Measure the standby rail", "standby lamp");
        assertThat(index.suggest("DEAD as", 5))
                .containsExactly(new Suggestion("dead as a doornail", SYMPTOM, "power-lamp"));
        assertThat(index.suggest("resis", 5)).extracting(Suggestion::kind).containsExactly(FIX);
        assertThat(index.suggest("12v", 9)).extracting(Suggestion::id).contains("rail-12v", "measure-12v");
        assertThat(index.suggest("", 5)).isEmpty();
        assertThat(index.suggest("stnadby", 5)).extracting(Suggestion::text).contains("standby rail");
        assertThat(new HashSet<>(index.suggest("r", 100))).hasSameSizeAs(index.suggest("r", 100));
    }

    @Test
    void snippets_show_the_best_passage_of_a_long_text() {
        String filler = "nothing to see in this part of the story ".repeat(30);
        index.update(
                List.of(Bench.open("c1", "any", filler + "then the purple wire glowed\nand smelt. " + filler)),
                new Reached(1, "e1"));
        SearchHit hit = first("purple wire glowed");
        assertThat(hit.uri()).isEqualTo("benchlore:case/c1");
        assertThat(marked(hit)).containsExactly("purple", "wire", "glowed");
        assertThat(hit.snippet().text()).startsWith("…").endsWith("…").hasSizeLessThan(260);
    }

    @Test
    void snippets_are_whole_sentences_where_they_fit_and_repeat_no_title() {
        String said = "It was fine until March. Then the purple wire glowed. ";
        index.update(
                List.of(
                        Bench.open(
                                "c1", "any", "Rain came in. ".repeat(20) + said + "The end is not known. ".repeat(20)),
                        Bench.ended("c2", "any", "purple lamp", "standby-converter-dead", Outcome.FIXED)),
                new Reached(2, "e2"));
        assertThat(hit("purple wire glowed", CASE, "c1").snippet().text())
                .startsWith("Then the purple wire glowed. The end")
                .endsWith("known.");
        assertThat(hit("purple lamp", CASE, "c2").snippet().text()).isEqualTo("Standby converter does not start");
        assertThat(hit("standby supply", SYMPTOM, "rail-standby").snippet().text())
                .isEqualTo("The always-on supply of controller and lamp, at the supply plug.");
        assertThat(hit("standby housekeeping", SYMPTOM, "rail-standby")
                        .snippet()
                        .text())
                .isEqualTo("housekeeping supply");
    }

    @Test
    void what_people_tell_finds_an_entry_and_its_description_is_shown() {
        String pack = Bench.PACK.replace(
                "per-thousand: 30", "told: [Grandpa's wireless hisses like a goose and sulks.]\n    per-thousand: 30");
        try (SearchIndex other = SearchIndex.inMemory(Bench.knowledge(pack))) {
            SearchHit found =
                    other.search(SearchQuery.of("hisses like a goose")).hits().get(0);
            assertThat(found.id()).isEqualTo("standby-converter-dead");
            assertThat(found.snippet().text()).startsWith("The start resistor drifts");
            SearchHit symptom =
                    other.search(SearchQuery.of("unlit").only(SYMPTOM)).hits().get(0);
            assertThat(symptom.id()).isEqualTo("power-lamp");
            assertThat(symptom.snippet().text()).isEqualTo("The lamp on the front.");
        }
    }

    @Test
    void closing_twice_is_fine_and_use_after_it_is_told() {
        index.close();
        index.close();
        for (Runnable use : List.<Runnable>of(
                () -> index.search(SearchQuery.of("lamp")),
                () -> index.suggest("la", 1),
                () -> index.similar(List.of(NO_12V), DeviceScope.ANY, 1),
                () -> index.reached(),
                () -> index.update(List.of(), Reached.NOTHING))) {
            assertThatThrownBy(use::run)
                    .isInstanceOf(ClosedIndexException.class)
                    .hasMessage("index in memory: the search index is closed; open it again, or close it later");
        }
    }

    @Test
    void a_turkish_machine_finds_the_same() {
        Locale before = Locale.getDefault();
        List<String> here = uris("STANDBY CONVERTER, RAIL MISSING IN IT");
        try {
            Locale.setDefault(new Locale("tr", "TR"));
            try (SearchIndex there = SearchIndex.inMemory(Bench.knowledge())) {
                assertThat(there.search(SearchQuery.of("STANDBY CONVERTER, RAIL MISSING IN IT"))
                                .hits())
                        .extracting(SearchHit::uri)
                        .isEqualTo(here);
                assertThat(there.suggest("RESIS", 5)).hasSize(1);
                assertThat(didYouMean(there, "RESISTR")).contains("resistor");
            }
        } finally {
            Locale.setDefault(before);
        }
        assertThat(here).isNotEmpty();
    }

    @Test
    void links_read_back() {
        EntryLink link = new EntryLink("case", "B7:2026-11.x_y");
        assertThat(EntryLink.parse(link.uri())).contains(link);
        assertThat(new EntryLink("test", "measure-12v").uri()).isEqualTo("benchlore:test/measure-12v");
        for (String wrong : List.of("benchlore:cause", "benchlore:rail/x", "benchlore:cause/")) {
            assertThatThrownBy(() -> EntryLink.parse(wrong)).isInstanceOf(IllegalArgumentException.class);
        }
        assertThat(EntryLink.parse("cause/x")).isEmpty();
        assertThat(EntryLink.parse("benchlore:device/player/corvane/x1").map(EntryLink::id))
                .contains("player/corvane/x1");
        assertThat(HitKind.parse("fix")).isEqualTo(FIX);
    }

    private SearchHit first(String words) {
        return index.search(SearchQuery.of(words)).hits().get(0);
    }

    private SearchHit hit(String words, HitKind kind, String id) {
        return index.search(SearchQuery.of(words).only(kind)).hits().stream()
                .filter(h -> h.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private List<String> uris(String words) {
        return index.search(SearchQuery.of(words)).hits().stream()
                .map(SearchHit::uri)
                .toList();
    }

    private static List<String> marked(SearchHit hit) {
        return hit.snippet().matches().stream()
                .map(m -> hit.snippet().text().substring(m.start(), m.end()))
                .toList();
    }

    @Test
    void a_unit_without_end_keeps_nothing_from_being_found() {
        index.update(List.of(Bench.tagged("c1", "w17 ".repeat(10_000), "ticking")), new Reached(1, "e1"));
        assertThat(uris("ticking")).containsExactly("benchlore:case/c1");
    }
}
