package org.benchlore.kb.report;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * HTML under construction, well-formed as XML. Texts and attribute values go through {@link Escape#html}; {@link #raw} takes
 * only what is written in this package's sources.
 */
final class Markup {
    private final StringBuilder out = new StringBuilder(8192);
    private final Map<String, String> sections = new LinkedHashMap<>();

    /** Markup of ours, as it is. */
    Markup raw(String markup) {
        out.append(markup);
        return this;
    }

    Markup text(String text) {
        return raw(Escape.html(text));
    }

    Markup element(String tag, String text) {
        return raw("<" + tag + ">").text(text).raw("</" + tag + ">\n");
    }

    /** An element with a class. */
    Markup element(String tag, String style, String text) {
        return raw("<" + tag + " class=\"" + style + "\">").text(text).raw("</" + tag + ">\n");
    }

    /** Anchors and texts of the second-level headings so far. */
    Map<String, String> sections() {
        return Collections.unmodifiableMap(sections);
    }

    /** A heading that can be linked to. */
    Markup heading(int level, String anchor, String text) {
        if (level == 2) {
            sections.put(anchor, text);
        }
        return raw("<h" + level + " id=\"").text(anchor).raw("\">").text(text).raw("</h" + level + ">\n");
    }

    Markup link(String href, String text) {
        return raw("<a href=\"").text(href).raw("\">").text(text).raw("</a>");
    }

    /** A list, if there is anything in it. */
    Markup list(String tag, List<String> items) {
        return list(tag, "", items);
    }

    /** A list with a class, if there is anything in it. */
    Markup list(String tag, String style, List<String> items) {
        if (!items.isEmpty()) {
            raw("<" + tag + (style.isEmpty() ? "" : " class=\"" + style + "\"") + ">\n");
            items.forEach(item -> element("li", item));
            raw("</" + tag + ">\n");
        }
        return this;
    }

    /** The start of a table, up to its first row. */
    Markup tableHead(String style, String... heads) {
        raw("<table class=\"" + style + "\">\n<thead><tr>");
        for (String head : heads) {
            raw("<th scope=\"col\">").text(head).raw("</th>");
        }
        return raw("</tr></thead>\n<tbody>\n");
    }

    /** A share as a bar, in steps of a twentieth; its number stands beside it, so readers of the screen skip it. */
    Markup bar(double share) {
        long twentieths = Math.max(1, Math.min(20, Math.round(share * 20)));
        return raw("<span class=\"bar b" + twentieths + "\" aria-hidden=\"true\"></span>");
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
