package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.junit.jupiter.api.Test;

/** Whatever comes in, what goes out holds together. Seeded, so a failure comes back. */
class ReaderFuzzTest {
    private static final int INPUTS = 200_000;
    private static final DeviceScope CORVANE = DeviceScope.parse("disc-recorder/corvane/corvane-300");
    private static final List<String> PARTS = List.of(
            "12V",
            "5 V",
            "3V3",
            "-12 V",
            "no",
            "not",
            "but",
            "except",
            "fan",
            "dead",
            "LED",
            "green",
            "controller",
            "silent",
            "missing",
            ",",
            ".",
            "and",
            "or",
            "reads",
            "11.4",
            "on",
            "the",
            "3.3",
            "±5 %",
            "K-207",
            "maybe",
            "?",
            "if",
            "(",
            ")",
            "again and again",
            "2021-03-04 10:00:00 K-207 x",
            "\n",
            "STARTS=45",
            "\ud83d",
            "\u202e",
            "\u0130",
            "ﬃ",
            "½",
            "0R4",
            "there is",
            "mains fuse",
            "blown",
            "last year",
            "owner says",
            "sometimes",
            "ripple",
            "to ground",
            "4 ohms",
            "'",
            "n't",
            "\u0000",
            "１２Ｖ",
            "Ω",
            "µ",
            "1e9",
            "99999999999999999999",
            "12:61",
            "5..6V",
            "-",
            "--",
            "neither",
            "nor",
            "all rails ok");

    private final Knowledge knowledge = Fixture.knowledge();
    private final Reader reader = Reader.of(knowledge);

    @Test
    void spans_states_and_orders_hold_for_any_text() {
        Random random = new Random(20261125);
        int findings = 0;
        for (int i = 0; i < INPUTS; i++) {
            String text = i % 4 == 0 ? characters(random) : words(random);
            Reading reading = reader.read(text, i % 2 == 0 ? CORVANE : DeviceScope.ANY);
            check(reading);
            findings += reading.understood().size();
        }
        // guards against a fuzz that never reaches the linker
        assertThat(findings).isGreaterThan(INPUTS / 5);
    }

    private void check(Reading reading) {
        String text = reading.text();
        int last = 0;
        for (Reading.Understood u : reading.understood()) {
            exact(text, u.span());
            check(u.span().start() >= last, text);
            last = u.span().start();
            var symptom = knowledge.symptom(u.finding().symptomId()).orElseThrow();
            u.finding()
                    .likelihoods()
                    .forEach((state, p) -> check(symptom.indexOf(state) >= 0 && p > 0 && p <= 1, text));
        }
        last = 0;
        for (Reading.Span span : reading.notUnderstood()) {
            exact(text, span);
            check(span.start() >= last, text);
            last = span.end();
        }
        reading.quantities().forEach(q -> {
            exact(text, q.span());
            check(Double.isFinite(q.value()), text);
        });
        reading.codes().forEach(c -> {
            exact(text, c.span());
            check(c.count() > 0, text);
        });
        reading.contradictions()
                .forEach(c -> check(
                        c.first() < c.second()
                                && c.second() < reading.understood().size(),
                        text));
        reading.findings();
    }

    private static void exact(String text, Reading.Span span) {
        check(
                span.start() < span.end()
                        && text.substring(span.start(), span.end()).equals(span.text()),
                text);
    }

    // plain, since millions of assertions are dear
    private static void check(boolean holds, String text) {
        if (!holds) {
            throw new AssertionError("does not hold for: " + text);
        }
    }

    private static String words(Random random) {
        StringBuilder text = new StringBuilder();
        int n = 1 + random.nextInt(12);
        for (int i = 0; i < n; i++) {
            text.append(PARTS.get(random.nextInt(PARTS.size()))).append(random.nextInt(8) == 0 ? "" : " ");
        }
        return text.toString();
    }

    private static String characters(Random random) {
        StringBuilder text = new StringBuilder();
        int n = random.nextInt(24);
        for (int i = 0; i < n; i++) {
            text.append((char) (random.nextBoolean() ? random.nextInt(128) : random.nextInt(0x10000)));
        }
        return text.toString();
    }
}
