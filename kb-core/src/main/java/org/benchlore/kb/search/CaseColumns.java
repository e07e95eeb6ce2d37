package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.DocIdSetIterator;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * What the cases of one segment are counted by, unpacked: taking it out of the packed columns again for each of all that is
 * found was a third of a search. Kept with the snapshot, 12 bytes a document.
 */
final class CaseColumns {
    static final int NONE = -1;

    /** Per document the rank of its id in the segment. */
    final int[] id;

    /** Per document the rank of its scope among {@link #scopes}; {@link #NONE} for entries. */
    final int[] scope;

    final List<DeviceScope> scopes;

    /** Per document the rank of its outcome among {@link #outcomes}; {@link #NONE} for none. */
    final int[] outcome;

    final List<Outcome> outcomes;

    CaseColumns(LeafReaderContext leaf) throws IOException {
        SortedDocValues scopeColumn = DocValues.getSorted(leaf.reader(), Fields.SCOPE);
        SortedDocValues outcomeColumn = DocValues.getSorted(leaf.reader(), Fields.OUTCOME);
        scopes = values(scopeColumn, DeviceScope::parse);
        outcomes = values(outcomeColumn, Outcome::parse);
        id = ranks(DocValues.getSorted(leaf.reader(), Fields.ID), leaf.reader().maxDoc());
        scope = ranks(scopeColumn, leaf.reader().maxDoc());
        outcome = ranks(outcomeColumn, leaf.reader().maxDoc());
        DocIdSetIterator entries = DocValues.getNumeric(leaf.reader(), Fields.ORDINAL);
        for (int doc = entries.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = entries.nextDoc()) {
            scope[doc] = NONE;
        }
    }

    private interface Parse<T> {
        T of(String value);
    }

    private static <T> List<T> values(SortedDocValues column, Parse<T> parse) throws IOException {
        List<T> values = new ArrayList<>(column.getValueCount());
        for (int i = 0; i < column.getValueCount(); i++) {
            values.add(parse.of(column.lookupOrd(i).utf8ToString()));
        }
        return values;
    }

    private static int[] ranks(SortedDocValues column, int documents) throws IOException {
        int[] ranks = new int[documents];
        Arrays.fill(ranks, NONE);
        for (int doc = column.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = column.nextDoc()) {
            ranks[doc] = column.ordValue();
        }
        return ranks;
    }
}
