package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The floors are the figures of this version rounded down; raise them when the reader gets better, never lower them. */
class CorpusTest {
    private final Reader reader = Reader.of(Corpus.knowledge());

    @Test
    void tuned_half_is_read_almost_wholly() {
        Corpus.Score score = Corpus.score(reader, Corpus.sentences("reading-dev.txt"));
        String report = Corpus.report("dev", score);
        assertThat(score.precision()).as(report).isGreaterThan(0.97);
        assertThat(score.recall()).as(report).isGreaterThan(0.97);
        assertThat(score.rightSpan()).as(report).isGreaterThanOrEqualTo((int) (0.97 * score.right()));
    }

    @Test
    void held_out_half_keeps_its_level() {
        Corpus.Score score = Corpus.score(reader, Corpus.sentences("reading-test.txt"));
        // the misses stay out of the report on purpose: nobody tunes on this half
        String report =
                String.format(Locale.ROOT, "P %.3f R %.3f F1 %.3f", score.precision(), score.recall(), score.f1());
        assertThat(score.f1()).as(report).isGreaterThan(0.92);
        assertThat(score.rightSpan()).as(report).isGreaterThanOrEqualTo((int) (0.9 * score.right()));
    }

    @Test
    void sentences_are_read_the_same_under_a_turkish_locale() {
        Corpus.Score here = Corpus.score(reader, Corpus.sentences("reading-dev.txt"));
        Locale before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag("tr-TR"));
        try {
            Corpus.Score there = Corpus.score(Reader.of(Corpus.knowledge()), Corpus.sentences("reading-dev.txt"));
            assertThat(there).isEqualTo(here);
        } finally {
            Locale.setDefault(before);
        }
    }
}
