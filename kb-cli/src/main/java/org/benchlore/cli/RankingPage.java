package org.benchlore.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.ranking.CodeRecord;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.Evidence;
import org.benchlore.kb.ranking.Ranking.Interval;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;

/** A ranking as plain text: what was understood, the causes and why, the first test, the cautions. */
final class RankingPage {
    /** A weight below this says next to nothing and is not shown as a reason. */
    private static final double LEAST_DECIBANS = 1;

    /** Cautions of a cause that ranks below this are not shown: a per cent or two is no reason to. */
    private static final double IN_QUESTION = 0.025;

    private static final int REASONS = 3;

    private final Knowledge knowledge;
    private final Page page;
    private final TestPage tests;

    RankingPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.page = page;
        this.tests = new TestPage(knowledge, page);
    }

    /**
     * @param done fixes that were tried
     * @param step what to do first; empty leaves that out
     * @param perMinute what a minute at the bench costs
     * @param top causes shown
     */
    void print(
            Reading reading,
            RankingQuery query,
            Ranking ranking,
            List<String> done,
            Optional<NextStep> step,
            double perMinute,
            int top) {
        understood(reading, ranking);
        new KindWords(knowledge).line(ranking).ifPresent(line -> page.hanging(2, 4, line));
        query.codes().forEach(code -> page.hanging(2, 6, taught(code)));
        if (ranking.findings().isEmpty()) {
            page.hanging(
                    2,
                    6,
                    "No finding: what follows goes by the wording and past cases alone; a look or a reading"
                            + " would make it surer.");
        }
        done.forEach(id -> page.hanging(2, 6, "done before: " + new Names(knowledge).fix(id)));
        page.blank();
        page.heading("Likely causes" + (ranking.scope().depth() == 0 ? "" : " in " + ranking.scope()));
        List<RankedCause> shown =
                ranking.causes().subList(0, Math.min(top, ranking.causes().size()));
        int place = 1;
        for (RankedCause cause : shown) {
            cause(place++, cause, ranking.kinds());
        }
        double rest = ranking.causes().stream()
                .skip(shown.size())
                .mapToDouble(RankedCause::probability)
                .sum();
        page.line(String.format(
                Locale.ROOT,
                "    %5s  %s  other causes known here (%d)",
                Page.percent(rest),
                Page.bar(rest),
                ranking.causes().size() - shown.size()));
        page.line(String.format(
                Locale.ROOT,
                "    %5s  %s  %s",
                Page.percent(ranking.unlisted().probability()),
                Page.bar(ranking.unlisted().probability()),
                ranking.unlisted().name()));
        step.ifPresent(next -> {
            page.blank();
            page.heading("First step");
            new DecisionPage(knowledge, page).advice(next, perMinute);
            next.first().ifPresent(proposal -> tests.full(proposal.test()));
        });
        Cautions cautions = new Cautions(knowledge);
        step.ifPresentOrElse(
                next -> cautions.step(next, next.first().stream().toList(), ranking.findings()),
                () -> cautions.found(ranking.findings()));
        shown.stream().filter(c -> c.probability() >= IN_QUESTION).forEach(c -> cautions.cause(c.id()));
        cautions.print(page);
    }

    private void understood(Reading reading, Ranking ranking) {
        page.heading("Understood");
        ReadPage read = new ReadPage(knowledge, page);
        read.understood(reading, this::meaning);
        Set<String> told =
                reading.understood().stream().map(u -> u.finding().symptomId()).collect(Collectors.toSet());
        for (Finding finding : ranking.findings()) {
            if (!told.contains(finding.symptomId())) {
                page.hanging(2, 6, "known: " + meaning(finding));
            }
        }
        for (Reading.Contradiction c : reading.contradictions()) {
            page.caution("The words contradict themselves on " + symptom(c.symptomId()) + ": \""
                    + reading.understood().get(c.first()).span().text() + "\" and \""
                    + reading.understood().get(c.second()).span().text() + "\". Both are kept; look again.");
        }
        read.rest(reading);
    }

    /** What past cases say of a code that no pack knows. */
    private String taught(CodeRecord code) {
        String known = "code " + code.code() + ", which no pack knows: ";
        if (code.seen() == 0) {
            return known + "in no case that was concluded yet";
        }
        String causes = code.with().entrySet().stream()
                .sorted(Map.Entry.<String, Long>comparingByValue().reversed().thenComparing(Map.Entry.comparingByKey()))
                .limit(REASONS)
                .map(e -> e.getValue() + " of " + code.cases().getOrDefault(e.getKey(), 0L) + " with "
                        + knowledge.cause(e.getKey()).map(Cause::name).orElse("a cause not known here"))
                .collect(Collectors.joining(", "));
        return known + "in " + code.seen() + " of " + code.all() + " concluded cases (" + causes + ")";
    }

    private String meaning(Finding finding) {
        return tests.finding(finding) + " [" + finding.symptomId() + "]";
    }

    private String symptom(String id) {
        return knowledge.symptom(id).map(Symptom::name).orElse(id);
    }

    private void cause(int place, RankedCause cause, List<String> kinds) {
        page.hanging(
                String.format(
                        Locale.ROOT,
                        "%2d. %5s  %s  ",
                        place,
                        Page.percent(cause.probability()),
                        Page.bar(cause.probability())),
                29,
                cause.name() + " [" + cause.id() + "]");
        page.hanging(6, 6, sure(cause.interval()) + "; " + cases(cause.cases()));
        reasons("for", cause, 1);
        reasons("against", cause, -1);
        if (!cause.lacking().isEmpty()) {
            page.hanging(
                    6,
                    8,
                    new KindWords(knowledge).lacking(kinds, cause.lacking()) + ", so it is unlikely from the start");
        }
    }

    private static String sure(Interval interval) {
        return "90 % sure it lies " + Page.range(interval.low(), interval.high());
    }

    private static String cases(long n) {
        return n == 0 ? "no past case, the packs' opinion" : n == 1 ? "1 past case" : n + " past cases";
    }

    private void reasons(String label, RankedCause cause, int sign) {
        String text = Stream.concat(
                        cause.evidence().stream()
                                .filter(e -> sign * e.decibans() >= LEAST_DECIBANS)
                                .sorted(Comparator.comparingDouble((Evidence e) -> -sign * e.decibans())
                                        .thenComparing(Evidence::symptomId))
                                .limit(REASONS)
                                .map(e -> tests.state(e.symptomId(), e.stateId()) + " " + Page.decibans(e.decibans())),
                        Stream.concat(
                                other(wording(cause), cause.wordingDecibans(), sign),
                                other("codes no pack knows ", cause.codeDecibans(), sign)))
                .collect(Collectors.joining(", "));
        if (!text.isEmpty()) {
            page.hanging(6, 8 + label.length(), label + ": " + text);
        }
    }

    private static String wording(RankedCause cause) {
        String words =
                cause.wordingWords().stream().map(word -> '"' + word + '"').collect(Collectors.joining(", "));
        return "the wording of the note " + (words.isEmpty() ? "" : "(mostly " + words + ") ");
    }

    private static Stream<String> other(String what, double decibans, int sign) {
        return sign * decibans >= LEAST_DECIBANS ? Stream.of(what + Page.decibans(decibans)) : Stream.empty();
    }
}
