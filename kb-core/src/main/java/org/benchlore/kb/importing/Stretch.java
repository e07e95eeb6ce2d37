package org.benchlore.kb.importing;

import java.util.List;

/** A stretch of a text, as UTF-16 offsets, end exclusive. */
record Stretch(int start, int end) {
    /** Part of a text, with what lies in the stretches blanked, so that offsets stay. */
    static String blank(String text, int from, int to, List<Stretch> stretches) {
        char[] chars = text.substring(from, to).toCharArray();
        for (Stretch stretch : stretches) {
            for (int i = Math.max(from, stretch.start()); i < Math.min(to, stretch.end()); i++) {
                chars[i - from] = chars[i - from] == '\n' ? '\n' : ' ';
            }
        }
        return new String(chars);
    }
}
