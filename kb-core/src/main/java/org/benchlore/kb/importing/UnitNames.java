package org.benchlore.kb.importing;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.analysis.CommonWords;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/**
 * Finds makes and models that no pack knows: words written like a name with a number behind them ("Oriva K5"), or right
 * beside a word for a kind of unit ("Ostrel radio", "coffee machine Ferrano"). Immutable and thread-safe.
 */
final class UnitNames {
    /**
     * A name found.
     *
     * @param start where it begins in the text
     * @param end behind it
     * @param terms of its words
     * @param leads whether nothing but small words and a kind of unit stands before it
     * @param numbered whether a number belongs to it
     * @param clause the number of the clause it stands in
     */
    record Found(int start, int end, Set<String> terms, boolean leads, boolean numbered, int clause) {
        String in(String text) {
            return text.substring(start, end);
        }
    }

    /** Whether a kind of unit ends the clause before, and whether one begins the next. */
    private record Beside(boolean kindBefore, boolean kindAfter) {}

    /** Words a name in the middle of a clause stands behind; behind others it is more likely a part or a maker of it. */
    private static final Set<String> LEADING = Set.of(
            "in", "of", "on", "the", "same", "for", "from", "to", "a", "an", "my", "his", "her", "our", "another",
            "other");

    private static final Set<String> TITLES = Set.of("mr", "mrs", "ms", "miss", "dr", "herr", "frau");

    /** What is said of a unit before its name. */
    private static final Set<String> DESCRIBING = Set.of(
            "same", "my", "his", "her", "our", "old", "friend", "little", "big", "small", "new", "another", "other",
            "then", "next", "dear", "me", "again");

    /** Units of many kinds, which the packs leave to the words around them. */
    private static final List<String> UNITS = List.of(
            "player",
            "recorder",
            "receiver",
            "turntable",
            "deck",
            "stereo",
            "machine",
            "charger",
            "vacuum",
            "lamp",
            "fan heater",
            "heater",
            "iron",
            "keyboard",
            "speaker",
            "speakers",
            "headphones");

    /** Shorter words are no names. */
    private static final int SHORT = 3;

    /** A word that begins a sentence, and so with a capital, is a name if it is at least so long and none of English. */
    private static final int LONG = 5;

    private static final int MOST_NAMES = 3;

    /** Words of a line among which a kind of unit is what the line is about. */
    private static final int AHEAD = 6;

    /** Clauses of the first sentence that are looked at. */
    private static final int HEAD = 4;

    /** Sentences at the head of a case: an owner or who wrote it may stand before the unit. */
    private static final int HEAD_SENTENCES = 3;

    private final Names names;
    private final PhraseTable<Boolean> kinds = new PhraseTable<>();

    UnitNames(Knowledge knowledge, Names names) {
        this.names = names;
        for (Device device : knowledge.devices()) {
            device.called().forEach(called -> kinds.add(called, true));
        }
        UNITS.forEach(unit -> kinds.add(unit, true));
    }

    /** The first name at the head of a case: in its first sentence, else in one of the next before any work is told. */
    Optional<Found> atHead(String text, List<Clause> clauses) {
        int sentences = 0;
        for (int c = 0; c < clauses.size() && sentences < HEAD_SENTENCES; c++) {
            if (c > 0 && clauses.get(c).sentence() == clauses.get(c - 1).sentence()) {
                continue;
            }
            Optional<Found> found = in(text, clauses.subList(c, clauses.size()));
            if (found.isPresent()) {
                return found;
            }
            sentences++;
            int from = c;
            boolean worked = clauses.stream()
                    .skip(from)
                    .takeWhile(clause -> clause.sentence() == clauses.get(from).sentence())
                    .anyMatch(clause -> clause.hits().stream().anyMatch(hit -> hit.work() != null));
            if (worked) {
                break;
            }
        }
        return Optional.empty();
    }

    /** The first name in the first sentence of a text. */
    Optional<Found> in(String text, List<Clause> clauses) {
        boolean leads = true;
        boolean kindBefore = false;
        for (int c = 0; c < Math.min(HEAD, clauses.size()); c++) {
            Clause clause = clauses.get(c);
            if (clause.sentence() != clauses.get(0).sentence()) {
                return Optional.empty();
            }
            int[] kindTo = kinds(clause);
            boolean kindAfter = c + 1 < clauses.size()
                    && clauses.get(c + 1).sentence() == clause.sentence()
                    && kinds.longest(clauses.get(c + 1).words(), 0).isPresent();
            Optional<Found> found = in(text, clause, c, kindTo, new Beside(kindBefore, kindAfter), leads);
            if (found.isPresent()) {
                return found;
            }
            leads &= leads(clause, clause.words().size(), kindTo);
            kindBefore = endsWithKind(clause, kindTo);
        }
        return Optional.empty();
    }

    /** Terms of the kind of unit that stands among the first words of a text, before work, plans and denials; else none. */
    Set<String> kindAhead(List<Clause> clauses) {
        int word = 0;
        for (Clause clause : clauses) {
            for (int i = 0; i < clause.words().size(); i++, word++) {
                if (word == AHEAD || clause.worked(i) || clause.within(i, Clause.NOT_OURS)) {
                    return Set.of();
                }
                Optional<PhraseTable.Match<Boolean>> kind = kinds.longest(clause.words(), i);
                if (kind.isPresent()) {
                    return clause.words().subList(i, kind.get().to()).stream()
                            .map(Token::term)
                            .collect(Collectors.toUnmodifiableSet());
                }
            }
        }
        return Set.of();
    }

    /** Whether a text is a word for a kind of unit, and nothing else. */
    boolean kind(String text) {
        return kinds.whole(text).isPresent();
    }

    /** Whether a text that is there to tell of the unit says what it is, and gives no number of it. */
    boolean describes(String text) {
        List<Token> words = PhraseTable.words(text);
        for (int i = 0; i < words.size(); i++) {
            if (kinds.longest(words, i).isPresent()) {
                return UnitScan.first(text).isEmpty() && words.size() > 1;
            }
        }
        return false;
    }

    /** For each word the end of the kind of unit that begins there, or 0. */
    private int[] kinds(Clause clause) {
        int[] to = new int[clause.words().size() + 1];
        for (int i = 0; i < clause.words().size(); i++) {
            int from = i;
            to[i] = kinds.longest(clause.words(), i).map(PhraseTable.Match::to).orElse(0);
            i = Math.max(i, to[from] - 1);
        }
        return to;
    }

    private static boolean endsWithKind(Clause clause, int[] kindTo) {
        return kindEndsAt(kindTo, clause.words().size());
    }

    private static boolean kindEndsAt(int[] kindTo, int word) {
        for (int to : kindTo) {
            if (to > 0 && to == word) {
                return true;
            }
        }
        return false;
    }

    private Optional<Found> in(String text, Clause clause, int number, int[] kindTo, Beside beside, boolean leads) {
        List<Token> words = clause.words();
        int n = words.size();
        for (int i = 0; i < n; i++) {
            if (kindTo[i] > 0) {
                i = kindTo[i] - 1;
                continue;
            }
            int j = i;
            while (j < n && j - i < MOST_NAMES && kindTo[j] == 0 && written(text, clause, j, j > i)) {
                j++;
            }
            boolean kindAhead = i > 0 && kindEndsAt(kindTo, i);
            boolean low = j == i && i + 1 < n && kindTo[i] == 0 && strange(clause, i);
            if (low) {
                j++; // dictated: "quill dp7 dvd player"
            }
            boolean sure = j - i > 1 || i > 0 || beside.kindBefore();
            boolean kindNext = j + 1 == n ? beside.kindAfter() : j < n && kindTo[j + 1] > 0;
            int k = j < n && numbers(words.get(j), sure || kindNext) && !low ? j + 1 : j;
            k = low && numbers(words.get(j), false) ? j + 1 : k;
            boolean numbered = k > j;
            boolean kindBehind = k < n && kindTo[k] > 0;
            boolean whole = i == 0 && k == n && beside.kindBefore();
            boolean placed = i == 0 || LEADING.contains(words.get(i - 1).surface()) || kindAhead;
            boolean named = low
                    ? numbered && (kindBehind || kindAhead)
                    : j > i
                            && (numbered
                                    ? placed || kindBehind
                                    : (kindAhead || kindBehind || whole) && named(clause, i, kindAhead || whole));
            if (named) {
                Set<String> terms = new LinkedHashSet<>();
                words.subList(i, k).forEach(w -> terms.add(w.term()));
                return Optional.of(new Found(
                        words.get(i).start(),
                        words.get(k - 1).end(),
                        terms,
                        leads && leads(clause, i, kindTo),
                        numbered,
                        number));
            }
            i = Math.max(i, low ? i : j - 1);
        }
        return Optional.empty();
    }

    /** Whether only small words, kinds of units and what is said of them stand before a word. */
    private static boolean leads(Clause clause, int word, int[] kindTo) {
        for (int i = 0; i < word; i++) {
            if (kindTo[i] > 0) {
                i = kindTo[i] - 1;
                continue;
            }
            String said = clause.words().get(i).surface();
            boolean aside = LEADING.contains(said) || DESCRIBING.contains(said) || said.length() < SHORT;
            if (!aside) {
                return false;
            }
        }
        return true;
    }

    /** A number without a letter names a model only where it is sure that a name stands before. */
    private static boolean numbers(Token word, boolean sure) {
        boolean digit = word.surface().chars().anyMatch(Character::isDigit);
        return digit && (word.kind() == Kind.CODE || (sure && word.kind() == Kind.NUMBER));
    }

    /** Whether a word is written like a name, and is none of a part, a day, a person or work. */
    private boolean written(String text, Clause clause, int at, boolean goesOn) {
        Token word = clause.words().get(at);
        boolean capitals =
                goesOn && text.substring(word.start(), word.end()).chars().allMatch(Character::isUpperCase);
        return word.kind() == Kind.WORD
                && (word.surface().length() >= SHORT || capitals)
                && Character.isUpperCase(text.charAt(word.start()))
                && !clause.heard(at)
                && !day(word.surface())
                && !TITLES.contains(word.surface())
                && !(at > 0 && TITLES.contains(clause.words().get(at - 1).surface()))
                && NameWords.of(word).filter(names::isThing).isEmpty();
    }

    /** Whether a word is none of English, of the bench or of work, however it is written. */
    private boolean strange(Clause clause, int at) {
        Token word = clause.words().get(at);
        return word.kind() == Kind.WORD
                && word.surface().length() >= SHORT
                && !clause.heard(at)
                && !LEADING.contains(word.surface())
                && !day(word.surface())
                && !CommonWords.contains(word.surface())
                && NameWords.of(word).filter(names::isThing).isEmpty();
    }

    private static boolean day(String word) {
        return DateScan.MONTH_NAMES.contains(word)
                || DateScan.MONTHS.contains(word)
                || DateScan.WEEKDAY_NAMES.contains(word)
                || DateScan.WEEKDAYS.contains(word);
    }

    /** Whether a word beside a kind of unit is its make, and not only the beginning of a sentence: "Old radio". */
    private static boolean named(Clause clause, int at, boolean behind) {
        String word = clause.words().get(at).surface();
        return (at > 0 || behind || word.length() >= LONG) && !CommonWords.contains(word);
    }
}
