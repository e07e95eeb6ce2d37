package org.benchlore.kb.data;

import java.util.List;
import org.benchlore.kb.knowledge.PackSource;

/** The device-independent packs that ship. */
public final class ShippedPacks {
    /** In reading order; a test holds this against the folder. */
    static final List<String> NAMES = List.of(
            "common",
            "power",
            "controller",
            "heat",
            "household",
            "innocent",
            "storage",
            "optical",
            "mechanism",
            "display",
            "audio",
            "links",
            "battery",
            "damage",
            "workmanship",
            "appliance",
            "kinds");

    private ShippedPacks() {}

    /** All of them, in reading order. */
    public static List<PackSource> all() {
        return Resources.packs("packs", NAMES);
    }
}
