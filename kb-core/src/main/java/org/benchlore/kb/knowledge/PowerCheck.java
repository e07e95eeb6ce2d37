package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Whether what forbids power can be lifted without power, and whether tests and fixes that speak of power say so. */
final class PowerCheck {
    private static final Pattern POWER = Pattern.compile(
            "\\b(plug (it |the unit )?in(?=[ .,;:]|$)|switch (it |the unit )?on\\b|power (it |the unit )?(on|up)\\b|series lamp"
                    + "|in standby\\b)",
            Pattern.CASE_INSENSITIVE);

    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    PowerCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    void run() {
        if (knowledge.powerOff().isEmpty()) {
            return;
        }
        knowledge.powerOff().forEach(this::lifted);
        for (BenchTest test : knowledge.tests()) {
            List<String> texts = new ArrayList<>(test.steps());
            texts.add(test.setup());
            said(EntryKind.TEST, test.id(), texts);
        }
        knowledge.fixes().forEach(fix -> said(EntryKind.FIX, fix.id(), fix.steps()));
    }

    private void lifted(PowerOff rule) {
        if (!binding.damaged(EntryKind.POWER_OFF, rule.id())
                && rule.fixes().isEmpty()
                && knowledge.tests().stream().noneMatch(test -> !test.powers() && rule.liftedBy(test))) {
            problems.warn(
                    binding.place(EntryKind.POWER_OFF, rule.id(), "until"),
                    "power-off rule " + Problems.quote(rule.id())
                            + ": no fix lifts it, and no test that leaves power off",
                    "name a fix under 'fixes', or under 'until' what such a test reads");
        }
    }

    private void said(EntryKind kind, String id, List<String> texts) {
        boolean silent = binding.catalogue()
                .find(kind, id)
                .filter(entry -> !entry.table().fields().containsKey("powers"))
                .isPresent();
        for (String text : silent ? texts : List.<String>of()) {
            Matcher power = POWER.matcher(text);
            if (power.find()) {
                problems.warn(
                        binding.textPlace(kind, id, kind.idKey, text),
                        kind.word + " " + Problems.quote(id) + " speaks of power (" + Problems.quote(power.group())
                                + ") and has no 'powers'",
                        "say whether the unit runs or is fed in it: 'powers: true' or 'powers: false'");
                return;
            }
        }
    }
}
