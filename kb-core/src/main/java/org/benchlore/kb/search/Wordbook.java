package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.apache.lucene.analysis.Analyzer;
import org.benchlore.kb.knowledge.Knowledge;
import org.jspecify.annotations.Nullable;

/**
 * What the packs teach about words, names, spelling, completions, and about what belongs together. Each part is made when it is first asked for, since
 * many processes open an index for one question. Thread-safe.
 */
final class Wordbook {
    private final Knowledge knowledge;
    private final List<Draft> entries;
    private final Analyzer analyzer = new SearchAnalyzer();
    private final Speller speller;
    private @Nullable Concepts concepts;
    private @Nullable Completions completions;
    private @Nullable Ties ties;
    private final AtomicReferenceArray<@Nullable List<Passage>> passages;
    private final Map<String, String> terms = new ConcurrentHashMap<>();

    Wordbook(Knowledge knowledge, List<Draft> entries) {
        this.knowledge = knowledge;
        this.entries = entries;
        this.passages = new AtomicReferenceArray<>(entries.size());
        this.speller = new Speller(analyzer, entries);
    }

    Analyzer analyzer() {
        return analyzer;
    }

    List<Word> words(String text) {
        return Word.of(analyzer, text);
    }

    /** What may be shown of an entry; taken apart when it is first found, and kept. */
    List<Passage> passages(int place) {
        List<Passage> made = passages.get(place);
        if (made == null) {
            made = new ArrayList<>();
            for (String field : Fields.SHOWN) {
                for (String text : entries.get(place).texts().getOrDefault(field, List.of())) {
                    made.add(new Passage(
                            text,
                            words(text).stream()
                                    .map(word -> word.sharing(terms))
                                    .toList()));
                }
            }
            passages.set(place, made);
        }
        return made;
    }

    synchronized Concepts concepts() {
        Concepts made = concepts;
        if (made == null) {
            made = new Concepts(analyzer, knowledge);
            concepts = made;
        }
        return made;
    }

    Speller speller() {
        return speller;
    }

    synchronized Completions completions() {
        Completions made = completions;
        if (made == null) {
            made = new Completions(knowledge);
            completions = made;
        }
        return made;
    }

    synchronized Ties ties() {
        Ties made = ties;
        if (made == null) {
            made = new Ties(knowledge, entries);
            ties = made;
        }
        return made;
    }
}
