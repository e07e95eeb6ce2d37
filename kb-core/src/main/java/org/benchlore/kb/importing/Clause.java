package org.benchlore.kb.importing;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of text that says one thing, with the cues and the work found in it. Sentences, commas, brackets and dashes
 * end it, and so do "and", "then", "but" before another cue of their own.
 *
 * @param start UTF-16 offset of its first word in the text
 * @param end offset behind its last word
 * @param words tokens without punctuation
 * @param hits cues and work, in order, not overlapping
 * @param cues those among the hits
 * @param sentence which sentence of the text it belongs to
 * @param asked whether a question mark ends it
 */
record Clause(int start, int end, List<Token> words, List<Hit> hits, Set<Cue> cues, int sentence, boolean asked) {
    /** A line at least this long may go on in the next one. */
    static final int WRAPPED_LINE = 60;

    /** Nobody writes longer ones; it keeps the work linear on texts without punctuation. */
    private static final int MOST_WORDS = 64;

    static final Map<String, Integer> NUMBERS = Map.ofEntries(
            Map.entry("a", 1),
            Map.entry("an", 1),
            Map.entry("one", 1),
            Map.entry("two", 2),
            Map.entry("three", 3),
            Map.entry("four", 4),
            Map.entry("five", 5),
            Map.entry("six", 6),
            Map.entry("seven", 7),
            Map.entry("eight", 8),
            Map.entry("nine", 9),
            Map.entry("ten", 10),
            Map.entry("twelve", 12),
            Map.entry("half", 0));
    private static final Map<String, Duration> SPANS = Map.ofEntries(
            Map.entry("hour", Duration.ofHours(1)),
            Map.entry("h", Duration.ofHours(1)),
            Map.entry("day", Duration.ofDays(1)),
            Map.entry("night", Duration.ofHours(10)),
            Map.entry("morning", Duration.ofHours(4)),
            Map.entry("afternoon", Duration.ofHours(4)),
            Map.entry("evening", Duration.ofHours(4)),
            Map.entry("week", Duration.ofDays(7)),
            Map.entry("month", Duration.ofDays(30)),
            Map.entry("year", Duration.ofDays(365)));
    private static final double LONGEST_SPAN = 36_500 * 86_400.0; // seconds

    /** What follows these was not done, or not by this bench. */
    static final Set<Cue> NOT_OURS = EnumSet.of(Cue.PLANNED, Cue.NEGATION, Cue.OTHERS);

    /** Where a text without signs comes to how it went. */
    private static final Set<Cue> TURNING = EnumSet.of(
            Cue.WORKS_AGAIN, Cue.NO_HELP, Cue.UNMENDED, Cue.BACK, Cue.NOT_WORTH, Cue.GIVEN_UP, Cue.HANDED, Cue.DEAR);

    /** Words from which on a text without signs is taken for dictated. */
    private static final int DICTATED = 15;

    /** Words by which a denial or a person stands before what is theirs in such a text. */
    private static final int NEAR = 4;

    /** Words of work that name it and do not tell that it was done, so that "new belts ordered" plans it. */
    private static final Set<String> NOUNS = Set.of(
            "new",
            "replacement",
            "replacement of",
            "exchange",
            "exchange of",
            "repair of",
            "replacing",
            "changing",
            "swapping",
            "fitting",
            "renewing",
            "cleaning",
            "cleaning of",
            "washing",
            "resoldering",
            "resoldering of",
            "soldering of",
            "reseating",
            "reseating of",
            "rebuilding of",
            "adjustment of",
            "alignment of",
            "lubrication of",
            "removal of");

    private static final PhraseTable<Cue> CUES = new PhraseTable<>();
    private static final PhraseTable<Work> WORKS = new PhraseTable<>();

    static {
        for (Cue cue : Cue.values()) {
            cue.phrases().forEach(phrase -> CUES.add(phrase, cue));
        }
        for (Work work : Work.values()) {
            work.done().forEach(phrase -> WORKS.add(phrase, work));
        }
    }

    /** A cue or a kind of work, at words {@code from} to {@code to}, exclusive. One of the two is null. */
    record Hit(
            int from, int to, @Nullable Cue cue, @Nullable Work work) {
        boolean is(Cue other) {
            return cue == other;
        }
    }

    /** The clauses of a text, in order. */
    static List<Clause> of(String text) {
        List<Clause> clauses = new ArrayList<>();
        List<Token> tokens = Lexer.tokens(text);
        List<Token> words = new ArrayList<>();
        int sentence = 0;
        boolean dictated = dictated(tokens);
        for (int i = 0; i < tokens.size(); i++) {
            Token token = tokens.get(i);
            boolean ends = false;
            boolean stops = false;
            if (token.kind() != Kind.PUNCTUATION) {
                words.add(token);
            } else if (token.is("\n")) {
                stops = i + 1 == tokens.size() || !wraps(text, token.start(), tokens.get(i + 1));
            } else {
                stops = ".!?;".contains(token.term());
                ends = ",()[]|>-\uFFFD".contains(token.term());
            }
            if (ends || stops || words.size() == MOST_WORDS) {
                add(words, sentence, token.is("?"), dictated, clauses);
                words = new ArrayList<>();
                sentence += stops ? 1 : 0;
            }
        }
        add(words, sentence, false, dictated, clauses);
        return clauses;
    }

    /** Whether a text of many words has no sign that would end a clause. */
    private static boolean dictated(List<Token> tokens) {
        int words = 0;
        for (Token token : tokens) {
            if (token.kind() != Kind.PUNCTUATION) {
                words++;
            } else if (!token.is("\n")) {
                return false;
            }
        }
        return words >= DICTATED;
    }

    private static boolean wraps(String text, int lineEnd, Token next) {
        int lineStart = text.lastIndexOf('\n', Math.max(0, lineEnd - 1)) + 1;
        return lineEnd - lineStart >= WRAPPED_LINE && Character.isLowerCase(text.charAt(next.start()));
    }

    /** @param dictated whether what is done and reached begins a clause, since no sign does */
    private static void add(List<Token> words, int sentence, boolean asked, boolean dictated, List<Clause> clauses) {
        if (words.isEmpty()) {
            return;
        }
        List<Hit> hits = hits(words);
        int from = 0;
        for (int i = 1; i < words.size(); i++) {
            if (joins(words.get(i)) && opens(hits, i + 1) && !within(hits, i)) {
                add(words, hits, from, i, sentence, asked, clauses);
                from = i + 1;
            } else if (dictated && i > from && turns(hits, i)) {
                add(words, hits, from, i, sentence, asked, clauses);
                from = i;
            }
        }
        add(words, hits, from, words.size(), sentence, asked, clauses);
    }

    private static void add(
            List<Token> words, List<Hit> hits, int from, int to, int sentence, boolean asked, List<Clause> clauses) {
        if (to <= from) {
            return;
        }
        List<Hit> own = new ArrayList<>();
        Set<Cue> cues = EnumSet.noneOf(Cue.class);
        for (Hit hit : hits) {
            if (hit.from() >= from && hit.to() <= to) {
                own.add(new Hit(hit.from() - from, hit.to() - from, hit.cue(), hit.work()));
                if (hit.cue() != null) {
                    cues.add(hit.cue());
                }
            }
        }
        clauses.add(new Clause(
                words.get(from).start(), words.get(to - 1).end(), words.subList(from, to), own, cues, sentence, asked));
    }

    /** Whether work or an ending begins at a word that nothing before it denies, plans or gives to others. */
    private static boolean turns(List<Hit> hits, int word) {
        boolean turns = false;
        for (Hit hit : hits) {
            if (hit.to() <= word && hit.to() > word - NEAR && hit.cue() != null && NOT_OURS.contains(hit.cue())) {
                return false;
            }
            turns |= hit.from() == word && (hit.work() != null || (hit.cue() != null && TURNING.contains(hit.cue())));
        }
        return turns;
    }

    private static boolean within(List<Hit> hits, int word) {
        for (Hit hit : hits) {
            if (hit.from() < word && word < hit.to()) {
                return true;
            }
        }
        return false;
    }

    private static boolean joins(Token word) {
        return switch (word.surface()) {
            case "and", "then", "but", "so", "afterwards", "after", "because", "now" -> true;
            default -> false;
        };
    }

    /** Whether something of its own begins at a word, or at the next. */
    private static boolean opens(List<Hit> hits, int word) {
        for (Hit hit : hits) {
            if (hit.from() == word || hit.from() == word + 1) {
                boolean empty = hit.cue() == Cue.FILLER || hit.cue() == Cue.NEGATION || hit.cue() == Cue.DOUBT;
                if (!empty) {
                    return true;
                }
            }
        }
        return false;
    }

    private static List<Hit> hits(List<Token> words) {
        List<Hit> hits = new ArrayList<>();
        int i = 0;
        while (i < words.size()) {
            Optional<PhraseTable.Match<Cue>> cue = CUES.longest(words, i);
            Optional<PhraseTable.Match<Work>> work = WORKS.longest(words, i);
            int cueEnd = cue.map(PhraseTable.Match::to).orElse(i);
            int workEnd = work.map(PhraseTable.Match::to).orElse(i);
            if (work.isPresent() && workEnd > cueEnd) {
                hits.add(new Hit(i, workEnd, null, work.get().value()));
                i = workEnd;
            } else if (cue.isPresent()) {
                hits.add(new Hit(i, cueEnd, cue.get().value(), null));
                i = cueEnd;
            } else {
                i++;
            }
        }
        return hits;
    }

    boolean has(Cue cue) {
        return cues.contains(cue);
    }

    /** Whether work is told as done, and by this bench. */
    boolean ours(Hit hit) {
        boolean refused = has(Cue.PLANNED) || has(Cue.NOT_WORTH) || has(Cue.DEAR) || has(Cue.GIVEN_UP);
        return !before(hit.from(), NOT_OURS) && !(refused && noun(hit));
    }

    /** Whether work is named, and not told as done. */
    boolean noun(Hit hit) {
        return NOUNS.contains(surface(hit));
    }

    /** The words of a hit, in lower case. */
    String surface(Hit hit) {
        return words.subList(hit.from(), hit.to()).stream().map(Token::surface).collect(Collectors.joining(" "));
    }

    /** Whether a word belongs to a cue or to work. */
    boolean heard(int word) {
        return within(hits, word) || hits.stream().anyMatch(h -> h.from() == word);
    }

    /** Whether a word belongs to one of some cues. */
    boolean within(int word, Set<Cue> any) {
        return hits.stream()
                .anyMatch(h -> h.from() <= word && word < h.to() && h.cue() != null && any.contains(h.cue()));
    }

    /** Whether a word tells of work, as "again" in "soldered again". */
    boolean worked(int word) {
        return hits.stream().anyMatch(h -> h.from() <= word && word < h.to() && h.work() != null);
    }

    /** Whether any of some cues stands before a word. */
    boolean before(int word, Set<Cue> any) {
        for (Hit hit : hits) {
            if (hit.to() <= word && hit.cue() != null && any.contains(hit.cue())) {
                return true;
            }
        }
        return false;
    }

    /** Whether its words are cues of some kinds, small words and durations, and nothing else. */
    boolean only(Set<Cue> any) {
        boolean[] explained = new boolean[words.size()];
        for (Hit hit : hits) {
            for (int i = hit.from(); i < hit.to(); i++) {
                explained[i] = hit.cue() != null && (hit.is(Cue.FILLER) || any.contains(hit.cue()));
            }
        }
        for (int i = 0; i < explained.length; i++) {
            if (!explained[i] && !timeWord(words.get(i))) {
                return false;
            }
        }
        return true;
    }

    static boolean timeWord(Token word) {
        return switch (word.kind()) {
            case QUANTITY -> word.unit().equals("s") || word.unit().equals("times");
            case NUMBER, OTHER -> true;
            case WORD -> SPANS.containsKey(word.term()) || NUMBERS.containsKey(word.surface());
            case CODE, PUNCTUATION -> false;
        };
    }

    /** The longest duration named in it, in seconds: "24 h", "two days", "3 weeks", "a month". */
    OptionalLong seconds() {
        long longest = -1;
        for (int i = 0; i < words.size(); i++) {
            Token word = words.get(i);
            if (word.kind() == Kind.QUANTITY && word.unit().equals("s")) {
                longest = Math.max(longest, (long) Math.min(word.value(), LONGEST_SPAN));
            }
            Duration span = SPANS.get(word.term());
            if (span != null && i > 0) {
                Token count = words.get(i - 1);
                double number = count.kind() == Kind.NUMBER ? count.value() : NUMBERS.getOrDefault(count.surface(), -1);
                if (number > 0) {
                    longest = Math.max(longest, (long) Math.min(number * span.toSeconds(), LONGEST_SPAN));
                }
            }
        }
        return longest < 0 ? OptionalLong.empty() : OptionalLong.of(longest);
    }
}
