package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.junit.jupiter.api.Test;

/** The short way through texts of mere words ends where the lexer does. */
class PackWordsTest {
    /** Surface, term and kind of each token: what the packs' texts are filed by. */
    private record Said(String surface, String term, Token.Kind kind, double value) {
        static List<Said> of(List<Token> tokens) {
            return tokens.stream()
                    .map(t -> new Said(t.surface(), t.term(), t.kind(), t.value()))
                    .toList();
        }
    }

    private final PackWords words = new PackWords();

    private void same(String text) {
        List<Said> pieces = Said.of(words.of(text).stream().map(p -> p.token).toList());
        assertThat(pieces).as(text).isEqualTo(Said.of(Lexer.tokens(text)));
    }

    @Test
    void a_text_comes_apart_as_the_lexer_takes_it() {
        for (String text : List.of(
                "",
                "  ",
                "Lamp is  dead",
                "doesnt start and cant stop",
                "cannot start",
                "two lamps",
                "twenty four volts",
                "minus rail",
                "a second relay",
                "half an amp",
                "a volt",
                "ESR high",
                "power-on hours",
                "isn't there",
                "fan stopped, then smoke",
                "12 V missing",
                "Größe",
                "x".repeat(60))) {
            same(text);
        }
    }

    @Test
    void words_in_any_order_come_apart_as_the_lexer_takes_them() {
        List<String> spelled =
                new ArrayList<>(List.of("a", "an", "one", "half", "minus", "forty", "second", "volt", "Not"));
        for (Symptom symptom : Fixture.knowledge().symptoms()) {
            spelled.addAll(List.of(symptom.about().split(" ")));
            spelled.addAll(symptom.called());
        }
        Random random = new Random(7);
        for (int i = 0; i < 5000; i++) {
            List<String> some = new ArrayList<>();
            for (int n = random.nextInt(6); n >= 0; n--) {
                some.add(spelled.get(random.nextInt(spelled.size())));
            }
            same(String.join(" ", some));
        }
    }
}
