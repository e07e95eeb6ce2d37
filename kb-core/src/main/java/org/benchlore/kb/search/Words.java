package org.benchlore.kb.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.apache.lucene.analysis.tokenattributes.PositionIncrementAttribute;

/** A text as the analyser sees it. */
final class Words {
    /**
     * One position of a text.
     *
     * @param terms what may stand there; the first is the plain one
     * @param start offset of its first character
     * @param end offset behind its last character
     */
    record Word(List<String> terms, int start, int end) {
        String term() {
            return terms.get(0);
        }
    }

    private Words() {}

    static List<Word> of(Analyzer analyzer, String text) {
        List<Word> words = new ArrayList<>();
        try (TokenStream stream = analyzer.tokenStream("words", text)) {
            CharTermAttribute term = stream.getAttribute(CharTermAttribute.class);
            OffsetAttribute offset = stream.getAttribute(OffsetAttribute.class);
            PositionIncrementAttribute increment = stream.getAttribute(PositionIncrementAttribute.class);
            stream.reset();
            while (stream.incrementToken()) {
                if (increment.getPositionIncrement() == 0 && !words.isEmpty()) {
                    Word before = words.remove(words.size() - 1);
                    List<String> terms = new ArrayList<>(before.terms);
                    terms.add(term.toString());
                    words.add(new Word(List.copyOf(terms), before.start, before.end));
                } else {
                    words.add(new Word(List.of(term.toString()), offset.startOffset(), offset.endOffset()));
                }
            }
            stream.end();
        } catch (IOException e) {
            throw new UncheckedIOException(e); // a reader over a string does not fail
        }
        return words;
    }

    static boolean any(Word word, Predicate<String> wanted) {
        return word.terms.stream().anyMatch(wanted);
    }
}
