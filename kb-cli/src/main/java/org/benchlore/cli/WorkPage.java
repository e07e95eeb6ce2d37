package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/** What the guided run shows between questions. */
final class WorkPage {
    private static final int TOP = 3;

    private final Page page;
    private final TestPage tests;

    WorkPage(Knowledge knowledge, Page page) {
        this.page = page;
        this.tests = new TestPage(knowledge, page);
    }

    /** What the words were taken to mean, and what was not understood. */
    void understood(Reading reading) {
        for (Reading.Understood u : reading.understood()) {
            page.hanging(
                    2,
                    6,
                    "\"" + u.span().text() + "\": " + state(u.finding()) + (u.past() ? " (history, not used)" : "")
                            + (u.note().isEmpty() ? "" : "; " + u.note()));
        }
        if (!reading.notUnderstood().isEmpty()) {
            page.hanging(
                    2,
                    6,
                    "not understood: "
                            + reading.notUnderstood().stream()
                                    .map(s -> "\"" + s.text() + "\"")
                                    .collect(Collectors.joining(", ")));
        }
    }

    void findings(List<Finding> findings) {
        findings.forEach(f -> page.hanging(2, 6, state(f)));
    }

    private String state(Finding finding) {
        return tests.state(finding.symptomId(), finding.state()) + (finding.certain() ? "" : ", not certain");
    }

    /** The leaders and where they came from. */
    void move(Ranking before, Ranking after) {
        if (after.findings().isEmpty()) {
            page.text(0, "Nothing to rank by yet. Say what you see or measure.");
            return;
        }
        for (int i = 0; i < Math.min(TOP, after.causes().size()); i++) {
            RankedCause cause = after.causes().get(i);
            line(String.format(Locale.ROOT, "%2d. ", i + 1), cause, share(before, cause.id()));
        }
        line("    ", after.unlisted(), before.unlisted().probability());
    }

    /** The same, if anything moved. */
    void moved(Ranking before, Ranking after) {
        if (!after.causes().equals(before.causes())) {
            move(before, after);
        }
    }

    private void line(String lead, RankedCause cause, double before) {
        String was = Page.percent(before);
        String is = Page.percent(cause.probability());
        page.hanging(
                lead + String.format(Locale.ROOT, "%5s  %s  ", is, Page.bar(cause.probability())),
                29,
                cause.name() + (was.equals(is) ? "" : " (was " + was + ")"));
    }

    private static double share(Ranking ranking, String causeId) {
        return ranking.causes().stream()
                .filter(c -> c.id().equals(causeId))
                .mapToDouble(RankedCause::probability)
                .findFirst()
                .orElse(0);
    }

    void numbered(List<String> items) {
        for (int i = 0; i < items.size(); i++) {
            page.hanging(String.format(Locale.ROOT, "%4d  ", i + 1), 6, items.get(i));
        }
    }
}
