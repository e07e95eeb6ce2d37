package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.Optional;
import java.util.OptionalLong;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Reading.Span;
import org.junit.jupiter.api.Test;

class LogReadingTest {
    private static final Reader READER = Reader.of(Fixture.knowledge());
    private static final DeviceScope CORVANE = DeviceScope.parse("disc-recorder/corvane/corvane-300");
    private static final String LOG = """
            2021-03-04 10:00:00 K-207 supply low
            2021-03-09 21:14:02 K-311 watchdog
            1970-01-01 00:00:09 K-207 supply low
            2021-04-01 08:30:00 K-207 supply low
            2001-01-01 00:00:01 K-400 unknown to us
            2021-05-31 08:30:00 K-207 supply low
            STARTS=452
            STOPS_OK=412
            -- end of page --
            """;

    @Test
    void codes_are_counted_with_their_first_and_last_plausible_time() {
        LogReading log = READER.readLog(LOG, CORVANE);
        LogReading.CodeCount undervoltage = log.codes().get(0);
        assertThat(undervoltage.code()).isEqualTo("K-207");
        assertThat(undervoltage.count()).isEqualTo(4);
        assertThat(undervoltage.first()).contains(LocalDateTime.of(2021, 3, 4, 10, 0));
        assertThat(undervoltage.last()).contains(LocalDateTime.of(2021, 5, 31, 8, 30));
        assertThat(log.codes()).extracting(LogReading.CodeCount::code).containsExactly("K-207", "K-311", "K-400");
        assertThat(log.codes()).extracting(LogReading.CodeCount::known).containsExactly(true, true, false);
    }

    @Test
    void clocks_that_were_reset_are_named_and_not_used() {
        LogReading log = READER.readLog(LOG, CORVANE);
        assertThat(log.implausible())
                .extracting(Span::text)
                .containsExactly("1970-01-01 00:00:09", "2001-01-01 00:00:01");
        assertThat(log.codes().get(2).first()).isEqualTo(Optional.empty());
    }

    @Test
    void starts_without_clean_stops_are_unclean_stops() {
        LogReading log = READER.readLog(LOG, CORVANE);
        assertThat(log.starts()).isEqualTo(OptionalLong.of(452));
        assertThat(log.cleanStops()).isEqualTo(OptionalLong.of(412));
        assertThat(log.uncleanStops()).isEqualTo(OptionalLong.of(40));
        assertThat(log.understood())
                .extracting(Reading.Understood::finding)
                .containsExactly(
                        Finding.of("log-undervoltage", "recurring"),
                        Finding.of("log-watchdog", "once"),
                        Finding.of("unclean-stops", "some"));
        assertThat(log.unmatched()).extracting(Span::text).containsExactly("-- end of page --");
    }

    @Test
    void counters_that_contradict_each_other_say_nothing() {
        LogReading log = READER.readLog("STARTS=10\nSTOPS_OK=12", CORVANE);
        assertThat(log.uncleanStops()).isEmpty();
        assertThat(log.understood()).isEmpty();
    }

    @Test
    void newest_first_is_an_order_too() {
        LogReading log = READER.readLog(
                "2021-05-31 08:30:00 K-207 a\n2021-04-01 08:30:00 K-207 b\n2021-03-01 08:30:00 K-207 c", CORVANE);
        assertThat(log.implausible()).isEmpty();
        assertThat(log.codes().get(0).first()).contains(LocalDateTime.of(2021, 3, 1, 8, 30));
    }

    @Test
    void note_with_a_pasted_log_is_read_once() {
        Reading reading = READER.read("Fan is noisy, see log:\n" + LOG + "K-207 again and again, 12V missing", CORVANE);
        assertThat(reading.findings())
                .containsExactly(
                        Finding.of("fan-behaviour", "noisy"),
                        Finding.of("log-undervoltage", "recurring"),
                        Finding.of("log-watchdog", "once"),
                        Finding.of("rail-12v", "absent"),
                        Finding.of("unclean-stops", "some"));
        assertThat(reading.codes().get(0).count()).isEqualTo(5);
        assertThat(reading.contradictions()).isEmpty();
    }

    @Test
    void without_a_device_codes_and_counters_are_known_by_their_form() {
        LogReading log = READER.readLog(LOG, DeviceScope.ANY);
        assertThat(log.codes()).extracting(LogReading.CodeCount::code).containsExactly("K-207", "K-311", "K-400");
        assertThat(log.codes()).noneMatch(LogReading.CodeCount::known);
        assertThat(log.uncleanStops()).isEqualTo(OptionalLong.of(40));
        assertThat(log.implausible()).hasSize(2);
        assertThat(log.unmatched()).extracting(Span::text).containsExactly("-- end of page --");
    }
}
