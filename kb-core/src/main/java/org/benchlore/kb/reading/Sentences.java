package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/** Where the sentences of a text, their clauses and the comma-separated segments of those end. */
final class Sentences {
    /** A line at least this long may go on in the next one. */
    private static final int WRAPPED_LINE = 60;

    /** Tokens after which a sentence ends without a stop, so that the work grows with the text and not with its square. */
    private static final int LONGEST_SENTENCE = 200;

    /** Numbers by token, in rising order. */
    final int[] sentence;

    final int[] clause;
    final int[] segment;

    private final String text;
    private final List<Token> tokens;

    /** Where the line starts that is looked at, in characters. */
    private int lineStart;

    /** @param itemAt the items of the lexicon by the tokens they cover */
    Sentences(String text, List<Token> tokens, @Nullable Item[] itemAt) {
        this.text = text;
        this.tokens = tokens;
        this.sentence = new int[tokens.size()];
        this.clause = new int[tokens.size()];
        this.segment = new int[tokens.size()];
        int sentences = 0;
        int clauses = 0;
        int segments = 0;
        int start = 0;
        for (int i = 0; i < tokens.size(); i++) {
            Item item = itemAt[i];
            if (item != null && item.from == i && breaks(item) && !echoes(item)) {
                clauses++;
                segments++;
            }
            sentence[i] = sentences;
            clause[i] = clauses;
            segment[i] = segments;
            Token token = tokens.get(i);
            boolean tooLong = i - start >= LONGEST_SENTENCE && (item == null || item.to == i + 1);
            if (!tooLong && (item != null || token.kind() != Kind.PUNCTUATION)) {
                continue;
            }
            boolean ends = endsSentence(i);
            lineStart = token.is("\n") ? token.end() : lineStart;
            if (tooLong || ends) {
                sentences++;
                clauses++;
                segments++;
                start = i + 1;
            } else if (",()[]:".contains(token.term()) || dash(i)) {
                segments += token.term().equals(":") ? 0 : 1;
            }
        }
    }

    private static boolean breaks(Item item) {
        boolean pack = !item.entry.names.isEmpty() || !item.entry.words.isEmpty() || !item.entry.phrases.isEmpty();
        return !pack && (item.entry.cue == Cue.BREAK || item.entry.cue == Cue.EXCEPT);
    }

    /** "So is the 3.3" goes on with what was said. */
    private boolean echoes(Item item) {
        boolean so = tokens.get(item.from).term().equals("so") && item.to < tokens.size();
        return so
                && (tokens.get(item.to).term().equals("be")
                        || tokens.get(item.to).term().equals("do"));
    }

    private boolean dash(int i) {
        return tokens.get(i).is("-");
    }

    private boolean endsSentence(int i) {
        Token token = tokens.get(i);
        if (token.is("\n")) {
            return i + 1 == tokens.size() || !wraps(i);
        }
        return token.is(".") || token.is("!") || token.is("?") || token.is(";");
    }

    /** Whether a line end lies within a sentence: the line is long and the next one goes on in lower case. */
    private boolean wraps(int i) {
        int end = tokens.get(i).start();
        int next = tokens.get(i + 1).start();
        return end - lineStart >= WRAPPED_LINE && Character.isLowerCase(text.charAt(next));
    }
}
