package org.benchlore.kb.knowledge;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Names and phrases taught for two different things, which the reader of notes could not tell apart. */
final class WordingCheck {
    private final Binding binding;
    private final Problems problems;
    private final Map<String, Taught> taught = new LinkedHashMap<>();

    /** A wording in one scope, and what it was first said to mean. */
    private record Taught(String meaning, String symptomId, boolean name, Place place) {
        /** The same thing again, or a symptom's name that is also a phrase for one of its states. */
        boolean agrees(Taught other) {
            return meaning.equals(other.meaning) || (symptomId.equals(other.symptomId) && name != other.name);
        }
    }

    WordingCheck(Binding binding, Problems problems) {
        this.binding = binding;
        this.problems = problems;
    }

    void run() {
        for (Symptom symptom : binding.knowledge().symptoms()) {
            for (String name : symptom.called()) {
                teach(symptom, name, "called", "symptom " + Problems.quote(symptom.id()));
            }
            for (State state : symptom.states()) {
                for (String phrase : state.phrases()) {
                    teach(symptom, phrase, "phrases", Problems.quote(symptom.id() + " " + state.id()));
                }
            }
        }
    }

    private void teach(Symptom symptom, String wording, String key, String meaning) {
        Place place = binding.textPlace(EntryKind.SYMPTOM, symptom.id(), key, wording);
        Taught now = new Taught(meaning, symptom.id(), key.equals("called"), place);
        Taught first = taught.putIfAbsent(symptom.scope() + " " + folded(wording), now);
        if (first == null || first.agrees(now)) {
            return;
        }
        problems.warn(
                place,
                Problems.quote(wording) + " is taught for " + meaning + " and for " + first.meaning() + ", at "
                        + first.place(),
                "keep it where it is the more common");
    }

    /** Case, punctuation and spacing folded as the reader does; a sign or point within a number stays. */
    static String folded(String wording) {
        String lower = wording.toLowerCase(Locale.ROOT);
        StringBuilder folded = new StringBuilder();
        for (int i = 0; i < lower.length(); i++) {
            char c = lower.charAt(i);
            boolean digitNext = i + 1 < lower.length() && Character.isDigit(lower.charAt(i + 1));
            char before = folded.isEmpty() ? ' ' : folded.charAt(folded.length() - 1);
            boolean sign = c == '-' && digitNext && before == ' ';
            boolean point = c == '.' && digitNext && Character.isDigit(before);
            if (Character.isLetterOrDigit(c) || sign || point) {
                folded.append(c);
            } else if (before != ' ') {
                folded.append(' ');
            }
        }
        return folded.toString().strip();
    }
}
