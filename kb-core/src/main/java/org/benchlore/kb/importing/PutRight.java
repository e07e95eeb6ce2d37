package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;

/**
 * Whether a text tells that something was put right, in ways that the packs name ({@link
 * org.benchlore.kb.knowledge.Fix#done}): words in their order, with nothing but small words and words of faults between
 * them ("took the old swollen pack out"), or anything at all where dots stand between two of them ("opened ... washed ...
 * dry"). What is planned, asked, denied, or the work of others was not put right. Immutable.
 */
public final class PutRight {
    private static final String ANYTHING = "...";

    /** Words that dots stand for at most; it keeps the work linear on pasted logs. */
    private static final int REACH = 60;

    private static final Set<String> BETWEEN = Set.of("old", "new");

    private final List<Token> words = new ArrayList<>();
    private final List<Clause> clauses = new ArrayList<>();

    private PutRight() {}

    /**
     * What a note tells.
     *
     * @param text as it was written
     */
    public static PutRight in(String text) {
        PutRight told = new PutRight();
        for (Clause clause : Clause.of(text)) {
            for (Token word : clause.words()) {
                told.words.add(word);
                told.clauses.add(clause);
            }
        }
        return told;
    }

    /**
     * Whether it tells so in any of some ways.
     *
     * @param ways alternatives of one word stand with bars between them
     * @param from offset in the text, where what was amiss is told last: words that end before it are of something earlier
     */
    public boolean told(List<String> ways, int from) {
        for (String way : ways) {
            List<String> steps = Splitter.on(' ').omitEmptyStrings().splitToList(way);
            for (int word = 0; word < words.size(); word++) {
                if (goesOn(steps, 0, word, from)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean goesOn(List<String> steps, int step, int word, int from) {
        if (!says(word, steps.get(step))) {
            return false;
        }
        if (step + 1 == steps.size()) {
            return words.get(word).end() >= from;
        }
        boolean anything = steps.get(step + 1).equals(ANYTHING);
        int next = anything ? step + 2 : step + 1;
        int last = Math.min(words.size() - 1, word + REACH);
        for (int to = word + 1; to <= last; to++) {
            if (goesOn(steps, next, to, from)) {
                return true;
            }
            if (!anything && !(small(words.get(to)) && sentence(to) == sentence(word))) {
                return false;
            }
        }
        return false;
    }

    private boolean says(int word, String alternatives) {
        Clause clause = clauses.get(word);
        return Splitter.on('|')
                        .splitToList(alternatives)
                        .contains(words.get(word).surface())
                && !clause.asked()
                && !clause.before(clause.words().size(), Clause.NOT_OURS);
    }

    private int sentence(int word) {
        return clauses.get(word).sentence();
    }

    private static boolean small(Token word) {
        return BETWEEN.contains(word.surface())
                || NameWords.of(word).filter(term -> !NameWords.fault(term)).isEmpty();
    }
}
