package org.benchlore.kb.search;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.FeatureField;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.SortedDocValuesField;
import org.apache.lucene.document.StoredField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.Term;
import org.apache.lucene.util.BytesRef;
import org.benchlore.kb.knowledge.DeviceScope;

/** Drafts as Lucene documents. */
final class Documents {
    /** A case bears out what an entry explains, so at equal findings the entry comes first. */
    private static final double OF_A_CASE = 0.7;

    private final Wordbook wordbook;

    Documents(Wordbook wordbook) {
        this.wordbook = wordbook;
    }

    static Term key(HitKind kind, String id) {
        return new Term(Fields.KEY, Draft.key(kind, id));
    }

    Document of(Draft draft) {
        Document document = new Document();
        document.add(new StringField(Fields.KEY, draft.key(), Field.Store.NO));
        label(document, Fields.ID, draft.id());
        label(document, Fields.KIND, draft.kind().id());
        label(document, Fields.SCOPE, draft.scope().toString());
        if (draft.outcome() != null) {
            label(document, Fields.OUTCOME, draft.outcome().id());
        }
        for (DeviceScope around : draft.scope().lineage()) {
            document.add(new StringField(Fields.WITHIN, around.toString(), Field.Store.NO));
        }
        document.add(new StoredField(Fields.TITLE, draft.title()));
        draft.texts().forEach((field, passages) -> {
            Field.Store store = field.equals(Fields.LINKED) ? Field.Store.NO : Field.Store.YES;
            passages.forEach(passage -> document.add(new TextField(field, passage, store)));
        });
        for (String concept : subjects(draft)) {
            document.add(new StringField(Fields.CONCEPTS, concept, Field.Store.NO));
        }
        boolean isCase = draft.kind() == HitKind.CASE;
        features(document, Fields.FINDINGS, draft.findings(), isCase ? OF_A_CASE : 1);
        if (isCase) {
            features(document, Fields.LIKENESS, FindingWeights.tempered(draft.findings()), 1);
        }
        return document;
    }

    private Set<String> subjects(Draft draft) {
        Set<String> subjects = new TreeSet<>(Set.of(draft.id()));
        for (List<String> passages : draft.texts().values()) {
            for (String passage : passages) {
                subjects.addAll(wordbook.concepts()
                        .in(wordbook.words(passage), draft.scope())
                        .keySet());
            }
        }
        draft.findings().forEach((term, weight) -> {
            if (weight >= FindingWeights.SUBJECT) {
                subjects.add(term.substring(0, term.indexOf('=')));
            }
        });
        return subjects;
    }

    private static void label(Document document, String field, String value) {
        document.add(new StringField(field, value, Field.Store.YES));
        document.add(new SortedDocValuesField(field, new BytesRef(value)));
    }

    private static void features(Document document, String field, Map<String, Double> weights, double share) {
        weights.forEach((term, weight) -> document.add(new FeatureField(field, term, (float) (share * weight))));
    }
}
