package org.benchlore.kb.reading;

import java.util.List;
import java.util.Optional;

/**
 * Words that notes use and the reader does not know.
 *
 * @param phrase as written most often, in small letters
 * @param cases number of cases it stands in, at least 1
 * @param lean the cause it goes with most strongly; empty while no two cases agree on one
 * @param proposals states it may stand for, the likeliest first; at most three, possibly none
 * @param examples some of the cases, at most three
 */
public record UnknownPhrase(
        String phrase, int cases, Optional<Lean> lean, List<Proposal> proposals, List<String> examples) {
    /**
     * How strongly a phrase goes with one cause.
     *
     * @param causeId the cause concluded
     * @param cases those of {@link UnknownPhrase#cases} that were concluded so, at least 2
     * @param decibans what the phrase says for the cause: ten times the decimal logarithm of how much oftener its cases have
     *     the phrase than all other concluded cases, with half a case added to each count; positive
     */
    public record Lean(String causeId, int cases, double decibans) {}

    /**
     * A state that a phrase may be another name for.
     *
     * @param symptomId the symptom
     * @param stateId its state
     * @param likeness shared words, weighed by rarity, and how often the leaning cause shows the state; in (0,1]
     */
    public record Proposal(String symptomId, String stateId, double likeness) {}

    public UnknownPhrase {
        proposals = List.copyOf(proposals);
        examples = List.copyOf(examples);
    }

    /** What the list is ordered by: the cases it stands in, more for what leans towards one cause. */
    public double weight() {
        return cases * (1 + lean.map(Lean::decibans).orElse(0.0) / 10);
    }
}
