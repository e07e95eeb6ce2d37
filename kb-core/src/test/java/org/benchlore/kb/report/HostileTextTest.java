package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.benchlore.kb.report.Sheets.Format;
import org.benchlore.kb.report.Sheets.Kind;
import org.commonmark.ext.autolink.AutolinkExtension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Words from anybody are shown and never obeyed, by a browser, a Markdown renderer or a terminal. */
class HostileTextTest {
    private static final Set<String> TAGS = Set.of(
            "html",
            "head",
            "meta",
            "title",
            "style",
            "body",
            "main",
            "header",
            "section",
            "footer",
            "h1",
            "h2",
            "p",
            "b",
            "dl",
            "div",
            "dt",
            "dd",
            "ul",
            "li",
            "blockquote",
            "table",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "figure",
            "figcaption",
            "svg",
            "line",
            "circle",
            "rect",
            "path",
            "text");

    private static final Set<String> MARKDOWN_TAGS = Set.of(
            "x",
            "h1",
            "h2",
            "p",
            "ul",
            "ol",
            "li",
            "blockquote",
            "table",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "strong",
            "hr");

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
            // our pages are well-formed but for void meta tags and the doctype: any text that broke out shows as a tag
            String xml = page.replace("<!DOCTYPE html>", "").replaceAll("(<meta [^>]*[^/])>", "$1/>");
            Element root = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(xml)))
                    .getDocumentElement();
            NodeList all = root.getElementsByTagName("*");
            for (int i = 0; i < all.getLength(); i++) {
                Element element = (Element) all.item(i);
                assertThat(TAGS).contains(element.getTagName());
                for (int a = 0; a < element.getAttributes().getLength(); a++) {
                    assertThat(element.getAttributes().item(a).getNodeName()).doesNotStartWith("on");
                    assertThat(element.getAttributes().item(a).getNodeName()).isNotIn("href", "src", "style");
                }
            }
            assertThat(root.getElementsByTagName("style").getLength()).isOne();
            assertNoControls(page);
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
            List<String> tags = tags(render(hostile.get(i)));
            assertThat(MARKDOWN_TAGS).containsAll(tags);
            assertThat(tags).isEqualTo(tags(render(harmless.get(i))));
            assertNoControls(hostile.get(i));
        }
    }

    private static String render(String markdown) {
        var extensions = List.of(AutolinkExtension.create(), TablesExtension.create());
        return HtmlRenderer.builder()
                .extensions(extensions)
                .build()
                .render(Parser.builder().extensions(extensions).build().parse(markdown));
    }

    private static List<String> tags(String html) throws Exception {
        NodeList all = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader("<x>" + html + "</x>")))
                .getElementsByTagName("*");
        return Stream.iterate(0, i -> i < all.getLength(), i -> i + 1)
                .map(i -> ((Element) all.item(i)).getTagName())
                .toList();
    }

    private static void assertNoControls(String text) {
        assertThat(text.codePoints().filter(c -> c != '\n')).noneMatch(c -> {
            int type = Character.getType(c);
            return type == Character.CONTROL || type == Character.FORMAT || type == Character.SURROGATE;
        });
    }

    @Test
    void plain_text_stays_as_it_was_written() {
        String words = "R12: 4.7 k (was 10 k), -12 V & +5 V fine; 100 % \"ok\" - see pin 3's joint";
        assertThat(render(Escape.markdown(words)))
                .isEqualTo("<p>" + words.replace("&", "&amp;").replace("\"", "&quot;") + "</p>\n");
        assertThat(Escape.html("5 < 6 & \"x\"")).isEqualTo("5 &lt; 6 &amp; &quot;x&quot;");
    }
}
