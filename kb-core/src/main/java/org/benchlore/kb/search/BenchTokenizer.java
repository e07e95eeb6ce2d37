package org.benchlore.kb.search;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Locale;
import java.util.Map;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.apache.lucene.analysis.tokenattributes.PositionIncrementAttribute;
import org.jspecify.annotations.Nullable;

/**
 * Bench words: values with their unit are one word in one spelling ("12 V", "+12V" and "12V0" are {@code 12v}, "3V3" is
 * {@code 3.3v}), so are codes and part numbers ("K-207", "R12"). A minus sign before a value stays. A hyphenated word
 * is its parts, with the joined spelling beside the first. Everything else that is neither letter nor digit separates.
 */
final class BenchTokenizer extends Tokenizer {
    private static final int MAX_TEXT = 1 << 20; // a longer text is cut, not refused: the rest is only not searchable
    private static final int MAX_TERM = 64;
    private static final int CODE_LETTERS = 4;
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("v", "v"),
            Map.entry("volt", "v"),
            Map.entry("volts", "v"),
            Map.entry("mv", "mv"),
            Map.entry("kv", "kv"),
            Map.entry("a", "a"),
            Map.entry("amp", "a"),
            Map.entry("amps", "a"),
            Map.entry("ma", "ma"),
            Map.entry("w", "w"),
            Map.entry("watt", "w"),
            Map.entry("watts", "w"),
            Map.entry("r", "ohm"),
            Map.entry("ohm", "ohm"),
            Map.entry("ohms", "ohm"),
            Map.entry("ω", "ohm"),
            Map.entry("k", "kohm"),
            Map.entry("kohm", "kohm"),
            Map.entry("kω", "kohm"),
            Map.entry("hz", "hz"),
            Map.entry("khz", "khz"),
            Map.entry("mhz", "mhz"),
            Map.entry("uf", "uf"),
            Map.entry("µf", "uf"),
            Map.entry("μf", "uf"),
            Map.entry("nf", "nf"),
            Map.entry("pf", "pf"),
            Map.entry("ms", "ms"));
    private static final String LETTER_AS_POINT = "vkrmup";

    private record Piece(String term, int start, int end, int increment) {}

    private final CharTermAttribute term = addAttribute(CharTermAttribute.class);
    private final OffsetAttribute offset = addAttribute(OffsetAttribute.class);
    private final PositionIncrementAttribute increment = addAttribute(PositionIncrementAttribute.class);
    private final ArrayDeque<Piece> pieces = new ArrayDeque<>();
    private String text = "";

    @Override
    public void reset() throws IOException {
        super.reset();
        StringBuilder read = new StringBuilder();
        char[] buffer = new char[4096];
        for (int n = input.read(buffer); n > 0 && read.length() < MAX_TEXT; n = input.read(buffer)) {
            read.append(buffer, 0, n);
        }
        text = read.toString();
        pieces.clear();
        int at = 0;
        while (at < text.length()) {
            at = letterOrDigit(at) ? word(at) : at + 1;
        }
    }

    @Override
    public boolean incrementToken() {
        Piece piece = pieces.poll();
        if (piece == null) {
            return false;
        }
        clearAttributes();
        String cut = piece.term.length() > MAX_TERM ? piece.term.substring(0, MAX_TERM) : piece.term;
        term.append(cut);
        offset.setOffset(correctOffset(piece.start), correctOffset(piece.end));
        increment.setPositionIncrement(piece.increment);
        return true;
    }

    @Override
    public void end() throws IOException {
        super.end();
        int end = correctOffset(text.length());
        offset.setOffset(end, end);
    }

    /** Takes the word at {@code start} and returns where to go on. */
    private int word(int start) {
        int end = endOfRun(start);
        String run = text.substring(start, end).toLowerCase(Locale.ROOT);
        if (digit(start)) {
            return value(start, end, run);
        }
        boolean hyphen = end + 1 < text.length() && text.charAt(end) == '-' && letterOrDigit(end + 1);
        if (hyphen) {
            int nextEnd = endOfRun(end + 1);
            String next = text.substring(end + 1, nextEnd).toLowerCase(Locale.ROOT);
            if (digit(end + 1) && run.length() <= CODE_LETTERS) {
                pieces.add(new Piece(run + next, start, nextEnd, 1));
                return nextEnd;
            }
            pieces.add(new Piece(run, start, end, 1));
            pieces.add(new Piece(run + next, start, nextEnd, 0));
            return end + 1;
        }
        pieces.add(new Piece(run.replace("'", "").replace("’", ""), start, end, 1));
        return end;
    }

    private int value(int start, int end, String run) {
        int figures = 0;
        while (figures < run.length() && !Character.isLetter(run.charAt(figures))) {
            figures++;
        }
        String number = run.substring(0, figures);
        String rest = run.substring(figures);
        int newEnd = end;
        @Nullable String unit = UNITS.get(rest);
        if (rest.isEmpty()) {
            int next = end < text.length() && text.charAt(end) == ' ' ? end + 1 : end;
            if (next < text.length() && Character.isLetter(text.charAt(next))) {
                int unitEnd = endOfRun(next);
                String word = text.substring(next, unitEnd);
                unit = word.equals("a") ? null : UNITS.get(word.toLowerCase(Locale.ROOT)); // "take 2 a day"
                newEnd = unit == null ? end : unitEnd;
            }
        } else if (unit == null && rest.length() > 1 && LETTER_AS_POINT.indexOf(rest.charAt(0)) >= 0) {
            String decimals = rest.substring(1);
            if (decimals.chars().allMatch(c -> c >= '0' && c <= '9') && number.indexOf('.') < 0) {
                String letter = rest.substring(0, 1);
                unit = UNITS.getOrDefault(letter, letter);
                number = number + "." + decimals;
            }
        }
        String word = unit == null ? run : plain(number) + unit;
        boolean minus = start > 0 && minus(start - 1) && (start == 1 || Character.isWhitespace(text.charAt(start - 2)));
        pieces.add(new Piece(minus && unit != null ? "-" + word : word, minus ? start - 1 : start, newEnd, 1));
        return newEnd;
    }

    private static String plain(String number) {
        String point = number.replace(',', '.');
        return point.indexOf('.') < 0 ? point : point.replaceAll("0+$", "").replaceAll("\\.$", "");
    }

    private int endOfRun(int start) {
        int at = start;
        while (at < text.length()) {
            boolean inside = at > start && at + 1 < text.length();
            char c = text.charAt(at);
            boolean point = inside && (c == '.' || c == ',') && digit(at - 1) && digit(at + 1);
            boolean apostrophe = inside
                    && (c == '\'' || c == '’')
                    && Character.isLetter(text.charAt(at - 1))
                    && Character.isLetter(text.charAt(at + 1));
            if (!letterOrDigit(at) && !point && !apostrophe) {
                break;
            }
            at++;
        }
        return at;
    }

    private boolean letterOrDigit(int at) {
        char c = text.charAt(at);
        return Character.isLetterOrDigit(c) || c == 'µ' || c == 'Ω';
    }

    private boolean digit(int at) {
        return text.charAt(at) >= '0' && text.charAt(at) <= '9';
    }

    private boolean minus(int at) {
        return text.charAt(at) == '-' || text.charAt(at) == '−';
    }
}
