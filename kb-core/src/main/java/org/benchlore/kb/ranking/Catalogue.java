package org.benchlore.kb.ranking;

import com.google.common.base.Suppliers;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;

/**
 * The packs' opinions in dense arrays: symptoms, states and causes by number, in order of id; the unlisted cause is the
 * last. Immutable.
 */
final class Catalogue {
    /**
     * Cases that the background is worth where a cause says nothing about a symptom and the states are even. What is usual
     * is a belief about odds: that one cause departs from it by a factor of three either way is as likely for a state seen
     * in one unit of ten as for one seen in every other. The variance of the log odds of a Beta share worth m cases is about
     * 1 / (m p (1 - p)), so a lopsided background is worth more cases, up to {@link #MOST_LOPSIDED} times.
     */
    private static final double BACKGROUND_CASES = 8;

    private static final double MOST_LOPSIDED = 5;

    private final RankingSettings settings;
    private final List<Symptom> symptoms;
    private final List<Cause> causes;
    private final Knowledge knowledge;
    private final Map<String, Integer> symptomNumbers = new HashMap<>();
    private final Map<String, Integer> causeNumbers = new HashMap<>();
    private final double[][] background;
    private final double[] backgroundWorth;
    /** Per cause, symptom numbers it speaks of, ascending; beside it the opinions and their worth. */
    private final int[][] linked;

    /** Per symptom, the listed causes that speak of it, ascending. */
    private final int[][] speaking;

    private final double[][][] opinion;
    private final double[][] worth;
    private final double[] share;
    private final double[] unlistedSpread;
    private final Reporting reporting;
    private final Supplier<Likeness> likeness;

    /**
     * Reads the packs.
     *
     * @param opinions whether to keep what they think of causes; without, every cause and every state is as likely as the
     *     next
     */
    Catalogue(Knowledge knowledge, RankingSettings settings, boolean opinions) {
        this.knowledge = knowledge;
        this.settings = settings;
        symptoms = List.copyOf(knowledge.symptoms());
        causes = List.copyOf(knowledge.causes());
        likeness = Suppliers.memoize(() -> new Likeness(knowledge, causes));
        background = new double[symptoms.size()][];
        unlistedSpread = new double[symptoms.size()];
        backgroundWorth = new double[symptoms.size()];
        reporting = Reporting.stated(symptoms, settings);
        for (int s = 0; s < symptoms.size(); s++) {
            Symptom symptom = symptoms.get(s);
            symptomNumbers.put(symptom.id(), s);
            double even = 1.0 / symptom.states().size();
            background[s] = symptom.states().stream()
                    .mapToDouble(x -> opinions ? x.usual() : even)
                    .toArray();
            backgroundWorth[s] = BACKGROUND_CASES * lopsided(background[s]);
        }
        linked = new int[causes.size()][];
        opinion = new double[causes.size()][][];
        worth = new double[causes.size()][];
        share = new double[causes.size() + 1];
        double total = 0;
        for (int c = 0; c < causes.size(); c++) {
            Cause cause = causes.get(c);
            causeNumbers.put(cause.id(), c);
            List<Link> links = (opinions ? cause.shows() : List.<Link>of())
                    .stream()
                            .sorted((a, b) -> Integer.compare(number(a.symptomId()), number(b.symptomId())))
                            .toList();
            linked[c] = links.stream().mapToInt(l -> number(l.symptomId())).toArray();
            worth[c] = links.stream().mapToDouble(Link::cases).toArray();
            opinion[c] = links.stream().map(this::byState).toArray(double[][]::new);
            share[c] = opinions ? cause.perThousand() : 1;
            total += share[c];
        }
        for (int c = 0; c < causes.size(); c++) {
            share[c] *= (1 - settings.unlistedShare()) / total;
        }
        share[causes.size()] = settings.unlistedShare();
        speaking = new int[symptoms.size()][];
        for (int s = 0; s < symptoms.size(); s++) {
            int symptom = s;
            speaking[s] = IntStream.range(0, causes.size())
                    .filter(c -> Arrays.binarySearch(linked[c], symptom) >= 0)
                    .toArray();
            unlistedSpread[s] = speaking[s].length > 0 ? settings.unlistedSpreadKnown() : settings.unlistedSpread();
        }
    }

    private static double lopsided(double[] p) {
        double most = Arrays.stream(p).max().orElse(0.5);
        return Math.max(1, Math.min(MOST_LOPSIDED, 0.25 / (most * (1 - most))));
    }

    static double[] spread(double[] background, double share) {
        double[] p = new double[background.length];
        for (int x = 0; x < p.length; x++) {
            p[x] = (1 - share) * background[x] + share / p.length;
        }
        return p;
    }

    private double[] byState(Link link) {
        return symptoms.get(number(link.symptomId())).states().stream()
                .mapToDouble(x -> link.states().getOrDefault(x.id(), 0.0))
                .toArray();
    }

    /**
     * Number of a symptom.
     *
     * @throws IllegalArgumentException if it is unknown
     */
    int number(String symptomId) {
        Integer number = symptomNumbers.get(symptomId);
        if (number == null) {
            throw knowledge.unknown(EntryKind.SYMPTOM, symptomId);
        }
        return number;
    }

    /** The causes' entries as words, made when first asked for. */
    Likeness likeness() {
        return likeness.get();
    }

    RankingSettings settings() {
        return settings;
    }

    /** Number of causes, the unlisted one included. */
    int causes() {
        return causes.size() + 1;
    }

    int symptoms() {
        return symptoms.size();
    }

    /** Number of the unlisted cause. */
    int unlisted() {
        return causes.size();
    }

    Cause cause(int c) {
        return causes.get(c);
    }

    /**
     * Number of a cause, or -1 if the packs do not have it.
     */
    int causeNumber(String id) {
        return causeNumbers.getOrDefault(id, -1);
    }

    /** Number of a symptom's normal state. */
    int normal(int s) {
        return symptoms.get(s).normalIndex();
    }

    Symptom symptom(int s) {
        return symptoms.get(s);
    }

    boolean applies(int c, DeviceScope scope) {
        return c == unlisted() || causes.get(c).scope().contains(scope);
    }

    /** What a cause needs and a unit of these classes lacks; see {@link Knowledge#lacking}. */
    List<String> lacking(int c, List<String> kinds) {
        return c == unlisted() ? List.of() : knowledge.lacking(causes.get(c), kinds);
    }

    /** Per cause, whether such a unit may have it. */
    boolean[] held(List<String> kinds) {
        boolean[] held = new boolean[causes()];
        for (int c = 0; c < held.length; c++) {
            held[c] = lacking(c, kinds).isEmpty();
        }
        return held;
    }

    /** Symptoms a cause speaks of, ascending; for the unlisted cause none. */
    int[] linked(int c) {
        return c == unlisted() ? new int[0] : linked[c];
    }

    /** The packs' P(state | cause), or the background where the cause is silent. Not to be changed. */
    double[] opinion(int c, int s) {
        if (c == unlisted()) {
            return unlistedOpinion(s, background[s]);
        }
        int at = Arrays.binarySearch(linked[c], s);
        return at >= 0 ? opinion[c][at] : background[s];
    }

    /** What an unlisted cause shows, given the background: that, mixed with "anything goes". */
    double[] unlistedOpinion(int s, double[] background) {
        return spread(background, unlistedSpread[s]);
    }

    /** How far the unlisted cause lies between the background (0) and "anything goes" (1) on a symptom. */
    double unlistedSpread(int s) {
        return unlistedSpread[s];
    }

    /** How many cases that opinion is worth. */
    double worth(int c, int s) {
        if (c == unlisted()) {
            return backgroundWorth[s];
        }
        int at = Arrays.binarySearch(linked[c], s);
        return at >= 0 ? worth[c][at] : backgroundWorth[s];
    }

    /** The packs' share of a cause among all, whatever the scope; sums to 1. */
    double share(int c) {
        return share[c];
    }

    /** Whether the cause has an opinion of its own on the symptom. */
    boolean speaks(int c, int s) {
        return c == unlisted() || Arrays.binarySearch(linked[c], s) >= 0;
    }

    /** Listed causes that have an opinion of their own on the symptom, ascending. */
    int[] speaking(int s) {
        return speaking[s];
    }

    double[] background(int s) {
        return background[s];
    }

    /** What the symptoms' kinds say of what notes leave unsaid. */
    Reporting reporting() {
        return reporting;
    }

    /**
     * A finding as a symptom number and a likelihood per state number.
     *
     * @throws IllegalArgumentException if the symptom or a state is unknown
     */
    Observation observe(Finding finding) {
        int s = number(finding.symptomId());
        Symptom symptom = symptoms.get(s);
        double[] likelihood = new double[symptom.states().size()];
        finding.likelihoods().forEach((state, value) -> {
            likelihood[symptom.requireState(state)] = value;
        });
        return new Observation(s, likelihood, finding);
    }

    /**
     * The same of a finding that was read from a note. One that names a single state may be a slip of the note or its reader,
     * and says nothing then; an uncertain one tells by itself how sure it is.
     */
    Observation read(Finding finding) {
        Observation observation = observe(finding);
        if (observation.certainState() < 0 || settings.misread() == 0) {
            return observation;
        }
        boolean tested = symptoms.get(observation.symptom).reported() == Symptom.Reported.IF_TESTED;
        double misread = settings.misread() * (tested ? RankingSettings.MISREAD_TESTED : 1);
        double slip = misread / observation.likelihood.length;
        double[] likelihood = new double[observation.likelihood.length];
        Arrays.fill(likelihood, slip);
        likelihood[observation.certainState()] += 1 - misread;
        return new Observation(observation.symptom, likelihood, finding);
    }

    /** Whether the packs define the finding's symptom and all its states. */
    boolean knows(Finding finding) {
        Integer s = symptomNumbers.get(finding.symptomId());
        return s != null
                && finding.likelihoods().keySet().stream()
                        .allMatch(state -> symptoms.get(s).indexOf(state) >= 0);
    }

    /** A finding by numbers. */
    static final class Observation {
        final int symptom;
        final double[] likelihood;
        final Finding finding;
        private final int certain;
        private final int likeliest;

        Observation(int symptom, double[] likelihood, Finding finding) {
            this.symptom = symptom;
            this.likelihood = likelihood;
            this.finding = finding;
            int most = 0;
            for (int x = 1; x < likelihood.length; x++) {
                most = likelihood[x] > likelihood[most] ? x : most;
            }
            this.likeliest = most;
            this.certain = finding.certain() ? most : -1;
        }

        /** The one state that the finding names, or -1. */
        int certainState() {
            return certain;
        }

        /** The only state that it can be, or -1. */
        int soleState() {
            return certain >= 0 && likelihood[certain] == 1 ? certain : -1;
        }

        /** The state the observation speaks for most. */
        int likeliestState() {
            return likeliest;
        }

        /** P(what was observed | cause), given P(state | cause) as [state][cause]. */
        double given(double[][] states, int c) {
            double p = 0;
            for (int x = 0; x < likelihood.length; x++) {
                p += likelihood[x] * states[x][c];
            }
            return p;
        }
    }
}
