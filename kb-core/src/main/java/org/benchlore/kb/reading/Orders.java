package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Segments that tell somebody what to do, "check the 12 V", and by their form some that do not: what a check told, and a trial
 * with its outcome.
 */
final class Orders {
    private static final int OUTCOME_REACH = 8;

    private static final Words SAME_PAST = Words.of("put", "set", "cut", "let", "shut");
    /** Tokens from "put" to "new". */
    private static final int NEW_REACH = 4;

    private static final Words NEW = Words.of("new", "fresh", "another");
    private static final Words TIMES = Words.of("yesterday", "ago", "already", "earlier", "last");

    private final String text;
    private final List<Token> tokens;
    private final List<String> words;
    private final Item[] itemAt;

    /**
     * The orders of a text.
     *
     * @param words surfaces of the tokens
     * @param itemAt the item each token belongs to, null for none
     */
    Orders(String text, List<Token> tokens, List<String> words, Item[] itemAt) {
        this.text = text;
        this.tokens = tokens;
        this.words = words;
        this.itemAt = itemAt;
    }

    /** "Check the 12 V", "never measure ohms …", "don't power it up". */
    boolean at(int first, int to) {
        String word = words.get(first);
        String next = next(first, to);
        if (next.isEmpty() || text.startsWith("-", tokens.get(first).end())) {
            // "take-up torque" is a thing
            return false;
        }
        if (word.equals("never") || word.equals("please") || word.equals("pls")) {
            return word.startsWith("pl")
                    || MoodWords.ORDERS.contains(next)
                    || MoodWords.ORDERS_WITH_OBJECT.contains(next);
        }
        if (word.equals("do") && next.equals("not")) {
            return true;
        }
        boolean object = MoodWords.OBJECTS.contains(next);
        boolean order = (MoodWords.ORDERS.contains(word) && !next.equals("be") && !states(first, to))
                || (MoodWords.ORDERS_WITH_OBJECT.contains(word) && object);
        return order
                && !statement(first)
                && !outcome(first, to)
                && !tried(first, to)
                && !done(first, to)
                && (object
                        || !MoodWords.DEED_NOUNS.contains(word)
                        || itemAt[first] == null
                        || !itemAt[first].teachesMore(first, 1));
    }

    /**
     * "Put new cells in", "put new cells in yesterday": of a verb whose past looks the same, the time says that it was done, or that
     * what is put in is new, where nothing more is asked for.
     */
    private boolean done(int first, int to) {
        if (SAME_PAST.contains(words.get(first))) {
            if (words.get(first).equals("put") && anew(first, to)) {
                return true;
            }
            for (int i = first + 1; i < to; i++) {
                if (TIMES.contains(words.get(i))) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean anew(int first, int to) {
        boolean fresh = false;
        for (int i = first + 1; i < to; i++) {
            fresh |= i < first + NEW_REACH && NEW.contains(words.get(i));
            if (MoodWords.ORDERS.contains(words.get(i)) || MoodWords.NOT_YET.contains(words.get(i))) {
                return false;
            }
        }
        return fresh;
    }

    /** "Pull the drive plug and everything comes up": an order by its form that tells what was seen. */
    private boolean outcome(int first, int to) {
        for (int i = first + 2; i + 2 < to; i++) {
            if (words.get(i).equals("and") && MoodWords.OUTCOMES.contains(words.get(i + 1))) {
                String verb = words.get(i + 2);
                return !verb.equals("should")
                        && !verb.equals("will")
                        && !verb.equals("must")
                        && !MoodWords.ORDERS.contains(verb);
            }
        }
        return false;
    }

    /** "Feed at the fan connector too weak" is taught as a whole. */
    private boolean statement(int first) {
        Item item = itemAt[first];
        return item != null
                && item.from == first
                && (!MoodWords.ORDERS.contains(words.get(first)) || SAME_PAST.contains(words.get(first)))
                && !item.entry.phrases.isEmpty()
                && item.to - first > 2;
    }

    /** "Pull the aerial and the hum is gone", "put new cells in, fault unchanged": a trial with its outcome. */
    private boolean tried(int first, int to) {
        if (MoodWords.DEED_NOUNS.contains(words.get(first))) {
            return tellsOfItself(first, to);
        }
        if (!MoodWords.TRIALS.contains(words.get(first))) {
            return false;
        }
        boolean and = false;
        for (int i = first + 2; i < to; i++) {
            String word = words.get(i);
            if (and && (MoodWords.NOT_YET.contains(word) || MoodWords.ORDERS.contains(word))) {
                return false;
            }
            if (and && MoodWords.HAPPENS.at(words, i, to) > 0) {
                return true;
            }
            and |= word.equals("and");
        }
        if (to >= tokens.size() || !tokens.get(to).is(",")) {
            return false;
        }
        int next = to + 1;
        int end = segmentEnd(next, next + 2 * OUTCOME_REACH);
        for (int i = next; i < end && i < next + OUTCOME_REACH; i++) {
            if (MoodWords.NOT_YET.contains(words.get(i)) || MoodWords.ORDERS.contains(words.get(i))) {
                return false;
            }
            if (MoodWords.SHOWN.at(words, i, end) > 0) {
                return true;
            }
        }
        return false;
    }

    /** "Check without repair reports …": no order but what a check told. */
    private boolean tellsOfItself(int first, int to) {
        if (MoodWords.OBJECTS.contains(next(first, to)) && !MoodWords.GOVERNORS.contains(next(first, to))) {
            return false;
        }
        for (int i = first + 1; i < Math.min(to, first + OUTCOME_REACH); i++) {
            if (MoodWords.REPORTING.contains(words.get(i))) {
                return true;
            }
        }
        return false;
    }

    /** "Check fuse: blown" has its answer behind the colon. */
    private boolean states(int first, int to) {
        return to < tokens.size() && tokens.get(to).is(":") && to - first <= 4;
    }

    private int segmentEnd(int from, int limit) {
        int end = from;
        while (end < Math.min(tokens.size(), limit) && !Mood.separates(tokens.get(end))) {
            end++;
        }
        return end;
    }

    private String next(int i, int to) {
        return i + 1 < to ? words.get(i + 1) : "";
    }
}
