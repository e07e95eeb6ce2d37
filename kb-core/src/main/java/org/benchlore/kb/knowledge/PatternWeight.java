package org.benchlore.kb.knowledge;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * About how many states a regular expression unfolds to. RE2 copies what a counted repeat holds, so that
 * {@code ((a{900}){900}){900}} runs linearly but fills the memory first.
 */
final class PatternWeight {
    private static final long TOO_MUCH = 1_000_000_000_000L;

    private final String pattern;
    private int at;

    private PatternWeight(String pattern) {
        this.pattern = pattern;
    }

    static long of(String pattern) {
        return new PatternWeight(pattern).weigh();
    }

    private long weigh() {
        Deque<Long> outer = new ArrayDeque<>();
        long sum = 0;
        long last = 0;
        while (at < pattern.length()) {
            char c = pattern.charAt(at++);
            switch (c) {
                case '(' -> {
                    outer.push(sum);
                    sum = 0;
                    last = 0;
                }
                case ')' -> {
                    last = sum + 1;
                    sum = last + (outer.isEmpty() ? 0 : outer.pop());
                }
                case '{' -> {
                    long repeated = Math.min(TOO_MUCH, last * count());
                    sum = sum - last + repeated;
                    last = repeated;
                }
                case '*', '+', '?' -> {}
                default -> {
                    skipAtom(c);
                    last = 1;
                    sum++;
                }
            }
            sum = Math.min(TOO_MUCH, sum);
        }
        return Math.min(
                TOO_MUCH, sum + outer.stream().mapToLong(Long::longValue).sum());
    }

    private void skipAtom(char c) {
        if (c == '\\' && at < pattern.length()) {
            at++;
        } else if (c == '[') {
            int end = pattern.indexOf(']', Math.min(pattern.length(), at + 1));
            at = end < 0 ? pattern.length() : end + 1;
        }
    }

    /** The larger number of a repeat, and past its brace; 1 when the brace stands for itself. */
    private long count() {
        int end = pattern.indexOf('}', at);
        String inside = end < 0 ? "" : pattern.substring(at, end);
        if (!inside.matches("[0-9]{1,9}(,[0-9]{0,9})?")) {
            return 1;
        }
        at = end + 1;
        long most = 1;
        for (String number : inside.split(",", -1)) {
            most = number.isEmpty() ? most : Math.max(most, Long.parseLong(number));
        }
        return most;
    }
}
