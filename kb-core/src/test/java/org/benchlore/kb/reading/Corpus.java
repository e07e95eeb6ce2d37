package org.benchlore.kb.reading;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.jspecify.annotations.Nullable;

/** Sentences with the findings a careful person reads from them, and how near the reader comes. */
final class Corpus {
    /** One expected finding; {@code mark} is '=' for certain, '~' for doubtful, 'p' for past. */
    record Expected(char mark, String symptom, String state, String span) {}

    record Sentence(String text, List<Expected> expected) {}

    /** Counts of findings (symptom and state), and of those right in span and mark too. */
    record Score(int right, int found, int wanted, int rightSpan, int rightMark, List<String> misses) {
        double precision() {
            return found == 0 ? 0 : (double) right / found;
        }

        double recall() {
            return wanted == 0 ? 0 : (double) right / wanted;
        }

        double f1() {
            return 2 * precision() * recall() / Math.max(1e-12, precision() + recall());
        }
    }

    private Corpus() {}

    static Knowledge knowledge() {
        return PackReader.read(List.of(new PackSource("reading-pack.yaml", resource("reading-pack.yaml"))));
    }

    static List<Sentence> sentences(String name) {
        List<Sentence> sentences = new ArrayList<>();
        for (String line : resource(name).lines().toList()) {
            if (line.startsWith("> ")) {
                sentences.add(new Sentence(line.substring(2), new ArrayList<>()));
            } else if (!line.isBlank() && !line.startsWith("#")) {
                String[] halves = line.substring(2).split(" \\| ", 2);
                String[] said = halves[0].trim().split(" ", 2);
                sentences
                        .get(sentences.size() - 1)
                        .expected()
                        .add(new Expected(line.charAt(0), said[0], said[1].trim(), halves[1]));
            }
        }
        return sentences;
    }

    static Score score(Reader reader, List<Sentence> sentences) {
        int right = 0;
        int found = 0;
        int wanted = 0;
        int rightSpan = 0;
        int rightMark = 0;
        List<String> misses = new ArrayList<>();
        for (Sentence sentence : sentences) {
            Reading reading = reader.read(sentence.text(), DeviceScope.ANY);
            List<Reading.Understood> left = new ArrayList<>(reading.understood());
            found += left.size();
            wanted += sentence.expected().size();
            for (Expected expected : sentence.expected()) {
                Reading.Understood hit = take(left, expected);
                if (hit == null) {
                    misses.add(sentence.text() + "  MISSING " + expected);
                    continue;
                }
                right++;
                boolean span = hit.span().text().equals(expected.span());
                boolean mark = mark(hit) == expected.mark();
                rightSpan += span ? 1 : 0;
                rightMark += mark ? 1 : 0;
                if (!span || !mark) {
                    misses.add(sentence.text() + "  SPAN OR MARK " + expected + " read " + mark(hit) + " "
                            + hit.span().text());
                }
            }
            for (Reading.Understood extra : left) {
                misses.add(sentence.text() + "  EXTRA " + extra.finding() + " ["
                        + extra.span().text() + "]");
            }
        }
        return new Score(right, found, wanted, rightSpan, rightMark, misses);
    }

    private static Reading.@Nullable Understood take(List<Reading.Understood> left, Expected expected) {
        for (int pass = 0; pass < 2; pass++) {
            for (Reading.Understood u : left) {
                boolean same = u.finding().symptomId().equals(expected.symptom())
                        && u.finding().state().equals(expected.state());
                if (same && (pass == 1 || u.span().text().equals(expected.span()))) {
                    left.remove(u);
                    return u;
                }
            }
        }
        return null;
    }

    private static char mark(Reading.Understood u) {
        return u.past() ? 'p' : u.finding().certain() ? '=' : '~';
    }

    static String resource(String name) {
        try (InputStream in = Objects.requireNonNull(Corpus.class.getResourceAsStream(name), name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String report(String name, Score score) {
        return String.format(
                        Locale.ROOT,
                        "%s: precision %.3f recall %.3f F1 %.3f; span %.3f mark %.3f of %d right%n",
                        name,
                        score.precision(),
                        score.recall(),
                        score.f1(),
                        (double) score.rightSpan() / Math.max(1, score.right()),
                        (double) score.rightMark() / Math.max(1, score.right()),
                        score.right())
                + score.misses().stream().collect(Collectors.joining("\n"));
    }
}
