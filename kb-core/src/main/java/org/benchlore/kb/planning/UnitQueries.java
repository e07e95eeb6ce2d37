package org.benchlore.kb.planning;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/**
 * Puts together what is known of a unit, out of its case. Everything that ranks a case asks here, so that a sheet and an
 * answer about the same case agree. Immutable and thread-safe, if its codes are.
 */
public final class UnitQueries {
    /** Codes of one unit looked up in past cases, those seen most often; a pasted log may hold thousands. */
    private static final int MOST_CODES = 32;

    private final Knowledge knowledge;
    private final RankingModel model;
    private final BenchRecord record;
    private final Codes codes;

    /** What past cases teach of codes that no pack knows. */
    @FunctionalInterface
    public interface Codes {
        /**
         * The records of some codes.
         *
         * @param codes as written
         * @param scope only cases of devices that contain it or lie inside it
         * @param exceptCase id of a case that does not count, or empty
         */
        List<CodeRecord> of(Collection<String> codes, DeviceScope scope, String exceptCase);
    }

    /** Queries for one model, with what the same cases teach of fixes. */
    public UnitQueries(Knowledge knowledge, RankingModel model, BenchRecord record, Codes codes) {
        this.knowledge = knowledge;
        this.model = model;
        this.record = record;
        this.codes = codes;
    }

    /**
     * The findings of the case's fault that the packs know, what its texts say beyond them, codes that no pack knows, and
     * the fixes that failed held against the causes they should have cured.
     *
     * @param read what a text of the case says, read in the case's scope; empty for one that cannot be read
     */
    public RankingQuery of(CaseHistory history, Function<String, Optional<Reading>> read) {
        return of(history, List.of(), read);
    }

    /**
     * As {@link #of(CaseHistory, Function)}, with what is found now on top.
     *
     * @param now findings, one per symptom
     */
    public RankingQuery of(CaseHistory history, List<Finding> now, Function<String, Optional<Reading>> read) {
        List<Reading> readings = read(history.textsOfFault(), read);
        return new RankingQuery(
                known(history, readings, now),
                history.scope(),
                true,
                history.workedOnBefore(),
                record.tried(history.failedFixes().stream()
                        .map(CaseEvent.FixApplied::fixId)
                        .toList()),
                RankingQuery.wordsOf(read(history.textsBeforeWork(), read), knowledge),
                codes.of(unknownCodes(readings), history.scope(), history.id()),
                kinds(history.scope(), readings),
                history.id());
    }

    private static List<Reading> read(List<String> texts, Function<String, Optional<Reading>> read) {
        return texts.stream().flatMap(text -> read.apply(text).stream()).toList();
    }

    private List<Finding> known(CaseHistory history, List<Reading> readings, List<Finding> now) {
        Set<String> outdated = Standing.outdated(
                knowledge,
                Stream.concat(
                                history.events().stream()
                                        .map(e -> Standing.findings(e).toList()),
                                Stream.of(now))
                        .toList());
        SortedMap<String, Finding> known = new TreeMap<>();
        RankingQuery.standing(
                        history.findingsOfFault().stream().filter(model::knows).toList(), readings, knowledge)
                .stream()
                .filter(finding -> !outdated.contains(finding.symptomId()))
                .forEach(finding -> known.put(finding.symptomId(), finding));
        now.forEach(finding -> known.put(finding.symptomId(), finding));
        return List.copyOf(known.values());
    }

    /** What a note says: its findings, its words, and codes that no pack knows. */
    public static RankingQuery of(Reading reading, Codes codes) {
        return new RankingQuery(reading.findings(), reading.scope(), true)
                .inWords(reading.text())
                .withCodes(codes.of(unknownCodes(List.of(reading)), reading.scope(), ""))
                .ofKinds(reading.kinds());
    }

    /** The class of the scope where that is known, else those that the texts name. */
    public static List<String> kinds(DeviceScope scope, List<Reading> readings) {
        return scope.depth() > 0
                ? scope.path().subList(0, 1)
                : readings.stream().flatMap(reading -> reading.kinds().stream()).toList();
    }

    private static Set<String> unknownCodes(List<Reading> readings) {
        Map<String, Integer> seen = new TreeMap<>();
        readings.stream()
                .flatMap(reading -> reading.codes().stream())
                .filter(code -> !code.known() && !code.past())
                .forEach(code -> seen.merge(code.code(), code.count(), Integer::sum));
        return seen.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .limit(MOST_CODES)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }
}
