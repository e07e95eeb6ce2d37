package org.benchlore.kb.reading;

import java.util.List;
import java.util.Random;
import java.util.function.Function;

/** Texts that nobody would write and somebody pastes: seeded, so a failure comes back. */
final class Gibberish {
    private static final List<String> BENCH = List.of(
            "12V",
            "5 V",
            "3V3",
            "-12 V",
            "no",
            "not",
            "but",
            "except",
            "fan",
            "dead",
            "LED",
            "green",
            "controller",
            "silent",
            "missing",
            ",",
            ".",
            "and",
            "or",
            "reads",
            "11.4",
            "on",
            "the",
            "3.3",
            "±5 %",
            "K-207",
            "maybe",
            "?",
            "if",
            "(",
            ")",
            "again and again",
            "2021-03-04 10:00:00 K-207 x",
            "\n",
            "STARTS=45",
            "\ud83d",
            "\u202e",
            "\u0130",
            "ﬃ",
            "½",
            "0R4",
            "there is",
            "mains fuse",
            "blown",
            "last year",
            "owner says",
            "sometimes",
            "ripple",
            "to ground",
            "4 ohms",
            "'",
            "n't",
            "\u0000",
            "１２Ｖ",
            "Ω",
            "µ",
            "1e9",
            "99999999999999999999",
            "12:61",
            "5..6V",
            "-",
            "--",
            "neither",
            "nor",
            "all rails ok");

    private static final List<String> LOG = List.of(
            "2021-03-04 10:00:00 ",
            "2021-03-04 25:61",
            "[000123.45] ",
            "E14 ",
            "K-207 x3",
            "ERROR ",
            "warn: ",
            "starts=45",
            "unclean stops 99999999999",
            "fan fault",
            "0x7f",
            "|",
            "\t",
            ";",
            "\n",
            "\r\n",
            "=== log",
            "{\"code\":\"E1\",");

    private static final List<String> SHEET = List.of(
            "date;complaint;fix\n",
            "\"",
            "\"\"",
            ",",
            ";",
            "\t",
            "\n",
            "\r",
            "=cmd|' /C calc'!A0",
            "+1+1",
            "@SUM(A1)",
            "-12 V",
            "12.3.2024",
            "no 12 V",
            "replaced C412",
            "ran two days, ok",
            "{\"notes\":\"dead\"}\n",
            "\uFEFF");

    private static final List<String> MARKUP = List.of(
            "<script>alert(1)</script>",
            "\"><img src=x onerror=alert(1)>",
            "</td></table>",
            "&lt;b&gt;",
            "[x](javascript:alert(1))",
            "\u001b[31m",
            "\u001b]0;title\u0007",
            "\u009b2J",
            "\u202eevil\u202c",
            "\u2066\u05d0\u05d1\u2069",
            "\u0622\u0628",
            "```\n",
            "# ",
            "- ",
            "|",
            "\\",
            "no 12 V",
            " fuse blown ");

    private final Random random;
    private final List<Function<Random, String>> makers;

    /** @param phrases of the packs, so that texts get as far as the linker */
    Gibberish(long seed, List<String> phrases) {
        this.random = new Random(seed);
        this.makers = List.of(
                Gibberish::characters,
                Gibberish::codePoints,
                r -> pieces(r, BENCH, 12),
                r -> pieces(r, phrases, 6) + " " + pieces(r, BENCH, 4),
                r -> pieces(r, LOG, 24),
                r -> pieces(r, SHEET, 24),
                r -> pieces(r, MARKUP, 12),
                Gibberish::longWord);
    }

    String next() {
        return makers.get(random.nextInt(makers.size())).apply(random);
    }

    /** One piece over and over, which costs a careless reader the square of its length. */
    String monotonous(int length) {
        List<String> from = List.of(BENCH, LOG, SHEET, MARKUP).get(random.nextInt(4));
        String piece = from.get(random.nextInt(from.size())) + (random.nextBoolean() ? " " : "");
        return piece.repeat(1 + length / piece.length());
    }

    private static String pieces(Random random, List<String> from, int most) {
        StringBuilder text = new StringBuilder();
        int n = 1 + random.nextInt(most);
        for (int i = 0; i < n; i++) {
            text.append(from.get(random.nextInt(from.size()))).append(random.nextInt(8) == 0 ? "" : " ");
        }
        return text.toString();
    }

    /** Half of them ASCII, halves of surrogate pairs among the rest. */
    private static String characters(Random random) {
        StringBuilder text = new StringBuilder();
        int n = random.nextInt(24);
        for (int i = 0; i < n; i++) {
            text.append((char) (random.nextBoolean() ? random.nextInt(128) : random.nextInt(0x10000)));
        }
        return text.toString();
    }

    private static String codePoints(Random random) {
        StringBuilder text = new StringBuilder();
        int n = random.nextInt(40);
        for (int i = 0; i < n; i++) {
            text.appendCodePoint(random.nextInt(Character.MAX_CODE_POINT + 1));
        }
        return text.toString();
    }

    private static String longWord(Random random) {
        return String.valueOf((char) ('a' + random.nextInt(26))).repeat(1 + random.nextInt(400))
                + pieces(random, BENCH, 3);
    }
}
