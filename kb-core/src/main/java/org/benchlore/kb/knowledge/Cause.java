package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.Optional;

/**
 * A fault, or an innocent explanation, that can produce findings.
 *
 * @param id stable, kebab-case
 * @param name as a technician calls it
 * @param kind fault or innocent
 * @param aliases other names, for reading and search
 * @param told how owners and colleagues tell of it, in their own words; compared with the words of a note
 * @param about mechanism and who gets it
 * @param scope where it applies
 * @param perThousand of 1000 units that come to the bench in this scope, how many have it; in (0,1000)
 * @param cases how many cases that base frequency is worth
 * @param from origin of the base frequency
 * @param shows opinions on symptoms, at most one per symptom
 * @param confirmedBy ids of tests that can confirm it
 * @param fixedBy fixes, best first as written
 * @param cautions ids of cautions, besides those of its tests and fixes
 * @param fools what commonly misleads
 * @param alike why no test tells it from causes like it, or empty
 * @param needs parts that a unit must hold to have it at all, such as {@code tape}; see {@link Device#has}
 */
public record Cause(
        String id,
        String name,
        Kind kind,
        List<String> aliases,
        List<String> told,
        String about,
        DeviceScope scope,
        double perThousand,
        double cases,
        Provenance from,
        List<Link> shows,
        List<String> confirmedBy,
        List<Remedy> fixedBy,
        List<String> cautions,
        List<String> fools,
        String alike,
        List<String> needs) {
    /** Whether something is broken. */
    public enum Kind {
        FAULT,
        INNOCENT
    }

    public Cause {
        aliases = List.copyOf(aliases);
        told = List.copyOf(told);
        shows = List.copyOf(shows);
        confirmedBy = List.copyOf(confirmedBy);
        fixedBy = List.copyOf(fixedBy);
        cautions = List.copyOf(cautions);
        fools = List.copyOf(fools);
        needs = List.copyOf(needs);
    }

    /** What it says of a symptom; empty if nothing. */
    public Optional<Link> link(String symptomId) {
        return shows.stream().filter(link -> link.symptomId().equals(symptomId)).findFirst();
    }
}
