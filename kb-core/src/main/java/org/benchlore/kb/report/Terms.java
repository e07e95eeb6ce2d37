package org.benchlore.kb.report;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Finding;

/** Ids, numbers and times as a reader wants them. An id that the packs no longer know stands for itself. */
record Terms(Knowledge knowledge) {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.UK).withZone(ZoneOffset.UTC);

    static String time(Instant at) {
        return TIME.format(at);
    }

    /** The log's own clock, whatever its zone. */
    static String clock(LocalDateTime at) {
        return CLOCK.format(at);
    }

    /** As one writes it on a letter. */
    static String day(Instant at) {
        return DAY.format(at);
    }

    /** Never 0 % or 100 %. */
    static String share(double p) {
        if (p < 0.01) {
            return "<1 %";
        }
        return p > 0.99 ? ">99 %" : String.format(Locale.ROOT, "%.0f %%", 100 * p);
    }

    /** "3 % to 40 %", or one end where the other rounds to nothing or to all; "anywhere" where both do. */
    static String range(double low, double high) {
        if (low < 0.01 && high > 0.99) {
            return "anywhere";
        }
        if (low > 0.99) {
            return "over 99 %";
        }
        if (low < 0.01) {
            return "under " + (high < 0.01 ? "1 %" : share(high));
        }
        return high > 0.99 ? "over " + share(low) : share(low) + " to " + share(high);
    }

    static String words(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String capital(String text) {
        if (text.isEmpty()) {
            return text;
        }
        int first = text.codePointAt(0);
        return Character.toString(Character.toTitleCase(first)) + text.substring(Character.charCount(first));
    }

    /** Hours without false precision. */
    static String hours(double hours) {
        String number = number(hours);
        return number + (number.equals("1") ? " hour" : " hours");
    }

    static String number(double hours) {
        return hours < 10 && Math.abs(hours - Math.rint(hours)) > 0.05
                ? String.format(Locale.ROOT, "%.1f", hours)
                : Long.toString(Math.round(hours));
    }

    static String count(int n, String one, String many) {
        return n + " " + (n == 1 ? one : many);
    }

    /** With a capital, as it stands at the head of a line. */
    String symptom(String id) {
        return capital(knowledge.symptom(id).map(Symptom::name).orElse(id));
    }

    /** The states worth naming, the likeliest first; "not clear" where that is all of them. */
    String state(Finding finding) {
        if (finding.certain()) {
            return state(finding.symptomId(), finding.state());
        }
        List<String> likely = finding.likely();
        boolean all = knowledge
                .symptom(finding.symptomId())
                .map(s -> likely.size() == s.states().size())
                .orElse(false);
        return all
                ? "not clear"
                : likely.stream().map(s -> state(finding.symptomId(), s)).collect(Collectors.joining(" or "))
                        + ", not certain";
    }

    String state(String symptomId, String stateId) {
        return knowledge
                .symptom(symptomId)
                .flatMap(s -> s.state(stateId))
                .map(State::name)
                .orElse(stateId);
    }

    String finding(Finding finding) {
        return finding(finding.symptomId(), state(finding));
    }

    /** "12 V rail: absent"; the name alone where the state only says it again. */
    String finding(String symptomId, String state) {
        String name = symptom(symptomId);
        return name.toLowerCase(Locale.ROOT).startsWith(state.toLowerCase(Locale.ROOT)) ? name : name + ": " + state;
    }

    /** The same, without saying "present" of what is either there or not. */
    String brief(Finding finding) {
        return finding(finding.symptomId(), finding.state().equals("present") ? "" : state(finding));
    }

    String findings(List<Finding> findings) {
        return findings.stream().map(this::finding).collect(Collectors.joining("; "));
    }

    /** Whether a sound unit shows this. */
    boolean normal(Finding finding) {
        return knowledge.normal(finding.symptomId(), finding.state());
    }

    String cause(String id) {
        if (id.equals(CaseEvent.FixApplied.UNKNOWN_CAUSE)) {
            return "a cause nobody named";
        }
        return id.equals(CaseEvent.Concluded.UNLISTED)
                ? "none of the causes known here"
                : knowledge.cause(id).map(Cause::name).orElse(id);
    }

    String test(String id) {
        return knowledge.test(id).map(BenchTest::name).orElse(id);
    }

    /** What was done, for those who may read the bench's own words. */
    String work(CaseEvent.FixApplied fix) {
        return fix.fixId().equals(CaseEvent.FixApplied.UNLISTED) && !fix.note().isBlank()
                ? capital(fix.note().strip())
                : fix(fix.fixId());
    }

    String fix(String id) {
        return id.equals(CaseEvent.FixApplied.UNLISTED)
                ? "Work that no pack knows"
                : knowledge.fix(id).map(Fix::name).orElse(id);
    }

    /** The innermost device pack's name, else the path; of a unit without one, the kinds it is told to be of. */
    String device(DeviceScope scope, List<String> kinds) {
        if (scope.depth() == 0) {
            String told = kinds.stream()
                    .flatMap(id -> knowledge.deviceClass(id).stream())
                    .map(Device::name)
                    .collect(Collectors.joining(" or "));
            return told.isEmpty() ? "not stated" : told + ", by what was told";
        }
        return knowledge.devices().stream()
                .filter(d ->
                        d.scope().contains(scope) && (!d.onlyKind() || d.scope().equals(scope)))
                .max(Comparator.comparingInt(d -> d.scope().depth()))
                .map(Device::name)
                .orElse(scope.toString());
    }

    /** The same with the whole path. */
    String devicePath(DeviceScope scope, List<String> kinds) {
        String name = device(scope, kinds);
        return scope.depth() == 0 || name.equals(scope.toString()) ? name : name + ", " + scope;
    }
}
