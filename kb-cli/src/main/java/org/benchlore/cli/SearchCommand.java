package org.benchlore.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.report.Json;
import org.benchlore.kb.search.HitKind;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchQuery;
import org.benchlore.kb.search.SearchResult;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Entries and cases for words. */
@Command(
        name = "search",
        description = "Search entries and cases together. Words are plain words; nothing in them is an operator.",
        mixinStandardHelpOptions = true)
final class SearchCommand extends BenchCommand {
    @Parameters(arity = "1..*", paramLabel = "WORDS", description = "What to look for; - reads standard input.")
    List<String> words = new ArrayList<>();

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            description = "Only symptom, cause, test, fix or case; may be repeated.")
    List<HitKind> kinds = new ArrayList<>();

    @Option(names = "--device", paramLabel = "SCOPE", description = "class/family/model/revision, as far as known.")
    @Nullable
    String device;

    @Option(
            names = "--limit",
            paramLabel = "N",
            defaultValue = "10",
            description = "Most hits (default ${DEFAULT-VALUE}).")
    int limit;

    SearchCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        if (limit < 1 || limit > SearchQuery.MAX_LIMIT) {
            throw new UsageException("--limit " + limit + " is outside 1 to " + SearchQuery.MAX_LIMIT);
        }
        String text = words(words);
        DeviceScope scope = scope(device);
        Set<HitKind> only = new LinkedHashSet<>(kinds);
        try (KnowledgeBase kb = open()) {
            SearchQuery query = new SearchQuery(text, kb.read(text, scope).findings(), scope, only, Set.of(), limit, 0);
            SearchResult result = kb.search(query);
            if (json) {
                bench.out().println(Json.search(result));
            } else {
                print(result);
            }
            result.didYouMean()
                    .ifPresent(words -> bench.err().println("benchlore: did you mean: " + Page.clean(words)));
            if (result.hits().isEmpty()) {
                bench.err().println("benchlore: nothing found for these words; try fewer or other words");
                return ExitCode.NOTHING_FOUND;
            }
            return ExitCode.DONE;
        }
    }

    private void print(SearchResult result) {
        Page page = bench.page();
        for (SearchHit hit : result.hits()) {
            page.hanging(
                    String.format(Locale.ROOT, "%-8s", kind(hit.kind())),
                    8,
                    hit.title() + " [" + hit.id() + "]"
                            + hit.ended().map(o -> ", " + o.id()).orElse(""));
            if (!hit.snippet().text().isBlank()) {
                page.marked(8, hit.snippet());
            }
        }
        if (!result.hits().isEmpty()) {
            page.line(result.total() + " found: "
                    + result.kinds().entrySet().stream()
                            .map(e -> kind(e.getKey()) + " " + e.getValue())
                            .collect(Collectors.joining(", ")));
        }
    }

    private static String kind(HitKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
