package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DateScanTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2024-03-12",
                "[12/03/2024, 09:12]",
                "09:00-10:30 Tue 12 March 2024",
                "Di., 12.3.24",
                "2024/3/12",
                "2024-03-12T10:15:00Z",
                "2024-03-12 10:15",
                "2024-03-12T10:15:30+01:00",
                "2024-03-12T10:15-0330",
                "2024-03-12 10:15:30.250+02",
                "12.3.2024 10:15 AM",
                "12/3/2024, 3:15:30\u202fpm",
                "12/3/2024 3:15 p.m.",
                "12.3.2024",
                "12.03.24",
                "12/3/2024",
                "12-03-2024",
                "12 Mar 2024",
                "12. March 2024",
                "12th Mar 24",
                "12-Mar-2024",
                "March 12th, 2024",
                "Mar 12 2024",
                "Tuesday, 12 March 2024",
                "Tue 12.3.2024, 9:30",
            })
    void days_are_read_as_people_write_them(String text) {
        assertThat(DateScan.whole(text, DateOrder.DMY).flatMap(DateScan.Found::date))
                .as(text)
                .contains(LocalDate.of(2024, 3, 12));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "14.03. - amp",
                "14.3.",
                "14 march amp",
                "14th March: amp",
                "14/3: amp",
                "14/3 - amp",
                "March 14: amp"
            })
    void below_a_full_date_the_year_goes_on(String text) {
        LocalDate above = LocalDate.of(2024, 3, 12);
        assertThat(DateScan.at(text, 0, DateOrder.DMY, above).flatMap(DateScan.Found::date))
                .contains(LocalDate.of(2024, 3, 14));
        assertThat(DateScan.at(text, 0, DateOrder.DMY)).isEmpty();
    }

    @Test
    void the_year_turns_in_winter_and_what_is_no_day_is_no_date() {
        assertThat(DateScan.at("3.1. radio", 0, DateOrder.DMY, LocalDate.of(2023, 12, 20))
                        .flatMap(DateScan.Found::date))
                .contains(LocalDate.of(2024, 1, 3));
        LocalDate above = LocalDate.of(2024, 3, 12);
        for (String text :
                new String[] {"31/2: no day", "3/4 full", "12.05 V on the rail", "40.2. of them", "may 5 be it"}) {
            assertThat(DateScan.at(text, 0, DateOrder.DMY, above)).as(text).isEmpty();
        }
    }

    @Test
    void slashes_follow_the_order_that_was_said_and_dots_do_not() {
        assertThat(day("3/12/2024", DateOrder.MDY)).contains(LocalDate.of(2024, 3, 12));
        assertThat(day("3/12/2024", DateOrder.DMY)).contains(LocalDate.of(2024, 12, 3));
        assertThat(day("3.12.2024", DateOrder.MDY)).contains(LocalDate.of(2024, 12, 3));
    }

    /** POSIX strptime: values from 69 to 99 are 1969 to 1999, from 00 to 68 are 2000 to 2068. */
    @Test
    void years_of_two_digits_are_those_of_posix() {
        assertThat(day("1.2.68", DateOrder.DMY)).contains(LocalDate.of(2068, 2, 1));
        assertThat(day("1.2.69", DateOrder.DMY)).contains(LocalDate.of(1969, 2, 1));
    }

    @ParameterizedTest
    @ValueSource(strings = {"31.2.2024", "2023-02-29", "12/13/2024"})
    void a_day_that_no_calendar_has_is_found_and_is_none(String text) {
        Optional<DateScan.Found> found = DateScan.whole(text, DateOrder.DMY);
        assertThat(found).as(text).isPresent();
        assertThat(found.get().date()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "3.3 V",
                "12.3",
                "1.2.3.4",
                "2024",
                "12 V 2024",
                "0800",
                "march on",
                "5VSB",
                "12.3.20245",
                "1-2-3",
                ""
            })
    void other_numbers_are_no_days(String text) {
        assertThat(DateScan.whole(text, DateOrder.DMY)).as(text).isEmpty();
    }

    private static Optional<LocalDate> day(String text, DateOrder order) {
        return DateScan.whole(text, order).flatMap(DateScan.Found::date);
    }

    @Test
    void a_bracket_and_a_time_before_a_day_go_with_it_only_where_they_are_whole() {
        assertThat(rest("[12.3.2024 10:15] amp hums")).isEqualTo(" amp hums");
        assertThat(day("[12.3.2024 amp hums", DateOrder.DMY)).isEmpty();
        assertThat(day("09:000 12.3.2024", DateOrder.DMY)).isEmpty();
        assertThat(day("10:15 amp hums", DateOrder.DMY)).isEmpty();
        assertThat(day("so 12 march 2024", DateOrder.DMY)).isEmpty();
    }

    @Test
    void only_what_belongs_to_the_time_of_day_goes_with_the_date() {
        assertThat(rest("12.3.2024 10:15 amp hums")).isEqualTo(" amp hums");
        assertThat(rest("12.3.2024 14:15 AM radio")).isEqualTo(" AM radio");
        assertThat(rest("12.3.2024 10:15 am radio")).isEqualTo(" radio");
        assertThat(rest("12.3.2024 10:15 p.m. radio")).isEqualTo(" radio");
        assertThat(rest("12.3.2024 10:15 am. radio")).isEqualTo(". radio");
        assertThat(rest("12.3.2024 10:15 -12 V absent")).isEqualTo(" -12 V absent");
        assertThat(rest("12.3.2024 10:15-11:30 amp")).isEqualTo("-11:30 amp");
        assertThat(rest("12.3.2024 10:15:30+99 V")).isEqualTo("+99 V");
    }

    private static String rest(String text) {
        return text.substring(
                DateScan.at(text, 0, DateOrder.DMY).map(DateScan.Found::end).orElse(0));
    }
}
