package org.benchlore.kb.knowledge;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Where an entry or a case belongs: any, class, family, model, board revision, written as a path
 * {@code class/family/model/revision} and {@code any} for the root. Immutable.
 *
 * @param path kebab-case steps from class downwards, at most four; empty for any device
 */
public record DeviceScope(List<String> path) implements Comparable<DeviceScope> {
    /** Any device. */
    public static final DeviceScope ANY = new DeviceScope(List.of());

    private static final int MAX_DEPTH = 4;
    private static final Pattern STEP = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

    public DeviceScope {
        path = List.copyOf(requireNonNull(path, "path"));
        if (path.size() > MAX_DEPTH) {
            throw new IllegalArgumentException("device scope '" + String.join("/", path) + "' has " + path.size()
                    + " steps; write at most class/family/model/revision");
        }
        for (String step : path) {
            if (!STEP.matcher(step).matches()) {
                throw new IllegalArgumentException("device scope step '" + step
                        + "' is not kebab-case; use lower-case letters, digits and single hyphens" + asIn(step));
            }
        }
    }

    private static String asIn(String step) {
        String kebab =
                step.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return kebab.isEmpty() ? "" : ", as in '" + kebab + "'";
    }

    /**
     * Reads {@code any} or {@code class/family/model/revision}.
     *
     * @throws IllegalArgumentException if a step is not kebab-case or there are more than four
     */
    public static DeviceScope parse(String text) {
        String trimmed = requireNonNull(text, "text").trim();
        if (trimmed.isEmpty() || trimmed.equals("any")) {
            return ANY;
        }
        return new DeviceScope(List.of(trimmed.split("/", -1)));
    }

    /** Number of steps below any: 0 for any, 4 for a board revision. */
    public int depth() {
        return path.size();
    }

    /** Whether {@code other} is this scope or lies within it. */
    public boolean contains(DeviceScope other) {
        return path.isEmpty()
                || (other.path.size() >= path.size()
                        && other.path.subList(0, path.size()).equals(path));
    }

    /** Whether one of the two contains the other. */
    public boolean relatedTo(DeviceScope other) {
        return contains(other) || other.contains(this);
    }

    /** This scope and those around it, from {@link #ANY} inwards. */
    public List<DeviceScope> lineage() {
        List<DeviceScope> lineage = new ArrayList<>(path.size() + 1);
        for (int depth = 0; depth <= path.size(); depth++) {
            lineage.add(new DeviceScope(path.subList(0, depth)));
        }
        return List.copyOf(lineage);
    }

    @Override
    public int compareTo(DeviceScope other) {
        return toString().compareTo(other.toString());
    }

    @Override
    public String toString() {
        return path.isEmpty() ? "any" : String.join("/", path);
    }
}
