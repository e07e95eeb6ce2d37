package org.benchlore.kb.report;

import java.time.Duration;
import java.util.List;
import java.util.TreeSet;

/** The case's events along time, one lane a kind. Waits count by their logarithm: an hour at the bench is not lost beside a week on the shelf. */
final class EventPicture {
    private static final double LEFT = 76;
    private static final double RIGHT = 388;
    private static final double LANE = 22;
    private static final double TOP = 14;
    private static final double RADIUS = 8;
    /** A date needs this much room. */
    private static final double DATE = 62;

    private EventPicture() {}

    static String draw(Sheet.Events events) {
        List<Integer> lanes = List.copyOf(
                new TreeSet<>(events.marks().stream().map(Sheet.Mark::lane).toList()));
        double floor = TOP + LANE * lanes.size();
        Svg svg = new Svg(floor + 18, events.marks().size() + " events from " + span(events.marks()));
        for (int i = 0; i < lanes.size(); i++) {
            double y = y(i);
            svg.line("grid", LEFT - 8, y, RIGHT, y);
            svg.text("small", LEFT - 14, y + 4, "end", events.lanes().get(lanes.get(i)));
        }
        double[] x = places(events.marks());
        boolean roomy = roomy(x);
        double dated = Double.NEGATIVE_INFINITY;
        String day = "";
        for (int i = 0; i < x.length; i++) {
            Sheet.Mark mark = events.marks().get(i);
            double y = y(lanes.indexOf(mark.lane()));
            svg.dot("mark l" + mark.lane(), x[i], y, roomy ? RADIUS : RADIUS / 2);
            if (roomy) {
                svg.text("number", x[i], y + 3.5, "middle", Integer.toString(mark.number()));
            }
            String today = Terms.time(mark.at()).substring(0, 10);
            double from = Math.min(x[i] - RADIUS, RIGHT - DATE);
            if (!today.equals(day) && from - dated >= DATE) {
                svg.line("grid", x[i], floor - 6, x[i], floor);
                svg.text("small", from, floor + 12, "start", today);
                dated = from;
            }
            day = today;
        }
        return svg.end();
    }

    private static String span(List<Sheet.Mark> marks) {
        return Terms.time(marks.get(0).at()) + " to "
                + Terms.time(marks.get(marks.size() - 1).at());
    }

    private static double y(int lane) {
        return TOP + LANE * lane;
    }

    private static double[] places(List<Sheet.Mark> marks) {
        double[] places = new double[marks.size()];
        for (int i = 1; i < places.length; i++) {
            long minutes =
                    Duration.between(marks.get(i - 1).at(), marks.get(i).at()).toMinutes();
            places[i] = places[i - 1] + 1 + Math.log1p(Math.max(0, minutes) / 30.0) / 2;
        }
        double all = Math.max(1, places[places.length - 1]);
        for (int i = 0; i < places.length; i++) {
            places[i] = LEFT + 4 + (RIGHT - LEFT - 14) * places[i] / all;
        }
        return places;
    }

    /** Whether numbered marks can stand side by side. */
    private static boolean roomy(double[] x) {
        for (int i = 1; i < x.length; i++) {
            if (x[i] - x[i - 1] < 1.4 * RADIUS) {
                return false;
            }
        }
        return true;
    }
}
