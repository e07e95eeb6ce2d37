package org.benchlore.kb.search;

import java.io.IOException;
import org.apache.lucene.index.FilterLeafReader;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.PostingsEnum;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.FixedBitSet;
import org.jspecify.annotations.Nullable;

/** A segment without the cases that an overlay stands for. */
final class HidingReader extends FilterLeafReader {
    private final FixedBitSet shown;
    private final int count;

    private HidingReader(LeafReader segment, FixedBitSet shown) {
        super(segment);
        this.shown = shown;
        this.count = shown.cardinality();
    }

    static LeafReader of(LeafReader segment, Overlay overlay) throws IOException {
        FixedBitSet shown = new FixedBitSet(segment.maxDoc());
        Bits live = segment.getLiveDocs();
        for (int doc = 0; doc < segment.maxDoc(); doc++) {
            if (live == null || live.get(doc)) {
                shown.set(doc);
            }
        }
        if (overlay.hidesAll()) {
            hide(shown, segment.postings(new Term(Fields.KIND, HitKind.CASE.id()), PostingsEnum.NONE));
        }
        for (String key : overlay.keys()) {
            hide(shown, segment.postings(new Term(Fields.KEY, key), PostingsEnum.NONE));
        }
        return new HidingReader(segment, shown);
    }

    private static void hide(FixedBitSet shown, @Nullable PostingsEnum hidden) throws IOException {
        if (hidden != null) {
            for (int doc = hidden.nextDoc(); doc != DocIdSetIterator.NO_MORE_DOCS; doc = hidden.nextDoc()) {
                shown.clear(doc);
            }
        }
    }

    @Override
    public Bits getLiveDocs() {
        return shown;
    }

    @Override
    public int numDocs() {
        return count;
    }

    @Override
    public CacheHelper getCoreCacheHelper() {
        return in.getCoreCacheHelper();
    }

    @Override
    public @Nullable CacheHelper getReaderCacheHelper() {
        return null; // what is hidden is not part of the segment's identity
    }
}
