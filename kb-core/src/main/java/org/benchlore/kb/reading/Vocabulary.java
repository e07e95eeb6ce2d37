package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.UnknownPhrase.Lean;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/** Finds the words that a bench's notes use and the packs do not teach. */
public final class Vocabulary {
    private static final int LONGEST_PHRASE = 5;
    private static final int EXAMPLES = 3;

    /**
     * Phrases kept before the first pass that lets rare ones go (lossy counting, Manku and Motwani, VLDB 2002, figure 1). A
     * phrase's count is short by at most the passes made.
     */
    static final int MOST_PHRASES = 200_000;

    /**
     * One text of a case.
     *
     * @param caseId the case
     * @param scope what the unit is
     * @param text the note
     * @param causeId the cause concluded, or empty
     */
    public record Note(String caseId, DeviceScope scope, String text, Optional<String> causeId) {}

    private static final class Seen {
        /** Passes made before it was first seen: so many cases of it may have been let go. */
        final int before;

        final Set<String> cases = new LinkedHashSet<>();
        final Map<String, Integer> written = new TreeMap<>();

        Seen(int before) {
            this.before = before;
        }
    }

    private final Knowledge knowledge;
    private final Map<List<String>, Seen> byTerms = new HashMap<>();
    private final Map<String, String> causeOf = new HashMap<>();

    private int passes;

    /** Phrases from which on the next pass is made. */
    private int full;

    private Vocabulary(Knowledge knowledge, int most) {
        this.knowledge = knowledge;
        this.full = most;
    }

    /**
     * Phrases of at most five words, the weightiest first. A single word that some pack uses is none; of a phrase and a part of it that stands in the same cases only the
     * longer.
     *
     * @param notes all texts of each case; several of one case count once
     * @param atLeast cases a phrase must stand in, from 1
     */
    public static List<UnknownPhrase> unknown(Knowledge knowledge, Reader reader, List<Note> notes, int atLeast) {
        return unknown(knowledge, reader, notes, atLeast, MOST_PHRASES);
    }

    /** @param most phrases kept before the first pass that lets rare ones go */
    static List<UnknownPhrase> unknown(Knowledge knowledge, Reader reader, List<Note> notes, int atLeast, int most) {
        Vocabulary vocabulary = new Vocabulary(knowledge, most);
        for (Note note : notes) {
            note.causeId().ifPresent(cause -> vocabulary.causeOf.put(note.caseId(), cause));
            for (Reading.Span span : reader.read(note.text(), note.scope()).notUnderstood()) {
                vocabulary.count(note.caseId(), span.text());
            }
        }
        return vocabulary.list(atLeast);
    }

    private void count(String caseId, String text) {
        List<Token> tokens = Lexer.tokens(text);
        for (int from = 0; from < tokens.size(); from++) {
            if (!Plain.content(tokens.get(from))) {
                continue;
            }
            List<String> terms = new ArrayList<>(LONGEST_PHRASE);
            for (int to = from; to < tokens.size() && to - from < LONGEST_PHRASE; to++) {
                Token last = tokens.get(to);
                if (last.kind() == Kind.PUNCTUATION) {
                    break;
                }
                terms.add(last.term());
                if (telling(last)) {
                    String written = text.substring(tokens.get(from).start(), last.end());
                    note(caseId, List.copyOf(terms), written);
                }
            }
        }
        if (byTerms.size() > full) {
            passes++;
            byTerms.values().removeIf(seen -> seen.cases.size() + seen.before <= passes);
            // a pass costs as much as the map is large, so the next one waits until it has doubled
            full = Math.max(full, 2 * byTerms.size());
        }
    }

    /** Bare numbers and readings are not words. */
    private static boolean telling(Token token) {
        return token.kind() != Kind.QUANTITY && Plain.content(token);
    }

    private void note(String caseId, List<String> terms, String written) {
        Seen seen = byTerms.computeIfAbsent(terms, t -> new Seen(passes));
        seen.cases.add(caseId);
        seen.written.merge(written.replaceAll("\\s+", " ").toLowerCase(Locale.ROOT), 1, Integer::sum);
    }

    private List<UnknownPhrase> list(int atLeast) {
        byTerms.values().removeIf(seen -> seen.cases.size() < atLeast);
        Set<List<String>> parts = new HashSet<>();
        byTerms.forEach((terms, seen) -> {
            for (int from = 0; from < terms.size(); from++) {
                for (int to = from + 1; to <= terms.size(); to++) {
                    List<String> part = terms.subList(from, to);
                    Seen whole = part.size() == terms.size() ? null : byTerms.get(part);
                    if (whole != null && whole.cases.size() == seen.cases.size()) {
                        parts.add(List.copyOf(part));
                    }
                }
            }
        });
        Map<String, Integer> casesOf = new HashMap<>();
        causeOf.values().forEach(cause -> casesOf.merge(cause, 1, Integer::sum));
        LikelyStates likely = new LikelyStates(knowledge);
        byTerms.keySet().removeIf(terms -> words(terms) == 1 && likely.taught(terms.get(0)));
        List<UnknownPhrase> phrases = new ArrayList<>();
        byTerms.forEach((terms, seen) -> {
            if (!parts.contains(terms)) {
                Optional<Lean> lean = lean(seen, casesOf);
                phrases.add(new UnknownPhrase(
                        written(seen),
                        seen.cases.size(),
                        lean,
                        likely.proposals(terms, lean.map(Lean::causeId)),
                        seen.cases.stream().limit(EXAMPLES).toList()));
            }
        });
        phrases.sort(
                Comparator.comparingDouble(UnknownPhrase::weight).reversed().thenComparing(UnknownPhrase::phrase));
        return phrases;
    }

    private static long words(List<String> terms) {
        return terms.stream().filter(term -> !Plain.filler(term)).count();
    }

    private static String written(Seen seen) {
        return seen.written.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey();
    }

    private Optional<Lean> lean(Seen seen, Map<String, Integer> casesOf) {
        Map<String, Integer> withCause = new TreeMap<>();
        for (String caseId : seen.cases) {
            String cause = causeOf.get(caseId);
            if (cause != null) {
                withCause.merge(cause, 1, Integer::sum);
            }
        }
        int concluded = withCause.values().stream().mapToInt(Integer::intValue).sum();
        return withCause.entrySet().stream()
                .filter(e -> e.getValue() >= 2)
                .map(e -> {
                    int of = casesOf.getOrDefault(e.getKey(), 0);
                    double here = (e.getValue() + 0.5) / (of + 1);
                    double elsewhere = (concluded - e.getValue() + 0.5) / (causeOf.size() - of + 1);
                    return new Lean(e.getKey(), e.getValue(), 10 * Math.log10(here / elsewhere));
                })
                .filter(lean -> lean.decibans() > 0)
                .max(Comparator.comparingDouble(Lean::decibans));
    }
}
