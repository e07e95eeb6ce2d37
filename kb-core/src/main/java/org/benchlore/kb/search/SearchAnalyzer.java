package org.benchlore.kb.search;

import java.util.List;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.CharArraySet;
import org.apache.lucene.analysis.LowerCaseFilter;
import org.apache.lucene.analysis.StopFilter;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.en.KStemFilter;
import org.apache.lucene.analysis.miscellaneous.ASCIIFoldingFilter;

/**
 * One chain for everything that is indexed or asked. The stemmer is the light one: "leaking" meets "leak", "capacitors"
 * meets "capacitor", but "converter" does not meet "conversion". "No", "not", "on" and "off" carry meaning and stay.
 */
final class SearchAnalyzer extends Analyzer {
    private static final CharArraySet SILENT = CharArraySet.unmodifiableSet(new CharArraySet(
            List.of(
                    "a", "an", "the", "of", "is", "are", "was", "be", "it", "its", "and", "or", "that", "this", "to",
                    "in", "at", "as", "with", "for", "by", "has", "have", "i"),
            false));

    @Override
    protected TokenStreamComponents createComponents(String field) {
        Tokenizer words = new BenchTokenizer();
        TokenStream chain = new ASCIIFoldingFilter(new LowerCaseFilter(words));
        return new TokenStreamComponents(words, new KStemFilter(new StopFilter(chain, SILENT)));
    }
}
