package org.benchlore.kb.ranking;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/**
 * What a ranking is asked for.
 *
 * @param findings at most one per symptom
 * @param scope device scope of the unit
 * @param fromNote whether the findings come from a note, so that what it does not mention says a little; false when they
 *     were picked from a list, where silence says nothing
 * @param workedOnBefore whether somebody had been inside the unit, so that two faults at once are likelier; only {@link
 *     RankingModel#pairs} asks
 * @param tried per cause id, the probability in (0,1] that what was tried in vain would have failed had that been the only
 *     fault; causes left out have 1, as has every pair of faults
 * @param words the note, or empty: how like it is to the words of each cause's entry counts beside the findings; see
 *     {@link #wordsOf}
 * @param codes log codes that no pack knows, with the past cases in which they stand
 * @param kinds ids of device classes that the unit may be of; empty when that is not known. Causes that need what none of them
 *     holds become unlikely, see {@link RankingModel}
 * @param about id of the case that the question is about, which {@link org.benchlore.kb.KnowledgeBase} leaves out of what
 *     the cases teach, so that it does not speak for itself; empty for none. A {@link RankingModel} answers from what it
 *     has learnt
 */
public record RankingQuery(
        List<Finding> findings,
        DeviceScope scope,
        boolean fromNote,
        boolean workedOnBefore,
        SortedMap<String, Double> tried,
        String words,
        List<CodeRecord> codes,
        List<String> kinds,
        String about) {
    public RankingQuery {
        findings = List.copyOf(requireNonNull(findings, "findings"));
        requireNonNull(scope, "scope");
        requireNonNull(words, "words");
        codes = List.copyOf(requireNonNull(codes, "codes"));
        kinds = requireNonNull(kinds, "kinds").stream().sorted().distinct().toList();
        requireNonNull(about, "about");
        tried = Collections.unmodifiableSortedMap(new TreeMap<>(requireNonNull(tried, "tried")));
        for (Map.Entry<String, Double> e : tried.entrySet()) {
            if (!(e.getValue() > 0 && e.getValue() <= 1)) {
                throw new IllegalArgumentException("what was tried failed with " + e.getValue() + ", given cause '"
                        + e.getKey() + "'; give a probability above 0");
            }
        }
    }

    /** Without the note's own words and codes, of a unit of no known kind. */
    public RankingQuery(
            List<Finding> findings,
            DeviceScope scope,
            boolean fromNote,
            boolean workedOnBefore,
            SortedMap<String, Double> tried) {
        this(findings, scope, fromNote, workedOnBefore, tried, "", List.of(), List.of(), "");
    }

    /** Nothing was tried. */
    public RankingQuery(List<Finding> findings, DeviceScope scope, boolean fromNote, boolean workedOnBefore) {
        this(findings, scope, fromNote, workedOnBefore, Collections.emptySortedMap());
    }

    /** A unit nobody is known to have worked on. */
    public RankingQuery(List<Finding> findings, DeviceScope scope, boolean fromNote) {
        this(findings, scope, fromNote, false);
    }

    /** Findings picked outright, in any device. */
    public static RankingQuery of(List<Finding> findings) {
        return new RankingQuery(findings, DeviceScope.ANY, false);
    }

    /** The same with other findings. */
    public RankingQuery with(List<Finding> others) {
        return new RankingQuery(others, scope, fromNote, workedOnBefore, tried, words, codes, kinds, about);
    }

    /** The same with something else tried in vain; see {@link #tried}. */
    public RankingQuery tried(SortedMap<String, Double> inVain) {
        return new RankingQuery(findings, scope, fromNote, workedOnBefore, inVain, words, codes, kinds, about);
    }

    /**
     * What of a case's texts is compared with the causes' entries: all words, understood or not, since those around a
     * finding tell more of the cause than the finding alone. A later text counts only where it {@linkplain #furtherWordsOf
     * tells of a fault}; what was done meanwhile ("washed, dry now") and what was found in order are worded like the very
     * causes they speak against.
     * Where no text tells of a fault that the packs know, all count that led to no finding: their words are all there is.
     *
     * @param readings of the texts in their order, the complaint first
     * @param knowledge what they were read by
     */
    public static String wordsOf(List<Reading> readings, Knowledge knowledge) {
        boolean none = readings.stream().noneMatch(reading -> tellsOfFault(reading, knowledge));
        List<String> words = new ArrayList<>();
        for (Reading reading : readings) {
            boolean counts =
                    words.isEmpty() || (none && reading.understood().isEmpty()) || tellsOfFault(reading, knowledge);
            words.add(counts ? reading.text() : "");
        }
        return String.join("\n", words).strip();
    }

    /** What a later note adds to what is known of a unit: its words, if it tells of a state that a sound unit does not show. */
    public static String furtherWordsOf(Reading reading, Knowledge knowledge) {
        return tellsOfFault(reading, knowledge) ? reading.text() : "";
    }

    private static boolean tellsOfFault(Reading reading, Knowledge knowledge) {
        return reading.understood().stream().anyMatch(u -> !u.past() && !normal(u.finding(), knowledge));
    }

    /**
     * The findings of a case as they count: what was told to come and go stands against a later look that found nothing, since
     * such a unit is well most of the time.
     *
     * @param latest the latest finding of each symptom
     * @param readings of the case's texts
     * @param knowledge what they were read by
     */
    public static List<Finding> standing(List<Finding> latest, List<Reading> readings, Knowledge knowledge) {
        Map<String, Finding> comesAndGoes = new HashMap<>();
        for (Reading reading : readings) {
            for (Reading.Understood u : reading.understood()) {
                if (!u.past()
                        && u.conditions().contains(Reading.Condition.INTERMITTENT)
                        && !normal(u.finding(), knowledge)) {
                    comesAndGoes.put(u.finding().symptomId(), u.finding());
                }
            }
        }
        return latest.stream()
                .map(f -> normal(f, knowledge) ? comesAndGoes.getOrDefault(f.symptomId(), f) : f)
                .toList();
    }

    private static boolean normal(Finding finding, Knowledge knowledge) {
        return knowledge.normal(finding.symptomId(), finding.state());
    }

    /** The same as told in these words; see {@link #words}. */
    public RankingQuery inWords(String note) {
        return new RankingQuery(findings, scope, fromNote, workedOnBefore, tried, note, codes, kinds, about);
    }

    /** The same with codes that no pack knows; see {@link #codes}. */
    public RankingQuery withCodes(List<CodeRecord> unknown) {
        return new RankingQuery(findings, scope, fromNote, workedOnBefore, tried, words, unknown, kinds, about);
    }

    /** The same about another case, or about none; see {@link #about}. */
    public RankingQuery about(String caseId) {
        return new RankingQuery(findings, scope, fromNote, workedOnBefore, tried, words, codes, kinds, caseId);
    }

    /** The same of a unit of one of these classes; see {@link #kinds}. */
    public RankingQuery ofKinds(List<String> classes) {
        return new RankingQuery(findings, scope, fromNote, workedOnBefore, tried, words, codes, classes, about);
    }
}
