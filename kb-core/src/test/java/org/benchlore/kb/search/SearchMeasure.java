package org.benchlore.kb.search;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * nDCG at 10 and mean reciprocal rank of a grade 3 hit on graded queries, ours beside plain BM25 over the same documents:
 * {@code kb-core/measure search [--json] [--queries FILE]... [-v]}. {@code --pool DEPTH} prints instead what is among the
 * first DEPTH of any way to search and not judged yet. How to read and write the query files: {@code docs/search.md}.
 */
final class SearchMeasure {
    private static final int DEPTH = 10;
    private static final int JUST_RIGHT = 3;
    private static final Path QUERIES = Path.of("src/test/resources/org/benchlore/kb/search");
    private static final List<String> FILES = List.of("graded-queries-dev.tsv", "graded-queries-test.tsv");

    /** Means over queries. */
    record Score(double ndcg, double reciprocalRank, double judged, int queries) {}

    private SearchMeasure() {}

    public static void main(String[] args) throws IOException {
        boolean json = false;
        boolean verbose = false;
        int pool = 0;
        List<Path> files = new ArrayList<>();
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--json" -> json = true;
                case "-v" -> verbose = true;
                case "--queries" -> files.add(Path.of(args[++i]));
                case "--pool" -> pool = Integer.parseInt(args[++i]);
                default -> throw new IllegalArgumentException("unknown option " + args[i]);
            }
        }
        if (files.isEmpty()) {
            FILES.forEach(file -> files.add(QUERIES.resolve(file)));
        }
        try (SearchTrial trial = SearchTrial.open()) {
            List<GradedQuery> all = new ArrayList<>();
            for (Path file : files) {
                List<GradedQuery> queries = GradedQuery.read(file);
                all.addAll(queries);
                if (pool > 0) {
                    pool(trial, queries, pool, System.out);
                } else if (!json) {
                    table(file.getFileName().toString(), trial, queries, verbose, System.out);
                }
            }
            if (pool == 0 && json) {
                json(trial, all, System.out);
            } else if (pool == 0 && files.size() > 1) {
                table("all", trial, all, false, System.out);
            }
        }
    }

    static Score score(SearchTrial.Way way, List<GradedQuery> queries) {
        double ndcg = 0;
        double rank = 0;
        double judged = 0;
        for (GradedQuery query : queries) {
            List<String> found = way.find(query, DEPTH);
            ndcg += ndcg(query, found);
            rank += Measures.reciprocalRank(gains(query, found).stream()
                    .map(g -> g >= JUST_RIGHT ? g : 0)
                    .toList());
            judged += found.isEmpty()
                    ? 1
                    : found.stream().filter(query.grades()::containsKey).count() / (double) found.size();
        }
        int n = queries.size();
        return new Score(ndcg / n, rank / n, judged / n, n);
    }

    private static double ndcg(GradedQuery query, List<String> found) {
        List<Double> judged =
                query.grades().values().stream().map(Integer::doubleValue).toList();
        return Measures.ndcg(gains(query, found), judged, DEPTH);
    }

    private static List<Double> gains(GradedQuery query, List<String> found) {
        return found.stream()
                .map(key -> (double) query.grades().getOrDefault(key, 0))
                .toList();
    }

    private static void table(
            String name, SearchTrial trial, List<GradedQuery> queries, boolean each, PrintStream out) {
        out.printf(Locale.ROOT, "%s, %d queries%n", name, queries.size());
        out.printf(Locale.ROOT, "  %-12s %8s %8s %8s%n", "", "nDCG@10", "MRR", "judged");
        trial.ways().forEach((system, way) -> {
            Score s = score(way, queries);
            out.printf(Locale.ROOT, "  %-12s %8.3f %8.3f %8.3f%n", system, s.ndcg, s.reciprocalRank, s.judged);
        });
        if (each) {
            SearchTrial.Way ours = trial.ways().values().iterator().next();
            for (GradedQuery query : queries) {
                List<String> found = ours.find(query, DEPTH);
                out.printf(Locale.ROOT, "  %.3f %s [%s]%n", ndcg(query, found), query.words(), query.scope());
                found.forEach(key -> out.printf(
                        Locale.ROOT,
                        "      %s %s%n",
                        query.grades().containsKey(key)
                                ? query.grades().get(key).toString()
                                : "?",
                        key));
            }
        }
    }

    private static void json(SearchTrial trial, List<GradedQuery> queries, PrintStream out) {
        for (String system : List.of("benchlore", "bm25")) {
            Score s = score(trial.way(system), queries);
            out.printf(
                    Locale.ROOT,
                    "{\"system\":\"%s\",\"ndcg10\":%.4f,\"mrr\":%.4f,\"queries\":%d}%n",
                    system,
                    s.ndcg,
                    s.reciprocalRank,
                    s.queries);
        }
    }

    /** In order of kind and id, so that nobody who judges sees which way found what. */
    private static void pool(SearchTrial trial, List<GradedQuery> queries, int depth, PrintStream out) {
        Map<String, String> titles = new LinkedHashMap<>();
        trial.drafts().forEach(draft -> titles.put(draft.key(), draft.title()));
        for (GradedQuery query : queries) {
            Set<String> found = new TreeSet<>();
            for (SearchTrial.Way way : trial.ways().values()) {
                found.addAll(way.find(query, depth));
            }
            found.removeAll(query.grades().keySet());
            out.println(query.words() + "\t" + query.scope());
            for (String key : found) {
                out.println("    " + key + "\t" + titles.get(key));
            }
        }
    }
}
