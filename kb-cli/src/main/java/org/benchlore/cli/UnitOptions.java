package org.benchlore.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.BenchConditions;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which unit a decision is about, and what the bench has: words, findings or a case, tools, risk and prices. */
final class UnitOptions {
    @Parameters(arity = "0..*", paramLabel = "WORDS", description = "What you see and measure; - reads standard input.")
    List<String> words = new ArrayList<>();

    @Option(names = "--case", paramLabel = "CASE", description = "Take findings and failed fixes from a case.")
    @Nullable
    String caseId;

    @Option(names = "--device", paramLabel = "SCOPE", description = "class/family/model/revision, as far as known.")
    @Nullable
    String device;

    @Option(names = "--finding", paramLabel = "SYMPTOM=STATE", description = "A finding by id; may be repeated.")
    List<String> findings = new ArrayList<>();

    @Option(
            names = "--failed",
            paramLabel = "FIX",
            description = "A fix that was tried and did not help; may be repeated.")
    List<String> failed = new ArrayList<>();

    @Option(
            names = "--tool",
            paramLabel = "NAME",
            description = "A tool at hand, any part of its name; then no other is.")
    List<String> tools = new ArrayList<>();

    @Option(names = "--without", paramLabel = "NAME", description = "A tool not at hand; may be repeated.")
    List<String> missing = new ArrayList<>();

    @Option(
            names = "--risk",
            paramLabel = "RISK",
            defaultValue = "medium",
            description = "Highest risk to the unit: none, low, medium, high (default ${DEFAULT-VALUE}).")
    Risk risk = Risk.MEDIUM;

    @Option(
            names = "--per-minute",
            paramLabel = "COST",
            defaultValue = "1",
            description = "What a minute at the bench costs (default ${DEFAULT-VALUE}).")
    double perMinute = 1;

    @Option(
            names = "--unsolved",
            paramLabel = "COST",
            description = "What it costs to end without a repair (default: 240 minutes).")
    @Nullable
    Double unsolved;

    /** What is known of the unit. */
    RankingQuery query(KnowledgeBase kb, BenchCommand command) {
        DeviceScope scope = BenchCommand.scope(device);
        Map<String, Finding> all = new LinkedHashMap<>();
        boolean note = false;
        Optional<CaseHistory> given = history(kb);
        if (given.isPresent()) {
            scope = device == null ? given.get().scope() : scope;
            given.get().findings().forEach(f -> all.put(f.symptomId(), f));
            note = true;
        }
        String text = command.words(words);
        RankingQuery said = RankCommand.query(kb.read(text, scope), BenchCommand.findings(kb, findings), scope);
        said.findings().forEach(f -> all.put(f.symptomId(), f));
        return new RankingQuery(List.copyOf(all.values()), scope, note || said.fromNote());
    }

    /** The case that was named, if one was. */
    Optional<CaseHistory> history(KnowledgeBase kb) {
        return Optional.ofNullable(caseId).map(id -> CaseCommand.known(kb, id));
    }

    /** As {@link #query}, refused when nothing is known. */
    RankingQuery known(KnowledgeBase kb, BenchCommand command) {
        RankingQuery query = query(kb, command);
        if (query.findings().isEmpty()) {
            throw new UsageException("nothing known of the unit; give words such as \"no 12 V\", --finding or --case");
        }
        return query;
    }

    BenchConditions conditions(KnowledgeBase kb) {
        List<String> tried = new ArrayList<>(failed);
        for (String fix : failed) {
            fixId(kb, fix);
        }
        if (caseId != null) {
            CaseCommand.known(kb, caseId).events().stream()
                    .filter(CaseEvent.FixApplied.class::isInstance)
                    .map(e -> ((CaseEvent.FixApplied) e).fixId())
                    .forEach(tried::add);
        }
        try {
            return BenchConditions.DEFAULT
                    .accepting(risk)
                    .with(tools, missing)
                    .costing(
                            perMinute, unsolved == null ? BenchConditions.DEFAULT.unsolvedCost() * perMinute : unsolved)
                    .afterFailing(tried);
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    static String fixId(KnowledgeBase kb, String id) {
        return kb.knowledge()
                .fix(id)
                .orElseThrow(() -> new UsageException("no fix '" + id + "'; "
                        + BenchCommand.nearest(
                                id,
                                kb.knowledge().fixes().stream().map(f -> f.id()).toList())))
                .id();
    }
}
