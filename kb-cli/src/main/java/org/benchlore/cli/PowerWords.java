package org.benchlore.cli;

import org.benchlore.kb.planning.PowerHold;

/** Why power stays off, and what waits for it. */
final class PowerWords {
    private PowerWords() {}

    /** "Power stays off: WHY. Left out until that is put right, since they power the unit: 12 tests, 3 fixes." */
    static String line(PowerHold hold) {
        int held = hold.tests() + hold.fixes();
        return "Power stays off: " + hold.why() + "."
                + (held == 0
                        ? ""
                        : " Left out until that is put right, since they power the unit: "
                                + counted(hold.tests(), "test", "tests") + ", " + counted(hold.fixes(), "fix", "fixes")
                                + ".");
    }

    private static String counted(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }
}
