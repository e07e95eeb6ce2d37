package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Phrasings.Phrasing;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
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

    private static final Set<String> POINTING = Set.of("its", "the", "their", "his", "her", "that");

    /** In front of "the", they tell where something is said to be so. */
    private static final Set<String> PLACING =
            Set.of("in", "on", "at", "from", "to", "of", "into", "under", "behind", "by");

    private static final Set<String> BEFORE_A_READING = Set.of("a", "and", "with");

    /** Words that tell sizes, numbers and quantities, not things. */
    private static final Set<String> TELL_NOTHING = Set.of(
            "main", "power", "big", "littl", "small", "larg", "other", "both", "all", "one", "two", "own", "second",
            "first", "new", "old", "rail", "line", "volt", "voltag", "level", "part", "side", "unit", "set", "test",
            "no", "not", "front", "back", "top", "inside", "on", "of", "at", "to", "in", "for", "from", "with", "by",
            "under", "behind", "and", "or");

    /** A longer name: what stands in it before the short one. */
    private record Role(List<String> modifiers, Symptom symptom) {}

    private final Map<String, List<Role>> byHead = new HashMap<>();
    private final Trie trie;

    Referents(Trie trie) {
        this.trie = trie;
    }

    /** Learns a symptom's names; nearer scopes first. */
    void add(Symptom symptom, List<Phrasing> names) {
        Set<List<String>> seen = new HashSet<>();
        for (Phrasing name : names) {
            List<String> terms = name.terms();
            int n = terms.size();
            boolean fits = n > 1
                    && n <= MOST_MODIFIERS + 1
                    && terms.subList(0, n - 1).stream().noneMatch(Referents::tellsNothing)
                    && !tellsNothing(terms.get(n - 1));
            if (fits && symptom.bare() == null && seen.add(terms)) {
                byHead.computeIfAbsent(terms.get(n - 1), h -> new ArrayList<>(2))
                        .add(new Role(List.copyOf(terms.subList(0, n - 1)), symptom));
            }
        }
    }

    private static boolean tellsNothing(String term) {
        return TELL_NOTHING.contains(term) || Plain.filler(term) || !Character.isLetter(term.charAt(0));
    }

    /** What a match means where it stands: itself, or the same said of the thing that the sentence speaks of. */
    Trie.Match resolve(List<Token> tokens, String[] terms, Trie.Match match) {
        Entry entry = match.entry();
        boolean phrase = !entry.phrases.isEmpty();
        if (entry.code != null || (!phrase && entry.names.isEmpty())) {
            return match;
        }
        int head = head(terms, match, phrase);
        List<Role> roles = head < 0 ? null : byHead.get(terms[head]);
        if (roles == null) {
            return match;
        }
        Symptom usual = (phrase ? entry.phrases : entry.names).get(0).symptom();
        Symptom meant = meant(tokens, terms, match.from(), match.to(), roles, usual);
        if (meant == null) {
            return match;
        }
        Entry other = phrase ? said(terms, match, head, meant) : named(entry, meant);
        return other == null ? match : new Trie.Match(match.from(), match.to(), match.depth(), other);
    }

    /** A short name that no pack teaches alone, where "its" points at the thing it belongs to. */
    Optional<Trie.Match> pointedAt(List<Token> tokens, String[] terms, int at) {
        boolean points = (at > 0 && POINTING.contains(terms[at - 1]) && (at == 1 || !PLACING.contains(terms[at - 2])))
                || read(tokens, terms, at);
        List<Role> roles = points ? byHead.get(terms[at]) : null;
        if (roles == null) {
            return Optional.empty();
        }
        Symptom meant = meant(tokens, terms, at, at + 1, roles, null);
        if (meant == null) {
            return Optional.empty();
        }
        Entry entry = new Entry();
        entry.addName(new Sense(meant, Sense.NAME));
        return Optional.of(new Trie.Match(at, at + 1, 1, entry));
    }

    /** "Temp 61 °C", "a temperature of 38 °C": a short name with its reading. */
    private static boolean read(List<Token> tokens, String[] terms, int at) {
        int value = at + 1 < terms.length && terms[at + 1].equals("of") ? at + 2 : at + 1;
        boolean opens =
                at == 0 || tokens.get(at - 1).kind() == Kind.PUNCTUATION || BEFORE_A_READING.contains(terms[at - 1]);
        return opens && value < terms.length && tokens.get(value).kind() == Kind.QUANTITY;
    }

    /** The one token of a name, or the first of a phrase, if others have longer names for it; -1 for none. */
    private int head(String[] terms, Trie.Match match, boolean phrase) {
        int head = -1;
        int n = 0;
        for (int i = match.from(); i < match.to(); i++) {
            if (Plain.filler(terms[i]) || (n == 0 && PLACING.contains(terms[i]))) {
                continue;
            }
            if (n == 0 && byHead.containsKey(terms[i])) {
                head = i;
            }
            n++;
        }
        return phrase || n == 1 ? head : -1;
    }

    /** The symptom with a longer name whose other words stand closest by; null where the usual one is spoken of as well. */
    private static @Nullable Symptom meant(
            List<Token> tokens, String[] terms, int from, int to, List<Role> roles, @Nullable Symptom usual) {
        Map<String, Integer> near = new HashMap<>();
        for (int i = from - 1; i >= Math.max(0, from - REACH) && !ends(tokens.get(i)); i--) {
            near.putIfAbsent(terms[i], from - i);
        }
        for (int i = to; i < Math.min(terms.length, to + REACH / 2) && !ends(tokens.get(i)); i++) {
            near.merge(terms[i], REACH + i - to, Math::min);
        }
        Symptom meant = null;
        int nearest = Integer.MAX_VALUE;
        boolean usualToo = false;
        for (Role role : roles) {
            int distance = 0;
            for (String modifier : role.modifiers()) {
                Integer d = near.get(modifier);
                distance = d == null || distance == Integer.MAX_VALUE ? Integer.MAX_VALUE : Math.max(distance, d);
            }
            usualToo |= distance < Integer.MAX_VALUE
                    && usual != null
                    && role.symptom().id().equals(usual.id());
            if (distance < nearest) {
                nearest = distance;
                meant = role.symptom();
            }
        }
        return usualToo ? null : meant;
    }

    /**
     * What a word says of a thing named by the last word of its name alone: "bus idle" of the control bus, where nothing else
     * called a bus can be idle.
     */
    @Nullable
    Sense saidOfHead(String head, Entry word) {
        Sense only = null;
        for (Role role : byHead.getOrDefault(head, List.of())) {
            Sense said = word.saidOf(role.symptom().id());
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
        Entry other = new Entry();
        other.cue = entry.cue;
        other.polarity = entry.polarity;
        other.words = entry.words;
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
