package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.report.Json;
import org.benchlore.kb.search.EntryLink;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** One entry or case in full. */
@Command(
        name = "show",
        description = "Show a cause, symptom, test, fix, caution, device, power-off rule or case in full.",
        mixinStandardHelpOptions = true)
final class ShowCommand extends BenchCommand {
    @Parameters(paramLabel = "ID", description = "Its id, or the link a search gives, such as benchlore:cause/ID.")
    String id = "";

    ShowCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        Optional<EntryLink> link = link();
        String name = link.map(EntryLink::id).orElse(id.strip());
        try (KnowledgeBase kb = open()) {
            Knowledge knowledge = kb.knowledge();
            EntryPage page = new EntryPage(knowledge, bench.page());
            List<Entry> found = new ArrayList<>();
            knowledge.cause(name).ifPresent(e -> found.add(new Entry("cause", () -> page.cause(e), Json.entry(e))));
            knowledge
                    .symptom(name)
                    .ifPresent(e -> found.add(new Entry("symptom", () -> page.symptom(e), Json.entry(e))));
            knowledge.test(name).ifPresent(e -> found.add(new Entry("test", () -> page.test(e), Json.entry(e))));
            knowledge.fix(name).ifPresent(e -> found.add(new Entry("fix", () -> page.fix(e), Json.entry(e))));
            knowledge
                    .caution(name)
                    .ifPresent(e -> found.add(new Entry("caution", () -> page.caution(e), Json.entry(e))));
            knowledge.devices().stream()
                    .filter(e -> e.scope().toString().equals(name))
                    .forEach(e -> found.add(new Entry("device", () -> page.device(e), Json.entry(e))));
            knowledge.powerOff().stream()
                    .filter(e -> e.id().equals(name))
                    .forEach(e -> found.add(new Entry("power-off-rule", () -> page.powerOff(e), Json.entry(e))));
            Optional<CaseHistory> history = found.isEmpty() || link.isPresent() ? kb.history(name) : Optional.empty();
            history.ifPresent(h -> {
                List<CaseEvent> recorded = kb.events(h.id());
                found.add(new Entry(
                        "case",
                        () -> new CasePage(knowledge, bench.page()).full(h, recorded, kb.unknownIds(h.events())),
                        Json.history(h, recorded)));
            });
            List<Entry> shown = found.stream()
                    .filter(e -> link.map(l -> l.kind().equals(e.kind())).orElse(true))
                    .toList();
            if (shown.isEmpty()) {
                throw new UsageException("nothing here has the id '" + name + "'; "
                        + nearest(
                                name, Stream.concat(ids(knowledge), recent(kb)).toList()));
            }
            for (Entry entry : shown) {
                if (json) {
                    bench.out().println(entry.json());
                } else {
                    entry.print().run();
                    bench.page().line("Link: " + new EntryLink(entry.kind(), name).uri());
                }
            }
            return ExitCode.DONE;
        }
    }

    private Optional<EntryLink> link() {
        try {
            return EntryLink.parse(id);
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    private static Stream<String> recent(KnowledgeBase kb) {
        return kb.cases(200).stream().map(CaseHistory::id);
    }

    private record Entry(String kind, Runnable print, String json) {}

    private static Stream<String> ids(Knowledge knowledge) {
        return Stream.of(
                        knowledge.causes().stream().map(e -> e.id()),
                        knowledge.symptoms().stream().map(e -> e.id()),
                        knowledge.tests().stream().map(e -> e.id()),
                        knowledge.fixes().stream().map(e -> e.id()),
                        knowledge.powerOff().stream().map(e -> e.id()),
                        knowledge.devices().stream().map(e -> e.scope().toString()))
                .flatMap(s -> s);
    }
}
