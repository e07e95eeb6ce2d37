package org.benchlore.kb.ranking;

/**
 * The free constants of the model, with the defaults that ship. Every ranking is a pure function of the packs, the cases,
 * the query and these.
 *
 * @param unlistedShare prior share of "none of the causes known here" before any case, in (0,1)
 * @param unlistedSpread how far the unlisted cause's findings lie between the background (0) and anything goes (1), for a
 *     symptom that no listed cause speaks of: whatever shows it is unlisted
 * @param unlistedSpreadKnown the same for a symptom that some listed cause speaks of
 * @param backgroundCases how many cases a symptom's background is worth before the bench's own cases move it, above 0
 * @param scopeCases how many cases the wider scope's numbers are worth when a narrower scope refines them, above 0
 * @param mentionAlways chance that a note mentions an abnormal state of a symptom that is always reported, in [0,1)
 * @param mentionUsually the same for a symptom that is usually reported, in [0,1)
 * @param misread chance that a finding read from a note has nothing to do with what it stands for, in [0,1)
 * @param aside chance that a note tells only what its unit's fault did not do, relative to any other note, in (0,1]
 * @param doubt chance that the findings of a unit count for less than they seem, in [0,1)
 */
public record RankingSettings(
        double unlistedShare,
        double unlistedSpread,
        double unlistedSpreadKnown,
        double backgroundCases,
        double scopeCases,
        double mentionAlways,
        double mentionUsually,
        double misread,
        double aside,
        double doubt) {
    /** What ships. */
    public static final RankingSettings DEFAULT = new RankingSettings(0.05, 0.6, 0.15, 40, 8, 0.6, 0.2, 0.05, 0.1, 0.1);

    /** How often the normal state is mentioned unasked, as a share of the chance for an abnormal one. */
    static final double MENTION_NORMAL = 0.2;

    /**
     * Share of {@code misread} for a symptom that only a test tells: who writes of it has measured. Of 739 such findings in gold
     * texts that rules are tuned on, 7 % were wrong, and 11 % of 716 others, mostly close to what was meant. Set by the log-loss
     * of the demo cases.
     */
    static final double MISREAD_TESTED = 0.2;

    /**
     * What is left of a cause's base frequency where the unit lacks what the cause needs. Not 0, since packs do not know every
     * unit and words may name another; as much as 15 decibans, which two or three findings outweigh. From memory.
     */
    static final double LACKING = 0.03;

    public RankingSettings {
        check("unlistedShare", unlistedShare, unlistedShare > 0 && unlistedShare < 1);
        check("unlistedSpread", unlistedSpread, unlistedSpread >= 0 && unlistedSpread <= 1);
        check("unlistedSpreadKnown", unlistedSpreadKnown, unlistedSpreadKnown >= 0 && unlistedSpreadKnown <= 1);
        check("backgroundCases", backgroundCases, backgroundCases > 0 && backgroundCases < 1e9);
        check("scopeCases", scopeCases, scopeCases > 0 && scopeCases < 1e9);
        check("mentionAlways", mentionAlways, mentionAlways >= 0 && mentionAlways < 1);
        check("mentionUsually", mentionUsually, mentionUsually >= 0 && mentionUsually < 1);
        check("misread", misread, misread >= 0 && misread < 1);
        check("aside", aside, aside > 0 && aside <= 1);
        check("doubt", doubt, doubt >= 0 && doubt < 1);
    }

    /** The same with another {@link #doubt}. */
    public RankingSettings doubting(double other) {
        return with(aside, other);
    }

    /** The same with another {@link #aside}. */
    public RankingSettings tellingAside(double other) {
        return with(other, doubt);
    }

    private RankingSettings with(double otherAside, double otherDoubt) {
        return new RankingSettings(
                unlistedShare,
                unlistedSpread,
                unlistedSpreadKnown,
                backgroundCases,
                scopeCases,
                mentionAlways,
                mentionUsually,
                misread,
                otherAside,
                otherDoubt);
    }

    private static void check(String name, double value, boolean fits) {
        if (!fits) {
            throw new IllegalArgumentException(name + " " + value + " is out of range; see RankingSettings");
        }
    }
}
