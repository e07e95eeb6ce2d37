package org.benchlore.kb.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class CaseIdsTest {
    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    /** A clock that a test can set. */
    private static final class Hands extends Clock {
        private Instant instant = NOON;

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return Clock.fixed(instant, zone);
        }

        @Override
        public Instant instant() {
            return instant;
        }
    }

    @Test
    void event_ids_rise_while_the_clock_runs_stands_or_is_set_back() {
        Hands clock = new Hands();
        CaseIds ids = new CaseIds(clock, new Random(1));
        Random random = new Random(2);
        String before = "";
        for (int i = 0; i < 10_000; i++) {
            clock.instant = clock.instant.plusMillis(random.nextInt(5) - 2);
            String id = ids.eventId();
            assertThat(id).hasSize(26).isGreaterThan(before).matches("[0-9a-hjkmnp-tv-z]+");
            before = id;
        }
    }

    @Test
    void when_the_chance_bits_run_over_the_next_millisecond_is_borrowed() {
        CaseIds ids = new CaseIds(new Hands(), () -> -1L);
        String last = ids.eventId();
        assertThat(last).endsWith("zzzzzzzzzzzzzzzz");
        assertThat(ids.eventId()).isGreaterThan(last).endsWith("0000000000000000");
    }

    @Test
    void the_time_is_in_the_first_ten_digits() {
        CaseIds ids = new CaseIds(Clock.fixed(Instant.ofEpochMilli(33), ZoneOffset.UTC), new Random(1));
        assertThat(ids.eventId()).startsWith("0000000011"); // 33 = 1 * 32 + 1
    }

    @Test
    void threads_get_different_ids() {
        CaseIds ids = new CaseIds(new Hands(), new Random(1));
        Set<String> all = ConcurrentHashMap.newKeySet();
        IntStream.range(0, 20_000).parallel().forEach(i -> all.add(ids.eventId()));
        assertThat(all).hasSize(20_000);
    }

    @Test
    void a_clock_before_1970_is_refused() {
        Hands clock = new Hands();
        clock.instant = Instant.parse("1969-12-31T23:59:59Z");
        assertThatThrownBy(new CaseIds(clock, new Random(1))::eventId)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContainingAll("1969", "set it");
    }

    @Test
    void case_ids_are_the_day_in_the_clocks_zone_and_four_characters() {
        Clock east = Clock.fixed(NOON, ZoneId.of("Pacific/Auckland"));
        assertThat(new CaseIds(east, new Random(1)).caseId(id -> false)).matches("20261126-[0-9a-hjkmnp-tv-z]{4}");
    }

    @Test
    void taken_case_ids_are_passed_over_and_a_full_day_gets_longer_ones() {
        CaseIds ids = new CaseIds(new Hands(), new Random(1));
        Set<String> taken = new HashSet<>();
        for (int i = 0; i < 3000; i++) {
            assertThat(taken.add(ids.caseId(taken::contains))).isTrue();
        }
        RandomGenerator stuck = () -> 0L;
        assertThat(new CaseIds(new Hands(), stuck).caseId("20261125-0000"::equals))
                .isEqualTo("20261125-00000");
        assertThatThrownBy(() -> ids.caseId(id -> true)).isInstanceOf(IllegalStateException.class);
    }
}
