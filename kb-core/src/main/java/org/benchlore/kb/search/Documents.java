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

    /** Nobody asks for a longer one by all its words, and Lucene takes no term beyond 32,766 bytes. */
    private static final int LONGEST_TAG = 1000;

    private final Wordbook wordbook;

    Documents(Wordbook wordbook) {
        this.wordbook = wordbook;
    }

    static Term key(HitKind kind, String id) {
        return new Term(Fields.KEY, Draft.key(kind, id));
    }

    /** An entry, which stands at this place among the drafts; what is shown of it is taken from there. */
    Document entry(Draft draft, int ordinal) {
        Document document = of(draft);
        document.add(new NumericDocValuesField(Fields.ORDINAL, ordinal));
        List<String> terms = new ArrayList<>();
        Set<String> subjects = subjects(draft);
        draft.texts().forEach((field, passages) -> {
            Collection<String> found = Fields.LISTS.contains(field) ? new LinkedHashSet<>() : new ArrayList<>();
            passages.forEach(passage -> found.addAll(terms(passage, draft.scope(), subjects)));
            for (int i = 0; i < Fields.TIMES.getOrDefault(field, 0); i++) {
                terms.addAll(found);
            }
        });
        document.add(new Field(Fields.TEXT, new TermList(terms), WORDS));
        List<Word> name = wordbook.words(draft.title());
        document.add(new Field(Fields.NAME, new TermList(terms(name)), WORDS));
        document.add(new StringField(Fields.WHOLE_NAME, Word.join(name), Field.Store.NO));
        label(document, Fields.CONCEPTS, subjects);
        return document;
    }

    Document pastCase(Draft draft) {
        Document document = of(draft);
        List<String> terms = new ArrayList<>();
        Set<String> subjects = subjects(draft);
        draft.texts()
                .forEach((field, passages) -> passages.forEach(passage -> {
                    terms.addAll(terms(passage, draft.scope(), subjects));
                    document.add(new StoredField(field, passage));
                }));
        draft.texts().getOrDefault(Fields.CODES, List.of()).stream()
                .map(code -> Word.join(wordbook.words(code)))
                .filter(tag -> tag.length() <= LONGEST_TAG)
                .forEach(tag -> document.add(new StringField(Fields.TAG, tag, Field.Store.NO)));
        document.add(new Field(Fields.STORY, new TermList(terms), WORDS));
        document.add(new StoredField(Fields.TITLE, draft.title()));
        document.add(new StoredField(Fields.SCOPE, draft.scope().toString()));
        if (draft.outcome() != null) {
            document.add(new StoredField(Fields.OUTCOME, draft.outcome().id()));
            label(document, Fields.OUTCOME, draft.outcome().id());
        }
        if (draft.causeId() != null) {
            label(document, Fields.CAUSE, draft.causeId());
        }
        label(document, Fields.CASE_CONCEPTS, subjects);
        features(document, Fields.FINDINGS, draft.findings());
        features(document, Fields.LIKENESS, FindingWeights.tempered(draft.findings()));
        return document;
    }

    private static Document of(Draft draft) {
        Document document = new Document();
        document.add(new StringField(Fields.KEY, draft.key(), Field.Store.NO));
        label(document, Fields.ID, draft.id());
        label(document, Fields.KIND, draft.kind().id());
        label(document, Fields.SCOPE, draft.scope().toString());
        for (DeviceScope around : draft.scope().lineage()) {
            document.add(new StringField(Fields.WITHIN, around.toString(), Field.Store.NO));
        }
        return document;
    }

    /** What a passage is found by; the subjects it names are added to the others. */
    private List<String> terms(String passage, DeviceScope scope, Set<String> subjects) {
        List<Word> words = wordbook.words(passage);
        subjects.addAll(wordbook.concepts().in(words, scope).keySet());
        return terms(words);
    }

    private static List<String> terms(List<Word> words) {
        return words.stream().map(Word::term).toList();
    }

    /** The entry itself, and what it finds. */
    private static Set<String> subjects(Draft draft) {
        Set<String> subjects = new TreeSet<>(Set.of(draft.id()));
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

    private static void label(Document document, String field, Set<String> values) {
        values.forEach(value -> document.add(new StringField(field, value, Field.Store.NO)));
    }

    private static void label(Document document, String field, String value) {
        document.add(new StringField(field, value, Field.Store.NO));
        document.add(new SortedDocValuesField(field, new BytesRef(value)));
    }

    private static void features(Document document, String field, Map<String, Double> weights) {
        weights.forEach((term, weight) -> document.add(new FeatureField(field, term, weight.floatValue())));
    }
}
