package org.benchlore.example;

import java.nio.file.Path;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.reading.Reading;

/** The README's example; {@code EmbeddingExampleTest} runs it and holds the README to it. */
final class EmbeddingExample {
    private EmbeddingExample() {}

    static void run(Path home) {
        // begin
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            Reading reading = kb.read("green light, no 12 V, controller silent");
            Ranking ranking = kb.rank(reading);
            Ranking.RankedCause first = ranking.causes().get(0);
            System.out.printf("%s: %.0f %%%n", first.name(), 100 * first.probability());

            String caseId = kb.newCaseId();
            kb.record(
                    new CaseEvent.Opened(kb.head(caseId), DeviceScope.ANY, "no 12 V", "", CaseHistory.OWN, false),
                    new CaseEvent.Noted(kb.head(caseId), "", Reading.Source.MEASURED, reading.findings()),
                    new CaseEvent.Concluded(kb.head(caseId), first.id(), Certainty.PROVEN, ""),
                    new CaseEvent.Ended(kb.head(caseId), Outcome.FIXED_AND_PROVEN, null, ""));

            Ranking wiser = kb.rank(reading);
            System.out.printf(
                    "after one case: %.0f %%%n", 100 * wiser.causes().get(0).probability());
        }
        // end
    }
}
