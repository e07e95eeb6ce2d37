package org.benchlore.kb;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.EventConflictException;
import org.benchlore.kb.cases.ListenerException;
import org.benchlore.kb.cases.Outcome;
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

    private void refused(CaseEvent event, String... says) {
        long before = kb.events("k").size();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> kb.record(event))
                .satisfies(e -> assertThat(e).hasMessageContainingAll(says));
        assertThat(kb.events("k")).hasSize((int) before);
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

    @Test
    void an_id_that_names_nothing_is_refused_with_the_nearest() {
        kb.record(opened());
        refused(noted("lmap", "dark"), "unknown symptom 'lmap'", "did you mean 'lamp'?");
        refused(noted("lamp", "dank"), "symptom 'lamp' has no state 'dank'", "dark");
        refused(
                new CaseEvent.Concluded(head(), "core-lose", Certainty.PROVEN, ""),
                "unknown cause 'core-lose'",
                "did you mean 'core-loose'?");
        refused(new CaseEvent.FixApplied(head(), "new-led", "unknown", null, ""), "unknown fix", "'new-lead'");
        refused(new CaseEvent.FixApplied(head(), "new-lead", "led-broken", null, ""), "unknown cause", "'lead-broken'");
        refused(new CaseEvent.Tested(head(), "measure-it", List.of(), null, ""), "unknown test 'measure-it'");
        refused(new CaseEvent.Weighed(head(), "hammer", null, .5, .1, Decision.WORK, ""), "unknown fix 'hammer'");
        refused(new CaseEvent.Corrected(head(), "e1", noted("lmap", "dark")), "'lmap'");
        assertThat(kb.record(
                        new CaseEvent.Concluded(head(), CaseEvent.Concluded.UNLISTED, Certainty.LIKELY, ""),
                        new CaseEvent.FixApplied(head(), "new-lead", CaseEvent.FixApplied.UNKNOWN_CAUSE, null, "")))
                .hasSize(2);
    }

    @Test
    void what_acts_on_an_event_that_is_not_there_is_refused() {
        kb.record(opened());
        refused(new CaseEvent.Withdrawn(head(), "e9", ""), "case 'k' has no event 'e9'", "did you mean 'e1'?");
        refused(new CaseEvent.Corrected(head(), "nosuch", noted("lamp", "dark")), "has no event 'nosuch'");
        CaseEvent noted = noted("lamp", "dark");
        assertThat(kb.record(new CaseEvent.Withdrawn(head(), noted.head().eventId(), ""), noted))
                .as("both at once, in any order")
                .hasSize(2);
    }

    @Test
    void a_case_is_opened_once_and_first() {
        refused(noted("lamp", "dark"), "case 'k' was never opened", "record its opening");
        assertThat(kb.caseCount()).isZero();
        assertThat(kb.record(noted("lamp", "dark"), opened())).hasSize(2);
        CaseEvent.Head first = kb.history("k").orElseThrow().events().stream()
                .filter(CaseEvent.Opened.class::isInstance)
                .findFirst()
                .orElseThrow()
                .head();
        refused(opened(), "'k' is opened by", first.eventId(), "correct the first");
        kb.record(new CaseEvent.Withdrawn(head(), first.eventId(), "wrong unit"));
        assertThat(kb.record(opened())).as("in place of the one taken back").hasSize(1);
    }

    @Test
    void an_event_recorded_again_is_no_second_one_and_another_body_is_a_conflict() {
        CaseEvent opened = opened();
        kb.record(opened);
        assertThat(kb.record(opened)).isEmpty();
        CaseEvent other = new CaseEvent.Opened(opened.head(), DeviceScope.ANY, "lit", "", CaseHistory.OWN, false);
        assertThatThrownBy(() -> kb.record(other)).isInstanceOf(EventConflictException.class);
    }

    @Test
    void a_case_of_other_packs_is_imported_and_gone_on_with() throws IOException {
        String renamed = MemoryTest.PACK.yaml().replace("core-loose", "core-adrift");
        StringBuilder exported = new StringBuilder();
        try (KnowledgeBase other = bench(new PackSource("other.yaml", renamed))) {
            other.record(opened(), new CaseEvent.Concluded(head(), "core-adrift", Certainty.SUSPECTED, ""));
            other.exportCases(exported, false);
        }
        kb.importCases(new StringReader(exported.toString()), "other.jsonl", "elsewhere");
        assertThat(kb.events("k")).hasSize(2);
        assertThat(kb.record(
                        new CaseEvent.Concluded(head(), "core-adrift", Certainty.PROVEN, ""),
                        new CaseEvent.Ended(head(), Outcome.GIVEN_UP, null, "")))
                .hasSize(2);
        refused(new CaseEvent.Concluded(head(), "core-afloat", Certainty.PROVEN, ""), "unknown cause");
        assertThat(kb.query(kb.history("k").orElseThrow()).findings()).isEmpty();
    }

    @Test
    void what_is_asked_by_an_id_that_names_nothing_is_refused_alike() {
        for (Function<KnowledgeBase, Object> question : List.<Function<KnowledgeBase, Object>>of(
                k -> k.fix("new-led"), k -> k.casesBehind(k.query(k.read("dark")), "led-broken", 3))) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> question.apply(kb))
                    .withMessageContaining("did you mean '");
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> kb.turns(kb.query(kb.read("dark")), -1))
                .withMessage("limit -1; ask for at least 1");
    }
}
