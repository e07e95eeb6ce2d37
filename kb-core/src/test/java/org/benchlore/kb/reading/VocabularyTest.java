package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class VocabularyTest {
    private static final Knowledge KNOWLEDGE = Fixture.knowledge();

    private final List<Vocabulary.Note> notes = new ArrayList<>();

    @Test
    void words_of_many_cases_come_first_and_say_which_cause_they_go_with() {
        note("a", "no 12 V, purple mist", "fuse");
        note("b", "purple mist again", "fuse");
        note("c", "purple mist, no 12 V", "fuse");
        note("d", "wobbly feet", "feet");
        note("e", "wobbly feet here too", null);
        note("f", "no 12 V", "feet");

        List<UnknownPhrase> found = unknown(2);

        assertThat(found)
                .extracting(UnknownPhrase::phrase)
                .startsWith("purple mist")
                .contains("wobbly feet");
        UnknownPhrase mist = found.get(0);
        assertThat(mist.cases()).isEqualTo(3);
        assertThat(mist.examples()).containsExactly("a", "b", "c");
        UnknownPhrase.Lean lean = mist.lean().orElseThrow();
        assertThat(lean.causeId()).isEqualTo("fuse");
        // by hand: 3.5 of 4 against 0.5 of 3
        assertThat(lean.decibans()).isCloseTo(10 * Math.log10((3.5 / 4) / (0.5 / 3)), within(1e-12));
        assertThat(found)
                .filteredOn(p -> p.phrase().equals("wobbly feet"))
                .allMatch(p -> p.lean().isEmpty());
    }

    @Test
    void a_part_that_never_stands_alone_is_left_out() {
        note("a", "purple mist", null);
        note("b", "purple mist", null);
        assertThat(unknown(2)).extracting(UnknownPhrase::phrase).containsExactly("purple mist");
    }

    @Test
    void rare_phrases_are_let_go_and_frequent_ones_hardly_lose() {
        note("x", "wobbly feet", null);
        note("y", "wobbly feet", null);
        for (int i = 0; i < 400; i++) {
            char first = (char) ('a' + i / 20);
            char second = (char) ('a' + i % 20);
            note("c" + i, "purple mist, zorg" + first + "qux" + second + " blarp" + second + "zik" + first, null);
        }
        List<UnknownPhrase> all = Vocabulary.unknown(KNOWLEDGE, Reader.of(KNOWLEDGE), notes, 2);
        List<UnknownPhrase> few = Vocabulary.unknown(KNOWLEDGE, Reader.of(KNOWLEDGE), notes, 2, 100);

        assertThat(all).extracting(UnknownPhrase::phrase).contains("purple mist", "wobbly feet");
        assertThat(few)
                .extracting(UnknownPhrase::phrase)
                .contains("purple mist")
                .doesNotContain("wobbly feet");
        assertThat(few.get(0).cases()).isEqualTo(400);
    }

    @Test
    void one_case_counts_once_however_often_it_says_so() {
        note("a", "purple mist, purple mist", null);
        note("a", "purple mist", null);
        assertThat(unknown(2)).isEmpty();
        assertThat(unknown(1)).extracting(UnknownPhrase::cases).containsOnly(1);
    }

    @Test
    void what_the_packs_teach_and_bare_readings_are_not_listed() {
        note("a", "no 12 V, 47 kohm, controller silent", null);
        note("b", "no 12 V, 47 kohm, controller silent", null);
        assertThat(unknown(2)).isEmpty();
    }

    @Test
    void a_phrase_with_a_known_word_is_proposed_for_that_symptom() {
        note("a", "controller gibbers", null);
        note("b", "controller gibbers", null);
        UnknownPhrase phrase = unknown(2).get(0);
        assertThat(phrase.proposals())
                .isNotEmpty()
                .allMatch(p -> p.likeness() > 0 && p.likeness() <= 1)
                .extracting(UnknownPhrase.Proposal::symptomId)
                .contains("controller-response");
    }

    @Test
    void a_word_of_one_phrase_beside_a_strange_one_is_no_guess() {
        note("a", "plirkish rubbish", null);
        note("b", "plirkish rubbish", null);
        assertThat(unknown(2))
                .singleElement()
                .satisfies(p -> assertThat(p.proposals()).isEmpty());
    }

    private void note(String caseId, String text, @Nullable String cause) {
        notes.add(new Vocabulary.Note(caseId, DeviceScope.ANY, text, Optional.ofNullable(cause)));
    }

    private List<UnknownPhrase> unknown(int atLeast) {
        return Vocabulary.unknown(KNOWLEDGE, Reader.of(KNOWLEDGE), notes, atLeast);
    }
}
