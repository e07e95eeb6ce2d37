package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.numbers.gamma.LogGamma;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.ranking.Evaluation.Review;

/**
 * Finds the numbers in the packs that the cases speak against, by Bayes factors (Good 1950; Kass and Raftery, JASA 90,
 * 1995, from memory). A link: the counts under the pack's opinion at its worth against the same counts under no opinion at
 * all (every share equally likely). A base frequency: a Poisson count with the expected mean E against one whose mean is
 * off by a factor that may be anything (exponential with mean 1), ln BF = ln n! + E - (n + 1) ln(1 + E).
 */
final class Reviews {
    /** "Strong" on the usual scale: ten to one. */
    private static final double LEAST_DECIBANS = 10;

    /** One case is an anecdote. */
    private static final double LEAST_CASES = 2;

    private static final int MOST = 20;
    private static final double DECIBANS = 10 / Math.log(10);

    private final Catalogue catalogue;
    private final ScopeView view;
    private final Counts[] counts;

    Reviews(Catalogue catalogue, ScopeView view, Counts[] counts) {
        this.catalogue = catalogue;
        this.view = view;
        this.counts = counts;
    }

    List<Review> worst() {
        List<Review> all = new ArrayList<>();
        double total = 0;
        for (Counts one : counts) {
            total += one.weight(DeviceScope.ANY);
        }
        for (int c = 0; total > 0 && c < catalogue.unlisted(); c++) {
            addFrequency(all, c, total);
            for (int s = 0; s < catalogue.symptoms(); s++) {
                double[] n = view.seenOf(c, s);
                if (n.length > 0) {
                    addLink(all, c, s, n);
                }
            }
        }
        all.removeIf(r -> r.decibans() < LEAST_DECIBANS);
        all.sort(Comparator.comparingDouble(Review::decibans)
                .reversed()
                .thenComparing(Review::causeId)
                .thenComparing(Review::symptomId));
        return all.subList(0, Math.min(MOST, all.size()));
    }

    private void addFrequency(List<Review> all, int c, double total) {
        double n = counts[c].weight(DeviceScope.ANY);
        double expected = total * catalogue.share(c);
        double log = LogGamma.value(n + 1) + expected - (n + 1) * Math.log1p(expected);
        all.add(new Review(catalogue.cause(c).id(), "", "", true, catalogue.share(c), n / total, n, DECIBANS * log));
    }

    private void addLink(List<Review> all, int c, int s, double[] n) {
        double[] opinion = catalogue.opinion(c, s);
        double worth = catalogue.worth(c, s);
        double total = 0;
        for (double x : n) {
            total += x;
        }
        if (total < LEAST_CASES) {
            return;
        }
        double log = LogGamma.value(n.length) - LogGamma.value(n.length + total);
        log -= LogGamma.value(worth) - LogGamma.value(worth + total);
        int furthest = 0;
        double most = -1;
        for (int x = 0; x < n.length; x++) {
            double a = worth * opinion[x];
            log += LogGamma.value(1 + n[x]) - LogGamma.value(a + n[x]) + LogGamma.value(a);
            double off = n[x] / total - opinion[x];
            if (off > most) {
                most = off;
                furthest = x;
            }
        }
        all.add(new Review(
                catalogue.cause(c).id(),
                catalogue.symptom(s).id(),
                catalogue.symptom(s).states().get(furthest).id(),
                catalogue.speaks(c, s),
                opinion[furthest],
                n[furthest] / total,
                total,
                DECIBANS * log));
    }
}
