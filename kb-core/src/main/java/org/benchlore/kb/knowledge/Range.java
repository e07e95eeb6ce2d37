package org.benchlore.kb.knowledge;

/**
 * A half-open span of a quantity: {@code low <= x < high}.
 *
 * @param low in the symptom's unit; negative infinity when open
 * @param high in the symptom's unit; positive infinity when open
 */
public record Range(double low, double high) {
    public Range {
        if (!(low < high)) {
            throw new IllegalArgumentException(
                    "range from " + low + " to " + high + " is empty; put the lower end first");
        }
    }

    /** Whether {@code value} lies in the span. */
    public boolean contains(double value) {
        return value >= low && value < high;
    }
}
