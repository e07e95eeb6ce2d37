package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Whether what is risky, or works near a hazard, says so. */
final class CautionCheck {
    /** Words that name a hazard, and the cautions of which one is due. */
    private record Trigger(String word, Pattern pattern, Set<Caution.Hazard> due) {}

    /** Ways to mention a hazard that mean its absence, or only a lead. */
    private static final Pattern SAFE = Pattern.compile(
            "(unplug|unplugged|disconnect|disconnected|isolated|away|off|without|no)( from)?( the)? mains\\b"
                    + "|\\b(no|without|never use|avoid) (hot[ -]air|laser|lithium)\\b"
                    + "|\\bmains (is |are )?(off|removed|unplugged|disconnected|lead|plug|cord|cable)\\b",
            Pattern.CASE_INSENSITIVE);

    private static final List<Trigger> TRIGGERS = List.of(
            trigger("mains", "\\bmains\\b", Caution.Hazard.MAINS),
            trigger(
                    "the primary side",
                    "\\bprimary[ -](side|circuit|capacitor|winding|bus|switch)",
                    Caution.Hazard.MAINS,
                    Caution.Hazard.STORED_CHARGE),
            trigger("lithium", "\\b(lithium|li-ion|li-po|lipo)\\b", Caution.Hazard.LITHIUM),
            trigger("a laser", "\\blaser\\b(?! (printer|thermometer|pointer))", Caution.Hazard.LASER),
            trigger(
                    "hot air",
                    "\\bhot[ -]air\\b(?! (from|out|leaves|comes|blows|collects|inside|is))",
                    Caution.Hazard.HEAT));

    private final Binding binding;
    private final Knowledge knowledge;
    private final Problems problems;

    CautionCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.knowledge = binding.knowledge();
        this.problems = problems;
    }

    private static Trigger trigger(String word, String pattern, Caution.Hazard... due) {
        return new Trigger(word, Pattern.compile(pattern, Pattern.CASE_INSENSITIVE), Set.of(due));
    }

    void run() {
        for (BenchTest test : knowledge.tests()) {
            List<String> texts = new ArrayList<>(test.steps());
            texts.addAll(test.tools());
            texts.addAll(List.of(test.name(), test.setup(), test.expect(), test.stopWhen()));
            check(EntryKind.TEST, test.id(), test.risk(), test.cautions(), texts);
        }
        for (Fix fix : knowledge.fixes()) {
            List<String> texts = new ArrayList<>(fix.steps());
            texts.addAll(fix.tools());
            texts.addAll(fix.parts());
            texts.addAll(fix.verify());
            texts.add(fix.name());
            check(EntryKind.FIX, fix.id(), fix.risk(), fix.cautions(), texts);
        }
    }

    private void check(EntryKind kind, String id, Risk risk, List<String> cautions, List<String> texts) {
        String subject = kind.word + " " + Problems.quote(id);
        if (binding.damaged(kind, id)) {
            return; // a caution that was misspelt is reported already
        }
        if (risk.compareTo(Risk.MEDIUM) >= 0 && cautions.isEmpty()) {
            problems.warn(
                    binding.place(kind, id, "risk"),
                    subject + " has risk " + Values.spelled(risk) + " but no caution",
                    "say what can go wrong under 'cautions'");
        }
        Set<Caution.Hazard> named = cautions.stream()
                .flatMap(caution -> knowledge.caution(caution).stream())
                .map(Caution::hazard)
                .collect(Collectors.toSet());
        Set<Trigger> open = TRIGGERS.stream()
                .filter(trigger -> trigger.due().stream().noneMatch(named::contains))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        for (String text : texts) {
            if (open.isEmpty()) {
                return;
            }
            String unsafe = SAFE.matcher(text).replaceAll(" ");
            open.removeIf(trigger -> {
                boolean spoken = trigger.pattern().matcher(unsafe).find();
                if (spoken) {
                    problems.warn(
                            binding.textPlace(kind, id, kind.idKey, text),
                            subject + " speaks of " + trigger.word() + " but has no caution for it",
                            "name a caution with hazard "
                                    + trigger.due().stream()
                                            .sorted()
                                            .map(Values::spelled)
                                            .collect(Collectors.joining(" or ")));
                }
                return spoken;
            });
        }
    }
}
