package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Phrasings.Phrasing;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * Which thing a short name means: in "minus rail of the amp missing, its fuse has gone" the fuse is the amplifier's, since
 * that is what the packs call "amplifier fuse" and the sentence speaks of the amplifier.
 */
final class Referents {
    /** Tokens looked at on either side of a short name. */
    private static final int REACH = 16;

    /** Words of a longer name beside the short one. */
    private static final int MOST_MODIFIERS = 2;

    private static final Words POINTING = Words.terms("its the their his her that");

    /** In front of "the", they tell where something is said to be so. */
    private static final Words PLACING = Words.terms("in on at from to of into under behind by");

    private static final String RESISTANCE = "resistanc";
    private static final Words ON = Words.of("on", "of", "at");
    private static final Words UNIT = Words.of("front", "case", "device", "box", "itself");
    private static final Words BEFORE_A_READING = Words.terms("a and with");

    /** Words that tell sizes, numbers and quantities, not things. */
    private static final Words TELL_NOTHING =
            Words.terms("main power big littl small larg other both all one two own second first new old rail line "
                    + "volt voltag level part side unit set test no not front back top inside on of at to in for "
                    + "from with by under behind and or");

    /** A longer name: what stands in it before the short one, as numbers. */
    private static final class Role {
        final int[] modifiers;
        final Symptom symptom;

        /** The {@link Terms#mark} of every modifier. */
        final long marks;

        private Role(int[] modifiers, Symptom symptom) {
            this.modifiers = modifiers;
            this.symptom = symptom;
            long all = 0;
            for (int modifier : this.modifiers) {
                all |= Terms.mark(modifier);
            }
            marks = all;
        }
    }

    /** By the number of the last term. */
    private final List<@Nullable List<Role>> byHead;

    /** By the number of a term: symptoms called that term's resistance. */
    private final List<@Nullable List<Symptom>> byThing;

    private final Trie trie;

    /** Learns the names of symptoms, those of nearer scopes first. */
    Referents(List<Symptom> nearestFirst, Phrasings phrasings, Trie trie, Terms terms) {
        this.trie = trie;
        this.byHead = new ArrayList<>(Collections.nCopies(terms.size(), null));
        this.byThing = new ArrayList<>(Collections.nCopies(terms.size(), null));
        for (Symptom symptom : nearestFirst) {
            add(symptom, phrasings.all(symptom.called()), terms);
        }
    }

    private void add(Symptom symptom, List<Phrasing> names, Terms known) {
        Set<Entry> seen = new HashSet<>();
        for (Phrasing name : names) {
            int[] numbers = name.numbers;
            int n = numbers.length;
            if (n == 2
                    && symptom.quantity() != null
                    && known.term(numbers[1]).equals(RESISTANCE)
                    && !tellsNothing(known.term(numbers[0]))) {
                with(byThing, numbers[0]).add(symptom);
            }
            if (n > 1 && n <= MOST_MODIFIERS + 1 && symptom.bare() == null && tells(numbers, known)) {
                if (seen.add(name.entries.get(0))) {
                    with(byHead, numbers[n - 1]).add(new Role(Arrays.copyOf(numbers, n - 1), symptom));
                }
            }
        }
    }

    /** The list of a number, made when new. */
    private static <T> List<T> with(List<@Nullable List<T>> lists, int number) {
        List<T> list = lists.get(number);
        if (list == null) {
            list = new ArrayList<>(1);
            lists.set(number, list);
        }
        return list;
    }

    private static boolean tells(int[] numbers, Terms known) {
        for (int number : numbers) {
            if (tellsNothing(known.term(number))) {
                return false;
            }
        }
        return true;
    }

    private static boolean tellsNothing(String term) {
        return TELL_NOTHING.contains(term) || Plain.filler(term) || !Character.isLetter(term.charAt(0));
    }

    /** What a match means where it stands: itself, or the same said of the thing that the sentence speaks of. */
    Trie.Match resolve(List<Token> tokens, String[] terms, int[] numbers, Trie.Match match) {
        Entry entry = match.entry();
        boolean phrase = !entry.phrases.isEmpty();
        if (entry.code != null || (!phrase && entry.names.isEmpty()) || !holdsHead(numbers, match)) {
            return match;
        }
        if ((!phrase && listed(tokens, match)) || onTheUnit(tokens, match.to())) {
            return match;
        }
        int head = head(terms, numbers, match, phrase);
        List<Role> roles = head < 0 ? null : byHead.get(numbers[head]);
        if (roles == null) {
            return match;
        }
        Symptom usual = (phrase ? entry.phrases : entry.names).get(0).symptom();
        Symptom meant = meant(tokens, numbers, match.from(), match.to(), roles, usual);
        if (meant == null) {
            return match;
        }
        Entry other = phrase ? said(terms, match, head, meant) : named(entry, meant);
        return other == null ? match : new Trie.Match(match.from(), match.to(), match.depth(), other);
    }

    /** Whether any token of a match alone may be one of several things. */
    private boolean holdsHead(int[] numbers, Trie.Match match) {
        for (int i = match.from(); i < match.to(); i++) {
            if (byHead.get(numbers[i]) != null) {
                return true;
            }
        }
        return false;
    }

    /** "Buttons on the set" are its own, whatever else the sentence speaks of. */
    private static boolean onTheUnit(List<Token> tokens, int to) {
        return to + 2 < tokens.size()
                && ON.contains(tokens.get(to).surface())
                && Plain.ARTICLES.contains(tokens.get(to + 1).term())
                && (UNIT.contains(tokens.get(to + 2).surface())
                        || MoodWords.DEVICES.contains(tokens.get(to + 2).surface()));
    }

    /** "Fan, belt and motor": members of one list belong to nobody among them. */
    private static boolean listed(List<Token> tokens, Trie.Match match) {
        if (match.from() == 0) {
            return false;
        }
        Token before = tokens.get(match.from() - 1);
        boolean goesOn = match.to() < tokens.size() && and(tokens.get(match.to()));
        return and(before) || (before.is(",") && goesOn);
    }

    private static boolean and(Token token) {
        return token.term().equals("and") || token.term().equals("or") || token.is("&");
    }

    /** A short name that no pack teaches alone, where "its" points at the thing it belongs to. */
    Optional<Trie.Match> pointedAt(List<Token> tokens, String[] terms, int[] numbers, int at) {
        List<Role> roles = byHead.get(numbers[at]);
        List<Symptom> things = byThing.get(numbers[at]);
        if (roles == null && things == null) {
            return Optional.empty();
        }
        Symptom read = things == null ? null : readOf(things, tokens, terms, at);
        if (read != null) {
            Entry entry = new Entry();
            entry.addName(new Sense(read, Sense.NAME));
            return Optional.of(new Trie.Match(at, at + 1, 1, entry));
        }
        if (roles == null) {
            return Optional.empty();
        }
        boolean points = (at > 0 && POINTING.contains(terms[at - 1]) && (at == 1 || !PLACING.contains(terms[at - 2])))
                || read(tokens, terms, at);
        Symptom meant = points ? meant(tokens, numbers, at, at + 1, roles, null) : null;
        if (meant == null) {
            return Optional.empty();
        }
        Entry entry = new Entry();
        entry.addName(new Sense(meant, Sense.NAME));
        return Optional.of(new Trie.Match(at, at + 1, 1, entry));
    }

    /** "Insulation 0.1 Mohm": what a thing with a reading in the unit of its resistance is called. */
    private static @Nullable Symptom readOf(List<Symptom> things, List<Token> tokens, String[] terms, int at) {
        if (!read(tokens, terms, at)) {
            return null;
        }
        Token value = tokens.get(terms[at + 1].equals("of") ? at + 2 : at + 1);
        for (Symptom symptom : things) {
            if (Fitting.fits(symptom, value)) {
                return symptom;
            }
        }
        return null;
    }

    /** "Temp 61 °C", "a temperature of 38 °C": a short name with its reading. */
    private static boolean read(List<Token> tokens, String[] terms, int at) {
        int value = at + 1 < terms.length && terms[at + 1].equals("of") ? at + 2 : at + 1;
        boolean opens =
                at == 0 || tokens.get(at - 1).kind() == Kind.PUNCTUATION || BEFORE_A_READING.contains(terms[at - 1]);
        return opens && value < terms.length && tokens.get(value).kind() == Kind.QUANTITY;
    }

    /** The one token of a name, or the first of a phrase, if others have longer names for it; -1 for none. */
    private int head(String[] terms, int[] numbers, Trie.Match match, boolean phrase) {
        int head = -1;
        int n = 0;
        for (int i = match.from(); i < match.to(); i++) {
            if (Plain.filler(terms[i]) || (n == 0 && PLACING.contains(terms[i]))) {
                continue;
            }
            if (n == 0 && byHead.get(numbers[i]) != null) {
                head = i;
            }
            n++;
        }
        return phrase || n == 1 ? head : -1;
    }

    /** The symptom with a longer name whose other words stand closest by; null where the usual one is spoken of as well. */
    private static @Nullable Symptom meant(
            List<Token> tokens, int[] numbers, int from, int to, List<Role> roles, @Nullable Symptom usual) {
        long marks = 0;
        int first = from;
        while (first > Math.max(0, from - REACH) && !ends(tokens.get(first - 1))) {
            first--;
            marks |= Terms.mark(numbers[first]);
        }
        int end = to;
        while (end < Math.min(numbers.length, to + REACH / 2) && !ends(tokens.get(end))) {
            marks |= Terms.mark(numbers[end]);
            end++;
        }
        Symptom meant = null;
        int nearest = Integer.MAX_VALUE;
        boolean usualToo = false;
        boolean right = false; // the longer name stands there word by word
        for (Role role : roles) {
            if ((role.marks & ~marks) != 0) {
                continue;
            }
            int distance = 0;
            for (int modifier : role.modifiers) {
                distance = Math.max(distance, distance(modifier, numbers, first, from, to, end));
            }
            usualToo |= distance < Integer.MAX_VALUE
                    && usual != null
                    && role.symptom.id().equals(usual.id());
            if (distance < nearest) {
                nearest = distance;
                meant = role.symptom;
                right = distance == role.modifiers.length;
            }
        }
        return usualToo && !right ? null : meant;
    }

    /** Tokens to the nearest place of a term, any in front of a name nearer than those behind it. */
    private static int distance(int number, int[] numbers, int first, int from, int to, int end) {
        for (int i = from - 1; i >= first; i--) {
            if (numbers[i] == number) {
                return from - i;
            }
        }
        for (int i = to; i < end; i++) {
            if (numbers[i] == number) {
                return REACH + i - to;
            }
        }
        return Integer.MAX_VALUE;
    }

    /**
     * What a word says of a thing named by the last word of its name alone: "bus idle" of the control bus, where nothing else
     * called a bus can be idle.
     */
    @Nullable
    Sense saidOfHead(int head, Entry word) {
        Sense only = null;
        List<Role> roles = byHead.get(head);
        for (Role role : roles == null ? List.<Role>of() : roles) {
            Sense said = word.saidOf(role.symptom.id());
            if (said == null || (only != null && said.equals(only))) {
                continue;
            }
            if (only != null) {
                return null;
            }
            only = said;
        }
        return only;
    }

    private static boolean ends(Token token) {
        return token.kind() == Kind.PUNCTUATION
                && (token.is(".") || token.is("!") || token.is("?") || token.is(";") || token.is("\n"));
    }

    /** The entry of a name with another symptom in front. */
    private static Entry named(Entry entry, Symptom meant) {
        Entry other = entry.withoutPhrases();
        other.names = new ArrayList<>(entry.names);
        other.addNameFirst(new Sense(meant, Sense.NAME));
        return other;
    }

    /** "Fuse gone" of another fuse: what the rest of the phrase says of it; null where it says nothing. */
    private @Nullable Entry said(String[] terms, Trie.Match match, int head, Symptom meant) {
        List<String> rest = new ArrayList<>(match.to() - match.from());
        for (int i = match.from(); i < match.to(); i++) {
            if (i != head && !Plain.ARTICLES.contains(terms[i])) {
                rest.add(terms[i]);
            }
        }
        Sense sense = rest.isEmpty()
                ? null
                : trie.find(rest).map(e -> e.saidOf(meant.id())).orElse(null);
        if (sense == null) {
            return null;
        }
        Entry other = new Entry();
        other.addPhrase(sense);
        return other;
    }
}
