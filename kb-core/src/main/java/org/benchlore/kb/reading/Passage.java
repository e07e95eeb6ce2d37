package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Synonyms;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/** A text as the linker sees it: tokens, the items of the lexicon found in them, and its {@link Sentences}. */
final class Passage {
    /** Tokens behind a reading in which "ripple" may still stand. */
    private static final int RIPPLE_REACH = 6;

    /** Of the negations, those that come to light when the taught words they stood in gave way. */
    private static final Words PLAIN_NO = Words.of("no", "not", "never");

    private static final String TURN = "turn";
    private static final String FALL = "fall";
    private static final String GO = "go";

    /** An entry of the lexicon in the text. What it was used for is noted while linking. */
    static final class Item {
        /** Position among the items; changes when one gives way to those it hid. */
        int index;

        final int from;
        final int to;
        final Entry entry;

        /** Whether the entry names anything. */
        final boolean names;

        /** Whether the entry can be said of a name. */
        final boolean says;

        boolean name;
        boolean word;
        boolean done;

        /** Whether it was asked what it is by itself. */
        boolean judged;

        /** Whether it was hidden under a longer one that led nowhere. */
        boolean fresh;

        Item(int index, int from, int to, Entry entry) {
            this.index = index;
            this.from = from;
            this.to = to;
            this.entry = entry;
            this.names = !entry.names.isEmpty();
            this.says = entry.says();
        }

        boolean free() {
            return !name && !word && !done;
        }

        boolean cue(Cue cue) {
            return entry.cue == cue && free();
        }

        /** Whether some words stand within more words that the packs teach together. */
        boolean teachesMore(int first, int length) {
            return entry.rank() < Entry.LANGUAGE && to >= first + length && to - from > length;
        }
    }

    final String text;
    final List<Token> tokens;
    final List<Item> items = new ArrayList<>();
    private final List<Trie.Match> hidden = new ArrayList<>();
    private final Token[] at;
    private final boolean[] content;
    private final boolean[] skipped;
    private final String[] terms;
    private final int[] numbers;
    private final Item[] itemAt;
    private final Sentences sentences;

    /** Where names hidden under longer items end, by first token; 0 elsewhere. */
    private final int[] hiddenNameEnd;

    private final boolean[] unreal;

    /** Tokens that are numbers or quantities. */
    final int[] numerals;

    private boolean coded;
    private boolean asking;

    /** The claim that a token is the reading of. */
    private final @Nullable Claim[] readAt;

    /**
     * Finds the lexicon's items in a text.
     *
     * @param text as given
     * @param tokens of the same with log lines blanked
     * @param units names of kinds of unit by their first token; one may stand for "unit" in what the packs teach
     */
    Passage(String text, List<Token> tokens, Kinds.@Nullable Name[] units, Lexicon lexicon) {
        this.text = text;
        this.tokens = tokens;
        int n = tokens.size();
        this.at = tokens.toArray(Token[]::new);
        this.content = new boolean[n];
        this.skipped = new boolean[n];
        boolean[] leftOut = new boolean[n]; // in names and phrases
        this.terms = new String[n];
        int[] numeric = new int[n];
        int numerics = 0;
        for (int i = 0; i < n; i++) {
            Token token = at[i];
            terms[i] = ordinal(i) ? "number" : term(token, lexicon);
            if (terms[i].equals(FALL) && Misfits.turnsSilent(tokens, i)) {
                terms[i] = GO;
            }
            skipped[i] = Plain.skipped(token);
            content[i] = !skipped[i] && Plain.contentUnskipped(token);
            leftOut[i] = skipped[i] || Ordinals.idle(tokens, i) || (i + 1 < n && Plain.vague(token, at[i + 1]));
            asking |= token.is("?");
            coded |= token.kind() == Kind.CODE || token.kind() == Kind.NUMBER;
            if (token.numeric()) {
                numeric[numerics++] = i;
            }
        }
        this.numerals = Arrays.copyOf(numeric, numerics);
        Parts.name(tokens, terms, lexicon);
        Rails.name(tokens, terms, lexicon);
        this.itemAt = new Item[n];
        this.numbers = new int[n];
        for (int i = 0; i < n; i++) {
            numbers[i] = lexicon.terms().of(terms[i]);
        }
        List<Trie.Match> all = lexicon.trie().all(at, numbers, terms, leftOut, unitEnds(units, lexicon.trie()));
        new Misfits(tokens, terms, lexicon.trie()).sort(all);
        Inverted.names(tokens, terms, numbers, lexicon.trie(), all);
        for (Trie.Match match : Trie.chosen(all, n, hidden)) {
            put(lexicon.referents().resolve(tokens, terms, numbers, match));
        }
        pointedAt(lexicon);
        for (int i = 0; i < n; i++) {
            if (itemAt[i] == null && Misfits.turns(tokens, terms, i)) {
                numbers[i] = lexicon.terms().of(TURN);
            }
        }
        this.hiddenNameEnd = new int[n];
        for (Trie.Match match : hidden) {
            if (!match.entry().names.isEmpty()) {
                int known = hiddenNameEnd[match.from()];
                hiddenNameEnd[match.from()] = known == 0 ? match.to() : Math.min(known, match.to());
            }
        }
        this.sentences = new Sentences(text, tokens, itemAt);
        this.readAt = new Claim[n];
        this.unreal = Mood.unreal(text, tokens, itemAt, sentences.sentence);
    }

    /** Adds names that mean something only because of what the sentence speaks of. */
    private void pointedAt(Lexicon lexicon) {
        boolean any = false;
        for (int i = 0; i < itemAt.length; i++) {
            if (itemAt[i] == null) {
                Optional<Trie.Match> match = lexicon.referents().pointedAt(tokens, terms, numbers, i);
                any |= match.isPresent();
                match.ifPresent(this::put);
            }
        }
        if (any) {
            number();
        }
    }

    /** Where a name of the unit ends that is no name of a part, by its first token; 0 elsewhere. */
    private int[] unitEnds(Kinds.@Nullable Name[] units, Trie trie) {
        int[] ends = new int[at.length];
        for (int i = 0; i < ends.length; i++) {
            Kinds.Name unit = units[i];
            int to = unit == null ? 0 : i + unit.keys().size();
            Entry entry = unit == null ? null : trie.find(numbers, i, to);
            boolean part = entry != null && !entry.names.isEmpty();
            ends[i] = part || (to < ends.length && Kinds.leadsOn(at[to])) ? 0 : to;
        }
        return ends;
    }

    private void put(Trie.Match match) {
        Item item = new Item(items.size(), match.from(), match.to(), match.entry());
        coded |= item.entry.code != null;
        items.add(item);
        Arrays.fill(itemAt, item.from, item.to, item);
    }

    /**
     * Lets items that led nowhere give way to shorter ones they hid.
     *
     * @param names whether names do; else only what is said of them
     * @return whether any did
     */
    boolean release(boolean names) {
        boolean[] freed = new boolean[itemAt.length];
        boolean any = false;
        for (Trie.Match match : hidden) {
            Item over = itemAt[match.from()];
            boolean cue = match.rank() == Entry.LANGUAGE;
            if (cue && !PLAIN_NO.contains(terms[match.from()])) {
                continue;
            }
            if (!cue && over != null && over.entry.names.isEmpty() != names && gives(over, match)) {
                Arrays.fill(freed, over.from, over.to, true);
                Arrays.fill(itemAt, over.from, over.to, null);
            }
            if (clear(match, freed)) {
                Item item = new Item(0, match.from(), match.to(), match.entry());
                item.fresh = true;
                Arrays.fill(itemAt, item.from, item.to, item);
                any = true;
            }
        }
        if (any) {
            number();
        }
        return any;
    }

    private boolean gives(Item over, Trie.Match match) {
        boolean unused = over.free() && !over.fresh && over.entry.rank() < Entry.LANGUAGE;
        boolean undone = Negations.STOPS.contains(terms[over.from]) && match.from() > over.from; // "stopped working"
        return unused
                && !undone
                && over.from <= match.from()
                && match.to() <= over.to
                && over.to - over.from > match.to() - match.from()
                // a name that is enough by itself is no dead end
                && !bare(over.entry);
    }

    private static boolean bare(Entry entry) {
        for (Sense named : entry.names) {
            if (named.symptom().bare() != null) {
                return true;
            }
        }
        return false;
    }

    /** Whether the name of something lies hidden under an item. */
    boolean hidesName(Item over) {
        for (int i = over.from; i < over.to; i++) {
            if (hiddenNameEnd[i] > 0 && hiddenNameEnd[i] <= over.to) {
                return true;
            }
        }
        return false;
    }

    private void number() {
        items.clear();
        for (int i = 0; i < itemAt.length; i++) {
            Item item = itemAt[i];
            if (item != null && item.from == i) {
                item.index = items.size();
                items.add(item);
            }
        }
    }

    private boolean clear(Trie.Match match, boolean[] freed) {
        for (int i = match.from(); i < match.to(); i++) {
            if (itemAt[i] != null || !freed[i]) {
                return false;
            }
        }
        return true;
    }

    /** "Radio no. 3". */
    private boolean ordinal(int i) {
        return i + 2 < at.length && at[i].term().equals("no") && at[i + 1].is(".") && at[i + 2].kind() == Kind.NUMBER;
    }

    private static String term(Token token, Lexicon lexicon) {
        String term = Synonyms.of(token);
        if (token.kind() != Kind.WORD || lexicon.terms().of(term) != Terms.UNKNOWN) {
            // another form of a known word is no slip for a third: "smelling", not "swelling"
            return term;
        }
        Optional<String> mended = lexicon.spelling().mend(token.surface());
        return mended.map(word -> Synonyms.of(Lexer.tokens(word).get(0))).orElse(term);
    }

    int size() {
        return at.length;
    }

    Token token(int i) {
        return at[i];
    }

    /** Whether a token carries meaning that somebody would miss. */
    boolean content(int i) {
        return content[i];
    }

    /** Takes words that name the kind of unit for no more than "it". */
    void nameUnit(BitSet tokens) {
        tokens.stream().forEach(i -> content[i] = false);
    }

    /** Whether a token may stand inside a phrase without breaking it. */
    boolean skipped(int i) {
        return skipped[i];
    }

    /** The term of a token as the lexicon knows it: typing mistakes mended, synonyms folded. */
    String term(int i) {
        return terms[i];
    }

    /** The lexicon's number of a token's term. */
    int number(int i) {
        return numbers[i];
    }

    /** Where the word stands that makes a token a lead of signals, or -1. */
    int signal(int i) {
        return Leads.signal(tokens, terms, i);
    }

    /** The item that covers a token, or null. */
    @Nullable
    Item itemAt(int token) {
        return itemAt[token];
    }

    /** The item that covers a token, if any. */
    Optional<Item> item(int token) {
        return Optional.ofNullable(itemAt[token]);
    }

    /** Whether a token belongs to a name. */
    boolean named(int token) {
        Item item = itemAt[token];
        return item != null && item.names;
    }

    /** The cue that a token belongs to, or null. */
    @Nullable
    Cue cue(int token) {
        Item item = itemAt[token];
        return item == null ? null : item.entry.cue;
    }

    int sentence(int token) {
        return sentences.sentence[token];
    }

    int clause(int token) {
        return sentences.clause[token];
    }

    int segment(int token) {
        return sentences.segment[token];
    }

    boolean sameClause(int a, int b) {
        return sentences.clause[a] == sentences.clause[b];
    }

    boolean sameSegment(int a, int b) {
        return sentences.segment[a] == sentences.segment[b];
    }

    /** Whether anything is asked. */
    boolean asks() {
        return asking;
    }

    /** Whether anything may be a log code: mixed letters and digits, bare figures, or what a pack knows as one. */
    boolean holdsCodes() {
        return coded;
    }

    /** The claim that a token is the reading of, or null. */
    @Nullable
    Claim readAt(int token) {
        return readAt[token];
    }

    void read(int token, Claim claim) {
        readAt[token] = claim;
    }

    /** Whether a token only asks, plans or supposes. */
    boolean unreal(int token) {
        return unreal[token];
    }

    /** Whether the sentence of a token has spoken of ripple so far. */
    boolean speaksOfRipple(int token) {
        for (int i = token + RIPPLE_REACH; i >= 0 && i > token - 4 * RIPPLE_REACH; i--) {
            boolean ripple = i < at.length
                    && sentence(i) == sentence(token)
                    && at[i].term().equals("rippl");
            if (ripple) {
                return true;
            }
        }
        return false;
    }

    /** Whether a token carries meaning and no item explains it. */
    boolean unexplained(int token) {
        return itemAt[token] == null && content[token];
    }

    Reading.Span span(int fromToken, int toToken) {
        int start = at[fromToken].start();
        int end = at[toToken - 1].end();
        return new Reading.Span(text.substring(start, end), start, end);
    }
}
