package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Reads single values. Each method reports what is wrong and then returns a stand-in, so that the rest of the entry is
 * checked too; an entry with errors never leaves {@link PackReader}.
 */
final class Values {
    static final int MAX_NAME = 160;
    static final int MAX_TEXT = 4000;

    /** What the stand-in for a bad probability is; only ever seen by other checks. */
    static final double STAND_IN = 0.5;

    /** Words for how often, see writing-packs.md. */
    static final Map<String, Double> SCALE = scale();

    private static final Pattern NUMBER =
            Pattern.compile("[-+]?([0-9]{1,18}(\\.[0-9]{0,18})?|\\.[0-9]{1,18})(e[-+]?[0-9]{1,3})?");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("([-+]?[0-9]{1,9}),([0-9]{1,9})");
    private static final Pattern ID = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");
    private static final int MAX_ID = 80;

    private final Problems problems;

    Values(Problems problems) {
        this.problems = problems;
    }

    /** A number and the ends it must lie between, both of them excluded or both allowed. */
    record Span(double low, double high, boolean open) {
        static final Span SHARE = new Span(0, 1, true);
        static final Span CASES = new Span(0.5, 1000, false);
        static final Span ANY = new Span(-1e12, 1e12, false);

        boolean holds(double value) {
            return open ? value > low && value < high : value >= low && value <= high;
        }

        String inWords() {
            return "between " + Problems.plain(low) + " and " + Problems.plain(high) + (open ? ", both excluded" : "");
        }
    }

    /** Text of at most {@code maxChars}; empty when there is none to read. */
    String text(YamlNode node, Object what, int maxChars) {
        if (node instanceof YamlNode.Refused) {
            return "";
        }
        if (!(node instanceof YamlNode.Text text) || text.missing()) {
            problems.error(node.place(), what + " should be text, found " + node.kind(), "write one text there");
            return "";
        }
        String value = text.value().strip();
        if (value.isEmpty()) {
            problems.error(node.place(), what + " is empty", "write something, or leave the key out");
        } else if (value.length() > maxChars) {
            problems.error(
                    node.place(), what + " has " + value.length() + " characters, more than " + maxChars, "shorten it");
            return value.substring(0, maxChars);
        } else if (!text.plain() && PlainText.firstBad(value) >= 0) { // what is plain was seen in the file itself
            problems.error(node.place(), what + " holds a control character or invisible mark", "take it out");
        }
        return value;
    }

    String id(YamlNode node, Object what) {
        String id = text(node, what, MAX_ID);
        if (!id.isEmpty() && !ID.matcher(id).matches()) {
            problems.error(
                    node.place(),
                    what + " " + Problems.quote(id) + " is not kebab-case",
                    "use lower-case letters, digits and single hyphens, a letter first, as in 'rail-12v'");
        }
        return id;
    }

    double number(YamlNode node, Object what, Span span, double standIn) {
        if (node instanceof YamlNode.Refused) {
            return standIn;
        }
        if (!(node instanceof YamlNode.Text text) || text.missing()) {
            problems.error(node.place(), what + " should be a number, found " + node.kind(), "write a number");
            return standIn;
        }
        String written = text.value().strip();
        if (!NUMBER.matcher(written).matches()) {
            problems.error(node.place(), what + " " + Problems.quote(written) + " is not a number", remedy(written));
            return standIn;
        }
        double value = Double.parseDouble(written);
        if (!span.holds(value)) {
            problems.error(node.place(), what + " is " + Problems.quote(written), "write a number " + span.inWords());
            return standIn;
        }
        return value;
    }

    private static String remedy(String written) {
        if (DECIMAL_COMMA.matcher(written).matches()) {
            return "write a decimal point: " + written.replace(',', '.');
        }
        if (written.endsWith("%")) {
            return "write a share, such as 0.05 for 5 %";
        }
        return "write a plain number with a decimal point";
    }

    /** A number strictly between 0 and 1, or a word of the scale. */
    double probability(YamlNode node, Object what) {
        if (node instanceof YamlNode.Text text && !text.missing()) {
            String written = text.value().strip();
            Double share = SCALE.get(written);
            if (share != null) {
                return share;
            }
            boolean word =
                    !written.isEmpty() && written.chars().allMatch(c -> Character.isLetter(c) || c == '-' || c == ' ');
            if (word) {
                problems.error(
                        node.place(),
                        what + " " + Problems.quote(written) + " is not a word of the scale",
                        Nearest.to(written, SCALE.keySet())
                                .map(near -> "did you mean '" + near + "'?")
                                .orElse("write a number between 0 and 1, or one of "
                                        + String.join(", ", SCALE.keySet())));
                return STAND_IN;
            }
        }
        return number(node, what, Span.SHARE, STAND_IN);
    }

    <E extends Enum<E>> E choice(YamlNode node, Object what, E[] choices) {
        String written = text(node, what, MAX_NAME);
        for (E choice : choices) {
            if (spelled(choice).equals(written)) {
                return choice;
            }
        }
        if (!written.isEmpty()) {
            List<String> words = Arrays.stream(choices).map(Values::spelled).toList();
            problems.error(
                    node.place(),
                    what + " " + Problems.quote(written) + " is not one of " + String.join(", ", words),
                    Nearest.remedy(written, words, "choose one of them"));
        }
        return choices[0];
    }

    boolean flag(YamlNode node, Object what) {
        String written = text(node, what, MAX_NAME);
        if (!written.isEmpty() && !written.equals("true") && !written.equals("false")) {
            problems.error(node.place(), what + " is " + Problems.quote(written), "write true or false");
        }
        return written.equals("true");
    }

    DeviceScope scope(YamlNode node, Object what) {
        String written = text(node, what, MAX_NAME);
        try {
            return DeviceScope.parse(written);
        } catch (IllegalArgumentException e) {
            problems.error(
                    node.place(),
                    what + " " + Problems.quote(written) + " is not a device scope",
                    "write any, or class/family/model/revision in kebab-case");
            return DeviceScope.ANY;
        }
    }

    /** The elements of a list; empty when it is none. */
    List<YamlNode> items(YamlNode node, Object what) {
        if (node instanceof YamlNode.Items list) {
            return list.items();
        }
        if (!(node instanceof YamlNode.Refused)) {
            problems.error(
                    node.place(),
                    what + " should be a list, found " + node.kind(),
                    "write [one, two] or a line starting with '- ' for each");
        }
        return List.of();
    }

    List<String> texts(YamlNode node, Object what, int maxChars) {
        List<YamlNode> items = items(node, what);
        List<String> texts = new ArrayList<>(items.size());
        Subject each = Subject.of("an item of ", what);
        for (YamlNode item : items) {
            String text = text(item, each, maxChars);
            if (!text.isEmpty()) {
                texts.add(text);
            }
        }
        return List.copyOf(texts); // whoever copies it again shares it
    }

    /** How a constant is written in a pack. */
    static String spelled(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static Map<String, Double> scale() {
        Map<String, Double> scale = new LinkedHashMap<>();
        scale.put("nearly-always", 0.95);
        scale.put("usually", 0.8);
        scale.put("often", 0.6);
        scale.put("sometimes", 0.3);
        scale.put("seldom", 0.1);
        scale.put("rarely", 0.03);
        scale.put("hardly-ever", 0.01);
        return Collections.unmodifiableMap(scale);
    }
}
