package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Which unit a question is about: words, findings or a case, and what was tried in vain. */
final class UnitOptions {
    @Mixin
    SeenOptions seen = new SeenOptions();

    @Option(
            names = "--case",
            paramLabel = "CASE",
            description = "Take device, findings and failed fixes from a case; words and --finding come on top.")
    @Nullable
    String caseId;

    @Option(
            names = "--failed",
            paramLabel = "FIX",
            description = "A fix that was tried and did not help; may be repeated.")
    List<String> failed = new ArrayList<>();

    @Option(
            names = "--worked-on",
            description = "Somebody has been inside before, so that two faults at once are likelier.")
    boolean workedOn;

    /**
     * A unit as far as it is known.
     *
     * @param reading what the words were read as
     * @param seen what words and options say now, on top of the case
     * @param query all that is known, what was tried in vain among it
     * @param done ids of all fixes that were done, the case's last one too
     * @param history the case, where one was named
     */
    record Unit(
            Reading reading, List<Finding> seen, RankingQuery query, List<String> done, Optional<CaseHistory> history) {
        boolean opened(KnowledgeBase kb) {
            return history.map(kb::opened).orElse(false);
        }

        /** What the case's fixes made safe, but for what is told to be amiss now, and what the words tell to be put right. */
        List<String> madeSafe(KnowledgeBase kb) {
            Set<String> told = seen.stream().map(Finding::symptomId).collect(Collectors.toSet());
            Set<String> again = kb.knowledge().powerOff().stream()
                    .filter(rule -> told.contains(rule.symptomId()))
                    .map(PowerOff::id)
                    .collect(Collectors.toSet());
            return Stream.concat(
                            history.map(kb::madeSafe).orElse(List.of()).stream().filter(rule -> !again.contains(rule)),
                            kb.madeSafe(reading).stream())
                    .distinct()
                    .toList();
        }
    }

    /** Refuses to go on where nothing of the unit was given. */
    void require(String verb) {
        if (seen.nothing() && caseId == null) {
            throw new UsageException(verb + " what? Give words, --finding SYMPTOM=STATE or --case CASE");
        }
    }

    /** What is known of the unit; perhaps nothing. */
    Unit unit(KnowledgeBase kb, BenchCommand command) {
        Optional<CaseHistory> history = Optional.ofNullable(caseId).map(id -> CaseCommand.known(kb, id));
        Optional<RankingQuery> told = history.map(kb::query);
        DeviceScope scope = seen.scope(told.map(RankingQuery::scope).orElse(DeviceScope.ANY));
        command.warnOfUnknown(kb, scope);
        SeenOptions.Seen said = seen.read(kb, command, scope);
        List<Finding> all =
                history.map(h -> kb.query(h, said.findings()).findings()).orElse(said.findings());
        List<String> inVain =
                new ArrayList<>(failed.stream().map(f -> fixId(kb, f)).toList());
        List<String> done = new ArrayList<>(inVain);
        history.ifPresent(h -> {
            h.failedFixes().forEach(f -> inVain.add(f.fixId()));
            fixes(h).forEach(done::add);
        });
        RankingQuery fromWords = kb.query(said.reading());
        Map<String, CodeRecord> codes = new TreeMap<>();
        told.ifPresent(q -> q.codes().forEach(code -> codes.put(code.code(), code)));
        fromWords.codes().forEach(code -> codes.put(code.code(), code));
        RankingQuery query = new RankingQuery(
                        all,
                        scope,
                        told.isPresent() || !said.reading().text().isBlank(),
                        workedOn || told.map(RankingQuery::workedOnBefore).orElse(false),
                        history.map(h -> kb.tried(inVain, h.id())).orElseGet(() -> kb.tried(inVain)))
                .about(history.map(CaseHistory::id).orElse(""))
                .inWords(told.filter(q -> !q.findings().isEmpty())
                        .map(q -> q.words() + "\n" + RankingQuery.furtherWordsOf(said.reading(), kb.knowledge()))
                        .orElseGet(() -> told.map(RankingQuery::words).orElse("") + "\n" + fromWords.words()))
                .withCodes(List.copyOf(codes.values()))
                .ofKinds(kinds(scope, told, said.reading()));
        return new Unit(said.reading(), List.copyOf(said.findings()), query, done, history);
    }

    /** What the case and the words say together, unless the device is given. */
    private static List<String> kinds(DeviceScope scope, Optional<RankingQuery> told, Reading reading) {
        return scope.depth() > 0
                ? scope.path().subList(0, 1)
                : Stream.concat(told.stream().flatMap(q -> q.kinds().stream()), reading.kinds().stream())
                        .toList();
    }

    private static List<String> fixes(CaseHistory history) {
        return history.events().stream()
                .filter(CaseEvent.FixApplied.class::isInstance)
                .map(e -> ((CaseEvent.FixApplied) e).fixId())
                .toList();
    }

    /** As {@link #unit}, refused when nothing is known. */
    Unit known(KnowledgeBase kb, BenchCommand command) {
        Unit unit = unit(kb, command);
        if (!kb.tells(unit.query())) {
            throw new UsageException("nothing known of the unit; give words such as \"no 12 V\", --finding or --case");
        }
        return unit;
    }

    static String fixId(KnowledgeBase kb, String id) {
        noFix(kb, id).ifPresent(wrong -> {
            throw new UsageException(wrong);
        });
        return id;
    }

    static String causeId(KnowledgeBase kb, String id) {
        noCause(kb, id).ifPresent(wrong -> {
            throw new UsageException(wrong);
        });
        return id;
    }

    /** What to say of a fix that is not known; empty if it is. */
    static Optional<String> noFix(KnowledgeBase kb, String id) {
        return none("fix", id, kb.knowledge().fixes().stream().map(Fix::id).toList());
    }

    /** As {@link #noFix}, of a cause. */
    static Optional<String> noCause(KnowledgeBase kb, String id) {
        return none("cause", id, kb.knowledge().causes().stream().map(Cause::id).toList());
    }

    /** As {@link #noFix}, of a test. */
    static Optional<String> noTest(KnowledgeBase kb, String id) {
        return none(
                "test", id, kb.knowledge().tests().stream().map(BenchTest::id).toList());
    }

    private static Optional<String> none(String what, String id, List<String> known) {
        return known.contains(id)
                ? Optional.empty()
                : Optional.of("no " + what + " '" + id + "'; " + BenchCommand.nearest(id, known));
    }

    /** What to say of minutes that are none; empty if they are, or are not given. */
    static Optional<String> noMinutes(@Nullable Double minutes) {
        return minutes == null || (minutes >= 0 && Double.isFinite(minutes))
                ? Optional.empty()
                : Optional.of("--minutes " + minutes + ": give the bench time in minutes, 0 or more");
    }
}
