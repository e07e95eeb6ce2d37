package org.benchlore.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.report.Json;
import org.benchlore.kb.search.HitKind;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchQuery;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Entries and cases for words, cases like a case, and what may be meant by the beginning of a word. */
@Command(
        name = "search",
        description = "Search entries and cases together. Words are plain words; nothing in them is an operator.",
        mixinStandardHelpOptions = true)
final class SearchCommand extends BenchCommand {
    private static final int MOST_SUGGESTIONS = 100;

    @Parameters(arity = "0..*", paramLabel = "WORDS", description = "What to look for; - reads standard input.")
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
            names = "--outcome",
            paramLabel = "OUTCOME",
            description = "Only cases that ended so, such as fixed or came-back; may be repeated.")
    List<String> outcomes = new ArrayList<>();

    @Option(names = "--similar", paramLabel = "CASE", description = "Cases like this one, instead of words.")
    @Nullable
    String similarTo;

    @Option(
            names = "--suggest",
            paramLabel = "PREFIX",
            description = "Names and phrases with a word that begins so, instead of a search.")
    @Nullable
    String prefix;

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
        if ((words.isEmpty() ? 0 : 1) + (similarTo == null ? 0 : 1) + (prefix == null ? 0 : 1) != 1) {
            throw new UsageException("give words to look for, or --similar CASE, or --suggest PREFIX: one of them");
        }
        int most = prefix == null ? SearchQuery.MAX_LIMIT : MOST_SUGGESTIONS;
        if (limit < 1 || limit > most) {
            throw new UsageException("--limit " + limit + " is outside 1 to " + most);
        }
        if (words.isEmpty() && !(kinds.isEmpty() && outcomes.isEmpty() && device == null)) {
            throw new UsageException("--kind, --device and --outcome go with words to look for");
        }
        List<Outcome> ends = outcomes.stream().map(SearchCommand::outcome).toList();
        try (KnowledgeBase kb = open()) {
            return prefix != null
                    ? suggest(kb, prefix)
                    : similarTo != null ? similar(kb, CaseCommand.known(kb, similarTo)) : search(kb, ends);
        }
    }

    private int search(KnowledgeBase kb, List<Outcome> ends) {
        String text = words(words);
        DeviceScope scope = scope(device);
        SearchResult result = kb.search(new SearchQuery(
                text,
                kb.read(text, scope).findings(),
                scope,
                new LinkedHashSet<>(kinds),
                new LinkedHashSet<>(ends),
                limit,
                0));
        if (json) {
            bench.out().println(Json.search(result));
        } else {
            new SearchPage(bench.page()).result(result);
        }
        result.didYouMean().ifPresent(meant -> bench.tell("searched for: " + meant));
        return done(result.hits().isEmpty(), "nothing found for these words; try fewer or other words");
    }

    private int similar(KnowledgeBase kb, CaseHistory history) {
        List<SearchHit> hits = kb.similar(history, limit);
        if (json) {
            bench.out().println(Json.similar(hits));
        } else {
            new SearchPage(bench.page()).hits(hits);
        }
        return done(hits.isEmpty(), "no other case is like this one");
    }

    private int suggest(KnowledgeBase kb, String typed) {
        List<Suggestion> suggestions = kb.suggest(typed, limit);
        if (json) {
            bench.out().println(Json.suggestions(suggestions));
        } else {
            new SearchPage(bench.page()).suggestions(suggestions);
        }
        return done(suggestions.isEmpty(), "no name has a word that begins so");
    }

    private int done(boolean nothing, String what) {
        if (nothing) {
            bench.tell(what);
        }
        return nothing ? ExitCode.NOTHING_FOUND : ExitCode.DONE;
    }

    private static Outcome outcome(String id) {
        try {
            return Outcome.parse(id);
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }
}
