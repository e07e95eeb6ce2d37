package org.benchlore.kb;

import java.util.List;
import java.util.Set;
import java.util.SortedMap;
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
                .withCodes(index.codes(Set.copyOf(reading.unknownCodes()), reading.scope(), ""));
    }

    RankingQuery of(CaseHistory history) {
        RankingModel model = memory.current();
        List<Reading> readings = history.textsOfFault().stream()
                .map(text -> reader.read(text, history.scope()))
                .toList();
        Set<String> codes =
                readings.stream().flatMap(r -> r.unknownCodes().stream()).collect(Collectors.toSet());
        SortedMap<String, Double> tried = work.current()
                .tried(history.failedFixes().stream()
                        .map(CaseEvent.FixApplied::fixId)
                        .toList());
        return new RankingQuery(
                history.findingsOfFault().stream().filter(model::knows).toList(),
                history.scope(),
                true,
                history.workedOnBefore(),
                tried,
                readings.stream()
                        .map(reading -> RankingQuery.wordsOf(reading, knowledge))
                        .collect(Collectors.joining("\n")),
                index.codes(codes, history.scope(), history.id()));
    }
}
