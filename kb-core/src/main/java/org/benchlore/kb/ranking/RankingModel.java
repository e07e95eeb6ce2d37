package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToDoubleFunction;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;

/**
 * Ranks causes for findings. Immutable and thread-safe: learning gives a new model that shares what did not change, so a
 * ranking in progress keeps its snapshot, and the model is a pure function of packs, settings and the set of lessons.
 *
 * <p>For findings e and causes c, the unlisted one among them, the posterior is P(c | e) ∝ θ(c) · Π P(eᵢ | c), computed
 * exactly in logarithms, with a share of doubt that the findings count for less together (see {@code Posterior}). θ comes from the packs' base frequencies and the cases, pooled along the device scope (see
 * {@code Shrinkage}); P(state | cause) is the pack's opinion as a Dirichlet worth so many cases, updated by the cases'
 * counts and pooled the same way. A cause that says nothing of a symptom has its background; the unlisted cause has a mix
 * of the background and "anything goes", so that findings no listed cause explains speak for it.
 *
 * <p>Where the kind of unit is told, θ of a cause that needs what no such unit holds is taken times {@value
 * RankingSettings#LACKING}; the listed causes share out what is lost, and the unlisted one keeps its share.
 */
public final class RankingModel {
    /** Id of "none of the causes known here". */
    public static final String UNLISTED = CaseEvent.Concluded.UNLISTED;

    /** Fewer lessons tell {@link #fit} nothing of findings that travel together. */
    public static final int LEAST_TO_FIT = 32;

    /** More make {@link #fit} slow and no better. */
    public static final int MOST_TO_FIT = 2048;

    /** Device scopes kept ready; beyond this the views are made anew. */
    private static final int MAX_VIEWS = 64;

    private final Catalogue catalogue;
    private final Counts[] counts;
    private final Dependence dependence;
    private final long cases;
    private final Map<Seen, ScopeView> views = new ConcurrentHashMap<>();

    /** Where a model is seen from. */
    private record Seen(DeviceScope scope, List<String> kinds) {}

    private RankingModel(Catalogue catalogue, Counts[] counts, Dependence dependence, long cases) {
        this.catalogue = catalogue;
        this.counts = counts;
        this.dependence = dependence;
        this.cases = cases;
    }

    /** The packs' opinion alone. */
    public static RankingModel of(Knowledge knowledge, RankingSettings settings) {
        return of(new Catalogue(knowledge, settings, true));
    }

    /** The same causes and symptoms, every opinion left out: what cases teach to somebody who knows nothing. */
    static RankingModel withoutOpinions(Knowledge knowledge, RankingSettings settings) {
        return of(new Catalogue(knowledge, settings, false));
    }

    private static RankingModel of(Catalogue catalogue) {
        Counts[] none = new Counts[catalogue.causes()];
        Arrays.fill(none, Counts.NONE);
        return new RankingModel(catalogue, none, Dependence.NONE, 0);
    }

    /** Number of lessons learnt. */
    public long cases() {
        return cases;
    }

    /** Whether the packs define the finding's symptom and states; other findings cannot be ranked. */
    public boolean knows(Finding finding) {
        return catalogue.knows(finding);
    }

    /** This model with more lessons; their order is of no consequence. */
    public RankingModel learn(Iterable<Lesson> lessons) {
        return with(lessons, 1);
    }

    /**
     * This model without lessons it had learnt; it then ranks bit for bit as if it had never seen them.
     */
    public RankingModel unlearn(Iterable<Lesson> lessons) {
        return with(lessons, -1);
    }

    private RankingModel with(Iterable<Lesson> lessons, int sign) {
        Counts[] changed = counts.clone();
        Set<Integer> own = new HashSet<>();
        long learnt = cases;
        for (Lesson lesson : lessons) {
            List<Catalogue.Observation> seen = known(lesson.findings());
            int[] symptoms = seen.stream().mapToInt(o -> o.symptom).toArray();
            double[][] states = seen.stream().map(o -> shares(o.likelihood)).toArray(double[][]::new);
            for (Map.Entry<String, Long> e : lesson.weights().entrySet()) {
                int c = number(e.getKey());
                if (own.add(c)) {
                    changed[c] = changed[c].copy();
                }
                changed[c].add(sign, lesson.concluded(), lesson.scope(), e.getValue(), symptoms, states);
            }
            learnt += sign;
        }
        for (int c : own) {
            if (changed[c].isEmpty()) {
                changed[c] = Counts.NONE;
            }
        }
        return new RankingModel(catalogue, changed, dependence, learnt);
    }

    /**
     * This model with what the lessons tell of findings that travel together and of how far to trust the packs, learnt by
     * leaving each out in turn. It replaces what was learnt of that before; counts stay as they are. The order of the
     * lessons is of no consequence, and none puts the ranking back to independent findings.
     *
     * @param lessons those with one cause of at least half a case count; time grows with their number
     */
    public RankingModel fit(Iterable<Lesson> lessons) {
        List<CaseRow> rows = new ArrayList<>();
        for (Lesson lesson : lessons) {
            row(lesson).ifPresent(rows::add);
        }
        return new RankingModel(catalogue, counts, Dependence.fit(catalogue, rows), cases);
    }

    /** Number of a cause in the order of {@link #probabilities}; that of the unlisted one for what the packs do not have. */
    int number(String causeId) {
        int number = catalogue.causeNumber(causeId);
        return number < 0 ? catalogue.unlisted() : number;
    }

    private Optional<CaseRow> row(Lesson lesson) {
        String likeliest = lesson.likeliest().orElse("");
        long weight = lesson.weights().getOrDefault(likeliest, 0L);
        if (weight == 0) {
            return Optional.empty();
        }
        List<Catalogue.Observation> certain = known(lesson.findings()).stream()
                .filter(o -> o.certainState() >= 0)
                .sorted(Comparator.comparingInt(o -> o.symptom))
                .toList();
        return Optional.of(new CaseRow(
                weight,
                number(likeliest),
                certain.stream().mapToInt(o -> o.symptom).toArray(),
                certain.stream().mapToInt(Catalogue.Observation::certainState).toArray()));
    }

    /** A case may speak of symptoms that the packs have since dropped; those teach nothing. */
    private List<Catalogue.Observation> known(List<Finding> findings) {
        List<Catalogue.Observation> seen = new ArrayList<>(findings.size());
        for (Finding finding : findings) {
            if (catalogue.knows(finding)) {
                seen.add(catalogue.observe(finding));
            }
        }
        return seen;
    }

    private static double[] shares(double[] likelihood) {
        double sum = Arrays.stream(likelihood).sum();
        return Arrays.stream(likelihood).map(x -> x / sum).toArray();
    }

    /**
     * Posterior over all causes that apply in the query's scope, with intervals and explanation.
     *
     * @throws IllegalArgumentException if a finding names an unknown symptom or state, or a symptom comes twice
     */
    public Ranking rank(RankingQuery query) {
        Outset outset = outset(query);
        List<Catalogue.Observation> observations = observe(query);
        return new Explanation(
                        catalogue,
                        outset,
                        counts,
                        query,
                        observations,
                        dependence.together(observations, outset.coded()))
                .ranking();
    }

    /** Whether anything in a query tells causes apart: a finding, a code of past cases, a word of an entry. */
    public boolean tells(RankingQuery query) {
        return !query.findings().isEmpty()
                || query.codes().stream().anyMatch(code -> code.seen() > 0)
                || (!query.words().isBlank() && catalogue.likeness().knowsAnyOf(query.words()));
    }

    /**
     * The posterior probabilities alone, without intervals and explanation: much faster.
     *
     * @return one per cause in order of id, the unlisted cause last; 0 for causes that do not apply in the scope
     * @throws IllegalArgumentException as {@link #rank}
     */
    public double[] probabilities(RankingQuery query) {
        return probabilities(outset(query), query);
    }

    /** The same for a query whose outset is known, words weighed beside the findings made so far. */
    double[] probabilities(Outset outset, RankingQuery query) {
        List<Catalogue.Observation> observations = observe(query);
        return Posterior.of(
                outset,
                observations,
                query.fromNote(),
                dependence.together(observations, outset.coded()),
                catalogue.settings());
    }

    /**
     * The posterior probability of one cause, as {@link #rank} gives it.
     *
     * @param causeId a cause of the packs; anything else stands for the unlisted one
     * @throws IllegalArgumentException as {@link #rank}
     */
    public double probability(RankingQuery query, String causeId) {
        return probabilities(query)[number(causeId)];
    }

    /**
     * P(state | cause) of one symptom as this model has it.
     *
     * @throws IllegalArgumentException if the symptom is unknown
     */
    public StateTable states(String symptomId, DeviceScope scope) {
        return new StateTable(view(scope).column(catalogue.number(symptomId)).p);
    }

    /**
     * Single findings not yet made that would most change who leads, the strongest first: those that put another cause
     * first, then those that lower the leader most.
     *
     * @param limit most to return, from 1
     * @throws IllegalArgumentException as {@link #rank}
     */
    public List<Turn> turns(RankingQuery query, int limit) {
        return new Turns(this, catalogue, outset(query)).strongest(query, limit);
    }

    /**
     * Two faults at once beside each fault alone, exactly over all of them. Silence is not weighed, and findings are taken
     * as independent given the faults.
     *
     * @param limit most pairs to return, from 1
     * @throws IllegalArgumentException as {@link #rank}
     */
    public PairRanking pairs(RankingQuery query, int limit) {
        ScopeView view = coded(worded(view(query), query), query);
        List<Catalogue.Observation> observations = observe(query);
        return new Pairs(catalogue, view, observations, dependence.together(observations, view), failed(query))
                .rank(query.workedOnBefore(), limit);
    }

    /** Numbers in the packs that the cases speak against, worst first. */
    List<Evaluation.Review> reviews() {
        return new Reviews(catalogue, view(DeviceScope.ANY), counts).worst();
    }

    private List<Catalogue.Observation> observe(RankingQuery query) {
        List<Catalogue.Observation> observations =
                new ArrayList<>(query.findings().size());
        for (Finding finding : query.findings()) {
            observations.add(query.fromNote() ? catalogue.read(finding) : catalogue.observe(finding));
        }
        observations.sort(Comparator.comparingInt(o -> o.symptom));
        for (int i = 1; i < observations.size(); i++) {
            if (observations.get(i).symptom == observations.get(i - 1).symptom) {
                throw new IllegalArgumentException("symptom '"
                        + observations.get(i).finding.symptomId() + "' is given twice; give one finding per symptom");
            }
        }
        return observations;
    }

    private Outset outset(RankingQuery query) {
        ScopeView scope = view(query);
        ScopeView tried = query.tried().isEmpty() ? scope : scope.after(failed(query));
        ScopeView worded = worded(tried, query);
        return new Outset(scope, tried, worded, coded(worded, query));
    }

    private ScopeView worded(ScopeView view, RankingQuery query) {
        return query.words().isBlank()
                ? view
                : view.after(catalogue
                        .likeness()
                        .factors(query.words(), query.findings().size(), view.prior));
    }

    private ScopeView coded(ScopeView view, RankingQuery query) {
        if (query.codes().isEmpty()) {
            return view;
        }
        ToDoubleFunction<String> together = CodeRecord.together(query.codes());
        double[] nats = new double[catalogue.causes()];
        double most = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < nats.length; c++) {
            String id =
                    c == catalogue.unlisted() ? UNLISTED : catalogue.cause(c).id();
            nats[c] = together.applyAsDouble(id);
            most = Math.max(most, nats[c]);
        }
        for (int c = 0; c < nats.length; c++) {
            nats[c] = Math.exp(nats[c] - most);
        }
        return view.after(nats);
    }

    private double[] failed(RankingQuery query) {
        double[] failed = new double[catalogue.causes()];
        Arrays.fill(failed, 1);
        query.tried().forEach((id, p) -> {
            int c = catalogue.causeNumber(id);
            if (c >= 0) {
                failed[c] = p;
            }
        });
        return failed;
    }

    private ScopeView view(RankingQuery query) {
        return view(new Seen(query.scope(), query.kinds()));
    }

    private ScopeView view(DeviceScope scope) {
        return view(new Seen(scope, List.of()));
    }

    private ScopeView view(Seen from) {
        ScopeView view = views.get(from);
        if (view == null) {
            view = from.kinds().isEmpty()
                    ? new ScopeView(catalogue, counts, dependence, from.scope())
                    : view(from.scope()).lacking(catalogue.held(from.kinds()));
            if (views.size() < MAX_VIEWS) {
                views.put(from, view);
            }
        }
        return view;
    }
}
