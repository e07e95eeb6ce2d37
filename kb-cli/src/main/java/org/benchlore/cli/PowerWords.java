package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.planning.PowerHold;

/** Why power stays off, and what lets it on again. */
final class PowerWords {
    /** Fixes named of those that lift a rule. */
    private static final int NAMED = 2;

    private final Page page;
    private final TestPage tests;
    private final Names names;

    PowerWords(Knowledge knowledge, Page page) {
        this.page = page;
        this.tests = new TestPage(knowledge, page);
        this.names = new Names(knowledge);
    }

    /** "Power stays off: WHY. It may come on once this is found: ...; or this is done: ...", a line per finding that forbids it. */
    void full(PowerHold hold) {
        for (PowerHold.Reason reason : hold.reasons()) {
            String lifts = lifts(reason.ruleId(), reason.until(), reason.fixes());
            page.caution("Power stays off: " + reason.why() + "." + (lifts.isEmpty() ? "" : " " + lifts));
        }
    }

    /** That it still stands, for whoever was told why at length. */
    void still(PowerHold hold) {
        page.caution("Power still off: " + hold.why() + ".");
    }

    /** What lifts a rule, as a sentence; empty if nothing does. */
    private String lifts(String ruleId, List<PowerOff.Sign> until, List<String> fixes) {
        List<String> ways = new ArrayList<>();
        if (!until.isEmpty()) {
            ways.add("this is found: "
                    + until.stream()
                            .map(sign -> tests.state(sign.symptomId(), sign.stateId()))
                            .collect(Collectors.joining(" and ")));
        }
        if (!fixes.isEmpty()) {
            int more = Math.max(0, fixes.size() - NAMED);
            ways.add("this is noted as done: "
                    + Stream.concat(
                                    fixes.stream().limit(NAMED).map(names::fix),
                                    Stream.of("one of " + more + " more ('show " + ruleId + "')")
                                            .filter(rest -> more > 0))
                            .collect(Collectors.joining(" or ")));
        }
        return ways.isEmpty() ? "" : "It may come on once " + String.join("; or once ", ways) + ".";
    }
}
