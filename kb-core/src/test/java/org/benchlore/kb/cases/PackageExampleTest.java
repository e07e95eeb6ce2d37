package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.cases.CaseEvent.Opened;
import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example in package-info, compiled and run. */
class PackageExampleTest {
    @Test
    void the_example_runs(@TempDir Path bench) {
        try (CaseStore store = CaseStore.open(bench)) {
            CaseIds ids = new CaseIds(Clock.systemUTC(), new SecureRandom());
            String caseId = ids.caseId(store::hasCase);
            Head head = new Head(ids.eventId(), caseId, Instant.now());
            store.append(List.of(new Opened(head, DeviceScope.ANY, "dead", "", CaseHistory.OWN, false)));
            CaseHistory history = store.history(caseId).orElseThrow();
            assertThat(history.complaint()).isEqualTo("dead");
        }
    }
}
