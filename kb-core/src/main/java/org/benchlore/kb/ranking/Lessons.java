package org.benchlore.kb.ranking;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Remedy;
import org.jspecify.annotations.Nullable;

/**
 * What ended cases teach: a pure function of the packs and the case. Immutable and thread-safe.
 *
 * <p>A case teaches its concluded cause with a weight for how sure that is: proven by the cure over days, by a test, likely,
 * or only suspected. Where the fix failed or nothing was concluded, the packs' opinion, with the failed cause held against
 * it, shares out a small weight, so that a failed fix speaks for the others; where a fix worked and nothing was concluded,
 * it shares the same weight out among the causes that the fix is for. Imported cases weigh less than one's own.
 */
public final class Lessons {
    private static final double PROVEN_BY_CURE = 1.0;
    private static final double FIXED = 0.9;
    private static final double PROVEN_BY_TEST = 0.9;
    private static final double LIKELY = 0.6;
    private static final double SUSPECTED = 0.3;
    /** It worked for a while: the cause was half right, or the fix half good. */
    private static final double CAME_BACK = 0.4;

    private static final double FAILED = 0.3;
    /** A fix that worked without a word on the cause, shared out among the causes that it is for. */
    private static final double CURED = 0.3;
    /** Other benches see other units and write other words. */
    private static final double IMPORTED = 0.7;
    /** For a fix that the packs do not name for the cause. */
    private static final double UNKNOWN_FIX_WORKS = 0.5;
    /** Shares below this are not worth a count. */
    private static final double LEAST_SHARE = 0.02;

    private final Knowledge knowledge;
    private final RankingModel packs;

    /**
     * Lessons in the light of the packs.
     *
     * @param packs the packs' opinion alone
     */
    public Lessons(Knowledge knowledge, RankingModel packs) {
        if (packs.cases() != 0) {
            throw new IllegalArgumentException(
                    "lessons need the packs' opinion alone; this model has learnt " + packs.cases() + " cases");
        }
        this.knowledge = knowledge;
        this.packs = packs;
    }

    /** What a case teaches; empty while it is open, when withdrawn, or when nothing can be learnt from it. */
    public Optional<Lesson> of(CaseHistory history) {
        Outcome outcome = history.outcome();
        if (history.withdrawn() || outcome == null) {
            return Optional.empty();
        }
        double trust = history.origin().equals(CaseHistory.OWN) ? 1 : IMPORTED;
        SortedMap<String, Long> weights = new TreeMap<>();
        String causeId = history.causeId();
        boolean concluded = false;
        if (causeId == null && outcome.cured()) {
            cured(history).forEach((id, share) -> put(weights, id, trust * CURED * share));
        } else if (outcome == Outcome.NOT_FIXED || (causeId == null && outcome != Outcome.NO_FAULT_FOUND)) {
            failed(history).forEach((id, share) -> put(weights, id, trust * FAILED * share));
        } else if (causeId != null) {
            put(weights, causeId, trust * sureness(outcome, history.certainty()));
            concluded = true;
        }
        return weights.isEmpty()
                ? Optional.empty()
                : Optional.of(new Lesson(history.scope(), weights, history.findingsOfFault(), concluded));
    }

    private static void put(SortedMap<String, Long> weights, String id, double weight) {
        long millionths = Math.round(weight * Lesson.WHOLE);
        if (millionths > 0) {
            weights.put(id, millionths);
        }
    }

    private static double sureness(Outcome outcome, @Nullable Certainty certainty) {
        return switch (outcome) {
            case FIXED_AND_PROVEN -> PROVEN_BY_CURE;
            case FIXED -> FIXED;
            case CAME_BACK -> CAME_BACK;
            case NOT_FIXED, RECOVERED_BY_ITSELF, NO_FAULT_FOUND, MADE_WORSE, NOT_WORTH_IT, GIVEN_UP ->
                certainty == null
                        ? SUSPECTED
                        : switch (certainty) {
                            case PROVEN -> PROVEN_BY_TEST;
                            case LIKELY -> LIKELY;
                            case SUSPECTED -> SUSPECTED;
                        };
        };
    }

    /** The packs' posterior once each failed fix is held against the cause it was meant for. */
    private Map<String, Double> failed(CaseHistory history) {
        Map<String, Double> shares = shares(history);
        boolean tried = history.causeId() != null;
        if (history.fixes().isEmpty()) {
            shares.computeIfPresent(String.valueOf(history.causeId()), (id, p) -> p * (1 - UNKNOWN_FIX_WORKS));
        }
        for (CaseEvent.FixApplied fix : history.failedFixes()) {
            tried = true;
            shares.computeIfPresent(fix.causeId(), (id, p) -> p * (1 - works(fix)));
        }
        return tried ? normalised(shares) : Map.of();
    }

    /** The packs' posterior among the causes that the cure is for, by the chance that it works; empty without a known cure. */
    private Map<String, Double> cured(CaseHistory history) {
        Optional<CaseEvent.FixApplied> cure = history.cure();
        if (cure.isEmpty()) {
            return Map.of();
        }
        String fixId = cure.get().fixId();
        Map<String, Double> shares = new HashMap<>();
        shares(history)
                .forEach((id, p) -> knowledge.cause(id).map(Cause::fixedBy).stream()
                        .flatMap(List::stream)
                        .filter(r -> r.fixId().equals(fixId))
                        .forEach(r -> shares.put(id, p * r.works())));
        return normalised(shares);
    }

    /** The packs' posterior, the unlisted cause included. */
    private Map<String, Double> shares(CaseHistory history) {
        double[] probabilities = packs.probabilities(new RankingQuery(
                history.findingsOfFault().stream().filter(packs::knows).toList(), history.scope(), false));
        Map<String, Double> shares = new HashMap<>();
        shares.put(RankingModel.UNLISTED, probabilities[packs.number(RankingModel.UNLISTED)]);
        knowledge.causes().forEach(c -> shares.put(c.id(), probabilities[packs.number(c.id())]));
        return shares;
    }

    private static Map<String, Double> normalised(Map<String, Double> shares) {
        double sum = shares.values().stream().mapToDouble(Double::doubleValue).sum();
        shares.replaceAll((id, p) -> p / sum);
        shares.values().removeIf(p -> p < LEAST_SHARE);
        return shares;
    }

    private double works(CaseEvent.FixApplied applied) {
        return knowledge.cause(applied.causeId()).map(Cause::fixedBy).stream()
                .flatMap(List::stream)
                .filter(r -> r.fixId().equals(applied.fixId()))
                .mapToDouble(Remedy::works)
                .findFirst()
                .orElse(UNKNOWN_FIX_WORKS);
    }
}
