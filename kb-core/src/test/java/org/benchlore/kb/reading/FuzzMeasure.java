package org.benchlore.kb.reading;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.importing.BadImportException;
import org.benchlore.kb.importing.ImportKind;
import org.benchlore.kb.importing.ImportSettings;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.report.Harmless;
import org.benchlore.kb.report.Sheets;

/**
 * Texts that nobody would write, through all that takes text, with the packs that ship: {@code kb-core/measure fuzz [--inputs
 * N] [--seed S]}. Every input is read; one in {@value #PER_IMPORT} is reviewed as each kind of import, one in
 * {@value #PER_SHEET} becomes a case with all its sheets. Ends with the first thing that does not hold, and the text.
 */
final class FuzzMeasure {
    private static final int PER_IMPORT = 20;
    private static final int PER_SHEET = 1000;
    private static final int LONG = 20_000;
    private static final int PER_LONG = 1000;

    /** A text slower than this for each of its characters is timed again, since anything may have come between. */
    private static final double SLOW_NANOS = 20_000;

    private final KnowledgeBase kb;
    private final Knowledge knowledge;
    private double slowest;
    private int slowestLength;
    private long findings;
    private long drafts;
    private long refused;
    private long sheets;

    private FuzzMeasure(KnowledgeBase kb) {
        this.kb = kb;
        this.knowledge = kb.knowledge();
    }

    public static void main(String[] args) throws Exception {
        List<String> given = List.of(args);
        int inputs =
                given.indexOf("--inputs") < 0 ? 1_000_000 : Integer.parseInt(given.get(given.indexOf("--inputs") + 1));
        long seed = given.indexOf("--seed") < 0 ? 1 : Long.parseLong(given.get(given.indexOf("--seed") + 1));
        Path data = Path.of("../kb-data/src/main/resources/org/benchlore/kb/data");
        List<PackSource> packs = new ArrayList<>(PackSource.readFolder(data.resolve("packs")));
        packs.addAll(PackSource.readFolder(data.resolve("demo")));
        Path home = Files.createTempDirectory("fuzz");
        try (KnowledgeBase kb = KnowledgeBase.builder().packs(packs).home(home).open()) {
            new FuzzMeasure(kb).run(inputs, seed);
        }
    }

    private void run(int inputs, long seed) throws Exception {
        Gibberish gibberish = new Gibberish(seed, phrases());
        for (int i = 0; i < inputs; i++) {
            String text = i % PER_LONG == 0 ? gibberish.monotonous(LONG) : gibberish.next();
            try {
                read(text);
                if (i % PER_IMPORT == 0) {
                    review(text);
                }
                if (i % PER_SHEET == PER_SHEET - 1) {
                    sheets(text);
                }
            } catch (RuntimeException | AssertionError e) {
                System.out.println("input " + i + " of seed " + seed + ": " + text);
                throw e;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%d inputs, no exception, nothing broken: %d findings, %d drafts of imports, %d imports refused, %d sheets%n"
                        + "slowest reading %.1f µs for each character (of %d)%n",
                inputs,
                findings,
                drafts,
                refused,
                sheets,
                slowest / 1e3,
                slowestLength);
    }

    private List<String> phrases() {
        List<String> phrases = new ArrayList<>();
        for (Symptom symptom : knowledge.symptoms()) {
            phrases.addAll(symptom.called());
            for (State state : symptom.states()) {
                phrases.addAll(state.phrases());
                phrases.addAll(state.words());
            }
        }
        return phrases;
    }

    private void read(String text) {
        Reading reading = kb.read(text, DeviceScope.ANY);
        Whole.check(knowledge, reading);
        findings += reading.understood().size();
        double nanos = Double.MAX_VALUE;
        int length = Math.max(text.length(), 32);
        for (int n = 0; n < 3 && nanos > SLOW_NANOS; n++) {
            long start = System.nanoTime();
            kb.read(text, DeviceScope.ANY);
            nanos = Math.min(nanos, (System.nanoTime() - start) / (double) length);
        }
        if (nanos > slowest) {
            slowest = nanos;
            slowestLength = text.length();
        }
    }

    private void review(String text) throws IOException {
        for (ImportKind kind : ImportKind.values()) {
            try {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                drafts += kb.reviewImport(new ByteArrayInputStream(bytes), "fuzz", ImportSettings.of(kind))
                        .drafts()
                        .size();
            } catch (BadImportException e) {
                refused++;
            }
        }
    }

    private void sheets(String text) throws Exception {
        String id = kb.newCaseId();
        Reading reading = kb.read(text);
        kb.record(
                new CaseEvent.Opened(kb.head(id), DeviceScope.ANY, text, "", CaseHistory.OWN, false),
                new CaseEvent.Noted(kb.head(id), text, Reading.Source.SEEN, reading.findings()));
        for (Sheets.Kind kind : Sheets.Kind.values()) {
            Harmless.html(kb.sheet(id, kind, Sheets.Format.HTML).orElseThrow());
            Harmless.markdown(kb.sheet(id, kind, Sheets.Format.MARKDOWN).orElseThrow());
            sheets += 2;
        }
    }
}
