package org.benchlore.kb.search;

import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.AnalyzerWrapper;
import org.apache.lucene.analysis.CharArraySet;
import org.apache.lucene.analysis.StopFilter;
import org.apache.lucene.analysis.miscellaneous.TruncateTokenFilter;
import org.benchlore.kb.reading.analysis.BenchAnalyzer;
import org.benchlore.kb.reading.analysis.SilentWords;

/**
 * The reader's tokens for everything that is indexed or asked, less {@link SilentWords}.
 */
final class SearchAnalyzer extends AnalyzerWrapper {
    private static final int LONGEST_TERM = 64; // nobody types more, and Lucene refuses terms of 32 KiB
    private static final CharArraySet SILENT = CharArraySet.unmodifiableSet(new CharArraySet(SilentWords.ALL, false));

    private final Analyzer words = new BenchAnalyzer();

    SearchAnalyzer() {
        super(GLOBAL_REUSE_STRATEGY);
    }

    @Override
    protected Analyzer getWrappedAnalyzer(String field) {
        return words;
    }

    @Override
    protected TokenStreamComponents wrapComponents(String field, TokenStreamComponents inner) {
        return new TokenStreamComponents(
                inner.getSource(),
                new StopFilter(new TruncateTokenFilter(inner.getTokenStream(), LONGEST_TERM), SILENT));
    }
}
