package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;

/** A symptom: its states, what each speaks for, and the tests that read it. */
final class SymptomPage {
    private static final int TOP = 6;

    /** Half as likely again as under the other causes; less is not worth a line. */
    private static final double SPEAKS = 10 * Math.log10(1.5);

    private final Knowledge knowledge;
    private final PageFrame frame;
    private final RankingModel packs;

    /**
     * For all symptoms of some packs.
     *
     * @param packs the packs' opinion alone
     */
    SymptomPage(Knowledge knowledge, PageFrame frame, RankingModel packs) {
        this.knowledge = knowledge;
        this.frame = frame;
        this.packs = packs;
    }

    String write(Symptom symptom) {
        Markup page = new Markup();
        page.element("p", "lead", symptom.about());
        Map<String, String> facts = new LinkedHashMap<>();
        Quantity quantity = symptom.quantity();
        if (quantity != null) {
            facts.put("Right value", quantity.rated());
            facts.put("Limits from", quantity.from().text());
        }
        facts.put("Noticed", reported(symptom.reported()));
        facts.put("Where", PageFrame.scope(symptom.scope()));
        facts.put("Also called", String.join(", ", symptom.called()));
        devices(symptom, facts);
        PageFrame.facts(page, facts);
        tests(page, symptom);
        page.heading(2, "states", "What each state speaks for");
        page.element(
                "p",
                "note",
                "Share: of the units that show this and nothing else is known of, how many have the cause. Weight: how"
                        + " strongly it speaks for the cause against all others, in decibans (10 dB is ten to one).");
        symptom.states().stream()
                .sorted(Comparator.comparing(State::normal)) // what is amiss first, in the pack's order
                .forEach(state -> state(page, symptom, state));
        all(page, symptom);
        return frame.entry(EntryKind.SYMPTOM, symptom.id(), symptom.name(), List.of(), page);
    }

    private static String reported(Symptom.Reported reported) {
        return switch (reported) {
            case ALWAYS -> "by anybody";
            case USUALLY -> "usually, when it is out of the ordinary";
            case IF_TESTED -> "only when somebody looks or measures";
        };
    }

    /** The names that device packs have for it. */
    private void devices(Symptom symptom, Map<String, String> facts) {
        for (Device device : knowledge.devices()) {
            List<String> names = new ArrayList<>();
            device.nets().stream()
                    .filter(n -> n.symptomId().equals(symptom.id()))
                    .forEach(n -> names.add("net " + n.net()));
            device.codes().stream()
                    .filter(c -> c.symptomId().equals(symptom.id()))
                    .forEach(c -> names.add("code " + c.code()));
            facts.put("In " + device.name(), String.join(", ", names));
        }
    }

    private void tests(Markup page, Symptom symptom) {
        List<BenchTest> tests = knowledge.testsRevealing(symptom.id());
        if (tests.isEmpty()) {
            return;
        }
        page.heading(2, "tests", "Tests that read it").raw("<ul class=\"cards\">\n");
        tests.forEach(test -> page.raw("<li>")
                .link(PageFrame.href(EntryKind.TEST, test.id()), Terms.capital(test.name()))
                .raw("<span>")
                .text(PageList.minutes(test.minutes()) + ", risk " + Terms.words(test.risk()))
                .raw("</span></li>\n"));
        page.raw("</ul>\n");
    }

    private void state(Markup page, Symptom symptom, State state) {
        page.raw("<section class=\"state" + (state.normal() ? " sound" : "") + "\">\n");
        page.heading(3, "state-" + state.id(), Terms.capital(state.name()));
        knowledge.powerOff().stream()
                .filter(rule ->
                        rule.symptomId().equals(symptom.id()) && rule.stateId().equals(state.id()))
                .forEach(rule -> page.element("p", "stop", "Power stays off: " + rule.why() + "."));
        List<String> notes = new ArrayList<>();
        if (state.normal()) {
            notes.add("as it should be");
        }
        if (state.range() != null && symptom.quantity() != null) {
            notes.add(symptom.quantity().text(state.range()));
        }
        notes.add("in any unit " + Terms.share(state.usual()));
        page.element("p", "note", String.join(" · ", notes));
        List<RankedCause> causes = packs
                .rank(new RankingQuery(List.of(Finding.of(symptom.id(), state.id())), symptom.scope(), false))
                .causes()
                .stream()
                .filter(cause -> cause.evidence().get(0).decibans() >= SPEAKS)
                .toList();
        if (causes.isEmpty()) {
            page.element("p", "none", "Speaks for no cause in particular.").raw("</section>\n");
            return;
        }
        page.tableHead("speaks", "Cause", "Share", "Weight");
        causes.stream().limit(TOP).forEach(cause -> row(page, cause));
        page.raw("</tbody>\n</table>\n");
        if (causes.size() > TOP) {
            page.element("p", "note", "And for " + (causes.size() - TOP) + " more, less likely ones.");
        }
        page.raw("</section>\n");
    }

    private static void row(Markup page, RankedCause cause) {
        double decibans = cause.evidence().get(0).decibans();
        page.raw("<tr><td data-head=\"Cause\">")
                .link(PageFrame.href(EntryKind.CAUSE, cause.id()), Terms.capital(cause.name()));
        page.raw("</td><td class=\"share\" data-head=\"Share\">").bar(cause.probability());
        page.text(Terms.share(cause.probability())).raw("</td><td class=\"weight\" data-head=\"Weight\">");
        page.text(strength(decibans) + String.format(Locale.ROOT, ", %+.1f dB", decibans))
                .raw("</td></tr>\n");
    }

    /** The grades of Jeffreys, Theory of Probability (1961), appendix B: steps of 5 dB up to 20. */
    private static String strength(double decibans) {
        if (decibans < 5) {
            return "a little";
        }
        if (decibans < 10) {
            return "clearly";
        }
        return decibans < 15 ? "strongly" : decibans < 20 ? "very strongly" : "decisively";
    }

    private void all(Markup page, Symptom symptom) {
        List<Cause> causes = knowledge.causesShowing(symptom.id()).stream()
                .sorted(Comparator.comparing((Cause c) -> Terms.capital(c.name()))
                        .thenComparing(Cause::id))
                .toList();
        if (causes.isEmpty()) {
            return;
        }
        page.raw("<details>\n<summary>")
                .text("All " + Terms.count(causes.size(), "cause that speaks", "causes that speak") + " of it")
                .raw("</summary>\n<ul class=\"columns\">\n");
        causes.forEach(cause -> page.raw("<li>")
                .link(PageFrame.href(EntryKind.CAUSE, cause.id()), Terms.capital(cause.name()))
                .raw("</li>\n"));
        page.raw("</ul>\n</details>\n");
    }
}
