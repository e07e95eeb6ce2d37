package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.BenchTest.ReadingMeans;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;

/** Tests and fixes: cautions before the steps, what to make of the result, and the causes they are for. */
final class ActionPages {
    private final Knowledge knowledge;
    private final PageFrame frame;
    private final Terms terms;

    ActionPages(Knowledge knowledge, PageFrame frame) {
        this.knowledge = knowledge;
        this.frame = frame;
        this.terms = new Terms(knowledge);
    }

    String test(BenchTest test) {
        Markup page = new Markup();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Time", time(test.minutes(), test.opens()));
        facts.put("Risk to the unit", Terms.words(test.risk()));
        facts.put("Tools", String.join(", ", test.tools()));
        facts.put(
                "Errors",
                "misses " + inHundred(test.misses()) + " that are amiss, false alarm at "
                        + inHundred(test.falseAlarms()) + " that are sound");
        facts.put("Where", PageFrame.scope(test.scope()));
        facts.put("Power", power(test.powers()));
        facts.put("Needs", PageList.parts(test.needs()));
        PageFrame.facts(page, facts);
        frame.cautions(page, test.cautions());
        page.heading(2, "setup", "Before the first step").element("p", test.setup());
        page.heading(2, "steps", "Steps").list("ol", test.steps());
        page.heading(2, "expect", "A sound unit").element("p", "expect", test.expect());
        stop(page, test.stopWhen());
        readings(page, test);
        PageFrame.fools(page, test.fools());
        causes(page, "confirms", "Confirms", knowledge.causesConfirmedBy(test.id()), List.of());
        return frame.entry(EntryKind.TEST, test.id(), test.name(), List.of(), page);
    }

    private static String time(double minutes, boolean opens) {
        return PageList.minutes(minutes) + (opens ? ", the unit open" : "");
    }

    private static String power(boolean powers) {
        return powers ? "the unit runs or is fed" : "stays off";
    }

    private static String inHundred(double share) {
        return PageList.number(Math.round(1000 * share) / 10.0) + " in 100";
    }

    private static void stop(Markup page, String when) {
        if (!when.isEmpty()) {
            page.raw("<p class=\"stop\"><strong>Stop when:</strong> ")
                    .text(when)
                    .raw("</p>\n");
        }
    }

    /** By symptom in order of first mention, in each the states in their order. */
    private List<ReadingMeans> sorted(BenchTest test) {
        return test.readings().stream()
                .sorted(Comparator.comparingInt(
                                (ReadingMeans r) -> test.reveals().indexOf(r.symptomId()))
                        .thenComparingInt(r -> knowledge
                                .symptom(r.symptomId())
                                .map(s -> s.indexOf(r.stateId()))
                                .orElse(-1)))
                .toList();
    }

    private boolean normal(ReadingMeans reading) {
        return knowledge
                .symptom(reading.symptomId())
                .filter(s -> s.normal().id().equals(reading.stateId()))
                .isPresent();
    }

    private void readings(Markup page, BenchTest test) {
        page.heading(2, "readings", "What it means").tableHead("readings", "Read", "Means");
        for (ReadingMeans reading : sorted(test)) {
            page.raw(normal(reading) ? "<tr class=\"sound\">" : "<tr>")
                    .raw("<td data-head=\"Read\">")
                    .link(
                            PageFrame.href(EntryKind.SYMPTOM, reading.symptomId()) + "#state-" + reading.stateId(),
                            terms.symptom(reading.symptomId()) + ": "
                                    + terms.state(reading.symptomId(), reading.stateId()))
                    .raw("</td><td data-head=\"Means\">")
                    .text(reading.means())
                    .raw("</td></tr>\n");
        }
        page.raw("</tbody>\n</table>\n");
    }

    String fix(Fix fix) {
        Markup page = new Markup();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Time", time(fix.minutes(), fix.opens()));
        facts.put("Skill", Terms.words(fix.difficulty()));
        facts.put("Risk to the unit", Terms.words(fix.risk()) + "; leaves " + inHundred(fix.makesWorse()) + " worse");
        facts.put("Parts", String.join(", ", fix.parts()));
        facts.put(
                "Price of the parts",
                fix.price() == 0 ? "" : "as much as " + PageList.minutes(fix.price()) + " of bench time");
        facts.put("Tools", String.join(", ", fix.tools()));
        facts.put("Where", PageFrame.scope(fix.scope()));
        facts.put("Power", power(fix.powers()));
        facts.put("Needs", PageList.parts(fix.needs()));
        PageFrame.facts(page, facts);
        frame.cautions(page, fix.cautions());
        page.heading(2, "steps", "Steps").list("ol", fix.steps());
        page.heading(2, "verify", "Prove it").list("ul", "verify", fix.verify());
        PageFrame.fools(page, fix.fools());
        List<Cause> cured = knowledge.causesFixedBy(fix.id()).stream()
                .sorted(Comparator.comparingDouble(
                                (Cause cause) -> -remedy(cause, fix).works())
                        .thenComparing(Cause::id))
                .toList();
        List<String> notes = new ArrayList<>();
        cured.forEach(cause -> notes.add(CausePage.works(remedy(cause, fix))));
        causes(page, "mends", "Mends", cured, notes);
        return frame.entry(EntryKind.FIX, fix.id(), fix.name(), List.of(), page);
    }

    private static Remedy remedy(Cause cause, Fix fix) {
        return cause.fixedBy().stream()
                .filter(r -> r.fixId().equals(fix.id()))
                .findFirst()
                .orElseThrow();
    }

    private static void causes(Markup page, String anchor, String heading, List<Cause> causes, List<String> notes) {
        if (causes.isEmpty()) {
            return;
        }
        page.heading(2, anchor, heading).raw("<ul class=\"cards\">\n");
        for (int i = 0; i < causes.size(); i++) {
            Cause cause = causes.get(i);
            page.raw("<li>").link(PageFrame.href(EntryKind.CAUSE, cause.id()), Terms.capital(cause.name()));
            if (i < notes.size()) {
                page.raw("<span>").text(notes.get(i)).raw("</span>");
            }
            page.raw("</li>\n");
        }
        page.raw("</ul>\n");
    }
}
