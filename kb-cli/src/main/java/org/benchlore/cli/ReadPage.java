package org.benchlore.cli;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/** What words were read as, so that a slip is seen before it counts. */
final class ReadPage {
    private final TestPage tests;
    private final Page page;

    ReadPage(Knowledge knowledge, Page page) {
        this.tests = new TestPage(knowledge, page);
        this.page = page;
    }

    /** In a line or two: what was read, each finding once, and what was not; nothing where there is neither. */
    void print(SeenOptions.Seen told) {
        List<String> read = told.findings().stream().map(tests::finding).toList();
        if (!read.isEmpty()) {
            page.hanging(2, 4, "Read: " + String.join("; ", read) + ".");
        }
        if (!told.reading().notUnderstood().isEmpty()) {
            page.hanging(2, 4, "Not understood: " + notUnderstood(told.reading()) + ".");
        }
    }

    /** Each stretch of words with what it was taken to mean. */
    void understood(Reading reading, Function<Finding, String> meaning) {
        for (Reading.Understood u : reading.understood()) {
            StringBuilder said = new StringBuilder("\"" + u.span().text() + "\": " + meaning.apply(u.finding()));
            if (!u.conditions().isEmpty()) {
                said.append(u.conditions().stream().map(Page::words).collect(Collectors.joining(", ", " (", ")")));
            }
            if (u.past()) {
                said.append(" (history, not used)");
            }
            if (!u.note().isEmpty()) {
                said.append("; ").append(u.note());
            }
            page.hanging(2, 6, said.toString());
        }
    }

    /** The stretches that were taken to mean nothing, if there are any. */
    void rest(Reading reading) {
        if (!reading.notUnderstood().isEmpty()) {
            page.hanging(2, 6, "not understood: " + notUnderstood(reading));
        }
    }

    private static String notUnderstood(Reading reading) {
        return reading.notUnderstood().stream().map(s -> "\"" + s.text() + "\"").collect(Collectors.joining(", "));
    }
}
