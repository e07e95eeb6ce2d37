package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Pack;
import org.benchlore.kb.search.EntryLink;

/** What all pages share: head, way round, foot, and the small pieces that several kinds of entry show. */
final class PageFrame {
    static final String STYLE = "pages.css";
    static final String SCRIPT = "search.js";
    static final String INDEX = "search-index.js";

    /** Only own files; the second form since some browsers know no "self" in a page opened as a file. */
    private static final String OWN = "'self' file:";

    /** From so many sections on a page gets a list of them. */
    private static final int MANY = 4;

    /** Tellings of a cause that its page shows at once. */
    private static final int TOLD_FIRST = 4;

    private static final Map<EntryKind, String> PLURALS = Map.of(
            EntryKind.CAUSE, "Causes",
            EntryKind.SYMPTOM, "Symptoms",
            EntryKind.TEST, "Tests",
            EntryKind.FIX, "Fixes",
            EntryKind.CAUTION, "Cautions",
            EntryKind.DEVICE, "Devices");

    private final Knowledge knowledge;
    private final List<EntryKind> kinds;

    /**
     * A frame for the pages of some packs.
     *
     * @param kinds those that have pages
     */
    PageFrame(Knowledge knowledge, List<EntryKind> kinds) {
        this.knowledge = knowledge;
        this.kinds = List.copyOf(kinds);
    }

    static String plural(EntryKind kind) {
        return PLURALS.getOrDefault(kind, "");
    }

    /** File with the list of a kind. */
    static String listName(EntryKind kind) {
        return plural(kind).toLowerCase(Locale.ROOT) + ".html";
    }

    /** A pack's place in the list of a kind. */
    static String area(EntryKind kind, Pack pack) {
        return listName(kind) + "#area-" + pack.id();
    }

    /**
     * A page.
     *
     * @param root way to the top folder, {@code ../} or empty
     * @param title of the window
     * @param style class of the body
     * @param scripts whether it may run the search
     */
    String page(String root, String title, String style, boolean scripts, String main) {
        Markup page = new Markup();
        page.raw("<!DOCTYPE html>\n<html lang=\"en-GB\">\n<head>\n<meta charset=\"utf-8\" />\n");
        page.raw("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src " + OWN
                + (scripts ? "; script-src " + OWN : "") + "; base-uri 'none'; form-action " + OWN + "\" />\n");
        page.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />\n");
        page.raw("<meta name=\"color-scheme\" content=\"light dark\" />\n");
        page.raw("<meta name=\"referrer\" content=\"no-referrer\" />\n");
        page.element("title", title);
        page.raw("<link rel=\"stylesheet\" href=\"" + root + STYLE + "\" />\n");
        if (scripts) {
            page.raw("<script src=\"" + root + INDEX + "\" defer=\"defer\"></script>\n");
            page.raw("<script src=\"" + root + SCRIPT + "\" defer=\"defer\"></script>\n");
        }
        page.raw("</head>\n<body class=\"" + style + "\">\n<a class=\"skip\" href=\"#main\">Skip to the text</a>\n");
        top(page, root, scripts);
        page.raw("<main id=\"main\">\n" + main + "</main>\n</body>\n</html>\n");
        return page.toString();
    }

    private void top(Markup page, String root, boolean home) {
        page.raw("<header class=\"top\"><div class=\"wide\">\n<a class=\"brand\" href=\"" + root
                + "index.html\">Benchlore</a>\n<nav aria-label=\"Kinds of entry\">");
        for (EntryKind kind : kinds) {
            page.raw(" ").link(root + listName(kind), plural(kind));
        }
        page.raw("</nav>\n");
        if (!home) {
            page.raw(
                    "<form class=\"find\" role=\"search\" method=\"get\" action=\"" + root
                            + "index.html\"><input type=\"search\" name=\"q\" aria-label=\"Search all entries\""
                            + " placeholder=\"Search\" autocomplete=\"off\" spellcheck=\"false\" /><button>Search</button></form>\n");
        }
        page.raw("</div></header>\n");
    }

    /**
     * An entry's page.
     *
     * @param tags small marks over the name
     * @param body all below the name
     */
    String entry(EntryKind kind, String id, String name, List<String> tags, Markup body) {
        Optional<Pack> pack = knowledge.packOf(kind, id);
        Markup main = new Markup();
        main.raw("<article>\n<p class=\"crumbs\">");
        main.link("../" + listName(kind), plural(kind));
        pack.ifPresent(p -> main.raw(" <span aria-hidden=\"true\">›</span> ").link("../" + area(kind, p), p.title()));
        main.raw("</p>\n<h1>").text(Terms.capital(name)).raw("</h1>\n<p class=\"tags\"><span class=\"kind\">");
        main.text(kind.id()).raw("</span>");
        tags.forEach(tag -> main.raw(" <span>").text(tag).raw("</span>"));
        pack.filter(Pack::invented)
                .ifPresent(p -> main.raw(" <span class=\"invented\">invented for demonstration</span>"));
        main.raw("</p>\n");
        jumps(main, body);
        main.raw(body + "<footer>\n<p>Link: <code>")
                .text(new EntryLink(kind.id(), id).uri())
                .raw("</code></p>\n");
        pack.ifPresent(p -> main.raw("<p>")
                .text("From the pack '" + p.title() + "' (" + p.id() + " " + p.version() + ", " + p.licence()
                        + "). Cautions remind; they do not replace training or local rules.")
                .raw("</p>\n"));
        main.raw("</footer>\n</article>\n");
        return page("../", Terms.capital(name) + " - " + kind.id(), "entry " + kind.id(), false, main.toString());
    }

    /** A way to each section of a page that has many. */
    private static void jumps(Markup main, Markup body) {
        if (body.sections().size() >= MANY) {
            main.raw("<nav class=\"jumps\" aria-label=\"On this page\"><ul>\n");
            body.sections()
                    .forEach((anchor, text) ->
                            main.raw("<li>").link("#" + anchor, text).raw("</li>\n"));
            main.raw("</ul></nav>\n");
        }
    }

    /** From one entry's page to another's. */
    static String href(EntryKind kind, String id) {
        return "../" + PageList.path(kind, id);
    }

    /** Cautions in full, each with a link to its page. */
    void cautions(Markup page, Iterable<String> ids) {
        Markup items = new Markup();
        for (String id : ids) {
            knowledge
                    .caution(id)
                    .ifPresent(c -> items.raw("<li>")
                            .raw("<strong>")
                            .link(href(EntryKind.CAUTION, id), PageList.cautionName(id))
                            .raw("</strong> ")
                            .text(c.text())
                            .raw("</li>\n"));
        }
        if (!items.toString().isEmpty()) {
            page.raw("<section class=\"cautions\" aria-label=\"Cautions\">\n<h2 id=\"cautions\">Cautions</h2>\n<ul>\n"
                    + items + "</ul>\n</section>\n");
        }
    }

    /** Names and values. */
    static void facts(Markup page, Map<String, String> facts) {
        page.raw("<dl class=\"facts\">\n");
        facts.forEach((name, value) -> {
            if (!value.isEmpty()) {
                page.raw("<div><dt>").text(name).raw("</dt><dd>").text(value).raw("</dd></div>\n");
            }
        });
        page.raw("</dl>\n");
    }

    /** How people tell of it: the first few, the others to be opened. */
    static void told(Markup page, List<String> told) {
        if (told.isEmpty()) {
            return;
        }
        List<String> first = told.subList(0, Math.min(TOLD_FIRST, told.size()));
        List<String> others = told.subList(first.size(), told.size());
        page.heading(2, "told", "How it is told").list("ul", "told", first);
        if (!others.isEmpty()) {
            page.raw("<details>\n<summary>")
                    .text("In other words (" + others.size() + ")")
                    .raw("</summary>\n")
                    .list("ul", "told", others)
                    .raw("</details>\n");
        }
    }

    /** What misleads, if anything does. */
    static void fools(Markup page, List<String> fools) {
        if (!fools.isEmpty()) {
            page.heading(2, "fools", "What fools people").list("ul", "fools", fools);
        }
    }

    static String scope(DeviceScope scope) {
        return scope.depth() == 0 ? "any device" : scope.toString();
    }
}
