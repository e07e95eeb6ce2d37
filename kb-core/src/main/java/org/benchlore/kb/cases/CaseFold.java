package org.benchlore.kb.cases;

import java.util.List;
import java.util.Optional;

final class CaseFold {
    private CaseFold() {}

    static Optional<CaseHistory> fold(List<CaseEvent> events) {
        return Optional.empty();
    }
}
