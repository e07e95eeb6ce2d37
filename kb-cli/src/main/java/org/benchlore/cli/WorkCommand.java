package org.benchlore.cli;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The guided run. */
@Command(
        name = "work",
        description = {
            "Work through a case, step by step, at the keyboard.",
            "Every step is stored at once; close the lid when you like and go on with 'work CASE'."
        },
        mixinStandardHelpOptions = true)
final class WorkCommand extends BenchCommand implements BenchCommand.WithoutJson {
    private static final int MOST_OPEN = 9;
    private static final int LOOK_THROUGH = 100;

    @Parameters(arity = "0..1", paramLabel = "CASE", description = "The case to go on with; without, asks.")
    @Nullable
    String id;

    @Option(names = "--device", paramLabel = "SCOPE", description = "For a new case: class/family/model/revision.")
    @Nullable
    String device;

    @Option(names = "--unit", paramLabel = "TAG", defaultValue = "", description = "For a new case: serial or tag.")
    String unit = "";

    @Option(names = "--worked-on", description = "For a new case: somebody was in here before.")
    boolean workedOn;

    @Option(
            names = "--risk",
            paramLabel = "RISK",
            defaultValue = "medium",
            description = "Highest risk to the unit: none, low, medium, high (default ${DEFAULT-VALUE}).")
    Risk risk = Risk.MEDIUM;

    WorkCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        noJson("'work' talks with a person; for JSON use 'case', 'rank' and 'outcome'");
        requireTag(unit);
        DeviceScope scope = scope(device);
        Page page = bench.page();
        Lines lines = new Lines(System.in, bench.out());
        try (KnowledgeBase kb = open()) {
            warnOfUnknown(kb, scope);
            Optional<String> chosen = id == null
                    ? chosen(kb, lines, page, scope)
                    : Optional.of(CaseCommand.known(kb, id).id());
            if (chosen.isEmpty()) {
                page.text(0, "Nothing was entered, and nothing stored.");
                return ExitCode.NOTHING_FOUND;
            }
            CaseHistory history = CaseCommand.standing(kb, chosen.get());
            page.heading("Case " + history.id() + ", device " + history.scope());
            new WorkLoop(new WorkCase(kb, history.id(), risk), lines, page).run();
            return ExitCode.DONE;
        }
    }

    /** An open case by its number, or a new one by the owner's words. */
    private Optional<String> chosen(KnowledgeBase kb, Lines lines, Page page, DeviceScope scope) {
        List<CaseHistory> open = kb.cases(LOOK_THROUGH).stream()
                .filter(h -> h.unfinished() && h.origin().equals(CaseHistory.OWN))
                .limit(MOST_OPEN)
                .toList();
        if (!open.isEmpty()) {
            page.text(0, "Open cases:");
            CasePage cases = new CasePage(kb.knowledge(), page);
            for (int i = 0; i < open.size(); i++) {
                page.text(2, (i + 1) + "  " + cases.line(open.get(i)));
            }
            page.text(0, "A number goes on with that case; words open a new one.");
        }
        page.text(0, "What is wrong with it, in the owner's words?");
        Optional<String> words = lines.ask("> ");
        while (words.filter(w -> w.isEmpty() || (WorkWords.obeyed(w) && !WorkWords.leaves(w)))
                .isPresent()) {
            if (!words.get().isEmpty()) {
                page.text(
                        0,
                        "There is no case yet: say what is wrong with the unit, such as \"no picture, sound is fine\""
                                + (open.isEmpty() ? "" : ", or give the number of an open case")
                                + "; 'stop' leaves. Inside a case you can say:");
                page.bullets(2, WorkWords.HELP);
            }
            words = lines.ask("> ");
        }
        return words.filter(w -> !WorkWords.leaves(w)).map(w -> {
            List<Integer> picked = Lines.picked(w, open.size());
            return picked.size() == 1 ? open.get(picked.get(0)).id() : opened(kb, w, scope, page);
        });
    }

    private String opened(KnowledgeBase kb, String words, DeviceScope scope, Page page) {
        String caseId = kb.newCaseId();
        Reading reading = kb.read(words, scope);
        kb.record(
                new CaseEvent.Opened(kb.head(caseId), scope, words, unit, CaseHistory.OWN, workedOn),
                new CaseEvent.Noted(kb.head(caseId), words, Reading.Source.OWNER, reading.findings()));
        page.text(0, "Stored as case " + caseId + ".");
        new WorkPage(kb.knowledge(), page).understood(reading);
        return caseId;
    }
}
