package org.benchlore.kb.search;

import java.util.List;
import org.apache.lucene.analysis.Analyzer;
import org.benchlore.kb.knowledge.Knowledge;
import org.jspecify.annotations.Nullable;

/**
 * What the packs teach about words: names, spelling, completions. Each part is made when it is first asked for, since
 * many processes open an index for one question. Thread-safe.
 */
final class Wordbook {
    private final Knowledge knowledge;
    private final List<Draft> entries;
    private final Analyzer analyzer = new SearchAnalyzer();
    private @Nullable Concepts concepts;
    private @Nullable Speller speller;
    private @Nullable Completions completions;

    Wordbook(Knowledge knowledge, List<Draft> entries) {
        this.knowledge = knowledge;
        this.entries = entries;
    }

    Analyzer analyzer() {
        return analyzer;
    }

    List<Word> words(String text) {
        return Word.of(analyzer, text);
    }

    synchronized Concepts concepts() {
        Concepts made = concepts;
        if (made == null) {
            made = new Concepts(analyzer, knowledge);
            concepts = made;
        }
        return made;
    }

    synchronized Speller speller() {
        Speller made = speller;
        if (made == null) {
            made = new Speller(analyzer, entries);
            speller = made;
        }
        return made;
    }

    synchronized Completions completions() {
        Completions made = completions;
        if (made == null) {
            made = new Completions(knowledge);
            completions = made;
        }
        return made;
    }
}
