package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.report.Json;
import org.benchlore.kb.report.WordsPack;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Words of the bench that the packs do not know. */
@Command(
        name = "words",
        description = {
            "List phrases that the notes of cases use and no pack knows: those in many cases and those that go with one"
                    + " cause first, each with what it may stand for.",
            "With --yaml it writes them as a pack. Go through it, keep what is right, put it into HOME/packs."
        },
        mixinStandardHelpOptions = true)
final class WordsCommand extends BenchCommand {
    @Option(
            names = "--at-least",
            paramLabel = "N",
            defaultValue = "2",
            description = "Cases a phrase must stand in (default: ${DEFAULT-VALUE}).")
    int atLeast;

    @Option(
            names = "--top",
            paramLabel = "N",
            defaultValue = "20",
            description = "Most phrases to list (default: ${DEFAULT-VALUE}).")
    int top;

    @Option(names = "--yaml", description = "Write a pack that teaches them.")
    boolean yaml;

    WordsCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        if (atLeast < 1 || top < 1) {
            throw new UsageException("--at-least and --top count from 1");
        }
        try (KnowledgeBase kb = open()) {
            List<UnknownPhrase> all = kb.unknownPhrases(atLeast);
            List<UnknownPhrase> phrases = all.stream().limit(top).toList();
            if (json) {
                bench.out().println(Json.words(phrases));
            } else if (yaml) {
                bench.out().print(WordsPack.text(phrases));
            } else {
                print(kb, phrases, all.size());
            }
            return phrases.isEmpty() ? ExitCode.NOTHING_FOUND : ExitCode.DONE;
        }
    }

    private void print(KnowledgeBase kb, List<UnknownPhrase> phrases, int all) {
        Page page = bench.page();
        if (phrases.isEmpty()) {
            page.line("No phrase that the packs do not know stands in " + atLeast + " cases or more.");
            return;
        }
        page.heading(
                "Words the packs do not know: " + phrases.size() + " of " + all + ", in " + kb.caseCount() + " cases");
        for (UnknownPhrase phrase : phrases) {
            page.text(2, "\"" + phrase.phrase() + "\"  " + told(kb.knowledge(), phrase));
            phrase.proposals().stream()
                    .limit(1)
                    .forEach(p -> page.text(
                            6, "perhaps " + state(kb.knowledge(), p) + " [" + p.symptomId() + " " + p.stateId() + "]"));
            page.text(6, "in " + String.join(", ", phrase.examples()));
        }
    }

    private static String told(Knowledge knowledge, UnknownPhrase phrase) {
        String cases = phrase.cases() == 1 ? "1 case" : phrase.cases() + " cases";
        return phrase.lean()
                .map(lean -> String.format(
                        Locale.ROOT,
                        "%s, %d of them: %s (%+.0f dB)",
                        cases,
                        lean.cases(),
                        knowledge.cause(lean.causeId()).map(c -> c.name()).orElse(lean.causeId()),
                        lean.decibans()))
                .orElse(cases);
    }

    private static String state(Knowledge knowledge, UnknownPhrase.Proposal proposal) {
        return knowledge
                .symptom(proposal.symptomId())
                .map(s -> s.name() + " " + TestPage.stateName(s, proposal.stateId()))
                .orElse(proposal.symptomId());
    }
}
