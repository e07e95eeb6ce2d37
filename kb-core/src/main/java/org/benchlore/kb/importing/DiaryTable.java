package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.benchlore.kb.cases.ImportProblem;
import org.benchlore.kb.importing.CaseTeller.Vocabulary;

/** A Markdown table in a diary: lines between bars, the second of them a rule. Its columns are guessed as those of any table. */
final class DiaryTable {
    private static final char BAR = '|';

    private DiaryTable() {}

    /** Where the table ends whose header is line {@code from}, exclusive; {@code from} if none begins there. */
    static int end(List<String> lines, int from) {
        if (from + 2 >= lines.size() || !row(lines.get(from)) || !rule(lines.get(from + 1))) {
            return from;
        }
        int end = from + 2;
        while (end < lines.size() && row(lines.get(end))) {
            end++;
        }
        return end;
    }

    private static boolean row(String line) {
        return line.stripLeading().startsWith("|");
    }

    private static boolean rule(String line) {
        return row(line) && line.indexOf('-') >= 0 && line.chars().allMatch(c -> "|-: \t".indexOf(c) >= 0);
    }

    /**
     * The records of its rows; those that are bad are reported.
     *
     * @throws BadImportException if no column seems to hold text
     */
    static List<RawRecord> records(
            List<String> lines,
            int from,
            int to,
            Vocabulary vocabulary,
            DateOrder dates,
            String source,
            Consumer<ImportProblem> problems) {
        List<String> names = cells(lines.get(from));
        List<List<String>> rows = new ArrayList<>(List.of(names));
        for (int i = from + 2; i < to; i++) {
            rows.add(cells(lines.get(i)));
        }
        ColumnMapping mapping = new MappingGuess(vocabulary, dates)
                .of(rows.subList(0, Math.min(rows.size(), MappingGuess.SAMPLE + 1)), BAR, true, source);
        TableRecords table = new TableRecords(mapping, names, names.size(), 0, source, problems);
        List<RawRecord> records = new ArrayList<>();
        for (int i = from + 2; i < to; i++) {
            Optional<RawRecord> record = table.record(i + 1L, rows.get(i - from - 1));
            record.ifPresent(records::add);
        }
        return records;
    }

    private static List<String> cells(String line) {
        String row = line.strip();
        row = row.substring(1, row.length() - (row.endsWith("|") && row.length() > 1 ? 1 : 0));
        return Splitter.on(BAR)
                .splitToStream(row.replace("**", ""))
                .map(String::strip)
                .toList();
    }
}
