package org.benchlore.kb.report;

import java.util.Locale;

/**
 * A picture under way. Drawn 400 units wide, so that its letters keep their size on a phone and grow little on paper.
 * Colours come from the page's style, so that dark and print follow.
 */
final class Svg {
    static final double WIDTH = 400;

    private final StringBuilder out = new StringBuilder(2048);

    Svg(double height, String says) {
        add("<svg viewBox=\"0 0 %.0f %.0f\" role=\"img\" xmlns=\"http://www.w3.org/2000/svg\">", WIDTH, height);
        add("<title>%s</title>", Escape.html(says));
    }

    Svg line(String style, double x1, double y1, double x2, double y2) {
        return add("<line class=\"%s\" x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\"/>", style, x1, y1, x2, y2);
    }

    Svg dot(String style, double x, double y, double radius) {
        return add("<circle class=\"%s\" cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\"/>", style, x, y, radius);
    }

    Svg bar(String style, double x, double y, double width, double height) {
        return add(
                "<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" rx=\"3\"/>",
                style, x, y, width, height);
    }

    /** A line through points, given as x and y in turn. */
    Svg curve(String style, double[] points) {
        StringBuilder path = new StringBuilder();
        for (int i = 0; i < points.length; i += 2) {
            path.append(String.format(Locale.ROOT, "%s%.1f %.1f", i == 0 ? "M" : "L", points[i], points[i + 1]));
        }
        return add("<path class=\"%s\" d=\"%s\"/>", style, path);
    }

    /** Text, escaped; {@code anchor} is start, middle or end. */
    Svg text(String style, double x, double y, String anchor, String text) {
        return add(
                "<text class=\"%s\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>",
                style, x, y, anchor, Escape.html(text));
    }

    String end() {
        return out.append("</svg>\n").toString();
    }

    private Svg add(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
        return this;
    }
}
