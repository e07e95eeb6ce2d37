package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.PairRanking;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.ranking.Turn;

/** What would change a ranking, what moved it, and two faults at once, as plain text. */
final class ReasonsPage {
    /** A pair less likely than this is one of very many. */
    private static final double LEAST_PAIR = 0.01;

    /** Two faults at once are worth a thought from this chance on. */
    private static final double TWO_FAULTS = 0.1;

    private final Knowledge knowledge;
    private final Names names;
    private final Page page;

    ReasonsPage(Knowledge knowledge, Page page) {
        this.knowledge = knowledge;
        this.names = new Names(knowledge);
        this.page = page;
    }

    /** Takes the second look at the leader and prints it. */
    void print(KnowledgeBase kb, RankingQuery query, Ranking ranking, int most) {
        String leader = ranking.causes().get(0).id();
        print(ranking, kb.turns(query, most), leader, kb.casesBehind(query, leader, most), kb.pairs(query, most));
    }

    void print(Ranking ranking, List<Turn> turns, String causeId, List<Influence> behind, PairRanking pairs) {
        against(ranking, pairs.probability());
        page.heading("What would change this");
        if (turns.isEmpty()) {
            page.text(2, "No single finding that is at all likely.");
        }
        TestPage tests = new TestPage(knowledge, page);
        for (Turn t : turns) {
            page.hanging(
                    2,
                    4,
                    tests.state(t.symptomId(), t.stateId()) + " [" + t.symptomId() + "], chance "
                            + Page.percent(t.chance()) + ": " + names.cause(t.leaderId()) + " falls from "
                            + Page.percent(t.before()) + " to " + Page.percent(t.after())
                            + (t.overturns()
                                    ? "; first would be " + names.cause(t.nextId()) + ", " + Page.percent(t.next())
                                    : ""));
        }
        page.blank();
        page.heading("Past cases behind " + names.cause(causeId));
        if (behind.isEmpty()) {
            page.text(2, "None; its place is the packs' opinion.");
        }
        for (Influence i : behind) {
            page.line("  " + i.caseId() + "  " + Page.decibans(i.decibans()));
        }
        page.blank();
        page.heading(String.format(Locale.ROOT, "Two faults at once: %s", Page.percent(pairs.probability())));
        List<PairRanking.Pair> likely = pairs.pairs().stream()
                .filter(p -> p.probability() >= LEAST_PAIR)
                .toList();
        if (likely.isEmpty()) {
            page.text(2, "No two causes stand out.");
        }
        for (PairRanking.Pair p : likely) {
            page.hanging(
                    2,
                    4,
                    Page.percent(p.probability()) + "  " + names.cause(p.firstId()) + " and "
                            + names.cause(p.secondId()));
        }
    }

    /** What speaks against the leading cause. */
    private void against(Ranking ranking, double twoFaults) {
        Ranking.RankedCause leader = ranking.causes().get(0);
        double unlisted = ranking.unlisted().probability();
        boolean leads = leader.probability() >= unlisted;
        String first = leader.name() + ", " + Page.percent(leader.probability());
        page.heading(
                leads
                        ? "Leading: " + first
                        : "First of the causes known here: " + first + "; "
                                + names.cause(ranking.unlisted().id()) + ", " + Page.percent(unlisted));
        TestPage tests = new TestPage(knowledge, page);
        List<String> against = leader.evidence().stream()
                .filter(e -> e.decibans() <= -1)
                .map(e -> "against: " + tests.state(e.symptomId(), e.stateId()) + " " + Page.decibans(e.decibans()))
                .toList();
        against.forEach(line -> page.hanging(2, 4, line));
        if (against.isEmpty()) {
            page.text(2, "No finding speaks against it.");
        }
        if (!leads) {
            page.caution("No single cause known here fits these findings well: check them again"
                    + (twoFaults < TWO_FAULTS ? "." : ", or think of two faults."));
        }
        page.blank();
    }
}
