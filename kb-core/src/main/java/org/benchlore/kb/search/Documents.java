package org.benchlore.kb.search;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.FeatureField;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.FieldType;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.SortedDocValuesField;
import org.apache.lucene.document.StoredField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.index.IndexOptions;
import org.apache.lucene.index.Term;
import org.apache.lucene.util.BytesRef;
import org.benchlore.kb.knowledge.DeviceScope;

/** Drafts as Lucene documents. */
final class Documents {
    private static final FieldType WORDS = words();

    private final Wordbook wordbook;

    Documents(Wordbook wordbook) {
        this.wordbook = wordbook;
    }

    static Term key(HitKind kind, String id) {
        return new Term(Fields.KEY, Draft.key(kind, id));
    }

    /** An entry, which stands at this place among the drafts. */
    Document entry(Draft draft, int ordinal) {
        Document document = of(draft);
        document.add(new NumericDocValuesField(Fields.ORDINAL, ordinal));
        document.add(new Field(Fields.TEXT, new TermList(terms(draft)), WORDS));
        document.add(new Field(Fields.NAME, draft.title(), WORDS));
        String name = Word.join(wordbook.words(draft.title()));
        document.add(new StringField(Fields.WHOLE_NAME, name, Field.Store.NO));
        addSubjects(document, Fields.CONCEPTS, draft);
        return document;
    }

    Document pastCase(Draft draft) {
        Document document = of(draft);
        draft.texts()
                .values()
                .forEach(
                        passages -> passages.forEach(passage -> document.add(new Field(Fields.STORY, passage, WORDS))));
        if (draft.causeId() != null) {
            label(document, Fields.CAUSE, draft.causeId());
        }
        addSubjects(document, Fields.CASE_CONCEPTS, draft);
        features(document, Fields.FINDINGS, draft.findings());
        features(document, Fields.LIKENESS, FindingWeights.tempered(draft.findings()));
        return document;
    }

    /** What an entry is found by, each word as often as it weighs; lists of names count a word once, however long they are. */
    private List<String> terms(Draft draft) {
        List<String> terms = new ArrayList<>();
        draft.texts().forEach((field, passages) -> {
            Collection<String> found = Fields.LISTS.contains(field) ? new LinkedHashSet<>() : new ArrayList<>();
            passages.forEach(passage -> wordbook.words(passage).forEach(word -> found.add(word.term())));
            for (int i = 0; i < Fields.TIMES.getOrDefault(field, 0); i++) {
                terms.addAll(found);
            }
        });
        return terms;
    }

    private static Document of(Draft draft) {
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
            if (!field.equals(Fields.LINKED) && !field.equals(Fields.NAME)) {
                passages.forEach(passage -> document.add(new StoredField(field, passage)));
            }
        });
        return document;
    }

    private void addSubjects(Document document, String field, Draft draft) {
        subjects(draft).forEach(concept -> document.add(new StringField(field, concept, Field.Store.NO)));
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

    /** How often each word stands there, but not where: nothing asks for phrases. */
    private static FieldType words() {
        FieldType type = new FieldType();
        type.setIndexOptions(IndexOptions.DOCS_AND_FREQS);
        type.setTokenized(true);
        type.freeze();
        return type;
    }

    private static void label(Document document, String field, String value) {
        document.add(new StringField(field, value, Field.Store.YES));
        document.add(new SortedDocValuesField(field, new BytesRef(value)));
    }

    private static void features(Document document, String field, Map<String, Double> weights) {
        weights.forEach((term, weight) -> document.add(new FeatureField(field, term, weight.floatValue())));
    }
}
