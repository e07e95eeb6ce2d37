package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * How a diary sets its cases apart. Of the ways to cut it that its own lines offer, the one is taken whose pieces look most
 * like cases: each names one unit near its beginning, and none goes on behind an ending. Work is linear in the lines.
 */
final class Layout {
    private static final Pattern NUMBER = Pattern.compile("\\d+");

    /** Lines by which a layout is chosen; a hand does not change its habits often. */
    static final int SAMPLE = 1000;

    /** Lines from the beginning of a piece on in which its unit may be named: an owner or a day may stand above it. */
    static final int HEAD = 3;

    /** Pieces that must look like cases before a layout is believed. */
    private static final int FEWEST = 2;

    /** Shapes and indentations that are tried, the first of each. */
    private static final int MOST_TRIED = 8;

    /**
     * What is seen of a line with text.
     *
     * @param apart whether a blank line, a title or a day alone stands above it
     * @param ruled whether a rule stands above it
     * @param shape its indentation and first word, numbers made alike
     */
    record Spot(DiaryLine line, boolean apart, boolean ruled, String shape, Glance glance) {
        static Spot of(DiaryLine line, String raw, Above above, Glance glance) {
            return new Spot(line, above != Above.TEXT, above == Above.RULE, shape(raw), glance);
        }

        private static String shape(String raw) {
            String text = raw.stripTrailing();
            int from = 0;
            while (from < text.length() && Character.isWhitespace(text.charAt(from))) {
                from++;
            }
            int to = from;
            while (to < text.length() && !Character.isWhitespace(text.charAt(to))) {
                to++;
            }
            return NUMBER.matcher(text.substring(0, to)).replaceAll("9");
        }

        boolean names() {
            return glance.named() || glance.naming().names();
        }
    }

    /** What stands above a line. */
    enum Above {
        NOTHING,
        RULE,
        TEXT;

        /** What stands above the line behind this one. */
        Above then(DiaryLine line) {
            return switch (line.kind()) {
                case BLANK -> this == RULE ? RULE : NOTHING;
                case SEPARATOR -> RULE;
                case HEADING -> NOTHING;
                case BULLET, TEXT -> line.dayOnly() ? NOTHING : TEXT;
            };
        }
    }

    private final Predicate<Spot> opens;

    private Layout(Predicate<Spot> opens) {
        this.opens = opens;
    }

    /** The layout of the first lines of a diary; empty where none of those tried gives pieces that look like cases. */
    static Optional<Layout> of(List<Spot> spots) {
        Predicate<Spot> best = null;
        double most = 0;
        for (Predicate<Spot> way : ways(spots)) {
            double score = score(spots, way);
            if (score > most) {
                best = way;
                most = score;
            }
        }
        return best == null ? Optional.empty() : Optional.of(new Layout(best));
    }

    /** Ways to cut, the plainest marks first; of equals the first one counts. */
    private static List<Predicate<Spot>> ways(List<Spot> spots) {
        List<Predicate<Spot>> ways = new ArrayList<>();
        ways.add(Spot::ruled);
        ways.add(Spot::apart);
        ways.add(spot -> spot.line().dated());
        Map<String, Integer> shapes = new LinkedHashMap<>();
        TreeSet<Integer> indents = new TreeSet<>();
        for (Spot spot : spots) {
            shapes.merge(spot.shape(), 1, Integer::sum);
            indents.add(spot.line().level());
        }
        shapes.entrySet().stream()
                .filter(shape -> shape.getValue() >= FEWEST)
                .map(Map.Entry::getKey)
                .limit(MOST_TRIED)
                .forEach(shape -> ways.add(spot -> spot.shape().equals(shape)));
        indents.stream()
                .limit(MOST_TRIED)
                .forEach(indent -> ways.add(spot -> spot.line().level() == indent));
        ways.add(Spot::names);
        return ways;
    }

    /** Pieces that name one unit at their head, less those units named besides and half of the pieces that name none and do not go on with the one before. */
    private static double score(List<Spot> spots, Predicate<Spot> opens) {
        int good = 0;
        int none = 0;
        int more = 0;
        boolean named = false;
        boolean ended = false;
        int idle = 0;
        int at = HEAD;
        Set<String> unit = new HashSet<>();
        for (Spot spot : spots) {
            Glance glance = spot.glance();
            boolean first = opens.test(spot);
            if (first) {
                named = false;
                ended = false;
                at = 0;
                idle = glance.goesOn() ? 0 : 1;
                none += idle;
                unit = new HashSet<>();
            }
            boolean other = !unit.containsAll(glance.naming().unit());
            if (!named && at < HEAD && spot.names()) {
                named = true;
                good++;
                none -= idle;
            } else if (other
                    || (!first
                            && ended
                            && !glance.goesOn()
                            && (spot.apart() || spot.line().dated()))) {
                more++;
                ended = false;
            }
            unit.addAll(glance.naming().unit());
            ended |= glance.ended();
            at++;
        }
        return good < FEWEST ? 0 : good - more - none / 2.0;
    }

    boolean opens(Spot spot) {
        return opens.test(spot);
    }
}
