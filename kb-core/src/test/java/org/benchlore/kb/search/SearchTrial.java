package org.benchlore.kb.search;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.StringField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseImport;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;

/**
 * The packs that ship, the invented workshop's packs and its cases, to be searched in several ways: with the findings that
 * the reader makes of the words, with the words alone, and with plain BM25 over one text per document, same analyser.
 */
final class SearchTrial implements AutoCloseable {
    static final Path DATA = Path.of("../kb-data/src/main/resources/org/benchlore/kb/data");

    private static final String TEXT = "text";

    /** One way to search: keys of the best, best first. */
    interface Way {
        List<String> find(GradedQuery query, int depth);
    }

    private final org.benchlore.kb.reading.Reader reader;
    private final List<Draft> drafts;
    private final SearchIndex index;
    private final ByteBuffersDirectory directory = new ByteBuffersDirectory();
    private final DirectoryReader plain;

    private SearchTrial(Knowledge knowledge, List<CaseHistory> cases) throws IOException {
        reader = org.benchlore.kb.reading.Reader.of(knowledge);
        CaseDrafts caseDrafts = new CaseDrafts(knowledge);
        drafts = new ArrayList<>(EntryDrafts.of(knowledge));
        cases.forEach(history -> drafts.add(caseDrafts.of(history)));
        index = SearchIndex.inMemory(knowledge);
        index.rebuild(cases.iterator(), new Reached(1, "all"));
        try (IndexWriter writer = new IndexWriter(directory, new IndexWriterConfig(new SearchAnalyzer()))) {
            for (Draft draft : drafts) {
                writer.addDocument(plain(draft));
            }
        }
        plain = DirectoryReader.open(directory);
    }

    static SearchTrial open() {
        List<PackSource> packs = new ArrayList<>(PackSource.readFolder(DATA.resolve("packs")));
        packs.addAll(PackSource.readFolder(DATA.resolve("demo")));
        Knowledge knowledge = PackReader.read(packs);
        org.benchlore.kb.reading.Reader reader = org.benchlore.kb.reading.Reader.of(knowledge);
        try (CaseStore store = CaseStore.inMemory();
                Reader lines = Files.newBufferedReader(DATA.resolve("demo/cases.jsonl"))) {
            CaseImport.read(
                    store,
                    lines,
                    "cases.jsonl",
                    CaseHistory.OWN,
                    (text, scope) -> reader.read(text, scope).findings());
            List<CaseHistory> cases = store.caseIds(Integer.MAX_VALUE).stream()
                    .flatMap(id -> store.history(id).stream())
                    .toList();
            return new SearchTrial(knowledge, cases);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The ways by name; the product first. */
    Map<String, Way> ways() {
        Map<String, Way> ways = new LinkedHashMap<>();
        ways.put(
                "benchlore",
                (query, depth) -> keys(SearchQuery.of(query.words())
                        .with(reader.read(query.words(), query.scope()).findings())
                        .in(query.scope())
                        .page(depth, 0)));
        ways.put(
                "words only",
                (query, depth) ->
                        keys(SearchQuery.of(query.words()).in(query.scope()).page(depth, 0)));
        ways.put("bm25", this::plain);
        return ways;
    }

    Way way(String name) {
        Way way = ways().get(name);
        if (way == null) {
            throw new IllegalArgumentException("no way to search is called " + name);
        }
        return way;
    }

    SearchIndex index() {
        return index;
    }

    /** Entries, then cases. */
    List<Draft> drafts() {
        return drafts;
    }

    private List<String> keys(SearchQuery query) {
        return index.search(query).hits().stream()
                .map(hit -> Draft.key(hit.kind(), hit.id()))
                .toList();
    }

    private static Document plain(Draft draft) {
        Document document = new Document();
        document.add(new StringField(Fields.KEY, draft.key(), Field.Store.YES));
        draft.scope()
                .lineage()
                .forEach(around -> document.add(new StringField(Fields.WITHIN, around.toString(), Field.Store.NO)));
        document.add(new StringField(Fields.SCOPE, draft.scope().toString(), Field.Store.NO));
        draft.texts().forEach((field, passages) -> {
            if (!field.equals(Fields.LINKED)) {
                passages.forEach(text -> document.add(new TextField(TEXT, text, Field.Store.NO)));
            }
        });
        return document;
    }

    private List<String> plain(GradedQuery query, int depth) {
        try {
            IndexSearcher searcher = new IndexSearcher(plain);
            BooleanQuery.Builder any = new BooleanQuery.Builder();
            for (Word word : Word.of(new SearchAnalyzer(), query.words())) {
                any.add(new TermQuery(new Term(TEXT, word.term())), Occur.SHOULD);
            }
            List<String> keys = new ArrayList<>();
            for (ScoreDoc doc : searcher.search(Queries.within(any.build(), query.scope()), depth).scoreDocs) {
                keys.add(plain.storedFields().document(doc.doc).get(Fields.KEY));
            }
            return keys;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        plain.close();
        directory.close();
        index.close();
    }
}
