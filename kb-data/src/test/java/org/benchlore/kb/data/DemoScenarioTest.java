package org.benchlore.kb.data;

import static java.util.stream.Collectors.counting;
import static java.util.stream.Collectors.groupingBy;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoScenarioTest {
    private static final int MOST = 1000;

    @TempDir
    Path home;

    private List<CaseHistory> histories() throws IOException {
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(packs()).home(home).open()) {
            for (DemoScenario.Cases bench : DemoScenario.cases()) {
                ImportResult result = kb.importCases(new StringReader(bench.lines()), bench.origin(), bench.origin());
                assertThat(result.problems()).isEmpty();
                assertThat(result.known()).as("events that stand twice").isZero();
            }
            return kb.cases(MOST);
        }
    }

    private static List<PackSource> packs() {
        List<PackSource> all = new ArrayList<>(ShippedPacks.all());
        all.addAll(DemoScenario.packs());
        return all;
    }

    @Test
    void the_workshop_has_years_of_cases_with_all_kinds_of_endings() throws IOException {
        List<CaseHistory> histories = histories();

        assertThat(histories).hasSizeGreaterThanOrEqualTo(311);
        assertThat(histories).extracting(CaseHistory::complaint).doesNotHaveDuplicates();
        assertThat(histories)
                .extracting(h -> h.openedAt().atZone(ZoneOffset.UTC).getYear())
                .contains(2019, 2020, 2021, 2022, 2023, 2024, 2025, 2026);
        assertThat(histories.stream()
                        .flatMap(h -> h.events().stream())
                        .filter(CaseEvent.Ended.class::isInstance)
                        .map(e -> ((CaseEvent.Ended) e).outcome()))
                .contains(Outcome.values());
        Map<String, Long> byOrigin = histories.stream().collect(groupingBy(CaseHistory::origin, counting()));
        assertThat(byOrigin).containsOnlyKeys("demo", "demo-harbour");
        assertThat(byOrigin.get("demo-harbour")).isGreaterThanOrEqualTo(40);
    }

    @Test
    void cases_speak_of_what_the_packs_know_and_only_where_it_holds() throws IOException {
        Knowledge knowledge = PackReader.read(packs());
        for (CaseHistory history : histories()) {
            for (CaseEvent event : history.events()) {
                assertThat(scopesOfNamed(knowledge, event))
                        .as(event.head().eventId() + " names something unknown, or known of another device only")
                        .allMatch(scope -> scope.isPresent() && scope.get().contains(history.scope()));
            }
            for (Finding finding : history.findings()) {
                assertThat(knowledge.symptom(finding.symptomId()))
                        .as(history.id())
                        .isPresent();
                finding.likelihoods()
                        .keySet()
                        .forEach(state -> assertThat(knowledge
                                        .symptom(finding.symptomId())
                                        .orElseThrow()
                                        .indexOf(state))
                                .as(history.id() + " " + finding)
                                .isNotNegative());
            }
        }
    }

    /** Where the entries that an event names hold; empty for one that is unknown. */
    private static List<Optional<DeviceScope>> scopesOfNamed(Knowledge knowledge, CaseEvent event) {
        List<Optional<DeviceScope>> scopes = new ArrayList<>();
        if (event instanceof CaseEvent.Tested tested) {
            scopes.add(knowledge.test(tested.testId()).map(BenchTest::scope));
        } else if (event instanceof CaseEvent.FixApplied applied) {
            scopes.add(knowledge.fix(applied.fixId()).map(Fix::scope));
            scopes.add(scopeOfCause(knowledge, applied.causeId()));
        } else if (event instanceof CaseEvent.Concluded concluded) {
            scopes.add(scopeOfCause(knowledge, concluded.causeId()));
        }
        return scopes;
    }

    private static Optional<DeviceScope> scopeOfCause(Knowledge knowledge, String id) {
        return id.equals(CaseEvent.Concluded.UNLISTED)
                ? Optional.of(DeviceScope.ANY)
                : knowledge.cause(id).map(Cause::scope);
    }

    @Test
    void each_family_has_revisions_with_weaknesses_of_their_own() {
        Map<DeviceScope, Long> weaknesses = PackReader.read(packs()).causes().stream()
                .filter(cause -> cause.scope().depth() >= 3)
                .collect(groupingBy(Cause::scope, counting()));
        Map<String, Long> revisions = weaknesses.entrySet().stream()
                .filter(entry -> entry.getValue() >= 2)
                .collect(groupingBy(entry -> entry.getKey().path().get(1), counting()));
        assertThat(revisions).containsOnlyKeys("corvane", "dulmar", "ostrel", "tavisk");
        assertThat(revisions.values()).allSatisfy(count -> assertThat(count).isGreaterThanOrEqualTo(3));
    }
}
