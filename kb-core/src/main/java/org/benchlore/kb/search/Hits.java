package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.lucene.document.Document;
import org.apache.lucene.index.StoredFields;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/** Makes hits, with the passage that fits the words best, of what was found. */
final class Hits {
    private final Snapshot snapshot;
    private final Wordbook wordbook;
    private final Snippets snippets;

    Hits(Snapshot snapshot, Wordbook wordbook, List<Word> words) {
        this.snapshot = snapshot;
        this.wordbook = wordbook;
        Set<String> terms = new HashSet<>();
        words.forEach(word -> terms.add(word.term()));
        this.snippets = new Snippets(terms);
    }

    List<SearchHit> of(List<Found> page) throws IOException {
        StoredFields stored = snapshot.searcher().storedFields();
        List<SearchHit> hits = new ArrayList<>();
        for (Found found : page) {
            hits.add(found.kind() == HitKind.CASE ? pastCase(stored.document(found.at()), found) : entry(found));
        }
        return hits;
    }

    private SearchHit entry(Found found) {
        Draft entry = wordbook.ties().entry(found.at());
        return new SearchHit(
                entry.kind(),
                entry.id(),
                entry.title(),
                entry.scope(),
                Optional.empty(),
                found.score(),
                snippets.of(wordbook.passages(found.at()), wordbook.words(entry.title())));
    }

    private SearchHit pastCase(Document document, Found found) {
        String title = document.get(Fields.TITLE);
        List<Passage> passages = new ArrayList<>();
        for (String field : Fields.SHOWN) {
            for (String text : document.getValues(field)) {
                if (!text.isBlank() && !text.equals(title)) {
                    passages.add(new Passage(text, wordbook.words(text)));
                }
            }
        }
        return new SearchHit(
                HitKind.CASE,
                found.id(),
                title,
                DeviceScope.parse(document.get(Fields.SCOPE)),
                Optional.ofNullable(document.get(Fields.OUTCOME)).map(Outcome::parse),
                found.score(),
                snippets.of(passages, wordbook.words(title)));
    }
}
