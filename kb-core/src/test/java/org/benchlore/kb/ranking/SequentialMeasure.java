package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;

/**
 * Sequential diagnosis: start with the first two symptoms, ask for one more at a time, by expected information, until the
 * first cause has 0.9. A symptom that was not looked at counts as asked. How often each is answered for each cause is
 * learnt from the training cases, and both an answer and none are evidence.
 */
final class SequentialMeasure {
    private static final double SURE = 0.9;
    private static final int FOLDS = 10;

    private final OpenData data;
    private final RankingModel model;
    /** [symptom][cause] share of training cases in which it was looked at. */
    private final double[][] answered;

    private SequentialMeasure(OpenData data, RankingModel model, List<Lesson> training) {
        this.data = data;
        this.model = model;
        int symptoms = data.knowledge.symptoms().size();
        int causes = data.knowledge.causes().size() + 1;
        this.answered = new double[symptoms][causes];
        double[] cases = new double[causes];
        for (Lesson lesson : training) {
            int c = data.truth(lesson);
            cases[c]++;
            for (Finding f : lesson.findings()) {
                answered[symptom(f)][c]++;
            }
        }
        for (double[] of : answered) {
            for (int c = 0; c < causes; c++) {
                of[c] = (of[c] + 0.5) / (cases[c] + 1);
            }
        }
    }

    /** Mean number asked, and accuracy. */
    static double[] measure(OpenData data, int[] fold) {
        double asked = 0;
        double right = 0;
        for (int f = 0; f < FOLDS; f++) {
            List<Lesson> training = new ArrayList<>();
            for (int r = 0; r < fold.length; r++) {
                if (fold[r] != f) {
                    training.add(data.lessons.get(r));
                }
            }
            SequentialMeasure one = new SequentialMeasure(data, data.trained(fold, f), training);
            for (int r = 0; r < fold.length; r++) {
                if (fold[r] == f) {
                    int[] result = one.diagnose(data.lessons.get(r));
                    asked += result[0];
                    right += result[1];
                }
            }
        }
        return new double[] {asked / fold.length, right / fold.length};
    }

    private int[] diagnose(Lesson lesson) {
        Map<Integer, Finding> truth = new TreeMap<>();
        lesson.findings().forEach(f -> truth.put(symptom(f), f));
        List<Finding> known = new ArrayList<>();
        boolean[] gone = new boolean[answered.length];
        int asked = 0;
        int next = 0;
        double[] p = new double[0];
        while (next >= 0) {
            gone[next] = true;
            asked++;
            if (truth.containsKey(next)) {
                known.add(truth.get(next));
            }
            p = posterior(known, gone, -1);
            boolean sure = p[first(p)] >= SURE;
            next = asked < 2 ? 1 : sure ? -1 : best(known, gone, p);
        }
        return new int[] {asked, first(p) == data.truth(lesson) ? 1 : 0};
    }

    private int best(List<Finding> known, boolean[] gone, double[] p) {
        int best = -1;
        double most = Double.NEGATIVE_INFINITY;
        for (int s = 0; s < gone.length; s++) {
            if (gone[s]) {
                continue;
            }
            StateTable states = model.states("f" + s, DeviceScope.ANY);
            double answer = 0;
            for (int c = 0; c < p.length; c++) {
                answer += p[c] * answered[s][c];
            }
            double left = 0;
            for (int x = 0; x < states.states(); x++) {
                double chance = 0;
                for (int c = 0; c < p.length; c++) {
                    chance += p[c] * states.given(x, c);
                }
                List<Finding> more = new ArrayList<>(known);
                more.add(Finding.of("f" + s, "s" + x));
                left += answer * chance * entropy(posterior(more, gone, s));
            }
            gone[s] = true;
            left += (1 - answer) * entropy(posterior(known, gone, -1));
            gone[s] = false;
            double worth = entropy(p) - left;
            if (worth > most) {
                most = worth;
                best = s;
            }
        }
        return best;
    }

    /** The model's posterior times the chance that what was asked is answered, or not. */
    private double[] posterior(List<Finding> known, boolean[] gone, int more) {
        double[] p = model.probabilities(RankingQuery.of(known));
        boolean[] told = new boolean[gone.length];
        known.forEach(f -> told[symptom(f)] = true);
        double sum = 0;
        for (int c = 0; c < p.length; c++) {
            for (int s = 0; s < gone.length; s++) {
                if (gone[s] || s == more) {
                    p[c] *= told[s] ? answered[s][c] : 1 - answered[s][c];
                }
            }
            sum += p[c];
        }
        for (int c = 0; c < p.length; c++) {
            p[c] /= sum;
        }
        return p;
    }

    private static double entropy(double[] p) {
        double nats = 0;
        for (double x : p) {
            nats -= x > 0 ? x * Math.log(x) : 0;
        }
        return nats;
    }

    private static int symptom(Finding f) {
        return Integer.parseInt(f.symptomId().substring(1));
    }

    private static int first(double[] p) {
        int first = 0;
        for (int c = 1; c < p.length; c++) {
            first = p[c] > p[first] ? c : first;
        }
        return first;
    }
}
