package org.benchlore.kb.cases;

import java.time.Clock;
import java.time.LocalDate;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;

/**
 * New ids. Thread-safe; keep one per process, seeded differently in each.
 *
 * <p>An event id is 26 characters: 48 bits of milliseconds, then 80 bits of chance, in Crockford's base 32, so that ids
 * sort by time. Ids from one instance increase strictly, even when the clock stands still or is set back. A case id is
 * the day and four characters, such as {@code 20261125-k7f3}, short enough to write on a label.
 */
public final class CaseIds {
    private static final String DIGITS = "0123456789abcdefghjkmnpqrstvwxyz"; // no i, l, o, u: they are misread
    private static final int LABEL = 4;
    private static final int TRIES_PER_LENGTH = 32;
    private static final long FORTY_BITS = (1L << 40) - 1;
    private static final long LAST_MILLIS = (1L << 48) - 1;

    private final Clock clock;
    private final RandomGenerator random;
    private long millis = -1;
    private long high; // 40 of the 80 bits of chance
    private long low; // the other 40

    /**
     * @param clock for the time of event ids, and in its zone the day of case ids
     * @param random used under a lock of this object only
     */
    public CaseIds(Clock clock, RandomGenerator random) {
        this.clock = clock;
        this.random = random;
    }

    /**
     * An event id that no other has, as far as 80 bits of chance go.
     *
     * @throws IllegalStateException if the clock stands before 1970 or after the year 10889
     */
    public synchronized String eventId() {
        long now = clock.millis();
        if (now < 0 || now >= LAST_MILLIS) {
            throw new IllegalStateException("the clock says " + clock.instant() + "; set it");
        }
        if (now > millis) {
            millis = now;
            high = random.nextLong() & FORTY_BITS;
            low = random.nextLong() & FORTY_BITS;
        } else {
            increment();
        }
        StringBuilder id = new StringBuilder(26);
        digits(id, millis, 10);
        digits(id, high, 8);
        digits(id, low, 8);
        return id.toString();
    }

    private void increment() {
        low = (low + 1) & FORTY_BITS;
        if (low == 0) {
            high = (high + 1) & FORTY_BITS;
            if (high == 0) {
                millis++;
            }
        }
    }

    private static void digits(StringBuilder id, long value, int count) {
        for (int shift = 5 * (count - 1); shift >= 0; shift -= 5) {
            id.append(DIGITS.charAt((int) (value >>> shift) & 31));
        }
    }

    /**
     * A short readable case id. When most ids of a day are taken it grows by a character.
     *
     * @param taken whether an id is in use, usually {@code store::hasCase}
     */
    public synchronized String caseId(Predicate<String> taken) {
        String day =
                LocalDate.ofInstant(clock.instant(), clock.getZone()).toString().replace("-", "");
        for (int length = LABEL; ; length++) {
            for (int tries = 0; tries < TRIES_PER_LENGTH; tries++) {
                StringBuilder id = new StringBuilder(day).append('-');
                digits(id, random.nextLong(), length);
                String made = id.toString();
                if (!taken.test(made)) {
                    return made;
                }
            }
            if (length == 12) {
                throw new IllegalStateException("every case id is taken; check the test for taken ids");
            }
        }
    }
}
