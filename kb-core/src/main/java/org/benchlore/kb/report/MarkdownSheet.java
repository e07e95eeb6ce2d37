package org.benchlore.kb.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Writes a sheet as Markdown (CommonMark with pipe tables). Pictures are written as what they show: tables. */
final class MarkdownSheet {
    /** Columns of the ranking table that still fit a page. */
    private static final int MOST_STEPS = 7;

    private final StringBuilder out = new StringBuilder();

    private MarkdownSheet() {}

    static String write(Sheet sheet) {
        MarkdownSheet markdown = new MarkdownSheet();
        markdown.block("# " + Escape.markdown(sheet.title()));
        if (!sheet.subtitle().isEmpty()) {
            markdown.block(Escape.markdown(sheet.subtitle()));
        }
        sheet.blocks().forEach(markdown::block);
        if (!sheet.foot().isEmpty()) {
            markdown.block("---");
            markdown.block(Escape.markdown(sheet.foot()));
        }
        return markdown.out.toString();
    }

    private void block(Sheet.Block block) {
        if (block instanceof Sheet.Section section) {
            block("## " + Escape.markdown(section.heading()));
        } else if (block instanceof Sheet.Words words) {
            block(Escape.markdown(words.text()));
        } else if (block instanceof Sheet.Verdict verdict) {
            block("**" + Escape.markdown(verdict.text()) + "**");
        } else if (block instanceof Sheet.Quote quote) {
            block("> " + Escape.markdown(quote.text()));
        } else if (block instanceof Sheet.Facts facts) {
            block(facts.facts().stream()
                    .map(f -> "- " + Escape.markdown(f.name()) + ": " + Escape.markdown(f.value()))
                    .collect(Collectors.joining("\n")));
        } else if (block instanceof Sheet.Bullets bullets) {
            list(bullets.items());
        } else if (block instanceof Sheet.Warnings warnings) {
            list(warnings.items());
        } else if (block instanceof Sheet.Table table) {
            table(table);
        } else if (block instanceof Sheet.Ranks ranks) {
            table(asTable(ranks));
        }
        // events and log lines stand in the tables beside their pictures
    }

    private void list(List<String> items) {
        block(items.stream().map(i -> "- " + Escape.markdown(i)).collect(Collectors.joining("\n")));
    }

    private void table(Sheet.Table table) {
        List<String> lines = new ArrayList<>();
        lines.add(row(table.heads()));
        lines.add("|" + " --- |".repeat(table.heads().size()));
        table.rows().forEach(r -> lines.add(row(r)));
        block(String.join("\n", lines));
    }

    private static String row(List<String> cells) {
        return cells.stream().map(Escape::markdown).collect(Collectors.joining(" | ", "| ", " |"));
    }

    /** The first step and the last ones. */
    static Sheet.Table asTable(Sheet.Ranks ranks) {
        int steps = ranks.steps().size();
        List<Integer> shown = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            if (i == 0 || i > steps - MOST_STEPS) {
                shown.add(i);
            }
        }
        List<String> heads = new ArrayList<>(List.of("Cause"));
        shown.forEach(i -> heads.add("after " + ranks.steps().get(i)));
        List<List<String>> rows = new ArrayList<>();
        for (Sheet.Curve curve : ranks.curves()) {
            List<String> row = new ArrayList<>(List.of(curve.name()));
            shown.forEach(i -> row.add(Terms.share(curve.shares().get(i))));
            rows.add(row);
        }
        return new Sheet.Table(heads, rows);
    }

    private void block(String text) {
        out.append(out.length() == 0 ? "" : "\n").append(text).append('\n');
    }
}
