package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.function.Consumer;
import org.benchlore.kb.search.SearchHit;
import org.junit.jupiter.api.Test;

class PageTest {
    private static List<String> printed(Consumer<Page> what) {
        StringWriter out = new StringWriter();
        what.accept(new Page(new PrintWriter(out), false));
        return out.toString().lines().toList();
    }

    @Test
    void an_interval_has_no_end_that_rounds_to_nothing_or_to_all() {
        assertThat(Page.range(.001, .002)).isEqualTo("under 1 %");
        assertThat(Page.range(.001, .97)).isEqualTo("under 97 %");
        assertThat(Page.range(.03, .4)).isEqualTo("between 3 % and 40 %");
        assertThat(Page.range(.96, .999)).isEqualTo("over 96 %");
        assertThat(Page.range(.995, .999)).isEqualTo("over 99 %");
        assertThat(Page.range(.001, .999)).isEqualTo("anywhere");
    }

    @Test
    void private_use_characters_of_a_text_set_nothing_off() {
        assertThat(printed(page -> page.text(0, "hum \uE000loud\uE001 \uE0FF")))
                .containsExactly("hum \uFFFDloud\uFFFD \uFFFD");
        SearchHit.Snippet snippet = new SearchHit.Snippet("a \uE000hum", List.of(new SearchHit.Match(3, 6)));
        assertThat(printed(page -> page.marked(0, snippet))).containsExactly("a \uFFFD*hum*");
    }

    @Test
    void a_figure_and_its_sign_stay_on_one_line() {
        String text = "x".repeat(74) + " (79 %), +30.7 dB, 12 V";
        assertThat(printed(page -> page.text(0, text))).containsExactly("x".repeat(74), "(79 %), +30.7 dB, 12 V");
    }

    @Test
    void a_message_is_wrapped_and_cuts_no_path() {
        String path = "/home/" + "p".repeat(90);
        assertThat(printed(page -> page.message("wrote " + path + " and more")))
                .containsExactly("benchlore: wrote", "  " + path, "  and more");
    }

    @Test
    void headings_and_words_longer_than_a_line_stay_within_80_columns() {
        String name = "Proof of: Replace the part that fails at temperature [replace-thermal-intermittent-part]";
        assertThat(printed(page -> page.heading(name)))
                .containsExactly(name.substring(0, name.indexOf(" [")), "  " + name.substring(name.indexOf("[")));
        List<String> lines = printed(page -> page.hanging(2, 4, "unit " + "W".repeat(300) + " it was"));
        assertThat(lines).allMatch(line -> line.length() <= 80);
        assertThat(String.join("", lines).replace(" ", "")).isEqualTo("unit" + "W".repeat(300) + "itwas");
    }
}
