package org.benchlore.kb.knowledge;

import java.util.List;

/**
 * How good the packs are, out of the packs alone: nothing here has been learnt from cases. Shares are in 0..1; where there
 * is nothing to share out they are 0.
 *
 * @param causes number of causes
 * @param symptoms number of symptoms
 * @param tests number of tests
 * @param fixes number of fixes
 * @param cautions number of cautions
 * @param largestAmbiguityGroup most causes on one device with the same row in the D-matrix; 1 when all are told apart, 0
 *     without causes
 * @param faultDetectionRatio share of causes, weighted by base frequency, under which a test shows something out of order
 * @param faultIsolationRatio share of those, weighted likewise, that no other cause shares its row with, on any device
 * @param publishedShare share of the numbers that are published
 * @param numbers where the numbers come from
 * @param unpublished causes and cautions without a published number or statement, as {@code kind/id}
 * @param coverage figures per device scope, the widest first
 * @param ambiguityGroups groups of two causes or more, the largest first
 * @param lookalikes causes that all tests together hardly tell from others, those with most others first
 * @param symptomsByInformation symptoms by what they tell of the cause, most first
 * @param twins entries that say nearly the same
 * @param readability how hard tests and fixes are to read
 * @param oneWayLinks places where one entry speaks of another that does not answer
 */
public record QualityReport(
        int causes,
        int symptoms,
        int tests,
        int fixes,
        int cautions,
        int largestAmbiguityGroup,
        double faultDetectionRatio,
        double faultIsolationRatio,
        double publishedShare,
        Numbers numbers,
        List<String> unpublished,
        List<Coverage> coverage,
        List<AmbiguityGroup> ambiguityGroups,
        List<Lookalike> lookalikes,
        List<Informative> symptomsByInformation,
        List<Twin> twins,
        Readability readability,
        List<OneWayLink> oneWayLinks) {
    /** A set of causes larger than this has to say why no test tells them apart. */
    public static final int LARGE = 3;

    public QualityReport {
        unpublished = List.copyOf(unpublished);
        coverage = List.copyOf(coverage);
        ambiguityGroups = List.copyOf(ambiguityGroups);
        lookalikes = List.copyOf(lookalikes);
        symptomsByInformation = List.copyOf(symptomsByInformation);
        twins = List.copyOf(twins);
        oneWayLinks = List.copyOf(oneWayLinks);
    }

    /** The report on some packs. Takes time with the square of the number of causes that speak of one symptom. */
    public static QualityReport of(Knowledge knowledge) {
        DependencyMatrix matrix = new DependencyMatrix(knowledge);
        Testability testability = new Testability(knowledge, matrix);
        Isolation all = testability.overall(true);
        Numbers numbers = Origin.numbers(knowledge);
        return new QualityReport(
                knowledge.causes().size(),
                knowledge.symptoms().size(),
                knowledge.tests().size(),
                knowledge.fixes().size(),
                knowledge.cautions().size(),
                testability.largestGroup(),
                all.detected(),
                all.within1(),
                numbers.publishedShare(),
                numbers,
                Origin.unpublished(knowledge),
                testability.coverage(),
                testability.groups(),
                new Lookalikes(knowledge).find(),
                Information.of(knowledge),
                Twins.find(knowledge),
                Lix.of(knowledge),
                new OneWayLinks(knowledge).find());
    }

    /**
     * Base frequencies, links, remedies and limits of quantities by origin.
     *
     * @param published taken from a source that somebody has seen
     * @param commonPractice common in the trade
     * @param memory remembered
     */
    public record Numbers(int published, int commonPractice, int memory) {
        /** Share of published ones, 0 if there is none at all. */
        public double publishedShare() {
            int all = published + commonPractice + memory;
            return all == 0 ? 0 : (double) published / all;
        }
    }

    /**
     * What one device scope has, with what it takes over from the scopes around it.
     *
     * @param scope the scope
     * @param causes causes that apply
     * @param own those written for this very scope
     * @param confirmable share of the causes with a test that can confirm them
     * @param fixable share of the causes with a fix
     * @param readable share of the symptoms that a test reads
     * @param largestGroup most causes with the same row in the D-matrix
     * @param weighted testability with each cause as often as it occurs
     * @param counted testability with each cause once
     */
    public record Coverage(
            DeviceScope scope,
            int causes,
            int own,
            double confirmable,
            double fixable,
            double readable,
            int largestGroup,
            Isolation weighted,
            Isolation counted) {}

    /**
     * Testability of a D-matrix, single fault. With λ the weight of a cause: detected is Σλ(detected) / Σλ, FFD; within L
     * is Σλ(detected and in an ambiguity group of at most L) / Σλ(detected), FFI(L). MIL-STD-2165 (1985) and IEEE Std
     * 1522-2004, the formulas as texts that report them give them; 1522 also knows the form that counts each fault once.
     *
     * @param detected share of causes under which a test shows something out of order
     * @param within1 share of those that stand alone
     * @param within2 share in a group of two at most
     * @param within3 share in a group of three at most
     * @param meanGroup size of the group that a detected cause is in, on average; 0 if none is detected
     */
    public record Isolation(double detected, double within1, double within2, double within3, double meanGroup) {}

    /**
     * Causes with the same row in the D-matrix.
     *
     * @param causes ids
     * @param reasons why no test tells them apart, from those that say so
     * @param explained whether all of them but one say why
     */
    public record AmbiguityGroup(List<String> causes, List<String> reasons, boolean explained) {
        public AmbiguityGroup {
            causes = List.copyOf(causes);
            reasons = List.copyOf(reasons);
        }
    }

    /**
     * A cause that all tests together hardly tell from others.
     *
     * @param cause its id
     * @param others the others, the most alike first
     * @param reason why no test tells them apart, or empty
     */
    public record Lookalike(String cause, List<Neighbour> others, String reason) {
        public Lookalike {
            others = List.copyOf(others);
        }
    }

    /**
     * A cause like another.
     *
     * @param cause its id
     * @param decibans weight of evidence to expect for whichever is true, the lesser of the two ways
     */
    public record Neighbour(String cause, double decibans) {}

    /**
     * What a symptom tells.
     *
     * @param symptom its id
     * @param bits mutual information of its state and the cause, in the symptom's own scope
     * @param causes how many causes speak of it
     */
    public record Informative(String symptom, double bits, int causes) {}

    /**
     * Two entries of one kind that say nearly the same.
     *
     * @param kind theirs
     * @param first id
     * @param second id
     * @param by what is alike
     * @param resemblance Jaccard index of the two, in (0,1]
     */
    public record Twin(EntryKind kind, String first, String second, Alike by, double resemblance) {}

    /** What twins have in common. */
    public enum Alike {
        /** Words of a name. */
        NAME,
        /** Runs of words of the whole entry. */
        TEXT
    }

    /**
     * How hard tests and fixes are to read: the LIX of Björnsson, Läsbarhet (1968), as texts that report it give it. About
     * 20 is very easy, 60 very hard.
     *
     * @param tests mean over the tests
     * @param fixes mean over the fixes
     * @param hardest the ten hardest of both
     */
    public record Readability(double tests, double fixes, List<Hard> hardest) {
        public Readability {
            hardest = List.copyOf(hardest);
        }
    }

    /**
     * One entry's reading ease.
     *
     * @param kind test or fix
     * @param id its id
     * @param lix words a sentence plus long words a hundred
     */
    public record Hard(EntryKind kind, String id, double lix) {}

    /**
     * An entry that speaks of another which does not answer.
     *
     * @param kind of the entry that should be mended
     * @param id of it
     * @param what in a sentence without subject
     */
    public record OneWayLink(EntryKind kind, String id, String what) {}
}
