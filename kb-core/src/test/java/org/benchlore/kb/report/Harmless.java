package org.benchlore.kb.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.commonmark.ext.autolink.AutolinkExtension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What a sheet may hold, whoever wrote the words in it. */
public final class Harmless {
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

    private Harmless() {}

    /** Only the tags and attributes that we write, and no control characters. */
    public static void html(String page) throws Exception {
        // our pages are well-formed but for void meta tags and the doctype: any text that broke out shows as a tag
        Element root = root(page.replace("<!DOCTYPE html>", "").replaceAll("(<meta [^>]*[^/])>", "$1/>"));
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
        noControls(page);
    }

    /** Only blocks that we write once it is rendered, and no control characters. */
    public static void markdown(String page) throws Exception {
        assertThat(MARKDOWN_TAGS).containsAll(blocks(page));
        noControls(page);
    }

    /** Tags of the rendered text, in order. */
    static List<String> blocks(String markdown) throws Exception {
        NodeList all = root("<x>" + render(markdown) + "</x>").getElementsByTagName("*");
        return Stream.iterate(0, i -> i < all.getLength(), i -> i + 1)
                .map(i -> ((Element) all.item(i)).getTagName())
                .toList();
    }

    static String render(String markdown) {
        var extensions = List.of(AutolinkExtension.create(), TablesExtension.create());
        return HtmlRenderer.builder()
                .extensions(extensions)
                .build()
                .render(Parser.builder().extensions(extensions).build().parse(markdown));
    }

    private static Element root(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(xml)))
                .getDocumentElement();
    }

    private static void noControls(String text) {
        assertThat(text.codePoints().filter(c -> c != '\n')).noneMatch(c -> {
            int type = Character.getType(c);
            return type == Character.CONTROL || type == Character.FORMAT || type == Character.SURROGATE;
        });
    }
}
