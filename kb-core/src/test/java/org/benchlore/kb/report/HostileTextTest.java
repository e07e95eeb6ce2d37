package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.benchlore.kb.report.Sheets.Format;
import org.benchlore.kb.report.Sheets.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Words from anybody are shown and never obeyed, by a browser, a Markdown renderer or a terminal. */
class HostileTextTest {
    static Stream<String> hostile() {
        return Stream.of(
                "<script>alert(1)</script>",
                "</title></style><script>alert(1)</script>",
                "\"><img src=x onerror=alert(1)> ' onload='alert(1)",
                "</td></table><svg/onload=alert(1)>",
                "&lt;script&gt; &#60;b&#62; &amp;",
                "<!-- hidden --> ]]> <![CDATA[ <?xml ?>",
                "[click](javascript:alert(1)) ![x](http://evil.example/x.png) [r]: http://evil.example",
                "<http://evil.example> http://evil.example/ www.evil.example me@evil.example ftp://evil.example",
                "*bold* _slanted_ **b** `zork` ~~gone~~ $x^2$ | cell | cell",
                "# heading",
                "> quote",
                "- item",
                "1. item",
                "```\nfence\n```",
                "---",
                "    indented\n\n    zork\n===\n***",
                "\\<b\\> \\[x\\](y) \\\\",
                "\u001b[31mred\u001b]0;title\u0007\u001b[2J\u009b31m",
                "\u202eevil\u202c \u2066x\u2069 \u200f\u200e\ufeff \u0622\u0628 \u05d0\u05d1",
                "nul \u0000 bell \u0007 del \u007f \ufffe \ud800 half",
                "w".repeat(5000),
                "line\r\nline\u2028line\u2029line\u0085line\tend");
    }

    private static List<String> sheets(Format format, String words) {
        return sheets(format, words, words);
    }

    private static List<String> sheets(Format format, String inPack, String words) {
        // a pack's own words come through a checker that refuses control characters; the rest of them may be hostile
        boolean plain = inPack.chars().noneMatch(c -> c < 32 || c == 127 || c > 0x7e) && inPack.length() < 200;
        Sheets sheets = plain ? SheetFixture.sheets(inPack) : SheetFixture.sheets();
        return Stream.of(Kind.values())
                .map(kind -> sheets.write(SheetFixture.history(words, words), kind, format))
                .toList();
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void html_holds_only_the_tags_and_attributes_we_write(String words) throws Exception {
        for (String page : sheets(Format.HTML, words)) {
            Harmless.html(page);
        }
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void markdown_renders_to_no_link_no_html_and_the_same_blocks_as_harmless_text(String words) throws Exception {
        List<String> harmless = sheets(Format.MARKDOWN, "front lamp", "harmless");
        // first in the case, then in the pack: in both at once they are alike, which moves the ranking and so the
        // blocks
        assertSameBlocks(harmless, sheets(Format.MARKDOWN, "front lamp", words));
        assertSameBlocks(harmless, sheets(Format.MARKDOWN, words, "harmless"));
    }

    private static void assertSameBlocks(List<String> harmless, List<String> hostile) throws Exception {
        for (int i = 0; i < hostile.size(); i++) {
            Harmless.markdown(hostile.get(i));
            assertThat(Harmless.blocks(hostile.get(i))).isEqualTo(Harmless.blocks(harmless.get(i)));
        }
    }

    @Test
    void plain_text_stays_as_it_was_written() {
        String words = "R12: 4.7 k (was 10 k), -12 V & +5 V fine; 100 % \"ok\" - see pin 3's joint";
        assertThat(Harmless.render(Escape.markdown(words)))
                .isEqualTo("<p>" + words.replace("&", "&amp;").replace("\"", "&quot;") + "</p>\n");
        assertThat(Escape.html("5 < 6 & \"x\"")).isEqualTo("5 &lt; 6 &amp; &quot;x&quot;");
    }
}
