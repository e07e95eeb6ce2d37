package org.benchlore.kb.importing;

import java.util.Locale;

/** How dates with slashes are meant, such as 3/4/2024. Those with dots or hyphens always begin with the day or the year. */
public enum DateOrder {
    /** Day, month, year. */
    DMY,
    /** Month, day, year. */
    MDY;

    /** The name in a mapping file. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }
}
