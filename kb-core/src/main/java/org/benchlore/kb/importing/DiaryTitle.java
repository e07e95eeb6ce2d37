package org.benchlore.kb.importing;

import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;

/** Titles of diaries and of years in them: "Repair diary 2023", "2024", "November 2023". They introduce cases and are none. */
final class DiaryTitle {
    private static final Set<String> WORDS =
            Set.of("diary", "diaries", "logbook", "log", "journal", "notebook", "repairs", "workshop", "jobs");
    private static final Set<String> BESIDE_A_YEAR =
            Set.of("year", "spring", "summer", "autumn", "winter", "and", "to");
    private static final int MOST_WORDS = 8;
    private static final int FIRST_YEAR = 1950;
    private static final int LAST_YEAR = 2100;

    private DiaryTitle() {}

    static boolean is(String text) {
        List<Token> words = PhraseTable.words(text);
        return words.size() <= MOST_WORDS
                && (words.stream().anyMatch(w -> WORDS.contains(w.surface()))
                        || (words.stream().anyMatch(DiaryTitle::year)
                                && words.stream().allMatch(w -> year(w) || besideYear(w.surface()))));
    }

    /** The first year in a title; empty in other texts. */
    static OptionalInt year(String text) {
        return is(text)
                ? PhraseTable.words(text).stream()
                        .filter(DiaryTitle::year)
                        .mapToInt(w -> (int) w.value())
                        .findFirst()
                : OptionalInt.empty();
    }

    private static boolean besideYear(String word) {
        return BESIDE_A_YEAR.contains(word) || DateScan.MONTH_NAMES.contains(word);
    }

    private static boolean year(Token word) {
        return word.kind() == Kind.NUMBER
                && word.surface().length() == 4
                && word.value() >= FIRST_YEAR
                && word.value() <= LAST_YEAR;
    }
}
