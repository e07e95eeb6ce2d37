package org.benchlore.kb.knowledge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The ranges of one symptom's states in its own unit; they must touch and not overlap. */
final class RangeBinder {
    /** Two ways to write one end, 90% and 10.8, differ by a rounding error of this size at most. */
    private static final double SAME_END = 1e-9;

    private final Object subject;
    private final Quantity quantity;
    private final Problems problems;

    RangeBinder(Object subject, Quantity quantity, Problems problems) {
        this.subject = subject;
        this.quantity = quantity;
        this.problems = problems;
    }

    private record Placed(StateList.Draft draft, Range range, Place place) {}

    /**
     * Ranges by state.
     *
     * @param from where the symptom names its states: what is wrong with a shared set for this quantity only is reported
     *     there
     */
    Map<String, Range> bind(StateList list, Place from) {
        List<Placed> placed = new ArrayList<>();
        boolean own = list.place().equals(from);
        for (StateList.Draft draft : list.states().values()) {
            Place place = own ? draft.rangePlace() : from;
            range(draft, place).ifPresent(range -> placed.add(new Placed(draft, range, place)));
        }
        placed.sort(Comparator.comparingDouble((Placed p) -> p.range().low())
                .thenComparingDouble(p -> p.range().high()));
        Map<String, Range> ranges = new HashMap<>();
        for (int i = 0; i < placed.size(); i++) {
            Placed here = placed.get(i);
            Range range = here.range();
            if (i > 0) {
                Placed below = placed.get(i - 1);
                double end = below.range().high();
                if (Math.abs(end - range.low()) <= SAME_END * Math.max(1, Math.abs(end))) {
                    range = end < range.high() ? new Range(end, range.high()) : range;
                } else {
                    reportSeam(below, here);
                }
            }
            ranges.put(here.draft().id(), range);
        }
        return ranges;
    }

    private Optional<Range> range(StateList.Draft draft, Place place) {
        RangeText written = draft.range();
        if (written == null) {
            return Optional.empty();
        }
        Subject what = Subject.of(subject, ": the range of state ", Subject.quoted(draft.id()));
        if (written.relative() && quantity.nominal() == null) {
            problems.error(
                    place, what + " is relative to a nominal value that is not given", "add 'nominal' to the quantity");
            return Optional.empty();
        }
        if (written.usesTolerance() && quantity.toleranceShare() == 0) {
            return Optional.empty(); // the missing or bad tolerance is already reported
        }
        Optional<Range> range = written.in(quantity);
        if (range.isEmpty()) {
            problems.error(place, what + " is empty or upside down", "put the lower end first");
        }
        return range;
    }

    private void reportSeam(Placed below, Placed above) {
        double end = below.range().high();
        double start = above.range().low();
        String both = Problems.quote(below.draft().id()) + " and "
                + Problems.quote(above.draft().id());
        String unit = " " + quantity.unit();
        if (end > start) {
            problems.error(
                    above.place(),
                    subject + ": the ranges of " + both + " overlap from " + Problems.plain(start) + " to "
                            + Problems.plain(Math.min(end, above.range().high())) + unit,
                    "let one end where the next begins");
        } else {
            problems.error(
                    above.place(),
                    subject + ": the ranges of " + both + " leave a gap from " + Problems.plain(end) + " to "
                            + Problems.plain(start) + unit,
                    "let one end where the next begins");
        }
    }
}
