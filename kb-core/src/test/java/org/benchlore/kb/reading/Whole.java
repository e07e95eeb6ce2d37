package org.benchlore.kb.reading;

import org.benchlore.kb.knowledge.Knowledge;

/** What holds of every reading, whatever was read. */
final class Whole {
    private Whole() {}

    /** @throws AssertionError if a span, state, number or order of a reading does not hold */
    static void check(Knowledge knowledge, Reading reading) {
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
}
