package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * Which words of a text state something about the unit, and which only ask, plan, order, suppose or tell how units are in
 * general. Looks at sentences and their comma-separated segments, each word once. Words within a longer name or phrase of the
 * packs set no mood: "shipping lock", "spare drive".
 */
final class Mood {
    private static final int HABIT_REACH = 10;

    /** Words of a name told of in the plural. */
    private static final int MOST_OF_NAME = 3;

    /** Tokens from "should" to what should be read. */
    private static final int LIMIT_REACH = 5;

    /** Most tokens of a heading. */
    private static final int HEADING = 9;

    private final String text;
    private final List<Token> tokens;
    private final List<String> words;
    private final Item[] itemAt;
    private final Orders orders;
    private final boolean[] unreal;
    private final boolean apostrophes;
    private boolean colons;

    /** Whether anything is said of several. */
    private boolean they;

    private Mood(String text, List<Token> tokens, Item[] itemAt) {
        this.text = text;
        this.tokens = tokens;
        this.itemAt = itemAt;
        this.words = new ArrayList<>(tokens.size());
        for (Token token : tokens) {
            words.add(token.surface());
            colons |= token.is(":");
            they |= token.surface().equals("they");
        }
        this.apostrophes = text.indexOf('\'') >= 0 || text.indexOf('’') >= 0;
        this.orders = new Orders(text, tokens, words, itemAt);
        this.unreal = new boolean[tokens.size()];
    }

    /**
     * Marks the tokens that state nothing.
     *
     * @param itemAt the item each token belongs to, null for none
     * @param sentence number of the sentence each token is in
     */
    static boolean[] unreal(String text, List<Token> tokens, Item[] itemAt, int[] sentence) {
        Mood mood = new Mood(text, tokens, itemAt);
        int from = 0;
        while (from < tokens.size()) {
            int to = from + 1;
            while (to < tokens.size() && sentence[to] == sentence[from]) {
                to++;
            }
            mood.sentence(from, to);
            from = mood.colons ? mood.taughtUpTo(from, to) : to;
        }
        return mood.unreal;
    }

    private void sentence(int from, int to) {
        boolean asked = tokens.get(to - 1).is("?")
                || (to < tokens.size() && tokens.get(to).is("?"));
        if (colons && headed(from, to)) {
            mark(from, to);
            return;
        }
        int start = from;
        while (start < to) {
            int end = start;
            while (end < to && !separates(tokens.get(end))) {
                end++;
            }
            segment(from, start, end, to, asked);
            start = end + 1;
        }
    }

    /** "Theory: …", "for the apprentice: …": where what is taught under a heading ends; else the end of the sentence. */
    private int taughtUpTo(int from, int to) {
        boolean teaching = false;
        for (int i = from; i < Math.min(to, from + HEADING); i++) {
            if (tokens.get(i).is(":") && teaching) {
                int end = to;
                while (end < tokens.size() && !tokens.get(end).is("\n")) {
                    end++;
                }
                mark(from, end);
                return end;
            }
            teaching |= MoodWords.TEACHING.contains(words.get(i));
        }
        return to;
    }

    /** Whether a token parts the segments of a sentence. */
    static boolean separates(Token token) {
        return token.kind() == Kind.PUNCTUATION && ",;:()[]\n-".contains(token.term());
    }

    /** "To do: …", "Test plan for tomorrow: …". */
    private boolean headed(int from, int to) {
        for (int i = from + 1; i < Math.min(to, from + 6); i++) {
            if (tokens.get(i).is(":")) {
                boolean toDo =
                        words.get(from).equals("to") && words.get(from + 1).equals("do");
                boolean open =
                        words.get(from).equals("not") && words.get(from + 1).equals("yet");
                boolean sought = words.get(i - 1).equals("for")
                        && words.get(i - 2 < from ? from : i - 2).equals("look");
                boolean heading = sought
                        || (MoodWords.HEADINGS.contains(words.get(from)) && !taught(from, 1))
                        || MoodWords.HEADINGS.contains(words.get(i - 1))
                        || words.subList(from, i).contains("plan");
                return toDo || open || heading;
            }
        }
        return false;
    }

    private void segment(int sentenceFrom, int from, int to, int sentenceTo, boolean asked) {
        int first = from;
        while (first < to
                && (MoodWords.LEADS.contains(words.get(first))
                        || tokens.get(first).kind() == Kind.PUNCTUATION)) {
            first++;
        }
        if (first == to) {
            return;
        }
        if (question(first, to, asked) || orders.at(first, to) || purpose(first, from == sentenceFrom)) {
            mark(from, turn(first, sentenceTo));
            return;
        }
        if (instructs(first, to, sentenceTo)) {
            mark(from, turn(from, sentenceTo));
            return;
        }
        boolean should = (words.get(first).equals("should") && !limit(first, sentenceTo))
                || generalCase(first, to)
                || ofAKind(first, to)
                || (they && ofThemAll(first, to))
                || otherUnits(first, to)
                || says(MoodWords.OTHER_THINGS, first, to);
        if (should) {
            mark(from, sentenceTo);
            return;
        }
        for (int i = first; i < to; i++) {
            within(sentenceFrom, from, i, to, sentenceTo);
        }
    }

    private void within(int sentenceFrom, int from, int i, int to, int sentenceTo) {
        String word = words.get(i);
        if (!MoodWords.TELLING.contains(word) && !shortened(i)) {
            return;
        }
        if (MoodWords.LIMITING.contains(word) && limit(i, sentenceTo)) {
            return;
        }
        boolean phrase = MoodWords.TOLD.at(words, i, to) > 0;
        if ((phrase && says(MoodWords.PLANS, i, to)) || willDo(i, to)) {
            mark(i, turn(i, sentenceTo));
        } else if (phrase && toldOtherwise(sentenceFrom, from, i, to, sentenceTo)) {
            return;
        } else if (ownUnit(i, to)) {
            mark(from, to);
        } else if (taught(i, 1) || frequency(i, to)) {
            return;
        } else if (word.equals("should") && !expected(i)) {
            mark(i, turn(i, to));
        } else if (word.equals("would") && !next(i, to).equals("not")) {
            mark(from, to);
        } else if (word.equals("if") || word.equals("unless")) {
            supposed(from, i, to, sentenceTo);
        }
    }

    /** Marks what a phrase says of trade, of all units or of another thing. @return whether one does */
    private boolean toldOtherwise(int sentenceFrom, int from, int i, int to, int sentenceTo) {
        if (says(MoodWords.TRADE, i, to) && !compound(i)) {
            mark(from, turn(i, sentenceTo));
        } else if (says(MoodWords.OF_ALL, i, to)) {
            mark(sentenceFrom, turn(i, sentenceTo));
        } else if ((says(MoodWords.GENERAL, i, to) && !corrects(i)) || says(MoodWords.NOT_THE_UNIT, i, to)) {
            mark(turned(from, i), to);
        } else {
            return false;
        }
        return true;
    }

    /** "Pack swollen but the other one is flat": what stands before a word that turns is told of this one. */
    private int turned(int from, int i) {
        int turned = i;
        while (turned > from && !MoodWords.TURNS.contains(words.get(turned))) {
            turned--;
        }
        return turned;
    }

    /** "It gets hot, I mean the whole case": the writer puts it better. */
    private boolean corrects(int i) {
        return i > 0 && words.get(i).equals("mean") && words.get(i - 1).equals("i");
    }

    private boolean says(MoodWords.Phrases phrases, int i, int to) {
        int length = phrases.at(words, i, to);
        return length > 0 && !taught(i, length) && !expected(i);
    }

    /** "Should be 12 V, I have 9.8": what is expected, with a reading behind it. */
    private boolean limit(int i, int sentenceTo) {
        boolean limited = false;
        boolean told = false;
        for (int n = i + 1; n < Math.min(sentenceTo, i + LIMIT_REACH * (limited ? 2 : 1)); n++) {
            if (tokens.get(n).numeric()) {
                if (told) {
                    return true;
                }
                limited = true;
            }
            told |= limited && MoodWords.FOUND.contains(words.get(n));
        }
        return false;
    }

    /** "IF cores": the intermediate frequency. */
    private boolean frequency(int i, int to) {
        Token token = tokens.get(i);
        if (!text.startsWith("IF", token.start()) || i + 1 >= to) {
            return false;
        }
        Token next = tokens.get(i + 1);
        return !MoodWords.OBJECTS.contains(words.get(i + 1))
                && !MoodWords.SUBJECTS.contains(words.get(i + 1))
                && next.kind() == Kind.WORD
                && Character.isLowerCase(text.charAt(next.end() - 1));
    }

    /** Whether some words stand within more words that the packs teach together. */
    private boolean taught(int from, int length) {
        return itemAt[from] != null && itemAt[from].teachesMore(from, length);
    }

    /** "As it should", "where they should be", "lower than it ought to be" tell how something is. */
    private boolean expected(int i) {
        return i > 1
                && MoodWords.EXPECTED.contains(words.get(i))
                && MoodWords.PRONOUNS.contains(words.get(i - 1))
                && MoodWords.COMPARING.contains(words.get(i - 2));
    }

    /** "Shop-bought" tells of no purchase. */
    private boolean compound(int i) {
        int start = tokens.get(i).start();
        return text.startsWith("-", tokens.get(i).end())
                || (start > 1 && text.charAt(start - 1) == '-' && !Character.isWhitespace(text.charAt(start - 2)));
    }

    /** "Is the fan dead?", "where do I find it": a question is no finding; "12 V missing?" is a doubtful one. */
    private boolean question(int first, int to, boolean asked) {
        String word = words.get(first);
        String next = next(first, to);
        boolean inverted =
                MoodWords.AUXILIARIES.contains(word) && MoodWords.SUBJECTS.contains(next) && !next.equals("not");
        boolean told = word.equals("had")
                || (word.equals("did") && next.equals("it") && MoodWords.DID_IT.contains(next(first + 1, to)));
        if (inverted && (asked || !told)) {
            return true;
        }
        if (asked && MoodWords.AUXILIARIES.contains(word)) {
            return !next.equals("not");
        }
        if (!MoodWords.ASKING.contains(word)) {
            return false;
        }
        if (asked) {
            return true;
        }
        boolean adverbial = word.equals("when") || word.equals("where");
        return MoodWords.AUXILIARIES.contains(next) && (!adverbial || MoodWords.SUBJECTS.contains(next(first + 1, to)));
    }

    /** "To see a tacho signal put the scope on …". */
    private boolean purpose(int first, boolean opens) {
        boolean verb = first + 1 < words.size()
                && (MoodWords.ORDERS.contains(words.get(first + 1))
                        || MoodWords.ORDERS_WITH_OBJECT.contains(words.get(first + 1)));
        return opens && words.get(first).equals("to") && verb;
    }

    /** "When a glass fuse is blackened …" is about all of them. */
    private boolean generalCase(int first, int to) {
        String next = next(first, to);
        return words.get(first).equals("when") && (next.equals("a") || next.equals("an"));
    }

    /** "A healthy fuse reads near zero", "a blown fuse is …" is told of all of them. */
    private boolean ofAKind(int first, int to) {
        String word = words.get(first);
        boolean kind = (word.equals("a") || word.equals("an")) && MoodWords.KINDS.contains(next(first, to));
        for (int i = first + 2; kind && i < Math.min(to, first + 6); i++) {
            if (MoodWords.OF_A_KIND.contains(words.get(i))) {
                return true;
            }
        }
        return false;
    }

    /** "When the display fades, replace the converter" tells what to do should it come to that. */
    private boolean instructs(int first, int to, int sentenceTo) {
        int order = to + 1;
        return words.get(first).equals("when")
                && order < sentenceTo
                && tokens.get(to).is(",")
                && orders.at(order, nextSeparator(order, sentenceTo));
    }

    /** "Lithium packs swell when they are overcharged": a plural without an article, told of all of them. */
    private boolean ofThemAll(int first, int to) {
        String word = words.get(first);
        if (MoodWords.SUBJECTS.contains(word) || tokens.get(first).kind() != Kind.WORD) {
            return false;
        }
        boolean plural = false;
        for (int i = first; i + 1 < to; i++) {
            String here = words.get(i);
            if (plural && here.equals("when") && words.get(i + 1).equals("they")) {
                return true;
            }
            plural |= i < first + MOST_OF_NAME
                    && here.endsWith("s")
                    && !here.equals(tokens.get(i).term());
        }
        return false;
    }

    /** "Some amplifiers …", "others simply …", "the sister unit …". */
    private boolean otherUnits(int first, int to) {
        if (words.get(first).equals("others")) {
            return true;
        }
        for (int i = first; i < Math.min(to, first + 2); i++) {
            String next = next(i, to);
            boolean all = i == first && MoodWords.MANY.contains(words.get(i)) && units(next);
            boolean other = MoodWords.OTHER.contains(words.get(i)) && MoodWords.DEVICES.contains(next);
            if ((all || other) && !taught(i, 2)) {
                return true;
            }
        }
        return false;
    }

    /** "My own radio hums, too": the writer's, not the one on the bench. */
    private boolean ownUnit(int i, int to) {
        return words.get(i).equals("own")
                && i > 0
                && (words.get(i - 1).equals("my") || words.get(i - 1).equals("our"))
                && MoodWords.DEVICES.contains(next(i, to));
    }

    private static boolean units(String word) {
        return word.endsWith("s") && MoodWords.DEVICES.contains(word.substring(0, word.length() - 1));
    }

    /** "I'll swap the bridge", "will measure", "must check"; "will not start" is no plan but a refusal. */
    private boolean willDo(int i, int to) {
        String word = words.get(i);
        Token token = tokens.get(i);
        if (contracted(token, "ll") || (word.equals("i") && contracted(token, "d"))) {
            return true;
        }
        boolean modal = word.equals("will") || word.equals("shall") || word.equals("must") || word.equals("to");
        String next = next(i, to);
        boolean doing = (MoodWords.ORDERS.contains(next) || MoodWords.ORDERS_WITH_OBJECT.contains(next))
                && !taught(i, 2)
                && !(next.equals("wait") && !next(i + 1, to).equals("for"))
                && !habit(i, to);
        boolean haveTo = word.equals("to")
                && i > 0
                && (words.get(i - 1).equals("have") || words.get(i - 1).equals("has"));
        return modal && doing && (!word.equals("to") || haveTo) && !(word.equals("will") && next.equals("start"));
    }

    /** "I have to charge it three times a day" tells how it behaves. */
    private boolean habit(int from, int to) {
        for (int i = from + 2; i < Math.min(to, from + HABIT_REACH); i++) {
            boolean times = words.get(i).endsWith("times") && MoodWords.EACH.contains(next(i, to));
            if (times || MoodWords.HABITS.at(words, i, to) > 0) {
                return true;
            }
        }
        return false;
    }

    private boolean shortened(int i) {
        return contracted(tokens.get(i), "ll") || contracted(tokens.get(i), "d");
    }

    /** Whether a token is written with a short form of a verb, such as "I'll". */
    private boolean contracted(Token token, String tail) {
        int at = token.end() - tail.length();
        boolean apostrophe =
                apostrophes && at - 1 > token.start() && (text.charAt(at - 1) == '\'' || text.charAt(at - 1) == '’');
        return apostrophe && text.regionMatches(true, at, tail, 0, tail.length());
    }

    /** "If the fuse is open, …": up to the main clause, and that as well when it advises or foretells. */
    private void supposed(int from, int i, int to, int sentenceTo) {
        String before = i > 0 ? words.get(i - 1) : "";
        String next = next(i, to);
        if (before.equals("as")
                || MoodWords.HANDS.contains(next)
                || MoodWords.CONDITIONS.contains(next)
                || i > from + 1) {
            // "as if", "if I press …", "if warm …", and "it reboots if …", where the main clause has been said
            if (!before.equals("as") && i > from + 1 && !MoodWords.HANDS.contains(next)) {
                mark(i, to);
            }
            return;
        }
        int main = i + 1;
        while (main < to && !(main > i + 2 && startsMain(main))) {
            main++;
        }
        mark(i, main);
        int mainTo = main < to ? to : Math.min(sentenceTo, nextSeparator(to + 1, sentenceTo));
        int mainFrom = main < to ? main : Math.min(to + 1, sentenceTo);
        if (advises(mainFrom, mainTo)) {
            mark(mainFrom, turn(mainFrom, sentenceTo));
        }
    }

    private boolean startsMain(int i) {
        return MoodWords.MAIN_SUBJECTS.contains(words.get(i)) && !MoodWords.GOVERNORS.contains(words.get(i - 1));
    }

    private int nextSeparator(int from, int to) {
        int i = from;
        while (i < to && !separates(tokens.get(i))) {
            i++;
        }
        return i;
    }

    private boolean advises(int from, int to) {
        for (int i = from; i < to; i++) {
            String word = words.get(i);
            boolean order = MoodWords.ORDERS.contains(word)
                    || (MoodWords.ORDERS_WITH_OBJECT.contains(word) && MoodWords.OBJECTS.contains(next(i, to)));
            boolean foretells = word.equals("will")
                    || word.equals("would")
                    || word.equals("must")
                    || word.equals("suspect")
                    || word.equals("leave");
            if (order || foretells) {
                return true;
            }
        }
        return false;
    }

    /** Where the reach of a plan or question ends: at a word that turns, else with the sentence. */
    private int turn(int from, int to) {
        for (int i = from + 1; i < to; i++) {
            if (MoodWords.TURNS.contains(words.get(i))) {
                return i;
            }
        }
        return to;
    }

    private String next(int i, int to) {
        return i + 1 < to ? words.get(i + 1) : "";
    }

    private void mark(int from, int to) {
        for (int i = from; i < to; i++) {
            unreal[i] = true;
        }
    }
}
