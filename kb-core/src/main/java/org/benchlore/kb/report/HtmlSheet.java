package org.benchlore.kb.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Writes a sheet as one HTML page. Every text goes through {@link Escape#html}; there is no other way in. */
final class HtmlSheet {
    /** Cells up to this long, a date and time among them, are not broken. */
    private static final int SHORT = 16;

    private static final String STYLE = style();

    private final StringBuilder out = new StringBuilder(8192);

    private HtmlSheet() {}

    /**
     * A whole page.
     *
     * @param kind name of a class for the style
     */
    static String write(Sheet sheet, String kind) {
        HtmlSheet html = new HtmlSheet();
        html.head(sheet, kind);
        boolean open = false;
        for (Sheet.Block block : sheet.blocks()) {
            if (block instanceof Sheet.Section section) {
                html.raw(open ? "</section>\n<section>\n" : "<section>\n");
                html.element("h2", section.heading());
                open = true;
            } else {
                html.block(block);
            }
        }
        html.raw(open ? "</section>\n" : "");
        if (!sheet.foot().isEmpty()) {
            html.element("footer", sheet.foot());
        }
        html.raw("</main>\n</body>\n</html>\n");
        return html.out.toString();
    }

    /** The policy lets a browser load and run nothing, should an escape ever fail. */
    private void head(Sheet sheet, String kind) {
        raw("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n");
        raw(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
        raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        raw("<meta name=\"color-scheme\" content=\"light dark\">\n");
        element("title", sheet.title());
        raw("<style>\n" + STYLE + "</style>\n</head>\n<body class=\"" + Escape.html(kind) + "\">\n<main>\n<header>\n");
        element("h1", sheet.title());
        if (!sheet.subtitle().isEmpty()) {
            element("p", sheet.subtitle());
        }
        raw("</header>\n");
    }

    private void block(Sheet.Block block) {
        if (block instanceof Sheet.Words words) {
            element("p", words.text());
        } else if (block instanceof Sheet.Verdict verdict) {
            raw("<p class=\"verdict\">" + Escape.html(verdict.text()) + "</p>\n");
        } else if (block instanceof Sheet.Quote quote) {
            element("blockquote", quote.text());
        } else if (block instanceof Sheet.Facts facts) {
            raw("<dl>\n");
            facts.facts()
                    .forEach(f -> raw("<div><dt>" + Escape.html(f.name()) + "</dt><dd>" + Escape.html(f.value())
                            + "</dd></div>\n"));
            raw("</dl>\n");
        } else if (block instanceof Sheet.Bullets bullets) {
            list("ul", bullets.items());
        } else if (block instanceof Sheet.Warnings warnings) {
            list("ul class=\"warnings\"", warnings.items());
        } else if (block instanceof Sheet.Table table) {
            table(table);
        } else if (block instanceof Sheet.Ranks ranks) {
            figure(RankingPicture.draw(ranks), "Shares of the leading causes after each step that brought findings.");
            legend(ranks);
        } else if (block instanceof Sheet.Events events) {
            figure(
                    EventPicture.draw(events),
                    "Steps of the case in order; long waits are shortened. Numbers as in the list below.");
        } else if (block instanceof Sheet.Log log) {
            figure(LogPicture.draw(log), "Log codes from first to last, by the log's own clock.");
        }
    }

    private void list(String tag, List<String> items) {
        raw("<" + tag + ">\n");
        items.forEach(i -> element("li", i));
        raw("</ul>\n");
    }

    /** Each cell carries its head, for narrow screens on which rows become cards. */
    private void table(Sheet.Table table) {
        raw("<table>\n<thead><tr>");
        table.heads().forEach(h -> raw("<th scope=\"col\">" + Escape.html(h) + "</th>"));
        raw("</tr></thead>\n<tbody>\n");
        for (List<String> row : table.rows()) {
            raw("<tr>");
            for (int i = 0; i < row.size(); i++) {
                String shape = row.get(i).length() <= SHORT ? " class=\"short\"" : "";
                raw("<td" + shape + " data-head=\"" + Escape.html(table.heads().get(i)) + "\">"
                        + Escape.html(row.get(i)) + "</td>");
            }
            raw("</tr>\n");
        }
        raw("</tbody>\n</table>\n");
    }

    private void figure(String svg, String caption) {
        raw("<figure>\n" + svg);
        element("figcaption", caption);
        raw("</figure>\n");
    }

    private void legend(Sheet.Ranks ranks) {
        raw("<ul class=\"legend\">\n");
        for (int i = 0; i < ranks.curves().size(); i++) {
            Sheet.Curve curve = ranks.curves().get(i);
            raw("<li><b class=\"key k" + i + "\">" + RankingPicture.letter(i) + "</b> " + Escape.html(curve.name())
                    + ", " + Escape.html(Terms.share(curve.last())) + "</li>\n");
        }
        raw("</ul>\n");
    }

    private void element(String tag, String text) {
        raw("<" + tag + ">" + Escape.html(text) + "</" + tag + ">\n");
    }

    private void raw(String markup) {
        out.append(markup);
    }

    private static String style() {
        try (InputStream in = HtmlSheet.class.getResourceAsStream("sheet.css")) {
            if (in == null) {
                throw new IllegalStateException("sheet.css is missing from the kb-core jar");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
