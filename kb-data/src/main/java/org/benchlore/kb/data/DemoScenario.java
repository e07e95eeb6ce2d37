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

    /** The invented device families. */
    public static List<PackSource> packs() {
        return Resources.packs("demo", NAMES);
    }

    /** The invented cases, one JSON line each ({@code benchlore/case/1}). */
    public static String cases() {
        return Resources.text("demo/cases.jsonl");
    }
}
