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

    private RankingPicture() {}

    /** A, B, C ... by place. */
    static String letter(int place) {
        return String.valueOf((char) ('A' + place));
    }

    static String draw(Sheet.Ranks ranks) {
        int steps = ranks.steps().size();
        Svg svg = new Svg(HEIGHT, says(ranks));
        for (int percent = 0; percent <= 100; percent += 25) {
            double y = y(percent / 100.0);
            svg.line("grid", LEFT, y, RIGHT - 8, y);
            svg.text("small", LEFT - 5, y + 4, "end", percent + (percent == 100 ? " %" : ""));
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
            curve(svg, c, ranks.curves().get(c).shares());
        }
        letters(svg, ranks.curves());
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

    private static void curve(Svg svg, int place, List<Double> shares) {
        double[] points = new double[2 * shares.size()];
        for (int i = 0; i < shares.size(); i++) {
            points[2 * i] = x(i, shares.size());
            points[2 * i + 1] = y(shares.get(i));
        }
        svg.curve("curve k" + place, points);
        for (int i = 0; i < points.length; i += 2) {
            svg.dot("dot k" + place, points[i], points[i + 1], 2.6);
        }
    }

    /** Beside the ends of the curves, pushed apart from the top down, then back up from the floor. */
    private static void letters(Svg svg, List<Sheet.Curve> curves) {
        List<Integer> order = IntStream.range(0, curves.size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        (Integer c) -> y(curves.get(c).last())))
                .toList();
        double[] at = new double[order.size()];
        for (int i = 0; i < at.length; i++) {
            double y = y(curves.get(order.get(i)).last());
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

    private static double y(double share) {
        return BOTTOM - (BOTTOM - TOP) * share;
    }
}
