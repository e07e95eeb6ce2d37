package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/** Sequences of terms and what they mean. Matching is linear in the text: a walk is no deeper than the longest entry. */
final class Trie {
    /** Filler words that may stand inside one match. */
    private static final int MOST_SKIPPED = 3;

    /** Where an entry stands in the text: tokens {@code from} to {@code to}, exclusive; {@code depth} terms matched. */
    record Match(int from, int to, int depth, Entry entry, long preference) {
        Match(int from, int to, int depth, Entry entry) {
            this(from, to, depth, entry, preference(from, to, depth, entry.rank()));
        }

        /** That of the entry when it was found. */
        int rank() {
            return (int) (preference >>> (2 * PLACE_BITS)) & RANKS;
        }

        /** Smaller for what goes first: the longest, the packs' before the language's, the leftmost, the narrowest. */
        private static long preference(int from, int to, int depth, int rank) {
            long byLength = ((long) (DEEPEST - Math.min(DEEPEST, depth)) << 2) | rank;
            return (byLength << (2 * PLACE_BITS)) | ((long) from << PLACE_BITS) | to;
        }
    }

    /** Longer matches go by their rank and place alone; no phrase of a pack is so long. */
    private static final int DEEPEST = 1 << 10;

    private static final int PLACE_BITS = 22; // tokens of the longest text
    private static final int RANKS = 3;

    private static final Comparator<Match> BY_PREFERENCE = Comparator.comparingLong(Match::preference);
    private static final int ROOT = 1;
    private static final long MIX = 0x9E3779B97F4A7C15L; // 2^64 over the golden ratio, spreads keys over the table

    /**
     * Every step from a node along a term, in one open-addressed table: a walk touches few lines of memory, where objects
     * for the nodes would be scattered over all of it.
     */
    private long[] steps = new long[1 << 10];

    private int[] targets = new int[steps.length];
    private int taken;
    private final BitSet leads = new BitSet(); // nodes with a step from them
    private final List<@Nullable Entry> entries = new ArrayList<>(); // by node
    private final Terms terms;

    Trie(Terms terms) {
        this.terms = terms;
        entries.add(null);
        entries.add(null); // the root
    }

    /** The entry of a phrase, made when new: its terms as numbers, without the first {@code from}. */
    Entry entry(int[] phrase, int from) {
        int node = ROOT;
        for (int i = from; i < phrase.length; i++) {
            node = make(node, phrase[i]);
        }
        Entry entry = entries.get(node);
        if (entry == null) {
            entry = new Entry();
            entries.set(node, entry);
        }
        return entry;
    }

    /** The node behind a term, made when new. */
    private int make(int node, int term) {
        int known = next(node, term);
        if (known != 0) {
            return known;
        }
        if (2 * taken >= steps.length) {
            grow();
        }
        int made = entries.size();
        entries.add(null);
        leads.set(node);
        put(step(node, term), made);
        return made;
    }

    private void grow() {
        long[] before = steps;
        int[] targetsBefore = targets;
        steps = new long[2 * before.length];
        targets = new int[steps.length];
        taken = 0;
        for (int i = 0; i < before.length; i++) {
            if (before[i] != 0) {
                put(before[i], targetsBefore[i]);
            }
        }
    }

    private void put(long step, int target) {
        int at = slot(step);
        steps[at] = step;
        targets[at] = target;
        taken++;
    }

    private static long step(int node, int term) {
        return ((long) node << Integer.SIZE) | term;
    }

    /** Where a step stands, or would. */
    private int slot(long step) {
        int at = (int) ((step * MIX) >>> Integer.SIZE) & (steps.length - 1);
        while (steps[at] != 0 && steps[at] != step) {
            at = (at + 1) & (steps.length - 1);
        }
        return at;
    }

    /** The node behind a term, or 0; an unknown term leads nowhere. */
    private int next(int node, int term) {
        return targets[slot(step(node, term))];
    }

    /** The entry of a phrase, if it has one. */
    Optional<Entry> find(List<String> phrase) {
        int node = ROOT;
        for (String term : phrase) {
            node = next(node, terms.of(term));
        }
        return Optional.ofNullable(entries.get(node));
    }

    /** The entry of the terms of a range, or null. */
    @Nullable
    Entry find(int[] numbers, int from, int to) {
        return find(ROOT, numbers, from, to);
    }

    /** The entry of a single term, or null. */
    @Nullable
    Entry find(String term) {
        return entries.get(next(ROOT, terms.of(term)));
    }

    /** The entry of a node and the terms of a range behind it, or null. */
    @Nullable
    Entry find(int node, int[] numbers, int from, int to) {
        return entries.get(node(node, numbers, from, to));
    }

    /** The node that the terms of a range lead to, or 0. */
    int node(int[] numbers, int from, int to) {
        return node(ROOT, numbers, from, to);
    }

    private int node(int first, int[] numbers, int from, int to) {
        int node = first;
        for (int i = from; node != 0 && i < to; i++) {
            node = next(node, numbers[i]);
        }
        return node;
    }

    /** Whether any entry starts with a term. */
    boolean starts(int number) {
        return next(ROOT, number) != 0;
    }

    /**
     * All matches in a text, overlapping ones too.
     *
     * @param numbers of the tokens' terms
     * @param skipped tokens that a match may leave out
     * @param unitEnds where the name of a kind of unit ends that starts at a token, else 0
     */
    List<Match> all(Token[] tokens, int[] numbers, String[] words, boolean[] skipped, int[] unitEnds) {
        Walk walk = new Walk(tokens, numbers, glued(tokens, words), bare(tokens, words), skipped, unitEnds);
        for (int i = 0; i < numbers.length; i++) {
            if (tokens[i].kind() != Kind.PUNCTUATION) {
                walk.on(ROOT, i, i, 0, 0);
            }
        }
        return walk.found;
    }

    /** Each number that was given the term of a rail, as it is written: "plus five" may be a name itself. */
    private int[] bare(Token[] tokens, String[] words) {
        int[] bare = new int[words.length];
        for (int i = 0; i < bare.length; i++) {
            Token token = tokens[i];
            boolean renamed = token.kind() == Kind.NUMBER && !words[i].equals(token.term());
            bare[i] = renamed ? terms.of(token.term()) : Terms.UNKNOWN;
        }
        return bare;
    }

    /** Each word and the next as one word, where one char is between them, as numbers. */
    private int[] glued(Token[] tokens, String[] words) {
        int[] glued = new int[words.length];
        for (int i = 0; i + 1 < glued.length; i++) {
            boolean pair = tokens[i].kind() == Kind.WORD
                    && tokens[i + 1].kind() == Kind.WORD
                    && tokens[i + 1].start() == tokens[i].end() + 1;
            glued[i] = pair ? terms.of(tokens[i].surface(), words[i + 1]) : Terms.UNKNOWN;
        }
        return glued;
    }

    /**
     * Matches that do not overlap, in order: longest first, then the packs' before the language's, then leftmost.
     *
     * @param all of a text, put in order of preference
     * @param size tokens of the text
     * @param hidden gets the packs' matches and the negations that a longer one covers, best first
     */
    static List<Match> chosen(List<Match> all, int size, List<Match> hidden) {
        all.sort(BY_PREFERENCE);
        @Nullable Match[] at = new Match[size];
        for (Match match : all) {
            if (free(at, match)) {
                Arrays.fill(at, match.from(), match.to(), match);
            } else if (match.rank() < Entry.LANGUAGE || match.entry().cue == Cue.NEGATION) {
                hidden.add(match);
            }
        }
        widen(at, all);
        List<Match> chosen = new ArrayList<>();
        for (int i = 0; i < at.length; i++) {
            Match match = at[i];
            if (match != null && match.from() == i) {
                chosen.add(match);
            }
        }
        return chosen;
    }

    /** "mains fuse open": lets the phrase "fuse open" take along the rest of the name it overlaps, of the same symptom. */
    private static void widen(@Nullable Match[] at, List<Match> all) {
        for (Match name : all) {
            Match first = at[name.from()];
            Match last = at[name.to() - 1];
            Match over = first != null ? first : last;
            boolean oneEnd = (first == null) != (last == null);
            if (oneEnd && over != null && over.entry().speaksOf(name.entry()) && onlyOver(at, name, over)) {
                Match wide = new Match(
                        Math.min(over.from(), name.from()), Math.max(over.to(), name.to()), over.depth(), over.entry());
                Arrays.fill(at, wide.from(), wide.to(), wide);
            }
        }
    }

    private static boolean onlyOver(@Nullable Match[] at, Match name, Match over) {
        for (int i = name.from(); i < name.to(); i++) {
            Match there = at[i];
            if (there != null && !there.equals(over)) {
                return false;
            }
        }
        return true;
    }

    private static boolean free(@Nullable Match[] at, Match match) {
        for (int i = match.from(); i < match.to(); i++) {
            if (at[i] != null) {
                return false;
            }
        }
        return true;
    }

    /** The matches of one text in the making. */
    private final class Walk {
        private final Token[] tokens;
        private final int[] numbers;
        private final int[] glued;
        private final int[] bare;
        private final boolean[] mayGo;
        private final int[] unitEnds;
        private final int unit = terms.of("unit");
        private final int many = terms.of("many");
        private final int time = terms.of("time");
        private final List<Match> found = new ArrayList<>();

        private Walk(Token[] tokens, int[] numbers, int[] glued, int[] bare, boolean[] mayGo, int[] unitEnds) {
            this.tokens = tokens;
            this.numbers = numbers;
            this.glued = glued;
            this.bare = bare;
            this.mayGo = mayGo;
            this.unitEnds = unitEnds;
        }

        private void on(int node, int from, int at, int depth, int skipped) {
            Entry entry = entries.get(node);
            if (entry != null) {
                found.add(new Match(from, at, depth, entry));
            }
            if (at == numbers.length || !leads.get(node)) {
                return;
            }
            int next = numbers[at] == Terms.UNKNOWN ? 0 : next(node, numbers[at]);
            if (next != 0) {
                // "the backlight" is no longer a match than "backlight"
                int deeper = mayGo[at] && Plain.ARTICLES.contains(tokens[at].term()) ? depth : depth + 1;
                on(next, from, at + 1, deeper, skipped);
            }
            int joined = glued[at] == Terms.UNKNOWN ? 0 : next(node, glued[at]);
            if (joined != 0) {
                on(joined, from, at + 2, depth + 1, skipped);
            }
            int written = bare[at] == Terms.UNKNOWN ? 0 : next(node, bare[at]);
            if (written != 0) {
                on(written, from, at + 1, depth + 1, skipped);
            }
            if (tokens[at].unit().equals("times") && tokens[at].value() > 1) {
                // "stored 47 times" is "stored many times"
                int often = next(next(node, many), time);
                if (often != 0) {
                    on(often, from, at + 1, depth + 1, skipped);
                }
            }
            int named = unitEnds[at] == 0 ? 0 : next(node, unit);
            if (named != 0) {
                // "router is hot" is "unit is hot"
                on(named, from, unitEnds[at], depth + 1, skipped);
            }
            if (depth > 0 && skipped < MOST_SKIPPED && mayGo[at]) {
                on(node, from, at + 1, depth, skipped + 1);
            }
        }
    }
}
