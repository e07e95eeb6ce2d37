package org.benchlore.cli;

import java.util.Optional;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Knowledge;

/** What a case that ends as cured says against it: what had been wrong and was found so again after the work. */
final class StillThere {
    private StillThere() {}

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
