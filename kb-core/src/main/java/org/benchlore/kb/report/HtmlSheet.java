package org.benchlore.kb.report;

import java.util.List;

/** Writes a sheet as one HTML page. */
final class HtmlSheet {
    /** Cells up to this long, a date and time among them, are not broken. */
    private static final int SHORT = 16;

    private static final String STYLE = KnowledgePages.resource("sheet.css");

    private final Markup out = new Markup();

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
                html.out.raw(open ? "</section>\n<section>\n" : "<section>\n");
                html.out.element("h2", section.heading());
                open = true;
            } else {
                html.block(block);
            }
        }
        html.out.raw(open ? "</section>\n" : "");
        if (!sheet.foot().isEmpty()) {
            html.out.element("footer", sheet.foot());
        }
        html.out.raw("</main>\n</body>\n</html>\n");
        return html.out.toString();
    }

    /** The policy lets a browser load and run nothing, should an escape ever fail. */
    private void head(Sheet sheet, String kind) {
        out.raw("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\">\n");
        out.raw(
                "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n");
        out.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
        out.raw("<meta name=\"color-scheme\" content=\"light dark\">\n");
        out.element("title", sheet.title());
        out.raw("<style>\n" + STYLE + "</style>\n</head>\n<body class=\"" + Escape.html(kind)
                + "\">\n<main>\n<header>\n");
        out.element("h1", sheet.title());
        if (!sheet.subtitle().isEmpty()) {
            out.element("p", sheet.subtitle());
        }
        out.raw("</header>\n");
    }

    private void block(Sheet.Block block) {
        if (block instanceof Sheet.Words words) {
            out.element("p", words.text());
        } else if (block instanceof Sheet.Verdict verdict) {
            out.element("p", "verdict", verdict.text());
        } else if (block instanceof Sheet.Quote quote) {
            out.element("blockquote", quote.text());
        } else if (block instanceof Sheet.Facts facts) {
            out.raw("<dl>\n");
            facts.facts()
                    .forEach(f -> out.raw("<div><dt>")
                            .text(f.name())
                            .raw("</dt><dd>")
                            .text(f.value())
                            .raw("</dd></div>\n"));
            out.raw("</dl>\n");
        } else if (block instanceof Sheet.Bullets bullets) {
            out.list("ul", bullets.items());
        } else if (block instanceof Sheet.Warnings warnings) {
            out.list("ul", "warnings", warnings.items());
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

    /** Each cell carries its head, for narrow screens on which rows become cards. */
    private void table(Sheet.Table table) {
        out.raw("<table>\n<thead><tr>");
        table.heads().forEach(h -> out.raw("<th scope=\"col\">").text(h).raw("</th>"));
        out.raw("</tr></thead>\n<tbody>\n");
        for (List<String> row : table.rows()) {
            out.raw("<tr>");
            for (int i = 0; i < row.size(); i++) {
                String shape = row.get(i).length() <= SHORT ? " class=\"short\"" : "";
                out.raw("<td" + shape + " data-head=\"")
                        .text(table.heads().get(i))
                        .raw("\">")
                        .text(row.get(i))
                        .raw("</td>");
            }
            out.raw("</tr>\n");
        }
        out.raw("</tbody>\n</table>\n");
    }

    private void figure(String svg, String caption) {
        out.raw("<figure>\n" + svg);
        out.element("figcaption", caption);
        out.raw("</figure>\n");
    }

    private void legend(Sheet.Ranks ranks) {
        out.raw("<ul class=\"legend\">\n");
        for (int i = 0; i < ranks.curves().size(); i++) {
            Sheet.Curve curve = ranks.curves().get(i);
            out.raw("<li><b class=\"key k" + i + "\">" + RankingPicture.letter(i) + "</b> ")
                    .text(curve.name() + ", " + Terms.share(curve.last()))
                    .raw("</li>\n");
        }
        out.raw("</ul>\n");
    }
}
