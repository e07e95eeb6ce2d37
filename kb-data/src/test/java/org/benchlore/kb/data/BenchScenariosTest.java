package org.benchlore.kb.data;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.ranking.Ranking;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Words of the bench from every area against the packs alone, before any case is learnt. */
class BenchScenariosTest {
    private static final Path FOLDER = Path.of("src/test/resources/org/benchlore/kb/data");
    private static final int FIRST = 3;

    @TempDir
    Path home;

    private record Scenario(
            String id, String area, String hand, Set<String> causes, Set<String> notFirst, String words) {
        static Scenario of(String line) {
            String[] f = line.split("\t", -1);
            Set<String> notFirst = f[4].isEmpty() ? Set.of() : Set.of(f[4].split(" "));
            return new Scenario(f[0], f[1], f[2], Set.of(f[3].split(" ")), notFirst, f[5]);
        }

        /** Place of the first of its causes, from 1. */
        int place(List<String> ranked) {
            int at = 0;
            while (at < ranked.size() && !causes.contains(ranked.get(at))) {
                at++;
            }
            return at + 1;
        }
    }

    /** How a file of scenarios fared. */
    private record Tally(int all, int first, List<String> misses, List<String> wrongLeaders) {
        double firstRight() {
            return first / (double) all;
        }

        double amongFirst() {
            return 1 - misses.size() / (double) all;
        }
    }

    private static List<String> lines(String file) throws IOException {
        try (Stream<String> lines = Files.lines(FOLDER.resolve(file))) {
            return lines.filter(line -> !line.startsWith("#")).toList();
        }
    }

    private Tally tally(String file) throws IOException {
        List<Scenario> scenarios = lines(file).stream().map(Scenario::of).toList();
        List<String> misses = new ArrayList<>();
        List<String> wrongLeaders = new ArrayList<>();
        int first = 0;
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            Set<String> known =
                    Set.copyOf(kb.knowledge().causes().stream().map(Cause::id).toList());
            for (Scenario scenario : scenarios) {
                assertThat(known).as(scenario.id()).containsAll(scenario.causes());
                assertThat(known).as(scenario.id()).containsAll(scenario.notFirst());
                List<String> ranked = kb.rank(kb.read(scenario.words())).causes().stream()
                        .map(Ranking.RankedCause::id)
                        .toList();
                int place = scenario.place(ranked);
                first += place == 1 ? 1 : 0;
                String told =
                        scenario.id() + ": " + scenario.causes() + " at " + place + ", " + ranked.get(0) + " leads";
                if (place > FIRST) {
                    misses.add(told);
                }
                if (scenario.notFirst().contains(ranked.get(0))) {
                    wrongLeaders.add(told);
                }
            }
        }
        return new Tally(scenarios.size(), first, misses, wrongLeaders);
    }

    @Test
    void the_true_cause_is_among_the_first_three_and_no_false_friend_leads() throws IOException {
        Tally tally = tally("scenarios.tsv");

        assertThat(tally.all()).isEqualTo(180);
        assertThat(tally.amongFirst()).as("missed: " + tally.misses()).isGreaterThanOrEqualTo(0.95);
        assertThat(tally.firstRight()).as("first right").isGreaterThanOrEqualTo(0.75);
        assertThat(tally.wrongLeaders()).isEmpty();
    }

    /** What a bench may expect of words nobody mended for; no miss is named, so that nobody does. */
    @Test
    void unseen_words_rank_no_worse_than_they_did() throws IOException {
        Tally tally = tally("scenarios-unseen.tsv");

        assertThat(tally.all()).isEqualTo(100);
        assertThat(tally.amongFirst()).as("among the first three").isGreaterThanOrEqualTo(0.88);
        assertThat(tally.firstRight()).as("first right").isGreaterThanOrEqualTo(0.78);
        assertThat(tally.wrongLeaders()).hasSizeLessThanOrEqualTo(2);
    }

    /** Whose fault is in no pack: the ranking says so, or is at least not sure of another. */
    @Test
    void a_fault_that_no_pack_knows_is_not_taken_for_one_of_theirs() throws IOException {
        List<Ranking> rankings = new ArrayList<>();
        try (KnowledgeBase kb =
                KnowledgeBase.builder().packs(ShippedPacks.all()).home(home).open()) {
            for (String line : lines("scenarios-unlisted.tsv")) {
                rankings.add(kb.rank(kb.read(line.split("\t", -1)[3])));
            }
        }
        assertThat(rankings).hasSize(87);
        double mean = rankings.stream()
                .mapToDouble(ranking -> ranking.unlisted().probability())
                .average()
                .orElseThrow();
        assertThat(mean).as("chance of a fault that is not listed").isGreaterThanOrEqualTo(0.4);
        assertThat(rankings)
                .filteredOn(ranking -> ranking.causes().get(0).probability() > 0.9)
                .as("sure of a wrong cause")
                .hasSizeLessThanOrEqualTo(6);
    }
}
