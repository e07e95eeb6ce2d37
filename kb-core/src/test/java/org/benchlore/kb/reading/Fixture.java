package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;

/** A small pack whose words stay as they are, whatever the shipped packs learn. */
final class Fixture {
    private static final String PACK = "reading-pack.yaml";

    private Fixture() {}

    static Knowledge knowledge() {
        return knowledge(PACK);
    }

    /** The pack of a test resource beside this class. */
    static Knowledge knowledge(String pack) {
        return PackReader.read(List.of(new PackSource(pack, GoldFile.text(pack))));
    }
}
