package org.benchlore.kb;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;

/** Puts together what is known of a unit, out of a note or a case, past cases with its codes included. */
final class Queries {
    /** Codes of one unit looked up in past cases, those seen most often; a pasted log may hold thousands. */
    private static final int MOST_CODES = 32;

    private final Knowledge knowledge;
    private final Reader reader;
    private final Memory memory;
    private final WorkMemory work;
    private final IndexFollower index;

    Queries(Knowledge knowledge, Reader reader, Memory memory, WorkMemory work, IndexFollower index) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.memory = memory;
        this.work = work;
        this.index = index;
    }

    RankingQuery of(Reading reading) {
        return new RankingQuery(reading.findings(), reading.scope(), true)
                .inWords(RankingQuery.wordsOf(reading, knowledge))
                .withCodes(index.codes(unknownCodes(List.of(reading)), reading.scope(), ""));
    }

    RankingQuery of(CaseHistory history) {
        RankingModel model = memory.current();
        List<Reading> readings = history.textsOfFault().stream()
                .map(text -> reader.read(text, history.scope()))
                .toList();
        SortedMap<String, Double> tried = work.current()
                .tried(history.failedFixes().stream()
                        .map(CaseEvent.FixApplied::fixId)
                        .toList());
        return new RankingQuery(
                RankingQuery.standing(
                        history.findingsOfFault().stream().filter(model::knows).toList(), readings, knowledge),
                history.scope(),
                true,
                history.workedOnBefore(),
                tried,
                readings.stream()
                        .map(reading -> RankingQuery.wordsOf(reading, knowledge))
                        .collect(Collectors.joining("\n")),
                index.codes(unknownCodes(readings), history.scope(), history.id()));
    }

    private static Set<String> unknownCodes(List<Reading> readings) {
        Map<String, Integer> seen = new TreeMap<>();
        readings.stream()
                .flatMap(reading -> reading.codes().stream())
                .filter(code -> !code.known())
                .forEach(code -> seen.merge(code.code(), code.count(), Integer::sum));
        return seen.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .limit(MOST_CODES)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }
}
