package org.benchlore.cli;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;

/** Cases as plain text. */
final class CasePage {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private static final int MOST_UNKNOWN = 8;

    private final Knowledge knowledge;
    private final Page page;
    private final TestPage tests;
    private final Names names;

    CasePage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
        this.tests = new TestPage(knowledge, page);
        this.names = new Names(knowledge);
    }

    /** One line of a list. */
    void summary(CaseHistory history) {
        page.hanging(history.id() + "  " + TIME.format(history.openedAt()).substring(0, 10) + "  ", 4, state(history));
    }

    /** A case in a line. */
    String line(CaseHistory history) {
        return history.id() + ", " + state(history);
    }

    /** An event in a line. */
    String line(CaseEvent event) {
        return event.fold(new Line(List.of(event)));
    }

    private String state(CaseHistory history) {
        String ended =
                history.withdrawn() ? "withdrawn" : history.outcome() == null ? "open" : Page.words(history.outcome());
        String what = history.causeId() == null ? history.complaint() : cause(history.causeId());
        return (history.unit().isBlank() ? "" : history.unit() + ", ") + device(history) + ", " + ended + ": " + what;
    }

    /** What to do about ids that no pack here has. */
    static String unknown(Set<String> ids) {
        return "no pack here knows " + ids.stream().limit(MOST_UNKNOWN).collect(Collectors.joining(", "))
                + (ids.size() > MOST_UNKNOWN ? " and " + (ids.size() - MOST_UNKNOWN) + " more" : "")
                + "; it is kept, but counts for nothing until the pack that has it is copied into HOME/packs";
    }

    /**
     * A whole case.
     *
     * @param recorded everything recorded of it, so that what was taken back can be brought back
     * @param unknown ids in it that no pack here has
     */
    void full(CaseHistory history, List<CaseEvent> recorded, Set<String> unknown) {
        page.heading("Case " + history.id() + (history.withdrawn() ? " (withdrawn, counts for nothing)" : ""));
        page.text(
                2,
                "Unit: " + device(history) + (history.unit().isBlank() ? "" : ", " + history.unit())
                        + (history.workedOnBefore() ? ", worked on before" : "") + "; case of: " + history.origin());
        if (!history.complaint().isBlank()) {
            page.hanging(2, 4, "Complaint: " + history.complaint());
        }
        Line line = new Line(recorded);
        Stream.concat(history.events().stream(), recorded.stream().filter(CaseEvent.Withdrawn.class::isInstance))
                .sorted(CaseEvent.ORDER)
                .forEach(event -> page.hanging(
                        "  " + TIME.format(event.head().at()) + "  ",
                        21,
                        event.fold(line) + " [" + event.head().eventId() + "]"));
        page.heading("Findings");
        page.bullets(2, history.findings().stream().map(this::finding).toList());
        page.text(
                2,
                "Cause: " + (history.causeId() == null ? "not concluded" : cause(history.causeId()))
                        + (history.certainty() == null ? "" : " (" + Page.words(history.certainty()) + ")"));
        if (!unknown.isEmpty()) {
            page.caution("In this case " + unknown(unknown) + ".");
        }
        page.text(2, "Outcome: " + (history.outcome() == null ? "still open" : Page.words(history.outcome())));
    }

    private static String device(CaseHistory history) {
        return history.scope().depth() == 0
                ? "device not stated"
                : history.scope().toString();
    }

    private String finding(Finding finding) {
        return tests.finding(finding);
    }

    private String cause(String id) {
        return names.cause(id) + " [" + id + "]";
    }

    private static String and(String note) {
        return note.isBlank() ? "" : "; " + note;
    }

    /** What an event says, in a line. */
    private final class Line implements CaseEvent.Fold<String> {
        private final List<CaseEvent> recorded;

        Line(List<CaseEvent> recorded) {
            this.recorded = recorded;
        }

        @Override
        public String opened(CaseEvent.Opened event) {
            return "came in";
        }

        @Override
        public String noted(CaseEvent.Noted event) {
            String read = findings(event.findings());
            return event.text().isBlank()
                    ? read
                    : Page.words(event.source()) + ": \"" + event.text().strip() + "\""
                            + (read.isEmpty() ? "" : "; read: " + read);
        }

        private String findings(List<Finding> findings) {
            return findings.stream().map(CasePage.this::finding).collect(Collectors.joining(", "));
        }

        @Override
        public String tested(CaseEvent.Tested event) {
            return "test " + knowledge.test(event.testId()).map(BenchTest::name).orElse(event.testId()) + ": "
                    + findings(event.findings()) + and(event.note());
        }

        @Override
        public String concluded(CaseEvent.Concluded event) {
            return "concluded " + cause(event.causeId()) + ", " + Page.words(event.certainty()) + and(event.note());
        }

        @Override
        public String fixApplied(CaseEvent.FixApplied event) {
            return "fix " + names.fix(event.fixId()) + and(event.note());
        }

        @Override
        public String checked(CaseEvent.Checked event) {
            String ran = (event.hours() == null ? "" : ", " + ProofPage.hours(event.hours()))
                    + (event.conditions().isEmpty() ? "" : ", " + ProofPage.words(event.conditions()));
            String seen = event.seen() == null ? "" : "fault seen " + event.seen() + "x";
            String clean = event.result() == CaseEvent.Checked.Result.PASSED ? "no fault seen" : "";
            String result = event.isRun() && !(seen + clean).isEmpty()
                    ? seen + clean
                    : Page.words(event.result()) + (seen.isEmpty() ? "" : ", " + seen);
            return (event.isRun() ? "run" : "check: " + event.item().strip()) + " - " + result + ran
                    + and(event.note());
        }

        @Override
        public String weighed(CaseEvent.Weighed event) {
            return "weighed " + names.fix(event.fixId()) + ", success " + Page.percent(event.success()) + ", harm "
                    + Page.percent(event.worse()) + "; decided: "
                    + Page.words(event.decided()) + and(event.note());
        }

        @Override
        public String ended(CaseEvent.Ended event) {
            return Page.words(event.outcome())
                    + (event.afterDays() == null ? "" : " after " + event.afterDays() + " days")
                    + and(event.note());
        }

        @Override
        public String withdrawn(CaseEvent.Withdrawn event) {
            String target = event.targetEventId();
            return "took back "
                    + (target == null
                            ? "the case"
                            : recorded.stream()
                                    .filter(other -> other.head().eventId().equals(target))
                                    .filter(other -> !(other instanceof CaseEvent.Withdrawn)) // they may form a circle
                                    .map(other -> other.fold(this))
                                    .findFirst()
                                    .orElse("the withdrawal [" + target + "]"))
                    + and(event.reason());
        }

        @Override
        public String corrected(CaseEvent.Corrected event) {
            return "corrected: " + event.replacement().fold(this);
        }
    }
}
