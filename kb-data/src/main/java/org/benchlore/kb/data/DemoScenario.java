package org.benchlore.kb.data;

import java.util.List;
import org.benchlore.kb.knowledge.PackSource;

/**
 * An invented workshop: device packs of makers that do not exist, and the case histories of units that never were. For
 * trying things out and for tests.
 */
public final class DemoScenario {
    /** In reading order; a test holds this against the folder. */
    static final List<String> NAMES = List.of("corvane", "dulmar", "ostrel", "tavisk");

    private DemoScenario() {}

    /**
     * The cases of one bench.
     *
     * @param origin whose they are, for the import
     * @param lines one JSON line each ({@code benchlore/case/1}), in order of date
     */
    public record Cases(String origin, String lines) {}

    /** The invented device families. */
    public static List<PackSource> packs() {
        return Resources.packs("demo", NAMES);
    }

    /** The invented cases: the workshop's, then those it had from the bench at the harbour. */
    public static List<Cases> cases() {
        return List.of(
                new Cases("demo", Resources.text("demo/cases.jsonl")),
                new Cases("demo-harbour", Resources.text("demo/cases-harbour.jsonl")));
    }
}
