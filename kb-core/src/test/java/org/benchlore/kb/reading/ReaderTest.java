package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Locale;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Reading.Condition;
import org.benchlore.kb.reading.Reading.Source;
import org.benchlore.kb.reading.Reading.Span;
import org.benchlore.kb.reading.Reading.Understood;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReaderTest {
    private static final Reader READER = Reader.of(Fixture.knowledge());
    private static final DeviceScope CORVANE = DeviceScope.parse("disc-recorder/corvane/corvane-300/rev-b");

    @Test
    void two_hands_one_meaning() {
        List<Finding> one = read("LED is green but 12V missing, no answer from the controller")
                .findings();
        List<Finding> other = read("green light, no 12 V, controller silent").findings();
        assertThat(one).isEqualTo(other);
        assertThat(one)
                .containsExactly(
                        Finding.of("controller-response", "silent"),
                        Finding.of("power-lamp", "green"),
                        Finding.of("rail-12v", "absent"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "12V missing",
                "12V is not there",
                "no 12 V",
                "without 12 V",
                "+12 volts absent",
                "lost 12V",
                "0 V on 12V"
            })
    void ways_to_say_that_a_rail_is_absent(String text) {
        assertThat(read(text).findings()).containsExactly(Finding.of("rail-12v", "absent"));
    }

    @Test
    void negation_ends_where_the_clause_ends() {
        assertThat(read("no 12 V but 5 V fine").findings())
                .containsExactly(Finding.of("rail-12v", "absent"), Finding.of("rail-5v", "in-tolerance"));
        assertThat(read("no 12 V, 5 V fine").findings())
                .containsExactly(Finding.of("rail-12v", "absent"), Finding.of("rail-5v", "in-tolerance"));
        assertThat(read("5 V present, 12 V not").findings())
                .containsExactly(Finding.of("rail-12v", "absent"), Finding.of("rail-5v", "in-tolerance"));
        assertThat(read("no change on 12 V").findings()).isEmpty();
    }

    @Test
    void reach_of_a_negation_is_a_parameter() {
        List<Symptom> symptoms = List.copyOf(Fixture.knowledge().symptoms());
        String text = "no sign whatsoever here today of 12 V";
        assertThat(Reader.of(symptoms, List.of(), 2).read(text, DeviceScope.ANY).findings())
                .isEmpty();
        assertThat(Reader.of(symptoms, List.of(), 8).read(text, DeviceScope.ANY).findings())
                .containsExactly(Finding.of("rail-12v", "absent"));
    }

    @Test
    void reading_close_to_a_limit_is_a_soft_finding_with_its_probability() {
        Understood u = read("12V reads 11.38").understood().get(0);
        // 11.38 V on 12 V ±5 %, two decimals: 32.6 % in tolerance, see MeasurementTest
        assertThat(u.finding().state()).isEqualTo("low");
        assertThat(u.finding().likelihoods().get("in-tolerance"))
                .isBetween(0.326 / 0.674 - 0.002, 0.326 / 0.674 + 0.002);
        assertThat(u.note()).isEqualTo("11.38 V on 12 V ±5 %: low, 67.4 %");
        assertThat(u.source()).isEqualTo(Source.MEASURED);
        assertThat(read("3.26 V on the 3.3 V rail").understood().get(0).note())
                .isEqualTo("3.26 V on 3.3 V ±5 %: in tolerance, >99.9 %");
    }

    @ParameterizedTest
    @CsvSource({
        "-12V is at -11.9,in-tolerance",
        "-12V is at -9.2,low",
        "-12V is at -14.1,high",
        "-12 V rail reads less than 11 V,low",
        "-12 V rail is more than 14 V,high",
        "-12V missing,absent",
        "minus 12 V: 0.1 V,absent"
    })
    void minus_rails_are_ordered_by_size(String text, String state) {
        assertThat(read(text).findings()).hasSize(1);
        assertThat(read(text).findings().get(0).state()).isEqualTo(state);
    }

    @Test
    void doubt_keeps_the_other_states_possible() {
        Finding finding = read("maybe 12V is missing").findings().get(0);
        assertThat(finding.likelihoods())
                .containsOnly(
                        entry("absent", 1.0), entry("high", 0.35), entry("in-tolerance", 0.35), entry("low", 0.35));
        assertThat(read("12V missing").findings().get(0).certain()).isTrue();
    }

    @Test
    void history_is_kept_but_is_no_finding() {
        Reading reading = read("mains fuse was blown last year");
        assertThat(reading.understood()).hasSize(1);
        assertThat(reading.understood().get(0).past()).isTrue();
        assertThat(reading.findings()).isEmpty();
    }

    @Test
    void supposed_and_unchecked_things_are_no_findings() {
        assertThat(read("if 12V is missing check the mains fuse").findings()).isEmpty();
        assertThat(read("burning smell not checked").findings()).isEmpty();
        assertThat(read("have not measured 12V yet").findings()).isEmpty();
    }

    @Test
    void conditions_and_source_go_with_their_own_finding() {
        Reading reading = read("12V fine cold but low under load. Owner says the fan is noisy, sometimes.");
        assertThat(reading.understood())
                .extracting(Understood::conditions)
                .containsExactly(
                        List.of(Condition.COLD), List.of(Condition.UNDER_LOAD), List.of(Condition.INTERMITTENT));
        assertThat(reading.understood())
                .extracting(Understood::source)
                .containsExactly(Source.SEEN, Source.SEEN, Source.OWNER);
        assertThat(reading.contradictions()).isEmpty();
    }

    @Test
    void contradiction_is_reported_and_neither_side_dropped() {
        Reading reading = read("12V present. Later: 12V missing.");
        assertThat(reading.contradictions()).containsExactly(new Reading.Contradiction("rail-12v", 0, 1));
        assertThat(reading.findings().get(0).likelihoods()).containsOnlyKeys("absent", "in-tolerance");
    }

    @Test
    void longer_words_of_one_symptom_do_not_hide_shorter_ones_of_another() {
        // "not responding" is the remote control's own word, "all right" and "held low" belong to others as well
        assertThat(read("controller not responding").findings())
                .containsExactly(Finding.of("controller-response", "silent"));
        assertThat(read("5V held low").findings()).containsExactly(Finding.of("rail-5v", "low"));
    }

    @Test
    void tables_and_trends_need_no_unit_where_the_rail_gives_it() {
        assertThat(read("12V ....... 12.03 ok\n3V3 ....... 0.00").findings())
                .extracting(Finding::symptomId, Finding::state)
                .containsExactly(tuple("rail-12v", "in-tolerance"), tuple("rail-3v3", "absent"));
        assertThat(read("12V rail reads 12.1 V, drops to 7 under load").understood())
                .extracting(u -> u.finding().state())
                .containsExactly("in-tolerance", "low");
        assertThat(read("5V0 4.97").quantities())
                .extracting(Reading.Value::value)
                .containsExactly(4.97);
        assertThat(read("bias 48 mV, book says 12").quantities())
                .extracting(Reading.Value::value)
                .containsExactly(0.048, 0.012);
    }

    @Test
    void other_units_orders_and_hearsay_are_no_findings() {
        assertThat(read("The other one on the shelf has no 12 V.").findings()).isEmpty();
        assertThat(read("I wouldn't say the 5 V is missing.").findings()).isEmpty();
        assertThat(read("Before you start:\n1. unplug the fan\n2. measure the 12 V")
                        .findings())
                .isEmpty();
    }

    @Test
    void what_was_not_understood_is_named() {
        Reading reading = read("green light, purple haze over the tuner, 12V missing");
        assertThat(reading.notUnderstood()).extracting(Span::text).containsExactly("purple haze over the tuner");
    }

    @Test
    void small_slips_are_forgiven_but_not_in_short_words_or_codes() {
        assertThat(read("contoller silent").findings()).containsExactly(Finding.of("controller-response", "silent"));
        assertThat(read("fan daed").findings()).isEmpty();
        assertThat(read("power lamp greeen").findings()).containsExactly(Finding.of("power-lamp", "green"));
        assertThat(read("power lamp greed").findings())
                .as("another English word")
                .isEmpty();
        assertThat(read("13V missing").findings()).isEmpty();
        assertThat(READER.read("K-208 logged", CORVANE).findings()).isEmpty();
    }

    @Test
    void device_words_hold_inside_the_device_only() {
        String text = "VSB5 dead, slow amber blink";
        assertThat(READER.read(text, CORVANE).findings())
                .containsExactly(Finding.of("power-lamp", "amber"), Finding.of("rail-standby", "absent"));
        assertThat(READER.read(text, DeviceScope.parse("disc-recorder")).findings())
                .doesNotContain(Finding.of("rail-standby", "absent"));
    }

    @Test
    void codes_are_counted_known_or_not() {
        Reading reading = READER.read("K-207 again and again. K 207 today. Q-9 no, but ZX-501 too.", CORVANE);
        assertThat(reading.findings()).containsExactly(Finding.of("log-undervoltage", "recurring"));
        assertThat(reading.codes()).extracting(Reading.CodeSeen::code).containsExactly("K-207", "ZX-501");
        assertThat(reading.codes()).extracting(Reading.CodeSeen::known).containsExactly(true, false);
        assertThat(reading.codes().get(0).count()).isEqualTo(2);
        assertThat(READER.read("K-207 once", CORVANE).findings())
                .containsExactly(Finding.of("log-undervoltage", "once"));
        assertThat(READER.read("no K-207", CORVANE).findings())
                .containsExactly(Finding.of("log-undervoltage", "absent"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "had K-207 last year",
                "K-207 in the log from 2019, none since",
                "K-207 twice before the repair, K-311 now",
                "years ago it showed K-207"
            })
    void codes_of_former_times_are_history(String text) {
        Reading reading = READER.read(text, CORVANE);
        assertThat(reading.codes().get(0).past()).isTrue();
        assertThat(reading.findings()).noneMatch(f -> f.symptomId().equals("log-undervoltage"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"K-207 since last week", "K-207 now, K-311 last year", "yesterday K-207"})
    void codes_of_late_are_none(String text) {
        assertThat(READER.read(text, CORVANE).codes().get(0).past()).isFalse();
    }

    @Test
    void codes_that_are_only_supposed_do_not_count() {
        assertThat(READER.read("if K-207 shows up, replace the drive", CORVANE).codes())
                .isEmpty();
        assertThat(READER.read("K-207 means low mains", CORVANE).codes()).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "K-207 x3, K-311 once",
                "5 x K207 in the log, K-311 (1x)",
                "three times K-207 and one time K-311",
                "K-207 comes every evening; K-311",
                "K-311 once, K-207 (4x)"
            })
    void how_often_a_code_came_is_taken_from_what_stands_nearest(String text) {
        assertThat(READER.read(text, CORVANE).understood())
                .extracting(
                        u -> u.span().text().contains("311") + " " + u.finding().state())
                .containsExactlyInAnyOrder("false recurring", "true once");
    }

    @Test
    void quantities_are_listed_whether_understood_or_not() {
        assertThat(read("470 µF cap, 3V3 missing, 20 minutes").quantities())
                .extracting(Reading.Value::unit)
                .containsExactly("F", "s");
    }

    @Test
    void longest_text_is_read_and_a_longer_one_refused_with_advice() {
        String most = "12V missing. ".repeat(Reader.MOST_CHARACTERS / 13);
        assertThat(read(most).findings()).containsExactly(Finding.of("rail-12v", "absent"));
        assertThatThrownBy(() -> read("x".repeat(Reader.MOST_CHARACTERS + 1)))
                .isInstanceOf(TextTooLongException.class)
                .hasMessageContaining("1048577")
                .hasMessageContaining("split it");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "\n\n",
                "\ud800",
                "\u202e12V\u202c missing",
                "\u0000\u0007",
                "....",
                "-",
                "no",
                "no no no",
                "5",
                "±"
            })
    void odd_texts_are_no_trouble(String text) {
        assertThat(read(text).text()).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"5-%s", "%s", "1.%s V", "K-%s", "±%s"})
    @Timeout(10) // a million digits through BigDecimal would take minutes
    void endless_digits_cost_no_more_than_other_text(String frame) {
        String text = String.format(Locale.ROOT, frame, "1".repeat(1_000_000));
        assertThat(read(text).understood()).isEmpty();
    }

    private static Reading read(String text) {
        return READER.read(text, DeviceScope.ANY);
    }
}
