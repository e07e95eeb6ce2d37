package org.benchlore.kb.reading.analysis;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Units.Unit;
import org.jspecify.annotations.Nullable;

/**
 * Numbers said in words, as dictation leaves them: "nine point four volts", "half an amp", "a quarter of an hour". Also
 * joins "41200 power-on hours", and gives the members of "4.1 and 3.2 V" the unit of the last. One pass over the tokens.
 */
final class Spoken {
    private static final Map<String, Integer> SMALL = new HashMap<>();
    private static final Map<String, Integer> TENS = Map.of(
            "twenty", 20, "thirty", 30, "forty", 40, "fifty", 50, "sixty", 60, "seventy", 70, "eighty", 80, "ninety",
            90);
    /** What people say for a nought among decimals. */
    private static final Words NOUGHTS = Words.of("oh", "o", "nought", "nil");

    private static final Words ARTICLES = Words.of("a", "an");
    private static final Words CONJUNCTIONS = Words.of("and", "or", "nor", "to", "/");

    /** Words that a spoken number may begin with. */
    private static final Words OPENING;

    /** Kinds of hours that are still hours. */
    private static final Words HOURS_OF = Words.of("power", "operating", "running", "working", "playing");

    /** Units that "a", "an" or "half a" may count; "a volt" is as rare as "a second relay" is common. */
    private static final Words COUNTED_SINGLY = Words.of("sec", "second", "minute", "min", "hour");

    /** What may follow "a second" when it is a time; a thing after it makes it an ordinal. */
    private static final Words AFTER_A_SECOND = Words.of(
            "and", "or", "then", "so", "it", "after", "later", "before", "when", "of", "but", "only", "i", "he", "she",
            "the", "at", "in", "on", "until", "till", "while", "each", "every", "long");

    static {
        String[] small = {
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen"
        };
        for (int i = 0; i < small.length; i++) {
            SMALL.put(small[i], i);
        }
        List<String> opening = new ArrayList<>(List.of("a", "an", "half", "quarter", "minus", "negative"));
        opening.addAll(SMALL.keySet());
        opening.addAll(TENS.keySet());
        OPENING = Words.of(opening.toArray(String[]::new));
    }

    private final List<Token> in;
    private final List<Token> out;

    /** Position behind what was last read. */
    private int at;

    private Spoken(List<Token> in) {
        this.in = in;
        this.out = new ArrayList<>(in.size());
    }

    /** The tokens with spoken numbers joined; the same list when there are none. */
    static List<Token> joined(List<Token> tokens) {
        boolean any = false;
        for (Token token : tokens) {
            any |= token.kind() == Kind.NUMBER || (token.kind() == Kind.WORD && opens(token.surface()));
        }
        return any ? new Spoken(tokens).run() : tokens;
    }

    /** Whether a spoken number may begin with a word. */
    static boolean opens(String word) {
        return OPENING.contains(word);
    }

    private List<Token> run() {
        int i = 0;
        while (i < in.size()) {
            int next = number(i);
            if (next == i) {
                out.add(in.get(i));
                next = i + 1;
            }
            i = next;
        }
        share();
        return out;
    }

    private int number(int from) {
        Token first = in.get(from);
        if (first.kind() == Kind.NUMBER) {
            return hoursOf(from);
        }
        if (first.kind() != Kind.WORD || !opens(first.surface())) {
            return from;
        }
        boolean negative = first.surface().equals("minus") || first.surface().equals("negative");
        at = negative ? from + 1 : from;
        BigDecimal value = value();
        if (value == null) {
            return negative ? signed(from) : from;
        }
        int end = at;
        Unit unit = end < in.size() ? unit(end) : null;
        if (unit != null && singleUnfit(from, end)) {
            return from;
        }
        BigDecimal signed = negative ? value.negate() : value;
        if (unit != null) {
            add(from, end + 1, signed, unit);
            return end + 1;
        }
        // "one" and "half" alone are pronouns and shares more often than numbers
        boolean article = ARTICLES.contains(first.surface())
                || first.surface().equals("half")
                || first.surface().equals("quarter")
                || (end == from + 1 && first.surface().equals("one"));
        if (article) {
            return from;
        }
        String term = signed.stripTrailingZeros().toPlainString();
        out.add(new Token(
                Kind.NUMBER,
                first.start(),
                in.get(end - 1).end(),
                term,
                term,
                signed.doubleValue(),
                "",
                Numerals.step(value).doubleValue(),
                0,
                0));
        return end;
    }

    /** "negative 12 V": the number itself is written in digits. */
    private int signed(int from) {
        Token number = from + 1 < in.size() ? in.get(from + 1) : null;
        boolean written = number != null
                && (number.kind() == Kind.NUMBER || number.kind() == Kind.QUANTITY)
                && number.value() > 0
                && in.get(from).surface().equals("negative");
        if (!written || number == null) {
            return from;
        }
        out.add(new Token(
                number.kind(),
                in.get(from).start(),
                number.end(),
                "-" + number.term(),
                "-" + number.term(),
                -number.value(),
                number.unit(),
                number.resolution(),
                number.spread(),
                number.factor()));
        return from + 2;
    }

    /** "41200 power-on hours": the words stay, since they name what is counted. */
    private int hoursOf(int from) {
        int word = from + 1;
        if (!is(word, HOURS_OF)) {
            return from;
        }
        int hours = word + 1 < in.size() && in.get(word + 1).surface().equals("on") ? word + 2 : word + 1;
        Unit unit = hours < in.size() ? unit(hours) : null;
        if (unit == null || !in.get(hours).surface().startsWith("h")) {
            return from;
        }
        add(from, from + 1, BigDecimal.valueOf(in.get(from).value()), unit);
        return from + 1;
    }

    private @Nullable BigDecimal value() {
        BigDecimal part = fraction();
        if (part != null) {
            return part;
        }
        Integer whole = whole();
        if (whole == null) {
            return null;
        }
        if (whole < 4 && surface(at).equals("quarters")) {
            at++;
            at += surface(at).equals("of") ? 1 : 0;
            at += ARTICLES.contains(surface(at)) ? 1 : 0;
            return BigDecimal.valueOf(whole).multiply(new BigDecimal("0.25"));
        }
        if (surface(at).equals("point") && digit(surface(at + 1)) >= 0) {
            return decimals(whole);
        }
        boolean andHalf = surface(at).equals("and")
                && ARTICLES.contains(surface(at + 1))
                && surface(at + 2).equals("half");
        if (andHalf) {
            at += 3;
            return BigDecimal.valueOf(whole).add(new BigDecimal("0.5"));
        }
        return BigDecimal.valueOf(whole);
    }

    /** "half", "half a", "a half", "a quarter of an"; a bare article counts one. */
    private @Nullable BigDecimal fraction() {
        int i = at;
        boolean article = ARTICLES.contains(surface(i));
        i += article ? 1 : 0;
        String word = surface(i);
        if (!word.equals("half") && !word.equals("quarter")) {
            at = article ? i : at;
            return article ? BigDecimal.ONE : null;
        }
        i++;
        i += surface(i).equals("of") ? 1 : 0;
        i += ARTICLES.contains(surface(i)) ? 1 : 0;
        at = i;
        return new BigDecimal(word.equals("half") ? "0.5" : "0.25");
    }

    private @Nullable Integer whole() {
        Integer value = upToNinetyNine();
        if (value == null) {
            return null;
        }
        if (surface(at).equals("hundred")) {
            at++;
            value *= 100;
            int rest = surface(at).equals("and") ? at + 1 : at;
            int before = at;
            at = rest;
            Integer more = upToNinetyNine();
            if (more == null) {
                at = before;
            } else {
                value += more;
            }
        }
        return value;
    }

    private @Nullable Integer upToNinetyNine() {
        Integer small = SMALL.get(surface(at));
        if (small != null) {
            at++;
            return small;
        }
        Integer tens = TENS.get(surface(at));
        if (tens == null) {
            return null;
        }
        at++;
        Integer ones = SMALL.get(surface(at));
        if (ones != null && ones > 0 && ones < 10) {
            at++;
            return tens + ones;
        }
        return tens;
    }

    private static int digit(String word) {
        int digit = NOUGHTS.contains(word) ? 0 : SMALL.getOrDefault(word, -1);
        return digit < 10 ? digit : -1;
    }

    private BigDecimal decimals(int whole) {
        StringBuilder digits = new StringBuilder().append(whole).append('.');
        at++;
        while (digit(surface(at)) >= 0 && digits.length() < 12) {
            digits.append(digit(surface(at)));
            at++;
        }
        return new BigDecimal(digits.toString());
    }

    /** Whether "a second" and the like count nothing here. */
    private boolean singleUnfit(int from, int unitAt) {
        if (!ARTICLES.contains(in.get(from).surface()) || unitAt > from + 1) {
            return false;
        }
        String unit = surface(unitAt);
        if (!COUNTED_SINGLY.contains(unit)) {
            return true;
        }
        Token next = unitAt + 1 < in.size() ? in.get(unitAt + 1) : null;
        return unit.equals("second")
                && next != null
                && next.kind() != Kind.PUNCTUATION
                && !AFTER_A_SECOND.contains(next.surface());
    }

    private @Nullable Unit unit(int i) {
        Token token = in.get(i);
        if (token.kind() != Kind.WORD || token.surface().length() < 2) {
            return null;
        }
        Unit unit = Units.spaced(token.surface());
        return unit == null || unit.base().equals("%") ? percent(token, unit) : unit;
    }

    private static @Nullable Unit percent(Token token, @Nullable Unit unit) {
        return token.surface().startsWith("per") || token.surface().equals("pct") ? unit : null;
    }

    /** "between 11.8 and 12.1 V", "4.1, 4.1 and 3.2 V": a unit said once is meant for all. */
    private void share() {
        for (int i = 2; i < out.size(); i++) {
            Token last = out.get(i);
            boolean shares = last.kind() == Kind.QUANTITY && !last.unit().equals("times") && last.value() >= 0;
            int member = shares && conjunction(out.get(i - 1)) ? i - 2 : -1;
            while (member >= 0 && bare(out.get(member))) {
                out.set(member, withUnit(out.get(member), last));
                boolean listed = member >= 2 && out.get(member - 1).is(",");
                member = listed ? member - 2 : -1;
            }
        }
    }

    private static boolean conjunction(Token token) {
        return CONJUNCTIONS.contains(token.term());
    }

    private boolean bare(Token token) {
        return token.kind() == Kind.NUMBER && token.value() > 0 && !token.tolerance();
    }

    /** The number in the unit of another, prefix included: the "11" of "11 to 12 mV" is 11 mV. */
    private static Token withUnit(Token number, Token quantity) {
        double factor = quantity.factor();
        BigDecimal value = new BigDecimal(number.term()).multiply(BigDecimal.valueOf(factor));
        String term = Numerals.plain(value) + quantity.unit().toLowerCase(Locale.ROOT);
        return new Token(
                Kind.QUANTITY,
                number.start(),
                number.end(),
                term,
                term,
                value.doubleValue(),
                quantity.unit(),
                number.resolution() * factor,
                0,
                factor);
    }

    private void add(int from, int end, BigDecimal number, Unit unit) {
        BigDecimal value = unit.inBase(number);
        String term = Numerals.plain(value) + unit.base().toLowerCase(Locale.ROOT);
        double step = Numerals.step(number).multiply(unit.factor()).doubleValue();
        out.add(new Token(
                Kind.QUANTITY,
                in.get(from).start(),
                in.get(end - 1).end(),
                term,
                term,
                value.doubleValue(),
                unit.base(),
                step,
                0,
                unit.factor().doubleValue()));
    }

    private boolean is(int i, Words words) {
        return i < in.size() && words.contains(in.get(i).surface());
    }

    private String surface(int i) {
        return i < in.size() && in.get(i).kind() == Kind.WORD ? in.get(i).surface() : "";
    }
}
