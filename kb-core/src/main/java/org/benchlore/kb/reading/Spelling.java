package org.benchlore.kb.reading;

import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.reading.analysis.CommonWords;
import org.benchlore.kb.reading.analysis.Words;

/**
 * Small typing mistakes: one edit (a letter left out, added, changed, or two swapped) in words of five letters or more, two in
 * words of nine or more. Words of what forbids to power a unit are known with two edits from six letters on, and rather than
 * others as near: a hold missed for a slip of the pen may hurt somebody.
 */
final class Spelling {
    private final Words known;
    private final Slips plain;
    private final Slips grave;

    /**
     * The spelling of some words.
     *
     * @param surfaces all of them, in lower case
     * @param hazards those of them that tell of what forbids power
     */
    Spelling(Set<String> surfaces, Set<String> hazards) {
        known = Words.of(surfaces.toArray(String[]::new));
        plain = new Slips(surfaces, 5, 9);
        grave = new Slips(hazards, 4, 6);
    }

    /** The known word that {@code surface} is most likely a slip for; empty for words known, short, or unclear. */
    Optional<String> mend(String surface) {
        if (known.contains(surface) || CommonWords.contains(surface)) {
            return Optional.empty();
        }
        if (surface.endsWith("ly") && known.contains(surface.substring(0, surface.length() - 2))) {
            // "weakly" is "weak" in another place of the sentence, not "weekly"
            return Optional.of(surface.substring(0, surface.length() - 2));
        }
        Slips.Near hazard = grave.nearest(surface);
        Slips.Near near = plain.nearest(surface);
        return hazard.edits() <= near.edits() && hazard.only().isPresent() ? hazard.only() : near.only();
    }
}
