package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.search.DocIdSetIterator;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;

/**
 * What the cases of one segment are counted by, unpacked: taking it out of the packed columns again for each of all that is
 * found was a third of a search. Kept with the snapshot, 8 bytes a document.
 */
final class CaseColumns {
    static final int NONE = -1;

    /** Per document the rank of its id in the segment. */
    final int[] id;

    /**
     * Per document its place among those pairs of scope and outcome that there are, which halves what is looked at for each;
     * {@link #NONE} for entries.
     */
    final int[] group;

    final List<DeviceScope> scopes;
    final List<Outcome> outcomes;

    /** Per group the rank of its scope among {@link #scopes}. */
    final int[] scopeOf;

    /** Per group the rank of its outcome among {@link #outcomes}; {@link #NONE} for none. */
    final int[] outcomeOf;

    CaseColumns(LeafReaderContext leaf) throws IOException {
        SortedDocValues scopeColumn = DocValues.getSorted(leaf.reader(), Fields.SCOPE);
        SortedDocValues outcomeColumn = DocValues.getSorted(leaf.reader(), Fields.OUTCOME);
        scopes = values(scopeColumn, DeviceScope::parse);
        outcomes = values(outcomeColumn, Outcome::parse);
        id = ranks(DocValues.getSorted(leaf.reader(), Fields.ID), leaf.reader().maxDoc());
        group = ranks(scopeColumn, leaf.reader().maxDoc());
        DocIdSetIterator entries = DocValues.getNumeric(leaf.reader(), Fields.ORDINAL);
        for (int doc = entries.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = entries.nextDoc()) {
            group[doc] = NONE;
        }
        int[] outcome = ranks(outcomeColumn, leaf.reader().maxDoc());
        int pairs = outcomes.size() + 1;
        Map<Integer, Integer> places = new LinkedHashMap<>();
        for (int doc = 0; doc < group.length; doc++) {
            if (group[doc] != NONE) {
                int pair = group[doc] * pairs + outcome[doc] - NONE;
                Integer place = places.putIfAbsent(pair, places.size());
                group[doc] = place == null ? places.size() - 1 : place;
            }
        }
        scopeOf = places.keySet().stream().mapToInt(pair -> pair / pairs).toArray();
        outcomeOf =
                places.keySet().stream().mapToInt(pair -> pair % pairs + NONE).toArray();
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
