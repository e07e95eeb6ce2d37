package org.benchlore.kb.ranking;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Finding;

/** Small made-up worlds for tests of the ranking. */
final class Worlds {
    /** Next to no unlisted cause and no silence, so that published worked examples come out as printed. */
    static final RankingSettings CLOSED = new RankingSettings(1e-15, 0, 0, 1, 8, 0, 0, 0, 1, 0);

    private Worlds() {}

    /**
     * A pack of causes over symptoms with the states s0 (normal), s1, ...
     *
     * @param backgrounds [symptom][state]
     * @param perThousand [cause]
     * @param likelihoods [cause][symptom][state]; null where the cause is silent
     */
    static Knowledge knowledge(
            double[][] backgrounds, double[] perThousand, double[][][] likelihoods, String reported) {
        StringBuilder yaml = new StringBuilder("pack: world\nversion: 1.0.0\nlicence: Apache-2.0\ntitle: World\n"
                + "about: A made-up world.\nscope: any\nfrom: memory\nsymptoms:\n");
        for (int s = 0; s < backgrounds.length; s++) {
            yaml.append("  - id: f")
                    .append(s)
                    .append("\n    name: f")
                    .append(s)
                    .append("\n    about: Made up.\n    reported: ")
                    .append(reported)
                    .append("\n    called: [thing ")
                    .append(s)
                    .append("]\n    states:\n");
            for (int x = 0; x < backgrounds[s].length; x++) {
                yaml.append("      - {id: s")
                        .append(x)
                        .append(", name: s")
                        .append(x)
                        .append(x == 0 ? ", normal: true" : "")
                        .append(", usual: ")
                        .append(number(backgrounds[s][x]))
                        .append("}\n");
            }
        }
        yaml.append("causes:\n");
        for (int c = 0; c < perThousand.length; c++) {
            yaml.append("  - id: c")
                    .append(c)
                    .append("\n    name: c")
                    .append(c)
                    .append("\n    kind: fault\n    about: Made up.\n")
                    .append("    per-thousand: ")
                    .append(number(perThousand[c]))
                    .append("\n    shows:")
                    .append(Arrays.stream(likelihoods[c]).allMatch(Objects::isNull) ? " []\n" : "\n");
            for (int s = 0; s < backgrounds.length; s++) {
                if (likelihoods[c][s] != null) {
                    yaml.append("      - {symptom: f").append(s).append(", states: {");
                    for (int x = 0; x < backgrounds[s].length - 1; x++) {
                        yaml.append(x == 0 ? "" : ", ")
                                .append("s")
                                .append(x)
                                .append(": ")
                                .append(number(likelihoods[c][s][x]));
                    }
                    yaml.append("}}\n");
                }
            }
        }
        return PackReader.read(List.of(new PackSource("world.yaml", yaml.toString())));
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.17f", value);
    }

    /** A random world with every link present. */
    static Knowledge random(long seed, int causes, int symptoms) {
        Random random = new Random(seed);
        double[][] backgrounds = new double[symptoms][];
        for (int s = 0; s < symptoms; s++) {
            backgrounds[s] = shares(random, 2 + random.nextInt(3));
        }
        double[] perThousand = new double[causes];
        double[][][] likelihoods = new double[causes][symptoms][];
        for (int c = 0; c < causes; c++) {
            perThousand[c] = 1 + 900.0 / causes * random.nextDouble();
            for (int s = 0; s < symptoms; s++) {
                likelihoods[c][s] = random.nextInt(4) == 0 ? null : shares(random, backgrounds[s].length);
            }
        }
        return knowledge(backgrounds, perThousand, likelihoods, "if-tested");
    }

    static double[] shares(Random random, int n) {
        double[] p = new double[n];
        double sum = 0;
        for (int x = 0; x < n; x++) {
            p[x] = 0.05 + random.nextDouble();
            sum += p[x];
        }
        for (int x = 0; x < n; x++) {
            p[x] /= sum;
        }
        return p;
    }

    /** One random finding for some of the symptoms, certain or soft. */
    static List<Finding> findings(Random random, Knowledge knowledge) {
        List<Finding> findings = new ArrayList<>();
        knowledge.symptoms().forEach(symptom -> {
            int n = symptom.states().size();
            if (random.nextBoolean()) {
                findings.add(Finding.of(symptom.id(), "s" + random.nextInt(n)));
            } else if (random.nextInt(4) == 0) {
                findings.add(Finding.soft(symptom.id(), Map.of("s0", 1.0, "s1", 0.2 + random.nextDouble())));
            }
        });
        return findings;
    }

    static List<Lesson> lessons(Random random, Knowledge knowledge, int n) {
        List<Lesson> lessons = new ArrayList<>();
        List<String> causes = knowledge.causes().stream().map(c -> c.id()).toList();
        List<DeviceScope> scopes = List.of(
                DeviceScope.ANY,
                DeviceScope.parse("recorder"),
                DeviceScope.parse("recorder/corvane"),
                DeviceScope.parse("recorder/corvane/corvane-300"),
                DeviceScope.parse("player"));
        for (int i = 0; i < n; i++) {
            String cause = random.nextInt(12) == 0 ? RankingModel.UNLISTED : causes.get(random.nextInt(causes.size()));
            TreeMap<String, Long> weights = new TreeMap<>();
            weights.put(cause, 1 + (long) random.nextInt((int) Lesson.WHOLE));
            lessons.add(
                    new Lesson(scopes.get(random.nextInt(scopes.size())), weights, findings(random, knowledge), true));
        }
        return lessons;
    }
}
