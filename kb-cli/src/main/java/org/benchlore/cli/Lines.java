package org.benchlore.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Questions and answers, line by line, for a keyboard or a pipe. What is not text, or endless, is left out and said so. */
final class Lines {
    /** Longest answer; the reader of notes takes as much. */
    private static final int MOST = 1 << 20;

    /** Ends pasted lines. */
    private static final String END = ".";

    /** Asks for help at any prompt. */
    static final String HELP = "?";

    private final BufferedReader in;
    private final PrintWriter out;

    Lines(InputStream in, PrintWriter out) {
        this.in = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
        this.out = out;
    }

    /** As {@link #ask}, with a word of help for whoever answers with a question mark. */
    Optional<String> ask(String question, String help) {
        Optional<String> answer = ask(question);
        while (answer.filter(HELP::equals).isPresent()) {
            new Page(out, false).text(0, help);
            answer = ask(question);
        }
        return answer;
    }

    /** Asks, and waits for an answer; blanks around it are dropped. Empty at the end of input. */
    Optional<String> ask(String question) {
        while (true) {
            out.print(question);
            out.flush();
            Optional<String> line = next();
            if (line.isEmpty()) {
                out.println();
                return line;
            }
            if (fit(line.get())) {
                return line.map(String::strip);
            }
        }
    }

    /** Whether the answer is y or yes; anything else, Enter and the end of input among them, is no. */
    boolean yes(String question, String help) {
        return ask(question, help).filter(a -> a.matches("(?i)y(es)?")).isPresent();
    }

    /** Lines up to a lone full stop or the end of input, with their line feeds. */
    String paste() {
        out.flush();
        StringBuilder text = new StringBuilder();
        for (Optional<String> line = next(); line.isPresent(); line = next()) {
            String content = line.get();
            if (content.strip().equals(END)) {
                break;
            }
            if (text.length() + content.length() >= MOST) {
                out.println("The rest is too long and was left out; paste it on its own.");
                break;
            }
            if (fit(content)) {
                text.append(content).append('\n');
            }
        }
        return text.toString();
    }

    private boolean fit(String line) {
        if (line.length() > MOST) {
            out.println("That line is too long and was left out; split it.");
            return false;
        }
        if (line.indexOf(0) >= 0) {
            out.println("That line is not text and was left out.");
            return false;
        }
        return true;
    }

    /** The next line, cut one character beyond the longest; empty at the end. */
    private Optional<String> next() {
        try {
            StringBuilder line = new StringBuilder();
            int c = in.read();
            if (c < 0) {
                return Optional.empty();
            }
            for (; c >= 0 && c != '\n'; c = in.read()) {
                if (c != '\r' && line.length() <= MOST) {
                    line.append((char) c);
                }
            }
            return Optional.of(line.toString());
        } catch (IOException e) {
            throw new UncheckedIOException("standard input cannot be read; what was entered so far is stored", e);
        }
    }

    /** A plain number, with a decimal point or comma and at most two places behind it, since 1,250 may mean either. */
    static Optional<Double> number(String answer) {
        return answer.matches("-?\\d{1,9}([.,]\\d{1,2})?")
                ? Optional.of(Double.valueOf(answer.replace(',', '.')))
                : Optional.empty();
    }

    /**
     * Picks from a numbered list.
     *
     * @return positions from 0 in the order given; empty if the answer is anything but numbers of the list
     */
    static List<Integer> picked(String answer, int size) {
        List<Integer> picked = new ArrayList<>();
        for (String part : answer.strip().split("[\\s,;]+", -1)) {
            if (!part.matches("\\d{1,4}")) {
                return List.of();
            }
            int number = Integer.parseInt(part);
            if (number < 1 || number > size) {
                return List.of();
            }
            picked.add(number - 1);
        }
        return picked;
    }
}
