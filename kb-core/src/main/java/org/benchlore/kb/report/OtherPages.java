package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.Caution;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;

/** Cautions with what they guard, device families with their own names for things. */
final class OtherPages {
    private final Knowledge knowledge;
    private final PageFrame frame;
    private final Terms terms;

    OtherPages(Knowledge knowledge, PageFrame frame) {
        this.knowledge = knowledge;
        this.frame = frame;
        this.terms = new Terms(knowledge);
    }

    String caution(Caution caution) {
        Markup page = new Markup();
        page.raw("<section class=\"cautions\">\n<p>").text(caution.text()).raw("</p>\n</section>\n");
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Hazard", Hazards.name(caution.hazard()));
        facts.put("From", caution.from().text());
        PageFrame.facts(page, facts);
        List<Named> tests = new ArrayList<>();
        knowledge.tests().stream()
                .filter(t -> t.cautions().contains(caution.id()))
                .forEach(t -> tests.add(new Named(t.id(), t.name())));
        List<Named> fixes = new ArrayList<>();
        knowledge.fixes().stream()
                .filter(f -> f.cautions().contains(caution.id()))
                .forEach(f -> fixes.add(new Named(f.id(), f.name())));
        List<Named> causes = new ArrayList<>();
        knowledge.causes().stream()
                .filter(c -> c.cautions().contains(caution.id()))
                .forEach(c -> causes.add(new Named(c.id(), c.name())));
        named(page, EntryKind.CAUSE, causes);
        named(page, EntryKind.TEST, tests);
        named(page, EntryKind.FIX, fixes);
        return frame.entry(EntryKind.CAUTION, caution.id(), PageList.cautionName(caution.id()), List.of(), page);
    }

    private record Named(String id, String name) {}

    private static void named(Markup page, EntryKind kind, List<Named> entries) {
        if (entries.isEmpty()) {
            return;
        }
        page.raw("<details open=\"open\">\n<summary>")
                .text(PageFrame.plural(kind) + " with this caution (" + entries.size() + ")")
                .raw("</summary>\n<ul class=\"columns\">\n");
        entries.forEach(entry -> page.raw("<li>")
                .link(PageFrame.href(kind, entry.id()), Terms.capital(entry.name()))
                .raw("</li>\n"));
        page.raw("</ul>\n</details>\n");
    }

    String device(Device device) {
        Markup page = new Markup();
        String scope = device.scope().toString();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Scope", scope);
        facts.put("Called", String.join(", ", device.called()));
        facts.put("Called so at the start of a note", String.join(", ", device.calledFirst()));
        facts.put("May hold", PageList.parts(device.has()));
        device.openingMinutes().ifPresent(m -> facts.put("Opening and closing", PageList.minutes(m)));
        PageFrame.facts(page, facts);
        rows(
                page,
                "codes",
                "Log codes",
                List.of("Code", "Means", "Also without a fault"),
                device.codes().stream()
                        .map(c -> new Row(
                                c.code() + (c.spelled().isEmpty() ? "" : " (" + String.join(", ", c.spelled()) + ")"),
                                c.symptomId(),
                                "",
                                List.of(c.means(), c.innocent())))
                        .toList());
        rows(
                page,
                "lamps",
                "Lamps",
                List.of("Says"),
                device.lamps().stream()
                        .map(l -> new Row(String.join(", ", l.says()), l.symptomId(), l.stateId(), List.of()))
                        .toList());
        rows(
                page,
                "nets",
                "Nets",
                List.of("Net"),
                device.nets().stream()
                        .map(n -> new Row(n.net(), n.symptomId(), "", List.of()))
                        .toList());
        if (!device.logLines().isEmpty()) {
            page.heading(2, "log-lines", "Log lines").raw("<ul>\n");
            device.logLines()
                    .forEach(l -> page.raw("<li>")
                            .text(l.id() + ": ")
                            .raw("<code>")
                            .text(l.pattern())
                            .raw("</code></li>\n"));
            page.raw("</ul>\n");
        }
        List<String> counters = device.counters().stream()
                .map(c -> c.counter() + ": " + Terms.words(c.means()))
                .toList();
        if (!counters.isEmpty()) {
            page.heading(2, "counters", "Counters").list("ul", counters);
        }
        List<Named> own = knowledge.causes().stream()
                .filter(c -> c.scope().depth() > 0 && device.scope().contains(c.scope()))
                .map(c -> new Named(c.id(), c.name()))
                .toList();
        if (!own.isEmpty()) {
            page.heading(2, "causes", "Causes of its own").raw("<ul class=\"cards\">\n");
            own.forEach(c -> page.raw("<li>")
                    .link(PageFrame.href(EntryKind.CAUSE, c.id()), Terms.capital(c.name()))
                    .raw("</li>\n"));
            page.raw("</ul>\n");
        }
        return frame.entry(EntryKind.DEVICE, scope, device.name(), List.of(), page);
    }

    private record Row(String name, String symptomId, String stateId, List<String> more) {
        Row {
            more = List.copyOf(more);
        }
    }

    /** A table whose second column is the symptom that a name stands for. */
    private void rows(Markup page, String anchor, String heading, List<String> heads, List<Row> rows) {
        if (rows.isEmpty()) {
            return;
        }
        List<String> all = new ArrayList<>(heads);
        all.add(1, "Symptom");
        page.heading(2, anchor, heading).tableHead("names", all.toArray(String[]::new));
        for (Row row : rows) {
            page.raw("<tr><td data-head=\"").text(all.get(0)).raw("\">").text(row.name());
            page.raw("</td><td data-head=\"Symptom\">");
            String state = row.stateId().isEmpty() ? "" : ": " + terms.state(row.symptomId(), row.stateId());
            page.link(PageFrame.href(EntryKind.SYMPTOM, row.symptomId()), terms.symptom(row.symptomId()) + state);
            for (int i = 0; i < row.more().size(); i++) {
                page.raw("</td><td data-head=\"")
                        .text(all.get(i + 2))
                        .raw("\">")
                        .text(row.more().get(i));
            }
            page.raw("</td></tr>\n");
        }
        page.raw("</tbody>\n</table>\n");
    }
}
