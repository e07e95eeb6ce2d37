package org.benchlore.cli;

import java.util.List;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Reading;

/** In a line or two what words were read as, so that a slip is seen before it counts. */
final class ReadPage {
    private final TestPage tests;
    private final Page page;

    ReadPage(Knowledge knowledge, Page page) {
        this.tests = new TestPage(knowledge, page);
        this.page = page;
    }

    /** What was read, each finding once, and what was not; nothing where there is neither. */
    void print(SeenOptions.Seen told) {
        List<String> read = told.findings().stream().map(tests::finding).toList();
        if (!read.isEmpty()) {
            page.hanging(2, 4, "Read: " + String.join("; ", read) + ".");
        }
        List<Reading.Span> not = told.reading().notUnderstood();
        if (!not.isEmpty()) {
            page.hanging(
                    2,
                    4,
                    "Not understood: "
                            + not.stream().map(s -> "\"" + s.text() + "\"").collect(Collectors.joining(", ")) + ".");
        }
    }
}
