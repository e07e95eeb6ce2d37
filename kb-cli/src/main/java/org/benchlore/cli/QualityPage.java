package org.benchlore.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.knowledge.QualityReport.AmbiguityGroup;
import org.benchlore.kb.knowledge.QualityReport.Coverage;
import org.benchlore.kb.knowledge.QualityReport.Isolation;
import org.benchlore.kb.knowledge.QualityReport.Lookalike;
import org.benchlore.kb.knowledge.QualityReport.Neighbour;
import org.benchlore.kb.knowledge.Symptom;

/** A quality report as plain text. */
final class QualityPage {
    private final Knowledge knowledge;
    private final Page page;
    private final int top;

    QualityPage(Knowledge knowledge, Page page, int top) {
        this.knowledge = knowledge;
        this.page = page;
        this.top = top;
    }

    void print(QualityReport report) {
        page.heading(report.causes() + " causes, " + report.symptoms() + " symptoms, " + report.tests() + " tests, "
                + report.fixes() + " fixes, " + report.cautions() + " cautions");
        page.text(
                2,
                String.format(
                        Locale.ROOT,
                        "By the state to expect, tests detect %s of what goes wrong and tell %s of that from every other"
                                + " cause; the largest ambiguity group has %d. Allowing for chance, %d causes look like"
                                + " another. Published: %s of the numbers.",
                        share(report.faultDetectionRatio()),
                        share(report.faultIsolationRatio()),
                        report.largestAmbiguityGroup(),
                        report.lookalikes().size(),
                        share(report.publishedShare())));
        page.blank();
        coverage(report.coverage());
        groups(report.ambiguityGroups());
        lookalikes(report.lookalikes());
        information(report);
        numbers(report);
        twins(report);
        readability(report);
        oneWay(report);
    }

    private void coverage(List<Coverage> scopes) {
        page.heading("By device scope");
        page.line("  causes   own  with    with  symptoms");
        page.line("   there        a test  a fix   read     scope");
        for (Coverage c : scopes) {
            page.line(String.format(
                    Locale.ROOT,
                    "  %6d %5d  %5s  %5s  %5s     %s",
                    c.causes(),
                    c.own(),
                    share(c.confirmable()),
                    share(c.fixable()),
                    share(c.readable()),
                    c.scope()));
        }
        page.blank();
        page.heading("Testability (IEEE 1522; weighted by base frequency / each cause once)");
        page.line("  detected     alone (FFI 1)  in 2 or less  in 3 or less  mean  most");
        for (Coverage c : scopes) {
            Isolation w = c.weighted();
            Isolation n = c.counted();
            page.line("  " + c.scope());
            page.line(String.format(
                    Locale.ROOT,
                    "  %-11s  %-11s    %-11s   %-11s   %4.2f  %4d",
                    both(w.detected(), n.detected()),
                    both(w.within1(), n.within1()),
                    both(w.within2(), n.within2()),
                    both(w.within3(), n.within3()),
                    n.meanGroup(),
                    c.largestGroup()));
        }
    }

    private void groups(List<AmbiguityGroup> groups) {
        page.blank();
        page.heading("Ambiguity groups: the same state expected in all that tests read");
        if (groups.isEmpty()) {
            page.text(2, "None: no two causes that meet on a device are expected to show the same.");
        }
        groups.stream().limit(top).forEach(group -> {
            page.hanging(2, 4, "- " + group.causes().size() + ": " + String.join(", ", group.causes()));
            reasons(group.reasons(), group.explained(), group.causes().size() > QualityReport.LARGE);
        });
        more(groups.size());
    }

    private void lookalikes(List<Lookalike> lookalikes) {
        page.blank();
        page.heading("Alike even so: all tests together are expected to give less than 10 dB");
        if (lookalikes.isEmpty()) {
            page.text(2, "None.");
        }
        Set<Set<String>> told = new HashSet<>();
        List<Lookalike> open = new ArrayList<>();
        for (Lookalike l : lookalikes) {
            List<Neighbour> fresh = l.others().stream()
                    .filter(other -> told.add(Set.of(l.cause(), other.cause())))
                    .toList();
            if (l.others().size() >= QualityReport.LARGE) {
                open.add(l); // whole, so that its warning is not lost with pairs told before
            } else if (!fresh.isEmpty()) {
                open.add(new Lookalike(l.cause(), fresh, l.reason()));
            }
        }
        open.stream().limit(top).forEach(l -> {
            String others = l.others().stream()
                    .map(o -> String.format(Locale.ROOT, "%s (%.1f dB)", o.cause(), o.decibans()))
                    .collect(Collectors.joining(", "));
            page.hanging(2, 4, "- " + l.cause() + " like " + others);
            boolean large = l.others().size() >= QualityReport.LARGE;
            reasons(
                    l.reason().isEmpty() ? List.of() : List.of(l.reason()),
                    !l.reason().isEmpty(),
                    large);
        });
        more(open.size());
    }

    private void reasons(List<String> reasons, boolean explained, boolean large) {
        reasons.forEach(reason -> page.hanging(4, 4, "Why: " + reason));
        if (large && !explained) {
            page.caution("Large and without a reason: add a test that tells them apart, or say why under 'alike'.");
        }
    }

    private void information(QualityReport report) {
        page.blank();
        page.heading("What symptoms tell of the cause (bits, packs' own model)");
        report.symptomsByInformation().stream()
                .limit(top)
                .forEach(s -> page.line(String.format(
                        Locale.ROOT,
                        "  %5.3f  %-44s %3d causes  [%s]",
                        s.bits(),
                        clip(knowledge.symptom(s.symptom()).map(Symptom::name).orElse("")),
                        s.causes(),
                        s.symptom())));
        more(report.symptomsByInformation().size());
    }

    private void numbers(QualityReport report) {
        page.blank();
        page.heading("Where the numbers come from");
        page.hanging(
                2,
                2,
                String.format(
                        Locale.ROOT,
                        "%d published, %d common practice, %d from memory. %d causes and cautions have nothing published.",
                        report.numbers().published(),
                        report.numbers().commonPractice(),
                        report.numbers().memory(),
                        report.unpublished().size()));
    }

    private void twins(QualityReport report) {
        page.blank();
        page.heading("Entries that say nearly the same");
        if (report.twins().isEmpty()) {
            page.text(2, "None.");
        }
        report.twins().stream()
                .limit(top)
                .forEach(t -> page.hanging(
                        2,
                        4,
                        String.format(
                                Locale.ROOT,
                                "- %s %s and %s: %s, %s alike",
                                t.kind().id(),
                                t.first(),
                                t.second(),
                                share(t.resemblance()),
                                t.by() == QualityReport.Alike.NAME ? "names" : "texts")));
        more(report.twins().size());
    }

    private void readability(QualityReport report) {
        page.blank();
        page.heading("Readability (LIX: 20 very easy, 60 very hard)");
        page.text(
                2,
                String.format(
                        Locale.ROOT,
                        "Tests %.0f on average, fixes %.0f. The hardest:",
                        report.readability().tests(),
                        report.readability().fixes()));
        report.readability().hardest().stream()
                .limit(top)
                .forEach(h -> page.line(String.format(
                        Locale.ROOT, "  %3.0f  %s %s", h.lix(), h.kind().id(), h.id())));
    }

    private void oneWay(QualityReport report) {
        page.blank();
        page.heading("Links one way only");
        if (report.oneWayLinks().isEmpty()) {
            page.text(2, "None.");
        }
        report.oneWayLinks().stream()
                .limit(top)
                .forEach(l -> page.hanging(2, 4, "- " + l.kind().id() + " " + l.id() + " " + l.what()));
        more(report.oneWayLinks().size());
    }

    private void more(int size) {
        if (size > top) {
            page.line("  ... and " + (size - top) + " more; --top " + size + " shows all");
        }
    }

    private static String clip(String text) {
        return text.length() <= 44 ? text : text.substring(0, 43) + "…";
    }

    private static String both(double weighted, double counted) {
        return share(weighted) + " / " + share(counted);
    }

    /** All and none are said as they are; anything between never rounds up to them. */
    private static String share(double share) {
        if (share == 0 || share == 1) {
            return share == 0 ? "0 %" : "100 %";
        }
        return share < 0.01 ? "<1 %" : share > 0.99 ? ">99 %" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
