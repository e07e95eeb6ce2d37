package org.benchlore.kb.data;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One line as the owner tells it at the counter, against the packs alone: what a stranger sees on the first day. */
class ComplaintsTest {
    private static final Path FOLDER = Path.of("src/test/resources/org/benchlore/kb/data");
    private static final int FIRST = 3;

    @TempDir
    Path home;

    /** Shares of a file's lines. */
    private record Tally(int all, double first, double amongFirst, double unread) {}

    private Tally tally(String file) throws IOException {
        List<String> lines;
        try (Stream<String> all = Files.lines(FOLDER.resolve(file))) {
            lines = all.filter(line -> !line.startsWith("#")).toList();
        }
        int first = 0;
        int amongFirst = 0;
        int unread = 0;
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            Set<String> known =
                    Set.copyOf(kb.knowledge().causes().stream().map(Cause::id).toList());
            for (String line : lines) {
                String[] fields = line.split("\t", -1);
                List<String> right = List.of(fields[0].split(" "));
                assertThat(right).as(file).allMatch(id -> id.equals(RankingModel.UNLISTED) || known.contains(id));
                var reading = kb.read(fields[1]);
                unread += reading.findings().isEmpty() ? 1 : 0;
                List<String> ranked = ranked(kb.rank(reading));
                first += right.contains(ranked.get(0)) ? 1 : 0;
                amongFirst += ranked.subList(0, FIRST).stream().anyMatch(right::contains) ? 1 : 0;
            }
        }
        double all = lines.size();
        return new Tally(lines.size(), first / all, amongFirst / all, unread / all);
    }

    /** Ids by probability, the unlisted cause in its place. */
    private static List<String> ranked(Ranking ranking) {
        List<Ranking.RankedCause> causes = new ArrayList<>(ranking.causes());
        causes.add(ranking.unlisted());
        causes.sort(Comparator.comparingDouble(Ranking.RankedCause::probability).reversed());
        return causes.stream().map(Ranking.RankedCause::id).toList();
    }

    @Test
    void a_line_from_the_counter_leads_to_what_a_technician_would_name() throws IOException {
        Tally tally = tally("complaints.tsv");

        assertThat(tally.all()).isEqualTo(269);
        assertThat(tally.first()).as("first right").isGreaterThanOrEqualTo(0.75);
        assertThat(tally.amongFirst()).as("among the first three").isGreaterThanOrEqualTo(0.9);
        assertThat(tally.unread()).as("nothing read").isLessThanOrEqualTo(0.05);
    }

    /** No miss is named, so that nobody mends for it. */
    @Test
    void unseen_lines_rank_no_worse_than_they_did() throws IOException {
        Tally tally = tally("complaints-unseen.tsv");

        assertThat(tally.all()).isEqualTo(254);
        assertThat(tally.first()).as("first right").isGreaterThanOrEqualTo(0.7);
        assertThat(tally.amongFirst()).as("among the first three").isGreaterThanOrEqualTo(0.85);
        assertThat(tally.unread()).as("nothing read").isLessThanOrEqualTo(0.2);
    }
}
