package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;

/**
 * A word of a text as the analyser sees it.
 *
 * @param term what equal words share
 * @param start offset of its first character
 * @param end offset behind its last character
 */
record Word(String term, int start, int end) {
    /** All terms in one, so that equal texts are equal whatever their spaces and capitals. */
    static String join(List<Word> words) {
        return words.stream().map(Word::term).collect(Collectors.joining(" "));
    }

    /** The same with a term that equal ones share, for words that are kept. */
    Word sharing(Map<String, String> terms) {
        return new Word(terms.computeIfAbsent(term, same -> same), start, end);
    }

    static List<Word> of(Analyzer analyzer, String text) {
        List<Word> words = new ArrayList<>();
        try (TokenStream stream = analyzer.tokenStream("words", text)) {
            CharTermAttribute term = stream.getAttribute(CharTermAttribute.class);
            OffsetAttribute offset = stream.getAttribute(OffsetAttribute.class);
            stream.reset();
            while (stream.incrementToken()) {
                words.add(new Word(term.toString(), offset.startOffset(), offset.endOffset()));
            }
            stream.end();
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a reader over a string does not fail
        }
        return words;
    }
}
