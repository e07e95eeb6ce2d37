package org.benchlore.kb.knowledge;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * One device family's own names for generic symptoms, or a class of devices: what such units are called and hold.
 *
 * @param scope the class, family, model or revision
 * @param name as it is called
 * @param invented whether the device is made up for demonstration
 * @param openingMinutes bench time to open and close it, more than 0; empty where the pack does not say
 * @param called words that name a unit of this class; empty for a family
 * @param calledFirst words that do so only as the first of a note, being mostly a part or a tool elsewhere ("fan"); empty for a
 *     family
 * @param has parts that a unit of this class may hold, such as {@code tape}; empty for a family, which has what its class has,
 *     and where the pack does not say
 * @param nets net names
 * @param lamps lamp meanings
 * @param codes log codes
 * @param logLines line patterns, tried in order
 * @param counters counters of the log
 */
public record Device(
        DeviceScope scope,
        String name,
        boolean invented,
        Optional<Double> openingMinutes,
        List<String> called,
        List<String> calledFirst,
        List<String> has,
        List<Net> nets,
        List<Lamp> lamps,
        List<Code> codes,
        List<LogLine> logLines,
        List<Counter> counters) {
    /** A net name and the symptom it is. */
    public record Net(String net, String symptomId) {}

    /** What a lamp does, in words, and the symptom state it means. */
    public record Lamp(List<String> says, String symptomId, String stateId) {
        public Lamp {
            says = List.copyOf(says);
        }
    }

    /**
     * A log code.
     *
     * @param code canonical spelling
     * @param spelled other spellings
     * @param symptomId a symptom with the states absent, once, recurring
     * @param means what the maker's log means by it
     * @param innocent when it is written without a fault; empty when never
     */
    public record Code(String code, List<String> spelled, String symptomId, String means, String innocent) {
        public Code {
            spelled = List.copyOf(spelled);
        }
    }

    /**
     * A log line pattern in RE2 syntax with the named groups time, code, text, counter, value (each optional).
     *
     * @param id unique within the device
     * @param pattern linear-time regular expression
     * @param timeFormat a {@link java.time.format.DateTimeFormatter} pattern for the group time, or null
     */
    public record LogLine(
            String id, String pattern, @Nullable String timeFormat) {}

    /** A counter and what it counts. */
    public record Counter(String counter, Meaning means) {
        /** What a counter counts. */
        public enum Meaning {
            STARTS,
            CLEAN_STOPS,
            UNCLEAN_STOPS,
            HOURS
        }
    }

    public Device {
        called = List.copyOf(called);
        calledFirst = List.copyOf(calledFirst);
        has = List.copyOf(has);
        nets = List.copyOf(nets);
        lamps = List.copyOf(lamps);
        codes = List.copyOf(codes);
        logLines = List.copyOf(logLines);
        counters = List.copyOf(counters);
    }

    /** Whether it only tells of a kind of unit, which names nothing inside it otherwise than any device does. */
    public boolean onlyKind() {
        boolean kind = !(called.isEmpty() && calledFirst.isEmpty() && has.isEmpty());
        return kind && nets.isEmpty() && lamps.isEmpty() && codes.isEmpty() && logLines.isEmpty() && counters.isEmpty();
    }
}
