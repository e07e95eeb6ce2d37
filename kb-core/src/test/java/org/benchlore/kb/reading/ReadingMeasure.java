package org.benchlore.kb.reading;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;

/**
 * How well the reader reads with the packs that ship and those of the demonstration: {@code kb-core/measure reading [--json]
 * [--gold FILE] [--verbose] [--data DIR]}. What is counted how is described in {@code kb-core/docs/reading.md}.
 */
final class ReadingMeasure {
    /** The split that nobody tunes on; its misses are never shown. */
    private static final String UNTOUCHED = "test";

    private static final String DATA = "../kb-data/src/main/resources/org/benchlore/kb/data";

    private ReadingMeasure() {}

    public static void main(String[] args) throws IOException {
        List<String> given = List.of(args);
        int gold = given.indexOf("--gold");
        int data = given.indexOf("--data");
        Knowledge knowledge = knowledge(Path.of(data < 0 ? DATA : given.get(data + 1)));
        if (gold >= 0) {
            Path file = Path.of(given.get(gold + 1));
            String name = file.getFileName().toString();
            report(given, split(name), GoldScore.of(knowledge, GoldFile.parse(name, Files.readString(file))));
            return;
        }
        for (String split : List.of("dev", "more", UNTOUCHED)) {
            report(given, split, GoldScore.of(knowledge, GoldFile.resource("gold-" + split + ".txt")));
        }
    }

    /** The shipped packs and the invented device families. */
    static Knowledge knowledge() {
        return knowledge(Path.of(DATA));
    }

    private static Knowledge knowledge(Path data) {
        List<PackSource> packs = new ArrayList<>(PackSource.readFolder(data.resolve("packs")));
        packs.addAll(PackSource.readFolder(data.resolve("demo")));
        return PackReader.read(packs);
    }

    private static String split(String file) {
        return file.replaceFirst("^gold-", "").replaceFirst("\\.txt$", "");
    }

    private static void report(List<String> given, String split, GoldScore score) {
        PrintStream out = System.out;
        boolean json = given.contains("--json");
        score.kinds.forEach((kind, tally) -> line(out, json, split, kind.label(), tally));
        line(out, json, split, "all", score.all());
        out.printf(
                Locale.ROOT,
                json
                        ? "{\"split\":\"%s\",\"exactSpans\":%.4f,\"rightMarks\":%.4f,\"rightSources\":%.4f,"
                                + "\"invented\":%d,\"emptyTexts\":%d}%n"
                        : "%-5s spans exact %.3f, marks right %.3f, sources right %.3f; "
                                + "%d invented in %d texts that hold none%n",
                split,
                score.spans.value(),
                score.marks.value(),
                score.sources.value(),
                score.invented,
                score.emptyTexts);
        if (given.contains("--verbose") && !split.equals(UNTOUCHED)) {
            score.misses.forEach(out::println);
        }
    }

    private static void line(PrintStream out, boolean json, String split, String kind, Tally tally) {
        out.printf(
                Locale.ROOT,
                json
                        ? "{\"kind\":\"%2$s\",\"split\":\"%1$s\",\"precision\":%3$.4f,\"recall\":%4$.4f,\"f1\":%5$.4f,"
                                + "\"right\":%6$d,\"found\":%7$d,\"wanted\":%8$d}%n"
                        : "%-5s %-10s precision %.3f  recall %.3f  F1 %.3f  (%d right, %d found, %d wanted)%n",
                split,
                kind,
                tally.precision(),
                tally.recall(),
                tally.f1(),
                tally.right,
                tally.found,
                tally.wanted);
    }
}
