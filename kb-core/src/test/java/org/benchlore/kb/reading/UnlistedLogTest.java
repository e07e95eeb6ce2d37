package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalLong;
import org.benchlore.kb.knowledge.DeviceScope;
import org.junit.jupiter.api.Test;

/** Logs of units that no pack describes. All forms are invented. */
class UnlistedLogTest {
    private static final Reader READER = Reader.of(Fixture.knowledge("rules-pack.yaml"));

    @Test
    void codes_behind_a_time_are_counted_and_dated() {
        LogReading log = log("""
                [0001] 2019-03-02 18:04:11 E07 TRAY
                [0002] 2019-03-02 18:04:40 E07 TRAY
                [0003] 2019-03-05 20:17:02 E12 FOCUS
                [0004] 2019-03-05 20:17:09 system ready
                """);
        assertThat(codes(log)).containsExactly("E07 2", "E12 1");
        assertThat(log.codes().get(0).last()).contains(LocalDateTime.of(2019, 3, 2, 18, 4, 40));
        assertThat(log.codes()).noneMatch(LogReading.CodeCount::known);
        assertThat(log.implausible()).isEmpty();
    }

    @Test
    void a_clock_that_jumps_back_is_doubted() {
        LogReading log = log("""
                2021/11/30 07:13 P103 heater relay
                2021/11/30 07:15 P103 heater relay
                2000/01/01 00:01 P103 heater relay
                """);
        assertThat(codes(log)).containsExactly("P103 3");
        assertThat(log.implausible()).extracting(Reading.Span::text).containsExactly("2000/01/01 00:01");
    }

    @Test
    void a_word_such_as_error_calls_what_stands_behind_it_a_code() {
        assertThat(codes(log("""
                ERR 5-02
                ERR 5-02
                ERR 3-11
                (list end)
                """))).containsExactly("5-02 2", "3-11 1");
        assertThat(codes(log("""
                err 1 : LMP7
                err 2 : LMP7
                err 3 : FAN1
                """))).containsExactly("LMP7 2", "FAN1 1");
    }

    @Test
    void a_table_counts_in_a_column() {
        assertThat(codes(log("""
                #  CODE   CNT  LAST
                1  C-118  14   2016-08-09
                2  C-204  2    2016-08-11
                """))).containsExactly("C-118 14", "C-204 2");
        assertThat(codes(log("""
                idx;date;time;code;text
                1;2017-02-11;14:00;X9;door
                2;2017-02-11;14:00;X9;door
                3;2017-02-12;08:45;;reset by user
                """))).containsExactly("X9 2");
    }

    @Test
    void counters_go_by_their_usual_names() {
        LogReading log = log("on/off count : 452\nhours total : 6904\nclean stops : 412\nE07 x3");
        assertThat(log.starts()).isEqualTo(OptionalLong.of(452));
        assertThat(log.hours()).isEqualTo(OptionalLong.of(6904));
        assertThat(log.uncleanStops()).isEqualTo(OptionalLong.of(40));
        assertThat(log("abrupt power losses 19").uncleanStops()).isEqualTo(OptionalLong.of(19));
    }

    @Test
    void what_is_told_of_time_is_no_counter() {
        for (String told : List.of("ran 3 hours 20 minutes", "starts 12:30", "power on hours 41200", "run 10.5 V")) {
            LogReading log = log(told);
            assertThat(log.hours()).as(told).isEmpty();
            assertThat(log.starts()).as(told).isEmpty();
        }
    }

    @Test
    void a_log_line_is_no_sentence_but_a_diary_is() {
        Reading log = READER.read("10:00:01 E14 fuse blown\n10:00:09 E14 fuse blown\n", DeviceScope.ANY);
        assertThat(log.understood()).isEmpty();
        assertThat(log.codes()).extracting(Reading.CodeSeen::count).containsExactly(2);
        Reading diary = READER.read(
                "12 May: the fuse was blown and I put in a new one\n13 May: the tray opens halfway\n", DeviceScope.ANY);
        assertThat(diary.understood()).hasSize(2);
        assertThat(diary.codes()).isEmpty();
    }

    @Test
    void codes_in_a_sentence_come_as_often_as_it_says() {
        assertThat(seen("log: E14 x3, E102 once")).containsExactly("E14 3", "E102 1");
        assertThat(seen("Error memory: H10 (6), H11 (1)")).containsExactly("H10 6", "H11 1");
        assertThat(seen("logged PX-904 twice")).containsExactly("PX-904 2");
        assertThat(seen("1x G14, 2x G17")).containsExactly("G14 1", "G17 2");
        assertThat(seen("faults C9 C9 C9 C2")).containsExactly("C9 3", "C2 1");
        assertThat(seen("replaced C9, C12 and R3")).isEmpty();
        assertThat(seen("brown under R31, R31 measures fine")).isEmpty();
        assertThat(seen("error code 21")).containsExactly("21 1");
    }

    private static LogReading log(String text) {
        return READER.readLog(text, DeviceScope.ANY);
    }

    private static List<String> codes(LogReading log) {
        return log.codes().stream().map(c -> c.code() + " " + c.count()).toList();
    }

    private static List<String> seen(String text) {
        return READER.read(text, DeviceScope.ANY).codes().stream()
                .map(c -> c.code() + " " + c.count())
                .toList();
    }

    @Test
    void lines_without_a_code_are_listed_as_not_understood() {
        Reading reading = READER.read("12:03 E14\n12:04 fan wobbles oddly\n12:05 E14 x3\nno sound", DeviceScope.ANY);
        assertThat(reading.codes()).extracting(Reading.CodeSeen::count).containsExactly(4);
        assertThat(reading.notUnderstood()).extracting(Reading.Span::text).contains("fan wobbles oddly");
        assertThat(reading.notUnderstood())
                .allSatisfy(span -> assertThat(reading.text().substring(span.start(), span.end()))
                        .isEqualTo(span.text()));
    }
}
