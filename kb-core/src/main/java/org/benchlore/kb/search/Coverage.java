package org.benchlore.kb.search;

import java.io.IOException;
import java.util.Collection;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.PostingsEnum;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.util.Bits;

/**
 * How much of what was asked each entry has at all, a word counting by its rarity as in BM25. Words that no entry has are
 * not asked of any. An entry that repeats one common word says less than one that has most of them once, and BM25's sum
 * does not tell the two apart.
 */
final class Coverage {
    private final double[] found;
    private double all;

    private Coverage(int entries) {
        found = new double[entries];
    }

    static Coverage of(Snapshot snapshot, Collection<String> terms, int entries) throws IOException {
        Coverage coverage = new Coverage(entries);
        IndexReader reader = snapshot.reader();
        double documents = reader.getDocCount(Fields.TEXT);
        for (String word : terms) {
            Term term = new Term(Fields.TEXT, word);
            double having = reader.docFreq(term);
            if (having > 0) {
                coverage.take(reader, term, Math.log1p((documents - having + 0.5) / (having + 0.5)));
            }
        }
        return coverage;
    }

    private void take(IndexReader reader, Term term, double rarity) throws IOException {
        all += rarity;
        for (LeafReaderContext leaf : reader.leaves()) {
            PostingsEnum documents = leaf.reader().postings(term, PostingsEnum.NONE);
            if (documents != null) {
                Bits live = leaf.reader().getLiveDocs();
                NumericDocValues places = DocValues.getNumeric(leaf.reader(), Fields.ORDINAL);
                int doc = documents.nextDoc();
                while (doc != DocIdSetIterator.NO_MORE_DOCS) {
                    if ((live == null || live.get(doc)) && places.advanceExact(doc)) {
                        found[(int) places.longValue()] += rarity;
                    }
                    doc = documents.nextDoc();
                }
            }
        }
    }

    /** The share of the words' rarity that an entry has, in [0,1]; 1 where no word counts. */
    double of(int place) {
        return all == 0 ? 1 : found[place] / all;
    }
}
