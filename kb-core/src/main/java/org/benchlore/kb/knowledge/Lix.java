package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.QualityReport.Hard;
import org.benchlore.kb.knowledge.QualityReport.Readability;

/**
 * How hard a text is to read: LIX = words / sentences + 100 · words of more than six letters / words. It asks for no
 * syllables, which in bench words ("ESR", "MOSFET") nobody agrees on. A sentence ends at a full stop, colon, question or
 * exclamation mark before a blank, and where a text ends.
 */
final class Lix {
    private static final int LONG = 6;
    private static final int LISTED = 10;

    private int words;
    private int longWords;
    private int sentences;

    private Lix() {}

    static Readability of(Knowledge knowledge) {
        List<Hard> tests = knowledge.tests().stream()
                .map(test -> new Hard(EntryKind.TEST, test.id(), lix(texts(test))))
                .toList();
        List<Hard> fixes = knowledge.fixes().stream()
                .map(fix -> new Hard(EntryKind.FIX, fix.id(), lix(texts(fix))))
                .toList();
        return new Readability(
                mean(tests),
                mean(fixes),
                Stream.concat(tests.stream(), fixes.stream())
                        .sorted(Comparator.comparingDouble((Hard hard) -> -hard.lix())
                                .thenComparing(Hard::id))
                        .limit(LISTED)
                        .toList());
    }

    private static double mean(List<Hard> entries) {
        return entries.stream().mapToDouble(Hard::lix).average().orElse(0);
    }

    /** What a technician reads of a test, in order. */
    static List<String> texts(BenchTest test) {
        List<String> texts = new ArrayList<>();
        texts.add(test.setup());
        texts.addAll(test.steps());
        texts.add(test.expect());
        test.readings().forEach(reading -> texts.add(reading.means()));
        texts.addAll(test.fools());
        texts.add(test.stopWhen());
        return texts;
    }

    /** What a technician reads of a fix, in order. */
    static List<String> texts(Fix fix) {
        List<String> texts = new ArrayList<>(fix.steps());
        texts.addAll(fix.verify());
        texts.addAll(fix.fools());
        return texts;
    }

    /** LIX of some texts together; 0 without a word. */
    static double lix(List<String> texts) {
        Lix all = new Lix();
        texts.forEach(all::read);
        return all.words == 0 ? 0 : (double) all.words / all.sentences + 100.0 * all.longWords / all.words;
    }

    private void read(String text) {
        int open = 0; // words since the last sentence
        int letters = 0;
        for (int i = 0; i <= text.length(); i++) {
            char c = i < text.length() ? text.charAt(i) : ' ';
            if (Character.isLetterOrDigit(c)) {
                letters++;
            } else if (letters > 0 && !joins(text, i)) {
                words++;
                open++;
                longWords += letters > LONG ? 1 : 0;
                letters = 0;
            }
            boolean ends = ".:!?".indexOf(c) >= 0 && (i + 1 == text.length() || text.charAt(i + 1) == ' ');
            if (open > 0 && (ends || i == text.length())) {
                sentences++;
                open = 0;
            }
        }
    }

    /** Whether what stands at {@code i} is within a word or number: "don't", "3.3", "low-ohm". */
    private static boolean joins(String text, int i) {
        return i + 1 < text.length()
                && ".,'-/’".indexOf(text.charAt(i)) >= 0
                && Character.isLetterOrDigit(text.charAt(i + 1));
    }
}
