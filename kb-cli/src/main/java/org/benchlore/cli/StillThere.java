package org.benchlore.cli;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Knowledge;

/** What a case says against its cure: words that it did not help, or what had been wrong and was found so again. */
final class StillThere {
    private StillThere() {}

    /** Holds the last fix to have failed, as a note behind it said. */
    static CaseEvent failed(CaseEvent.Head head) {
        return new CaseEvent.Checked(
                head, "", CaseEvent.Checked.Result.FAILED, null, null, List.of(), "the note says so");
    }

    /** A sentence without its full stop; empty where nothing speaks against the cure. */
    static Optional<String> warning(Knowledge knowledge, Page page, CaseHistory history) {
        TestPage tests = new TestPage(knowledge, page);
        String found =
                history.stillThere(knowledge).stream().map(tests::finding).collect(Collectors.joining(", "));
        return Optional.of(found)
                .filter(text -> !text.isEmpty())
                .map(text -> "After the work this was still found: " + text
                        + "; the owner's sheet says so, and calls nothing sure. If it is gone, note that");
    }
}
