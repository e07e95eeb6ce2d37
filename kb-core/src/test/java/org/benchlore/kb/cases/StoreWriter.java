package org.benchlore.kb.cases;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A process of its own that records events and says on standard output which were acknowledged. */
final class StoreWriter {
    private StoreWriter() {}

    /** Takes home, name of this writer, number of batches, seed. */
    public static void main(String[] args) {
        int batches = Integer.parseInt(args[2]);
        Random random = new Random(Long.parseLong(args[3]));
        PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
        try (CaseStore store = CaseStore.open(Path.of(args[0]))) {
            for (int i = 0; i < batches; i++) {
                List<CaseEvent> batch = batch(args[1], i, random.nextInt(6) + 1);
                store.append(batch);
                out.println(i + " " + batch.size());
            }
        }
    }

    static List<CaseEvent> batch(String writer, int number, int size) {
        List<CaseEvent> batch = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            batch.add(
                    CaseStoreTest.noted(writer + ":" + number + ":" + i, writer, number % 50, "rail low ".repeat(40)));
        }
        return batch;
    }
}
