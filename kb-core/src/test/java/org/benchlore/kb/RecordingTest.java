package org.benchlore.kb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ListenerException;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What is let into the log, and that whoever records knows whether it is in. */
class RecordingTest {
    private final KnowledgeBase kb = bench(MemoryTest.PACK);

    private int n;

    private static KnowledgeBase bench(PackSource... packs) {
        return KnowledgeBase.builder().packs(List.of(packs)).open();
    }

    @AfterEach
    void close() {
        kb.close();
    }

    private CaseEvent.Head head() {
        n++;
        return new CaseEvent.Head("e" + n, "k", Instant.ofEpochSecond(1_700_000_000L + n));
    }

    private CaseEvent opened() {
        return new CaseEvent.Opened(head(), DeviceScope.ANY, "dark", "", CaseHistory.OWN, false);
    }

    private CaseEvent noted(String symptom, String state) {
        return new CaseEvent.Noted(head(), "", Reading.Source.SEEN, List.of(Finding.of(symptom, state)));
    }

    @Test
    void a_listener_that_throws_hides_neither_what_is_recorded_nor_the_rest_from_other_listeners() {
        List<String> heard = new ArrayList<>();
        kb.onRecorded(event -> {
            throw new IllegalStateException("the lamp on the wall is out");
        });
        kb.onRecorded(event -> heard.add(event.head().eventId()));
        CaseEvent opened = opened();
        CaseEvent noted = noted("lamp", "dark");
        assertThatThrownBy(() -> kb.record(opened, noted))
                .isInstanceOfSatisfying(
                        ListenerException.class, e -> assertThat(e.recorded()).containsExactly(opened, noted))
                .hasMessageContainingAll(
                        "all is recorded", "'e1'", "the lamp on the wall is out", "do not record again")
                .hasRootCauseInstanceOf(IllegalStateException.class);
        assertThat(heard).containsExactly("e1", "e2");
        assertThat(kb.events("k")).hasSize(2);
        assertThat(kb.record(opened, noted)).isEmpty();
    }
}
