package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.reading.UnknownPhrase.Proposal;

/** A pack that teaches unknown phrases as the states they likeliest stand for; for people to go through before it is used. */
public final class WordsPack {
    /** Controls and marks that no pack may hold. */
    private static final Pattern INVISIBLE = Pattern.compile("[\\p{Cntrl}\\p{Cf}\\p{Cn}\\p{Cs}\uFFFC-\uFFFF]");

    private WordsPack() {}

    /**
     * The text of the pack.
     *
     * @param phrases those without a proposal are left out
     */
    public static String text(List<UnknownPhrase> phrases) {
        Map<String, Map<String, List<UnknownPhrase>>> bySymptom = new TreeMap<>();
        for (UnknownPhrase phrase : phrases) {
            if (!phrase.proposals().isEmpty()) {
                Proposal first = phrase.proposals().get(0);
                bySymptom
                        .computeIfAbsent(first.symptomId(), s -> new TreeMap<>())
                        .computeIfAbsent(first.stateId(), s -> new ArrayList<>())
                        .add(phrase);
            }
        }
        StringBuilder yaml = new StringBuilder("""
                # Words that notes of this bench use and no pack knows, each under the state it likeliest stands for.
                # A guess by shared words and by how the cases ended: go through it, move or delete what is wrong.
                # In HOME/packs it adds to the words that the other packs teach.
                pack: bench-words
                version: "1"
                licence: own use
                title: Words of this bench
                about: Other names for what the packs know.
                scope: any
                """);
        yaml.append(bySymptom.isEmpty() ? "symptoms: []\n" : "symptoms:\n");
        bySymptom.forEach((symptom, states) -> {
            yaml.append("  - id: ").append(symptom).append("\n    refines: true\n    phrases:\n");
            states.forEach((state, known) -> {
                yaml.append("      ").append(JsonNodes.quoted(state)).append(":\n");
                known.forEach(phrase -> yaml.append("        - ")
                        .append(JsonNodes.quoted(
                                INVISIBLE.matcher(phrase.phrase()).replaceAll(" ")))
                        .append("  # ")
                        .append(reason(phrase))
                        .append('\n'));
            });
        });
        return yaml.toString();
    }

    private static String reason(UnknownPhrase phrase) {
        String cases = phrase.cases() == 1 ? "1 case" : phrase.cases() + " cases";
        return phrase.lean()
                .map(lean -> String.format(
                        Locale.ROOT,
                        "%s, %d of them %s (%+.0f dB)",
                        cases,
                        lean.cases(),
                        lean.causeId(),
                        lean.decibans()))
                .orElse(cases);
    }
}
