package org.benchlore.kb.search;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;

/** Names, other names and phrases of the packs, by the beginning of any of their words. Immutable. */
final class Completions {
    /** A text from one of its words onwards, folded. */
    private record Entry(String key, boolean own, boolean whole, Suggestion suggestion) {}

    private static final Comparator<Entry> BEST_FIRST = Comparator.comparing((Entry e) -> !e.own)
            .thenComparing(e -> !e.whole)
            .thenComparing(e -> e.suggestion.text().length())
            .thenComparing(e -> e.suggestion.text())
            .thenComparing(e -> e.suggestion.kind())
            .thenComparing(e -> e.suggestion.id());

    private final List<Entry> byKey = new ArrayList<>();

    Completions(Knowledge knowledge) {
        for (Symptom symptom : knowledge.symptoms()) {
            addName(symptom.name(), HitKind.SYMPTOM, symptom.id());
            symptom.called().forEach(text -> addOther(text, HitKind.SYMPTOM, symptom.id()));
            for (State state : symptom.states()) {
                state.phrases().forEach(text -> addOther(text, HitKind.SYMPTOM, symptom.id()));
            }
        }
        for (Cause cause : knowledge.causes()) {
            addName(cause.name(), HitKind.CAUSE, cause.id());
            cause.aliases().forEach(text -> addOther(text, HitKind.CAUSE, cause.id()));
        }
        knowledge.tests().forEach(test -> addName(test.name(), HitKind.TEST, test.id()));
        knowledge.fixes().forEach(fix -> addName(fix.name(), HitKind.FIX, fix.id()));
        byKey.sort(Comparator.comparing(Entry::key));
    }

    /** Texts with a word that begins so: names of entries first, then those that begin so as a whole, then the shorter ones. */
    List<Suggestion> of(String prefix, int limit) {
        String start = fold(prefix);
        if (start.isEmpty()) {
            return List.of();
        }
        List<Entry> found = new ArrayList<>();
        for (int i = firstFrom(start); i < byKey.size() && byKey.get(i).key.startsWith(start); i++) {
            found.add(byKey.get(i));
        }
        found.sort(BEST_FIRST);
        Set<Suggestion> distinct = new LinkedHashSet<>();
        for (Entry entry : found) {
            if (distinct.size() < limit) {
                distinct.add(entry.suggestion);
            }
        }
        return List.copyOf(distinct);
    }

    private int firstFrom(String start) {
        int low = 0;
        int high = byKey.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (byKey.get(middle).key.compareTo(start) < 0) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private void addName(String name, HitKind kind, String id) {
        add(true, new Suggestion(name, kind, id));
    }

    private void addOther(String text, HitKind kind, String id) {
        add(false, new Suggestion(text, kind, id));
    }

    private void add(boolean own, Suggestion suggestion) {
        String folded = fold(suggestion.text());
        for (int at = 0; at < folded.length(); at++) {
            if (at == 0 || folded.charAt(at - 1) == ' ') {
                byKey.add(new Entry(folded.substring(at), own, at == 0, suggestion));
            }
        }
    }

    /** Letters and figures only, lower case without accents, single spaces, none between a value and its unit. */
    private static String fold(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFKD).toLowerCase(Locale.ROOT);
        StringBuilder folded = new StringBuilder();
        boolean gap = false;
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (Character.isLetterOrDigit(c) || c == '.') {
                boolean unit = !folded.isEmpty()
                        && Character.isDigit(folded.charAt(folded.length() - 1))
                        && Character.isLetter(c);
                if (gap && !folded.isEmpty() && !unit) {
                    folded.append(' ');
                }
                folded.append(c);
                gap = false;
            } else if (Character.getType(c) != Character.NON_SPACING_MARK && c != '\'') {
                gap = true;
            }
        }
        return folded.toString();
    }
}
