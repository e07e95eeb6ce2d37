package org.benchlore.kb.report;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The ranking step by step: one curve a cause, told apart by colour, dash and a letter at its end. */
final class RankingPicture {
    private static final double LEFT = 40;
    private static final double RIGHT = 376;
    private static final double TOP = 10;
    private static final double BOTTOM = 170;
    private static final double HEIGHT = 200;
    /** Letters closer than this would overlap. */
    private static final double APART = 13;
    /** Step numbers closer than this would run together. */
    private static final double NUMBER_WIDTH = 16;

    private static final int GRID = 4;

    private RankingPicture() {}

    /** A, B, C ... by place. */
    static String letter(int place) {
        return String.valueOf((char) ('A' + place));
    }

    static String draw(Sheet.Ranks ranks) {
        int steps = ranks.steps().size();
        Svg svg = new Svg(HEIGHT, says(ranks));
        double top = top(ranks);
        for (int i = 0; i <= GRID; i++) {
            double share = top * i / GRID;
            double y = y(share, top);
            svg.line("grid", LEFT, y, RIGHT - 8, y);
            svg.text("small", LEFT - 5, y + 4, "end", Math.round(100 * share) + (i == GRID ? " %" : ""));
        }
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < steps; i++) {
            double x = x(i, steps);
            if (x - last >= NUMBER_WIDTH) {
                svg.text(
                        "small",
                        x,
                        BOTTOM + 15,
                        "middle",
                        Integer.toString(ranks.steps().get(i)));
                last = x;
            }
        }
        svg.text("small", LEFT, HEIGHT - 2, "start", "step");
        // the leader is drawn last and lies on top
        for (int c = ranks.curves().size() - 1; c >= 0; c--) {
            curve(svg, c, ranks.curves().get(c).shares(), top);
        }
        letters(svg, ranks.curves(), top);
        return svg.end();
    }

    private static String says(Sheet.Ranks ranks) {
        StringBuilder says = new StringBuilder("Ranking over time. ");
        for (Sheet.Curve curve : ranks.curves()) {
            says.append(curve.name())
                    .append(": ")
                    .append(Terms.share(curve.shares().get(0)))
                    .append(" at first, ")
                    .append(Terms.share(curve.last()))
                    .append(" at last. ");
        }
        return says.toString();
    }

    private static void curve(Svg svg, int place, List<Double> shares, double top) {
        double[] points = new double[2 * shares.size()];
        for (int i = 0; i < shares.size(); i++) {
            points[2 * i] = x(i, shares.size());
            points[2 * i + 1] = y(shares.get(i), top);
        }
        svg.curve("curve k" + place, points);
        for (int i = 0; i < points.length; i += 2) {
            svg.dot("dot k" + place, points[i], points[i + 1], 2.6);
        }
    }

    /** Beside the ends of the curves, pushed apart from the top down, then back up from the floor. */
    private static void letters(Svg svg, List<Sheet.Curve> curves, double top) {
        List<Integer> order = IntStream.range(0, curves.size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        (Integer c) -> y(curves.get(c).last(), top)))
                .toList();
        double[] at = new double[order.size()];
        for (int i = 0; i < at.length; i++) {
            double y = y(curves.get(order.get(i)).last(), top);
            at[i] = i == 0 ? y : Math.max(y, at[i - 1] + APART);
        }
        double floor = BOTTOM;
        for (int i = at.length - 1; i >= 0; i--) {
            at[i] = Math.min(at[i], floor);
            floor = at[i] - APART;
        }
        for (int i = 0; i < at.length; i++) {
            int place = order.get(i);
            svg.text("letter k" + place, RIGHT, at[i] + 4, "start", letter(place));
        }
    }

    private static double x(int i, int steps) {
        double from = LEFT + 8;
        double to = RIGHT - 14;
        return steps == 1 ? to : from + (to - from) * i / (steps - 1);
    }

    private static double y(double share, double top) {
        return BOTTOM - (BOTTOM - TOP) * share / top;
    }

    /** The smallest scale that holds all curves, so that many small shares can be told apart. */
    private static double top(Sheet.Ranks ranks) {
        double most = ranks.curves().stream()
                .flatMap(c -> c.shares().stream())
                .mapToDouble(s -> s)
                .max()
                .orElse(1);
        return most <= 0.2 ? 0.2 : most <= 0.4 ? 0.4 : 1;
    }
}
