package org.benchlore.kb.ranking;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Causes in order of posterior probability, ties by id, and the unlisted cause. Probabilities are in (0,1) and sum to 1
 * with the unlisted one.
 *
 * @param scope the device scope asked for
 * @param kinds ids of the device classes that the unit may be of; empty when not known
 * @param findings what was given, one per symptom, in order of symptom id
 * @param causes every cause that applies in the scope
 * @param unlisted none of the causes known here
 */
public record Ranking(
        DeviceScope scope, List<String> kinds, List<Finding> findings, List<RankedCause> causes, RankedCause unlisted) {
    public Ranking {
        kinds = List.copyOf(kinds);
        findings = List.copyOf(findings);
        causes = List.copyOf(causes);
    }

    /**
     * One candidate.
     *
     * @param id cause id, or "unlisted"
     * @param name as a technician calls it
     * @param probability posterior, in (0,1)
     * @param interval 90 % credible interval from the uncertainty of the numbers behind it
     * @param cases past cases that ended with this cause, whatever their device; a case that is only shared out among causes is
     *     none of them
     * @param lacking parts that it needs and a unit of these kinds does not hold; empty where nothing is amiss
     * @param priorDecibans 10 log10 of the prior odds, with what was tried in vain and what the unit lacks held against it
     * @param wordingDecibans what the note's own words add to that by being like the words of the entry; 0 without a note
     * @param wordingWords the words of the note, as written, that speak for it most, the strongest first; empty where the
     *     wording does not speak for it or its probability is under a hundredth
     * @param codeDecibans what codes that no pack knows add to that by the past cases they stand in; 0 without such codes
     * @param evidence weight of each finding taken alone, in the order of {@link Ranking#findings}
     * @param unmentionedDecibans weight of what was not mentioned
     * @param overlapDecibans what the findings lose or gain by being taken together; closes the sum to 10 log10 of the
     *     posterior odds within 1e-9
     */
    public record RankedCause(
            String id,
            String name,
            double probability,
            Interval interval,
            long cases,
            List<String> lacking,
            double priorDecibans,
            double wordingDecibans,
            List<String> wordingWords,
            double codeDecibans,
            List<Evidence> evidence,
            double unmentionedDecibans,
            double overlapDecibans) {
        public RankedCause {
            lacking = List.copyOf(lacking);
            wordingWords = List.copyOf(wordingWords);
            evidence = List.copyOf(evidence);
        }
    }

    /**
     * Weight of evidence of one finding for one cause against all others together: 10 log10 of P(finding | cause) over
     * P(finding | not cause). I. J. Good, Probability and the Weighing of Evidence, 1950.
     *
     * @param symptomId the symptom
     * @param stateId the state observed (the likeliest, for an uncertain finding)
     * @param decibans positive speaks for the cause
     */
    public record Evidence(String symptomId, String stateId, double decibans) {}

    /** A 90 % credible interval. */
    public record Interval(double low, double high) {}
}
