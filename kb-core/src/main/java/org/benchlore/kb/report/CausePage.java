package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.HowOften;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.QualityReport.Neighbour;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** A cause: what it shows and how often, how to confirm and mend it, what misleads. */
final class CausePage {
    /** States below this are left out, but for the likeliest one. */
    private static final double WORTH_SAYING = 0.05;

    private final Knowledge knowledge;
    private final PageFrame frame;
    private final Map<String, List<Neighbour>> alike;

    /**
     * For all causes of some packs.
     *
     * @param alike by cause, those that tests hardly tell from it
     */
    CausePage(Knowledge knowledge, PageFrame frame, Map<String, List<Neighbour>> alike) {
        this.knowledge = knowledge;
        this.frame = frame;
        this.alike = Map.copyOf(alike);
    }

    String write(Cause cause) {
        Markup page = new Markup();
        page.element("p", "lead", cause.about());
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put(
                "How common",
                PageList.number(cause.perThousand()) + " of 1000 units that come in ("
                        + cause.from().text() + ", worth " + PageList.number(cause.cases()) + " cases)");
        facts.put("Where", PageFrame.scope(cause.scope()));
        facts.put("Needs", PageList.parts(cause.needs()));
        facts.put("Also called", String.join(", ", cause.aliases()));
        PageFrame.facts(page, facts);
        frame.cautions(page, hazards(cause));
        findings(page, cause);
        page.raw("<div class=\"pair\">\n");
        tests(page, cause);
        fixes(page, cause);
        page.raw("</div>\n");
        PageFrame.fools(page, cause.fools());
        PageFrame.told(page, cause.told());
        neighbours(page, cause);
        String kind = cause.kind() == Cause.Kind.INNOCENT ? "nothing is broken" : "a fault";
        return frame.entry(EntryKind.CAUSE, cause.id(), cause.name(), List.of(kind), page);
    }

    /** Of the cause, its tests and its fixes, each once. */
    private Set<String> hazards(Cause cause) {
        Set<String> ids = new LinkedHashSet<>(cause.cautions());
        cause.confirmedBy().forEach(id -> knowledge.test(id).ifPresent(test -> ids.addAll(test.cautions())));
        cause.fixedBy().forEach(remedy -> knowledge.fix(remedy.fixId()).ifPresent(fix -> ids.addAll(fix.cautions())));
        return ids;
    }

    private record Shown(Link link, Symptom symptom, boolean amiss, double telling) {}

    /** What is out of order first, then what stays in order; in each the most telling first. */
    private void findings(Markup page, Cause cause) {
        List<Shown> shown = new ArrayList<>();
        for (Link link : cause.shows()) {
            knowledge.symptom(link.symptomId()).ifPresent(s -> {
                double normal =
                        link.states().getOrDefault(s.normal().id(), s.normal().usual());
                shown.add(new Shown(link, s, normal <= s.normal().usual(), divergence(link, s)));
            });
        }
        shown.sort(Comparator.comparingDouble((Shown s) -> -s.telling())
                .thenComparing(s -> s.symptom().id()));
        table(
                page,
                "shows",
                "What it shows",
                shown.stream().filter(Shown::amiss).toList());
        table(
                page,
                "in-order",
                "What stays in order",
                shown.stream().filter(s -> !s.amiss()).toList());
    }

    /** How far the cause moves a symptom from what any unit shows, in nats (Kullback and Leibler 1951). */
    private static double divergence(Link link, Symptom symptom) {
        double sum = 0;
        for (State state : symptom.states()) {
            double p = link.states().getOrDefault(state.id(), state.usual());
            sum += p * Math.log(p / state.usual());
        }
        return sum;
    }

    private static void table(Markup page, String anchor, String heading, List<Shown> rows) {
        if (rows.isEmpty()) {
            return;
        }
        page.heading(2, anchor, heading).tableHead("findings", "Symptom", "State and how often", "From");
        for (Shown row : rows) {
            page.raw("<tr><td data-head=\"Symptom\">")
                    .link(
                            PageFrame.href(EntryKind.SYMPTOM, row.symptom().id()),
                            Terms.capital(row.symptom().name()))
                    .raw("</td><td data-head=\"State and how often\"><ul class=\"shares\">");
            states(row).forEach(state -> share(page, row, state));
            page.raw("</ul></td><td class=\"from\" data-head=\"From\">")
                    .text(row.link().from().text() + ", "
                            + PageList.number(row.link().cases()) + " cases")
                    .raw("</td></tr>\n");
        }
        page.raw("</tbody>\n</table>\n");
    }

    /** Those worth saying, the likeliest first; where all stays in order, that alone. */
    private static List<State> states(Shown row) {
        Comparator<State> likeliest =
                Comparator.comparingDouble((State s) -> -share(row, s)).thenComparing(State::id);
        if (!row.amiss()) {
            return List.of(row.symptom().normal());
        }
        List<State> sorted = row.symptom().states().stream().sorted(likeliest).toList();
        return sorted.stream()
                .filter(s -> s.equals(sorted.get(0)) || share(row, s) >= WORTH_SAYING)
                .toList();
    }

    private static double share(Shown row, State state) {
        return row.link().states().getOrDefault(state.id(), state.usual());
    }

    private static void share(Markup page, Shown row, State state) {
        double share = share(row, state);
        page.raw("<li" + (state.normal() ? " class=\"sound\"" : "") + ">")
                .bar(share)
                .raw("<span><b>");
        page.text(state.name()).raw("</b> ");
        page.text(HowOften.word(share) + ", " + Terms.share(share)).raw(" <span class=\"usual\">");
        page.text("any unit " + Terms.share(state.usual())).raw("</span></span></li>");
    }

    private void tests(Markup page, Cause cause) {
        if (cause.confirmedBy().isEmpty()) {
            return;
        }
        page.raw("<section>\n").heading(2, "confirm", "Confirm with").raw("<ul class=\"cards\">\n");
        for (String id : cause.confirmedBy()) {
            knowledge
                    .test(id)
                    .ifPresent(test -> page.raw("<li>")
                            .link(PageFrame.href(EntryKind.TEST, id), Terms.capital(test.name()))
                            .raw("<span>")
                            .text(PageList.minutes(test.minutes()) + ", risk " + Terms.words(test.risk())
                                    + reads(test, cause))
                            .raw("</span></li>\n"));
        }
        page.raw("</ul>\n</section>\n");
    }

    /** What the test is to read under the cause, as far as that is out of order. */
    private String reads(BenchTest test, Cause cause) {
        List<String> reads = new ArrayList<>();
        for (Link link : cause.shows()) {
            if (test.reveals().contains(link.symptomId())) {
                knowledge
                        .symptom(link.symptomId())
                        .ifPresent(symptom -> symptom.states().stream()
                                .max(Comparator.comparingDouble(
                                                (State s) -> link.states().getOrDefault(s.id(), s.usual()))
                                        .thenComparing(State::id))
                                .filter(state -> !state.normal())
                                .ifPresent(state -> reads.add(Terms.capital(symptom.name()) + ": " + state.name())));
            }
        }
        return reads.isEmpty() ? "" : ". Expect " + String.join("; ", reads);
    }

    private void fixes(Markup page, Cause cause) {
        if (cause.fixedBy().isEmpty()) {
            return;
        }
        page.raw("<section>\n").heading(2, "fix", "Fix with").raw("<ul class=\"cards\">\n");
        for (Remedy remedy : cause.fixedBy()) {
            knowledge
                    .fix(remedy.fixId())
                    .ifPresent(fix -> page.raw("<li>")
                            .link(PageFrame.href(EntryKind.FIX, fix.id()), Terms.capital(fix.name()))
                            .raw("<span>")
                            .text(works(remedy) + ". " + effort(fix))
                            .raw("</span></li>\n"));
        }
        page.raw("</ul>\n</section>\n");
    }

    static String works(Remedy remedy) {
        return "Works " + HowOften.word(remedy.works()) + ", " + Terms.share(remedy.works()) + " ("
                + remedy.from().text() + ")";
    }

    private static String effort(Fix fix) {
        return PageList.minutes(fix.minutes()) + ", " + Terms.words(fix.difficulty()) + ", risk "
                + Terms.words(fix.risk());
    }

    private void neighbours(Markup page, Cause cause) {
        List<Neighbour> others = alike.getOrDefault(cause.id(), List.of());
        if (others.isEmpty() && cause.alike().isEmpty()) {
            return;
        }
        page.heading(2, "alike", "Easily taken for");
        if (!cause.alike().isEmpty()) {
            page.element("p", cause.alike());
        }
        page.raw("<ul class=\"cards\">\n");
        others.forEach(other -> page.raw("<li>")
                .link(
                        PageFrame.href(EntryKind.CAUSE, other.cause()),
                        Terms.capital(
                                knowledge.cause(other.cause()).map(Cause::name).orElse(other.cause())))
                .raw("</li>\n"));
        page.raw("</ul>\n");
    }
}
