package org.benchlore.kb.reading;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.Device.Counter.Meaning;
import org.benchlore.kb.reading.LogForm.Count;
import org.benchlore.kb.reading.LogForm.Part;

/** Counters called by the names they usually have: "power-ups 452", "hours total : 6904", "shut down properly 498 times". */
final class NamedCounters {
    private static final String IS =
            "(?:\\s+(?:total|count|counter|at|is|since new))*(?:\"?\\s*[:=]\\s*\"?|\\s*\\.{3,}\\s*|\\s+)";
    private static final String VALUE = IS + "(?P<value>\\d{1,7})\\b";
    private static final Map<Meaning, List<Pattern>> NAMES = new EnumMap<>(Map.of(
            Meaning.STARTS,
            List.of(
                    Pattern.compile(
                            "(?i)\\b(?P<name>power[-_ ]?(?:ups?|cycles?|ons?)|switch[-_ ]?ons?|(?:powered|switched) on"
                                    + "|starts?|strts?|on/off|boots?)" + VALUE),
                    Pattern.compile(
                            "(?i)\\b(?P<value>\\d{1,7}) (?P<name>power[-_ ]?(?:ups|cycles|ons)|switch-ons|starts|boots)\\b")),
            Meaning.CLEAN_STOPS,
            List.of(Pattern.compile(
                    "(?i)\\b(?P<name>(?:clean|normal|proper|good)(?:[-_ ](?:stops?|shut-?downs?|power-?downs?|offs?))?"
                            + "|stops?[-_ ]ok|key-offs?|shut down (?:properly|cleanly))" + VALUE)),
            Meaning.UNCLEAN_STOPS,
            List.of(Pattern.compile(
                    "(?i)\\b(?P<name>(?:unclean|dirty|bad|hard|abrupt)(?:[-_ ](?:stops?|shut-?downs?|power (?:losses|loss|offs?)|offs?))?"
                            + "|stops?[-_ ](?:nok|not ok)|stops? without key|power losses)" + VALUE)),
            Meaning.HOURS,
            List.of(Pattern.compile(
                    "(?i)\\b(?P<name>(?:op(?:erating)? |run(?:ning)? |lamp |total )?(?:hours|hrs)(?: of use)?"
                            + "|hour (?:counter|meter)|run(?:ning)?|total running|betriebsstunden)" + VALUE))));

    /** A count of what happens, not what a counter stands at: "starts 2 of 5 times", "3 starts". */
    private static final int SHORTEST = 2;

    private NamedCounters() {}

    /** Those of a line. */
    static List<Count> in(String line) {
        List<Count> counts = new ArrayList<>();
        if (line.chars().noneMatch(Character::isDigit)) {
            return counts;
        }
        NAMES.forEach((means, patterns) -> {
            for (Pattern pattern : patterns) {
                Matcher matcher = pattern.matcher(line);
                while (matcher.find()) {
                    String value = matcher.group("value");
                    if (value.length() >= SHORTEST && !other(means, line, matcher.start(), matcher.end())) {
                        counts.add(new Count(
                                means,
                                new Part(matcher.group("name"), matcher.start("name")),
                                new Part(value, matcher.start("value"))));
                        return;
                    }
                }
            }
        });
        return counts;
    }

    /** "3 hours 20" is a time, "run 10.5" a reading, "power on hours" a drive's own. */
    private static boolean other(Meaning means, String line, int from, int to) {
        String before = line.substring(0, from).stripTrailing();
        boolean time = means == Meaning.HOURS
                && (before.endsWith("on")
                        || (!before.isEmpty() && Character.isDigit(before.charAt(before.length() - 1))));
        boolean goesOn = to + 1 < line.length()
                && ":.,/-".indexOf(line.charAt(to)) >= 0
                && Character.isDigit(line.charAt(to + 1));
        return time || goesOn;
    }
}
