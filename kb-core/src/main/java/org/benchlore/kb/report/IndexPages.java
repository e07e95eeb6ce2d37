package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Pack;

/** The front page with search and counts, and one list for each kind of entry, by area. */
final class IndexPages {
    private static final List<EntryKind> MAIN =
            List.of(EntryKind.CAUSE, EntryKind.SYMPTOM, EntryKind.TEST, EntryKind.FIX);

    private final Knowledge knowledge;
    private final PageList list;
    private final PageFrame frame;

    IndexPages(Knowledge knowledge, PageList list, PageFrame frame) {
        this.knowledge = knowledge;
        this.list = list;
        this.frame = frame;
    }

    String front() {
        Markup page = new Markup();
        page.raw("<h1>What the bench knows</h1>\n");
        page.element(
                "p",
                "lead",
                "Symptoms, causes, tests and fixes for repair, with how often and how sure. Type what you see, what you"
                        + " measure, or the part you suspect.");
        search(page);
        page.raw("<div id=\"browse\">\n").heading(2, "areas", "By area");
        page.tableHead("areas", "Area", "Causes", "Symptoms", "Tests", "Fixes");
        for (Pack pack : knowledge.packs()) {
            if (MAIN.stream().anyMatch(kind -> !list.of(kind, pack).isEmpty())) {
                area(page, pack);
            }
        }
        page.raw("</tbody>\n<tfoot><tr><th scope=\"row\">All</th>");
        for (EntryKind kind : MAIN) {
            page.raw("<td data-head=\"" + PageFrame.plural(kind) + "\">")
                    .link(
                            PageFrame.listName(kind),
                            Integer.toString(list.of(kind).size()))
                    .raw("</td>");
        }
        page.raw("</tr></tfoot>\n</table>\n");
        names(page, EntryKind.CAUTION);
        names(page, EntryKind.DEVICE);
        page.raw("</div>\n<footer>\n");
        page.element(
                "p",
                "Each number says where it comes from. Those from memory are opinions of the packs' authors; a bench's own"
                        + " cases outvote them. Cautions remind; they do not replace training or local rules.");
        page.raw("</footer>\n");
        return frame.page("", "What the bench knows", "front", true, page.toString());
    }

    private static void search(Markup page) {
        page.raw("""
                <form class="find" id="search" role="search" method="get" action="index.html">
                <label for="q">Search</label>
                <input type="search" id="q" name="q" autocomplete="off" spellcheck="false" aria-controls="results" />
                <fieldset><legend>Only</legend>
                <label><input type="radio" name="kind" value="" checked="checked" /> All</label>
                """);
        for (EntryKind kind : MAIN) {
            page.raw("<label><input type=\"radio\" name=\"kind\" value=\"" + kind.id() + "\" /> "
                    + PageFrame.plural(kind) + "</label>\n");
        }
        page.raw("""
                </fieldset>
                </form>
                <noscript><p class="note">Search needs JavaScript; the lists below do not.</p></noscript>
                <p id="status" role="status"></p>
                <ol id="results"></ol>
                """);
    }

    private void area(Markup page, Pack pack) {
        page.raw("<tr><th scope=\"row\">").text(pack.title());
        page.raw("<span>").text(pack.about()).raw("</span></th>");
        for (EntryKind kind : MAIN) {
            int count = list.of(kind, pack).size();
            page.raw("<td data-head=\"" + PageFrame.plural(kind) + "\">");
            if (count > 0) {
                page.link(PageFrame.area(kind, pack), Integer.toString(count));
            }
            page.raw("</td>");
        }
        page.raw("</tr>\n");
    }

    /** A kind with few entries, by name. */
    private void names(Markup page, EntryKind kind) {
        List<PageList.Item> items = list.of(kind);
        if (items.isEmpty()) {
            return;
        }
        page.heading(2, kind.id(), PageFrame.plural(kind)).raw("<ul class=\"inline\">\n");
        items.forEach(item -> page.raw("<li>").link(item.path(), item.name()).raw("</li>\n"));
        page.raw("</ul>\n");
    }

    /** All entries of a kind, by area and name. */
    String list(EntryKind kind) {
        Markup page = new Markup();
        String plural = PageFrame.plural(kind);
        page.raw("<h1>")
                .text(plural)
                .raw(" <span class=\"count\">" + list.of(kind).size() + "</span></h1>\n");
        List<Pack> areas = knowledge.packs().stream()
                .filter(pack -> !list.of(kind, pack).isEmpty())
                .toList();
        page.raw("<nav class=\"areas\" aria-label=\"Areas\"><ul class=\"inline\">\n");
        areas.forEach(pack ->
                page.raw("<li>").link("#area-" + pack.id(), pack.title()).raw("</li>\n"));
        page.raw("</ul></nav>\n");
        for (Pack pack : areas) {
            List<PageList.Item> items = list.of(kind, pack);
            page.raw("<section>\n<h2 id=\"area-").text(pack.id()).raw("\">").text(pack.title());
            page.raw(" <span class=\"count\">" + items.size() + "</span></h2>\n<ul class=\"columns\">\n");
            for (PageList.Item item : items) {
                page.raw("<li>").link(item.path(), item.name());
                if (!item.note().isEmpty()) {
                    page.raw(" <span>").text(item.note()).raw("</span>");
                }
                page.raw("</li>\n");
            }
            page.raw("</ul>\n</section>\n");
        }
        return frame.page("", plural, "list", false, page.toString());
    }
}
