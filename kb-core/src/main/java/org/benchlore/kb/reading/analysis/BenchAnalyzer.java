package org.benchlore.kb.reading.analysis;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.apache.lucene.analysis.tokenattributes.TypeAttribute;

/** The reader's own tokens for the search index: terms of {@link Lexer}, one for {@link Synonyms}, punctuation left out, exact offsets. */
public final class BenchAnalyzer extends Analyzer {
    @Override
    protected TokenStreamComponents createComponents(String field) {
        return new TokenStreamComponents(new BenchTokenizer());
    }

    private static final class BenchTokenizer extends Tokenizer {
        private static final int USUAL_LENGTH = 256;

        private final CharTermAttribute term = addAttribute(CharTermAttribute.class);
        private final OffsetAttribute offset = addAttribute(OffsetAttribute.class);
        private final TypeAttribute type = addAttribute(TypeAttribute.class);
        private List<Token> tokens = List.of();
        private char[] text = new char[USUAL_LENGTH];
        private int next;
        private int textLength;

        @Override
        public void reset() throws IOException {
            super.reset();
            textLength = read();
            tokens = Lexer.tokens(new String(text, 0, textLength));
            next = 0;
        }

        private int read() throws IOException {
            int length = 0;
            int got = input.read(text, 0, text.length);
            while (got >= 0) {
                length += got;
                if (length == text.length) {
                    text = Arrays.copyOf(text, 2 * length);
                }
                got = input.read(text, length, text.length - length);
            }
            return length;
        }

        @Override
        public boolean incrementToken() {
            clearAttributes();
            while (next < tokens.size()) {
                Token token = tokens.get(next++);
                if (token.kind() != Token.Kind.PUNCTUATION) {
                    term.append(Synonyms.of(token));
                    offset.setOffset(correctOffset(token.start()), correctOffset(token.end()));
                    type.setType(token.kind().name());
                    return true;
                }
            }
            return false;
        }

        @Override
        public void end() throws IOException {
            super.end();
            int last = correctOffset(textLength);
            offset.setOffset(last, last);
        }
    }
}
