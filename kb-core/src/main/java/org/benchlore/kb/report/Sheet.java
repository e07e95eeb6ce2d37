package org.benchlore.kb.report;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A sheet before it is written out: blocks of plain text. Nothing in it is escaped; whoever writes it out escapes every
 * text, so that no builder can forget to.
 *
 * @param title what the sheet is
 * @param subtitle what it is about, or empty
 * @param blocks in order
 * @param foot small print
 */
record Sheet(String title, String subtitle, List<Block> blocks, String foot) {
    Sheet {
        blocks = List.copyOf(blocks);
    }

    /** One piece of a sheet. */
    sealed interface Block {}

    /** A heading; what follows belongs to it. */
    record Section(String heading) implements Block {}

    /** A paragraph. */
    record Words(String text) implements Block {}

    /** The sentence that matters most. */
    record Verdict(String text) implements Block {}

    /** Somebody's own words. */
    record Quote(String text) implements Block {}

    /** Names and values. */
    record Facts(List<Fact> facts) implements Block {
        Facts {
            facts = List.copyOf(facts);
        }
    }

    /** One name and its value. */
    record Fact(String name, String value) {}

    /** A list. */
    record Bullets(List<String> items) implements Block {
        Bullets {
            items = List.copyOf(items);
        }
    }

    /** What can hurt somebody. */
    record Warnings(List<String> items) implements Block {
        Warnings {
            items = List.copyOf(items);
        }
    }

    /** Rows under heads; every row has as many cells as there are heads. */
    record Table(List<String> heads, List<List<String>> rows) implements Block {
        Table {
            heads = List.copyOf(heads);
            rows = List.copyOf(rows);
            for (List<String> row : rows) {
                if (row.size() != heads.size()) {
                    throw new IllegalArgumentException("row " + row + " has not the " + heads.size() + " cells of "
                            + heads + "; fill it with empty ones");
                }
            }
        }
    }

    /**
     * Shares of the leading causes, step by step.
     *
     * @param steps numbers of the events after which the ranking was taken
     * @param curves one per cause, the present leader first
     */
    record Ranks(List<Integer> steps, List<Curve> curves) implements Block {
        Ranks {
            steps = List.copyOf(steps);
            curves = List.copyOf(curves);
        }
    }

    /** A cause and its share after each step, in 0..1. */
    record Curve(String name, List<Double> shares) {
        Curve {
            shares = List.copyOf(shares);
        }

        double last() {
            return shares.get(shares.size() - 1);
        }
    }

    /** The case's events along time. */
    record Events(List<String> lanes, List<Mark> marks) implements Block {
        Events {
            lanes = List.copyOf(lanes);
            marks = List.copyOf(marks);
        }
    }

    /** One event: its number, its lane, its time. */
    record Mark(int number, int lane, Instant at) {}

    /** Log codes along the log's own time. */
    record Log(List<LogLine> lines) implements Block {
        Log {
            lines = List.copyOf(lines);
        }
    }

    /** One code: how often, from when to when. */
    record LogLine(String code, int count, Optional<LocalDateTime> first, Optional<LocalDateTime> last) {}
}
