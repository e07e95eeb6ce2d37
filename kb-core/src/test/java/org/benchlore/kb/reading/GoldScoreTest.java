package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.GoldText.Kind;
import org.benchlore.kb.reading.GoldText.Mark;
import org.benchlore.kb.reading.GoldText.Said;
import org.benchlore.kb.reading.Reading.Condition;
import org.junit.jupiter.api.Test;

/** The yardstick itself, on texts that the reader certainly reads in one way. */
class GoldScoreTest {
    private static final Knowledge KNOWLEDGE = Fixture.knowledge();

    @Test
    void every_line_of_the_format_is_understood() {
        List<GoldText> texts = GoldFile.parse("x", """
                # comment
                > fan maybe noisy when warm
                @ disc-recorder/corvane
                ~ fan-behaviour noisy / fan-behaviour stopped | fan maybe noisy | warm owner
                ? dust heavy
                v 0.02 V | noisy
                c K 207 2 unknown
                k starts 452
                k clock doubtful

                >>>
                two
                lines
                <<<
                = log-undervoltage recurring |  | code
                """);
        assertThat(texts).hasSize(2);
        GoldText first = texts.get(0);
        assertThat(first.scope()).hasToString("disc-recorder/corvane");
        GoldText.Expected finding = first.expected().get(0);
        assertThat(finding.mark()).isEqualTo(Mark.DOUBTED);
        assertThat(finding.said())
                .containsExactly(new Said("fan-behaviour", "noisy"), new Said("fan-behaviour", "stopped"));
        assertThat(finding.conditions()).isEqualTo(Set.of(Condition.WARM));
        assertThat(finding.source()).contains(Reading.Source.OWNER);
        assertThat(first.quantities()).containsExactly(new GoldText.Quantity(0.02, "V", "noisy"));
        assertThat(first.codes()).containsExactly(new GoldText.Code("K 207", 2, false));
        assertThat(first.counters()).containsExactly(new GoldText.Counter("starts", 452));
        assertThat(first.clockDoubtful()).isTrue();
        assertThat(texts.get(1).text()).isEqualTo("two\nlines");
        assertThat(texts.get(1).expected().get(0).kind()).isEqualTo(Kind.CODE);
        assertThat(texts.get(1).expected().get(0).span()).isEmpty();
    }

    @Test
    void mistakes_in_a_gold_file_are_placed() {
        assertThatThrownBy(() -> GoldFile.parse("g.txt", "> fan dead\n= fan-behaviour stopped | fan alive"))
                .hasMessage("g.txt:2: = fan-behaviour stopped | fan alive: 'fan alive' is not in the text");
        assertThatThrownBy(() -> GoldFile.parse("g.txt", ">>>\nx")).hasMessage("g.txt:1: no '<<<' ends this text");
    }

    @Test
    void precision_and_recall_are_counted_by_kind() {
        GoldScore score = score("""
                > fan dead, lamp green, 12V reads 12.01
                = fan-behaviour stopped | fan dead
                = dust heavy | lamp
                = rail-12v in-tolerance | 12V reads 12.01 | value
                v 12.01 V | 12.01
                v 5 ohm | lamp
                """);
        // right: the fan; missed: dust; invented: the lamp
        assertThat(tally(score, Kind.STATE)).containsExactly(1, 2, 2);
        assertThat(score.findings.precision()).isEqualTo(2 / 3.0);
        assertThat(score.findings.recall()).isEqualTo(2 / 3.0);
        assertThat(score.findings.f1()).isEqualTo(2 / 3.0);
        assertThat(tally(score, Kind.VALUE)[0]).isGreaterThanOrEqualTo(1);
        assertThat(tally(score, Kind.VALUE)[2]).isEqualTo(3);
        assertThat(score.invented).isZero();
    }

    @Test
    void arguable_findings_are_excused_and_alternatives_are_right() {
        GoldScore score = score("""
                > fan dead, lamp green
                = dust heavy / fan-behaviour stopped | fan dead
                ? power-lamp green
                """);
        assertThat(tally(score, Kind.STATE)).containsExactly(1, 1, 1);
    }

    @Test
    void what_is_found_in_a_text_that_holds_nothing_is_invented() {
        GoldScore score = score("> fan dead\n\n> lamp green\n? power-lamp green\n");
        assertThat(score.emptyTexts).isEqualTo(2);
        assertThat(score.invented).isEqualTo(1);
    }

    @Test
    void an_extra_finding_within_an_expected_negation_is_charged_to_negation() {
        GoldScore score = score("> no fan noise, fan dead\n= dust heavy | fan dead | negation\n");
        assertThat(tally(score, Kind.NEGATION)).containsExactly(0, 1, 1);
    }

    @Test
    void spans_marks_and_conditions_are_those_of_findings_rightly_read() {
        GoldScore score = score("""
                > fan maybe noisy when warm
                = fan-behaviour noisy | fan | warm cold
                """);
        assertThat(score.spans.of).isEqualTo(1);
        assertThat(score.spans.right).isZero();
        assertThat(score.marks.right).isZero();
        assertThat(tally(score, Kind.CONDITION)).containsExactly(1, 1, 2);
    }

    private static GoldScore score(String gold) {
        return GoldScore.of(KNOWLEDGE, GoldFile.parse("inline", gold));
    }

    private static int[] tally(GoldScore score, Kind kind) {
        Tally tally = score.kinds.getOrDefault(kind, new Tally());
        return new int[] {tally.right, tally.found, tally.wanted};
    }
}
