package org.benchlore.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Caution;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.knowledge.Quantity;
import org.benchlore.kb.knowledge.Remedy;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** Entries as plain text. */
final class EntryPage {
    private final Knowledge knowledge;
    private final Page page;
    private final TestPage tests;

    EntryPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
        this.tests = new TestPage(knowledge, page);
    }

    void cause(Cause cause) {
        page.heading(cause.name() + " [" + cause.id() + "]");
        page.text(2, cause.about());
        page.text(
                2,
                String.format(
                        Locale.ROOT,
                        "%s, %s. About %s of 1000 units that come in (%s).",
                        cause.kind() == Cause.Kind.FAULT ? "A fault" : "An innocent explanation",
                        cause.scope().depth() == 0 ? "in any device" : "in " + cause.scope(),
                        number(cause.perThousand()),
                        cause.from().text()));
        needs(cause.needs());
        page.heading("Shows");
        for (Link link : cause.shows()) {
            String states = link.states().entrySet().stream()
                    .sorted(Map.Entry.<String, Double>comparingByValue()
                            .reversed()
                            .thenComparing(Map.Entry.comparingByKey()))
                    .limit(3)
                    .map(e -> stateName(link.symptomId(), e.getKey()) + " " + Page.percent(e.getValue()))
                    .collect(Collectors.joining(", "));
            page.hanging(
                    2,
                    4,
                    name(link.symptomId()) + ": " + states + " (worth " + number(link.cases()) + " cases, "
                            + link.from().text() + ") [" + link.symptomId() + "]");
        }
        page.heading("Confirm with");
        cause.confirmedBy().stream()
                .flatMap(id -> knowledge.test(id).stream())
                .forEach(t -> page.hanging(
                        2, 4, String.format(Locale.ROOT, "%s, about %.0f min [%s]", t.name(), t.minutes(), t.id())));
        page.heading("Fix with");
        for (Remedy remedy : cause.fixedBy()) {
            knowledge
                    .fix(remedy.fixId())
                    .ifPresent(f -> page.hanging(
                            2,
                            4,
                            String.format(
                                    Locale.ROOT,
                                    "%s: works in about %s, %.0f min%s, %s, risk %s [%s]",
                                    f.name(),
                                    Page.percent(remedy.works()),
                                    f.minutes(),
                                    TestPage.parts(f.price()),
                                    Page.words(f.difficulty()),
                                    Page.words(f.risk()),
                                    f.id())));
        }
        cause.fools().forEach(f -> page.hanging(2, 4, "What fools people: " + f));
        cautions(cause.cautions());
    }

    void symptom(Symptom symptom) {
        page.heading(symptom.name() + " [" + symptom.id() + "]");
        page.text(2, symptom.about());
        Quantity quantity = symptom.quantity();
        if (quantity != null) {
            page.text(
                    2,
                    quantity.nominal() == null
                            ? "Limits from " + quantity.from().text() + "."
                            : "Right value " + quantity.rated() + " ("
                                    + quantity.from().text() + ").");
        }
        for (State state : symptom.states()) {
            page.hanging(
                    2,
                    4,
                    "- " + state.name() + (state.normal() ? " (normal)" : "")
                            + (quantity == null || state.range() == null ? "" : ", " + quantity.text(state.range()))
                            + ": background " + Page.percent(state.usual()) + " [" + state.id() + "]");
        }
        knowledge.powerOff().stream()
                .filter(rule -> rule.symptomId().equals(symptom.id()))
                .forEach(rule -> page.caution("Power stays off while it is "
                        + stateName(rule.symptomId(), rule.stateId()) + ": " + rule.why() + "."));
        list(
                "Tests that read it",
                knowledge.testsRevealing(symptom.id()).stream()
                        .map(t -> t.name() + " [" + t.id() + "]")
                        .toList());
        list(
                "Causes that speak of it",
                knowledge.causesShowing(symptom.id()).stream()
                        .sorted(Comparator.comparingDouble(Cause::perThousand).reversed())
                        .map(c -> c.name() + " [" + c.id() + "]")
                        .toList());
    }

    void powerOff(PowerOff rule) {
        page.heading("Power stays off while " + tests.state(rule.symptomId(), rule.stateId()) + " [" + rule.symptomId()
                + "]");
        page.text(2, rule.why() + ".");
        list(
                "Lifted by finding all of",
                rule.until().stream()
                        .flatMap(id -> knowledge.symptom(id).stream())
                        .map(s -> tests.state(s.id(), s.normal().id()) + " [" + s.id() + "]")
                        .toList());
        list(
                "Lifted by doing",
                rule.fixes().stream().map(new Names(knowledge)::fix).toList());
    }

    void test(BenchTest test) {
        page.heading(test.name() + " [" + test.id() + "]");
        needs(test.needs());
        tests.full(test);
    }

    void fix(Fix fix) {
        page.heading(fix.name() + " [" + fix.id() + "]");
        page.text(
                2,
                String.format(
                        Locale.ROOT,
                        "About %.0f min%s%s, %s, risk to the unit: %s; leaves it worse in about %s.",
                        fix.minutes(),
                        fix.opens() ? " once the unit is open" : "",
                        TestPage.parts(fix.price()),
                        Page.words(fix.difficulty()),
                        Page.words(fix.risk()),
                        Page.percent(fix.makesWorse())));
        needs(fix.needs());
        list("Told as done by (words in this order, a few others between them)", fix.done());
        list("Parts", fix.parts());
        list("Tools", fix.tools());
        page.heading("Steps");
        page.numbered(2, fix.steps());
        list("Prove it", fix.verify());
        fix.fools().forEach(f -> page.hanging(2, 4, "What fools people: " + f));
        list(
                "For",
                knowledge.causesFixedBy(fix.id()).stream()
                        .map(c -> c.name() + " [" + c.id() + "]")
                        .toList());
        cautions(fix.cautions());
    }

    void caution(Caution caution) {
        page.heading(caution.id() + " (" + Page.words(caution.hazard()) + ")");
        page.caution(caution.text());
        page.text(2, "Source: " + caution.from().text());
    }

    void device(Device device) {
        page.heading(device.name() + " [" + device.scope() + "]");
        if (device.invented()) {
            page.text(2, "Invented for demonstration.");
        }
        page.text(2, "Opening and closing takes about " + number(knowledge.openingMinutes(device.scope())) + " min.");
        list("Called", device.called());
        list("Called so at the start of a note", device.calledFirst());
        list("May hold", device.has());
        list(
                "Log codes",
                device.codes().stream()
                        .map(c -> c.code() + ": " + c.means() + " [" + c.symptomId() + "]")
                        .toList());
        list(
                "Lamps",
                device.lamps().stream()
                        .map(l -> String.join(", ", l.says()) + ": " + name(l.symptomId()) + ", "
                                + stateName(l.symptomId(), l.stateId()) + " [" + l.symptomId() + "]")
                        .toList());
        list(
                "Nets",
                device.nets().stream()
                        .map(n -> n.net() + ": " + name(n.symptomId()) + " [" + n.symptomId() + "]")
                        .toList());
        list(
                "Counters",
                device.counters().stream()
                        .map(c -> c.counter() + ": " + Page.words(c.means()))
                        .toList());
    }

    private void needs(List<String> parts) {
        if (!parts.isEmpty()) {
            page.hanging(2, 4, "Needs: " + KindWords.parts(parts));
        }
    }

    private void cautions(List<String> ids) {
        ids.stream().flatMap(id -> knowledge.caution(id).stream()).forEach(c -> page.caution(c.text()));
    }

    private void list(String heading, List<String> items) {
        if (!items.isEmpty()) {
            page.heading(heading);
            page.bullets(2, items);
        }
    }

    private String name(String symptomId) {
        return knowledge.symptom(symptomId).map(Symptom::name).orElse(symptomId);
    }

    private String stateName(String symptomId, String stateId) {
        return knowledge
                .symptom(symptomId)
                .map(s -> TestPage.stateName(s, stateId))
                .orElse(stateId);
    }

    private static String number(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.1f", value);
    }
}
