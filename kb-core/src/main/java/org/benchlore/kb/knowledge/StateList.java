package org.benchlore.kb.knowledge;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The states of a set or of one symptom as written: what they have in common before a quantity turns their ranges into
 * volts.
 *
 * @param place where the list starts
 * @param states by id, in order
 */
record StateList(Place place, Map<String, Draft> states) {
    static final StateList NONE = new StateList(new Place("", 1, 1), Map.of());

    /** Slack for decimal fractions that do not sum to 1 exactly. */
    static final double SUM_TOLERANCE = 1e-6;

    private static final int MIN_STATES = 2;
    private static final int MAX_STATES = 40;

    /** One state as written. */
    record Draft(
            String id,
            String name,
            boolean normal,
            @Nullable Double usual,
            @Nullable RangeText range,
            List<String> words,
            @Nullable String opposite,
            Place place,
            Place rangePlace,
            Place oppositePlace) {}

    static StateList bind(YamlNode node, Object subject, Values values, Problems problems) {
        Map<String, Draft> states = new LinkedHashMap<>();
        for (YamlNode item : values.items(node, Subject.of(subject, ": 'states'"))) {
            Fields.of(item, Subject.of("a state of ", subject), values, problems)
                    .ifPresent(fields -> {
                        Draft draft = draft(fields, subject, values, problems);
                        Draft first = states.putIfAbsent(draft.id(), draft);
                        if (first != null) {
                            problems.error(
                                    draft.place(),
                                    subject + " has the state " + Problems.quote(draft.id()) + " twice, first on line "
                                            + first.place().line(),
                                    "keep one of them");
                        }
                    });
        }
        StateList list = new StateList(node.place(), states);
        if (node instanceof YamlNode.Items) {
            list.check(subject, problems);
        }
        return list;
    }

    private static Draft draft(Fields fields, Object subject, Values values, Problems problems) {
        String id = fields.id("id");
        Subject what = Subject.of("state ", Subject.quoted(id), " of ", subject);
        Draft draft = new Draft(
                id,
                fields.name("name", id.replace('-', ' ')),
                fields.flag("normal"),
                fields.find("usual")
                        .map(node ->
                                values.number(node, Subject.of(what, ": 'usual'"), Values.Span.SHARE, Values.STAND_IN))
                        .orElse(null),
                fields.find("range")
                        .flatMap(node -> range(node, what, values, problems))
                        .orElse(null),
                fields.names("words"),
                fields.has("opposite") ? fields.name("opposite") : null,
                fields.place("id"),
                fields.place("range"),
                fields.place("opposite"));
        fields.finish();
        return draft;
    }

    private static Optional<RangeText> range(YamlNode node, Object what, Values values, Problems problems) {
        String written = values.text(node, Subject.of(what, ": 'range'"), Values.MAX_NAME);
        Optional<RangeText> range = RangeText.parse(written);
        if (range.isEmpty() && !written.isEmpty()) {
            problems.error(
                    node.place(),
                    what + ": " + Problems.quote(written) + " is not a range",
                    written.contains(",")
                            ? "write a decimal point: " + Problems.quote(written.replace(',', '.'))
                            : "write LOW..HIGH with ends such as 10%, -tol, +tol or 4.75; leave an open end out");
        }
        return range;
    }

    private void check(Object subject, Problems problems) {
        if (states.size() < MIN_STATES || states.size() > MAX_STATES) {
            problems.error(
                    place,
                    subject + " has " + states.size() + " state" + (states.size() == 1 ? "" : "s"),
                    "name from " + MIN_STATES + " to " + MAX_STATES);
        }
        List<Draft> normal = states.values().stream().filter(Draft::normal).toList();
        if (normal.isEmpty()) {
            problems.error(place, subject + " has no normal state", "mark what a sound unit shows with 'normal: true'");
        }
        normal.stream()
                .skip(1)
                .forEach(extra -> problems.error(
                        extra.place(),
                        subject + " has a second normal state " + Problems.quote(extra.id()),
                        "keep 'normal: true' on one state only"));
        checkSum(subject, problems);
        checkWords(subject, problems);
        for (Draft draft : states.values()) {
            String opposite = draft.opposite();
            if (opposite != null && !opposite.isEmpty() && !states.containsKey(opposite)) {
                problems.error(
                        draft.oppositePlace(),
                        subject + ": the opposite of " + Problems.quote(draft.id()) + ", " + Problems.quote(opposite)
                                + ", is not one of its states",
                        Nearest.remedy(opposite, states.keySet(), "choose from " + String.join(", ", states.keySet())));
            }
        }
    }

    private void checkSum(Object subject, Problems problems) {
        double sum = 0;
        for (Draft draft : states.values()) {
            Double usual = draft.usual();
            if (usual == null) {
                return;
            }
            sum += usual;
        }
        if (Math.abs(sum - 1) > SUM_TOLERANCE && !states.isEmpty()) {
            problems.error(
                    place, subject + ": 'usual' of all states sums to " + Problems.plain(sum), "make it sum to 1");
        }
    }

    private void checkWords(Object subject, Problems problems) {
        Map<String, String> taught = new HashMap<>();
        for (Draft draft : states.values()) {
            for (String word : draft.words()) {
                String other = taught.putIfAbsent(word.toLowerCase(Locale.ROOT), draft.id());
                if (other != null) {
                    problems.warn(
                            draft.place(),
                            subject + ": the word " + Problems.quote(word) + " means "
                                    + (other.equals(draft.id())
                                            ? Problems.quote(other) + " twice"
                                            : "both " + Problems.quote(other) + " and " + Problems.quote(draft.id())),
                            "keep it at one state");
                }
            }
        }
    }
}
