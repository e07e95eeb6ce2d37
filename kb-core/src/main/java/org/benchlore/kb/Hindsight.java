package org.benchlore.kb;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Evaluation;
import org.benchlore.kb.ranking.Evaluator;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.RankingSettings;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.reading.Vocabulary;

/** What all cases together say of the packs: how well these rank, and which words they lack. Reads every case each time. */
final class Hindsight {
    private final Knowledge knowledge;
    private final Reader reader;
    private final CaseStore store;
    private final RankingSettings settings;

    Hindsight(Knowledge knowledge, Reader reader, CaseStore store, RankingSettings settings) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.store = store;
        this.settings = settings;
    }

    Evaluation evaluate(boolean imported) {
        return new Evaluator(knowledge, settings, this::told).replay(all().toList(), imported);
    }

    /** Of the complaint alone: notes taken later may name the cause. */
    private RankingQuery told(RankingQuery query, CaseHistory history) {
        Reading complaint = reader.read(history.complaint(), history.scope());
        return query.inWords(complaint.text()).ofKinds(complaint.kinds());
    }

    List<UnknownPhrase> unknownPhrases(int atLeast) {
        if (atLeast < 1) {
            throw new IllegalArgumentException("atLeast is " + atLeast + "; give a number from 1");
        }
        List<Vocabulary.Note> notes = all().filter(history -> !history.withdrawn())
                .flatMap(Hindsight::notes)
                .toList();
        return Vocabulary.unknown(knowledge, reader, notes, atLeast);
    }

    private static Stream<Vocabulary.Note> notes(CaseHistory history) {
        return history.texts().stream()
                .map(text -> new Vocabulary.Note(
                        history.id(), history.scope(), text, Optional.ofNullable(history.causeId())));
    }

    private Stream<CaseHistory> all() {
        return store.caseIds(Integer.MAX_VALUE).stream().flatMap(id -> store.history(id).stream());
    }
}
