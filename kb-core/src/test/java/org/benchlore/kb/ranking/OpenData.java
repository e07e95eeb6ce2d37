package org.benchlore.kb.ranking;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.Finding;

/** A CSV of cases, symptoms then the cause, {@code ?} for "not looked at", as knowledge without opinions and lessons. */
final class OpenData {
    /** Nothing unlisted, no silence; a background that the cases make, worth one case until they do. */
    static final RankingSettings SETTINGS = new RankingSettings(1e-9, 0, 0, 1, 8, 0, 0, 0, 1, 0);

    final Knowledge knowledge;
    final List<Lesson> lessons;

    private OpenData(Knowledge knowledge, List<Lesson> lessons) {
        this.knowledge = knowledge;
        this.lessons = lessons;
    }

    static OpenData read(Path csv) throws IOException {
        List<String[]> rows = Files.readAllLines(csv).stream()
                .filter(l -> !l.isBlank())
                .map(l -> l.split(",", -1))
                .toList();
        int columns = rows.get(0).length;
        List<Map<String, Integer>> ids = new ArrayList<>();
        for (int k = 0; k < columns; k++) {
            ids.add(new LinkedHashMap<>());
        }
        List<Lesson> lessons = new ArrayList<>();
        for (String[] cells : rows.subList(1, rows.size())) {
            List<Finding> findings = new ArrayList<>();
            for (int s = 0; s < columns - 1; s++) {
                if (!cells[s].equals("?")) {
                    findings.add(Finding.of("f" + s, "s" + id(ids.get(s), cells[s])));
                }
            }
            String cause = "c" + id(ids.get(columns - 1), cells[columns - 1]);
            lessons.add(Lesson.of(DeviceScope.ANY, cause, findings));
        }
        double[][] backgrounds = new double[columns - 1][];
        for (int s = 0; s < columns - 1; s++) {
            int states = Math.max(2, ids.get(s).size());
            backgrounds[s] = new double[states];
            Arrays.fill(backgrounds[s], 1.0 / states);
        }
        int causes = ids.get(columns - 1).size();
        double[] perThousand = new double[causes];
        Arrays.fill(perThousand, 1000.0 / causes);
        Knowledge knowledge =
                Worlds.knowledge(backgrounds, perThousand, new double[causes][columns - 1][], "if-tested");
        return new OpenData(knowledge, lessons);
    }

    private static int id(Map<String, Integer> ids, String name) {
        return ids.computeIfAbsent(name, n -> ids.size());
    }

    static int[] folds(Path file) throws IOException {
        return Files.readAllLines(file).stream()
                .filter(l -> !l.isBlank())
                .mapToInt(l -> Integer.parseInt(l.trim()))
                .toArray();
    }

    /** The same cases with each finding gone with the given chance. */
    OpenData thinned(double chance, long seed) {
        Random random = new Random(seed);
        List<Lesson> thin = lessons.stream()
                .map(l -> new Lesson(
                        l.scope(),
                        l.weights(),
                        l.findings().stream()
                                .filter(f -> random.nextDouble() >= chance)
                                .toList(),
                        l.concluded()))
                .toList();
        return new OpenData(knowledge, thin);
    }

    /** The model learnt from all cases outside a fold. */
    RankingModel trained(int[] fold, int without) {
        List<Lesson> training = new ArrayList<>();
        for (int r = 0; r < fold.length; r++) {
            if (fold[r] != without) {
                training.add(lessons.get(r));
            }
        }
        return RankingModel.of(knowledge, SETTINGS).learn(training).fit(training);
    }

    /** Number of a lesson's cause in the order of {@link RankingModel#probabilities}. */
    int truth(Lesson lesson) {
        List<String> ids = knowledge.causes().stream().map(c -> c.id()).toList();
        return ids.indexOf(lesson.weights().firstKey());
    }
}
