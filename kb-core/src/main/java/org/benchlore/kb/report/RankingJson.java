package org.benchlore.kb.report;

import java.util.List;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.PairRanking;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.ranking.Turn;
import org.benchlore.kb.reading.Reading;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Rankings as JSON, and what would change or moved them. */
final class RankingJson {
    private static final int FIRST_TESTS = 3;

    private RankingJson() {}

    static ObjectNode ranking(Reading reading, Ranking ranking, int most, NextStep next) {
        ObjectNode root = JsonNodes.root("ranking");
        root.put("scope", ranking.scope().toString());
        JsonNodes.texts(root, "kinds", ranking.kinds());
        ArrayNode understood = root.putArray("understood");
        for (Reading.Understood u : reading.understood()) {
            ObjectNode node = understood.addObject();
            node.put("text", u.span().text());
            JsonNodes.finding(node, u.finding());
            node.put("start", u.span().start());
            node.put("end", u.span().end());
            node.put("source", JsonNodes.lower(u.source()));
            if (u.past()) {
                node.put("past", true);
            }
            if (!u.conditions().isEmpty()) {
                JsonNodes.conditions(node, u.conditions());
            }
            if (!u.note().isEmpty()) {
                node.put("note", u.note());
            }
        }
        notUnderstood(root, reading);
        if (!reading.contradictions().isEmpty()) {
            ArrayNode contradictions = root.putArray("contradictions");
            for (Reading.Contradiction c : reading.contradictions()) {
                ObjectNode node = contradictions.addObject();
                node.put("symptom", c.symptomId());
                node.put("first", c.first());
                node.put("second", c.second());
            }
        }
        ArrayNode findings = root.putArray("findings");
        ranking.findings().forEach(f -> JsonNodes.finding(findings.addObject(), f));
        ArrayNode causes = root.putArray("causes");
        ranking.causes().stream().limit(most).forEach(c -> cause(causes.addObject(), c));
        root.put("total", ranking.causes().size());
        cause(root.putObject("unlisted"), ranking.unlisted());
        next.hold().ifPresent(hold -> root.set("hold", JsonNodes.tree(hold)));
        ArrayNode tests = root.putArray("nextTests");
        for (TestProposal proposal : next.inOrder(FIRST_TESTS)) {
            BenchTest test = proposal.test();
            ObjectNode node = tests.addObject();
            node.put("id", test.id());
            node.put("name", test.name());
            node.put("bits", proposal.bits());
            node.put("bitsPerMinute", proposal.bitsPerMinute());
            node.put("minutes", proposal.minutes());
            node.put("risk", JsonNodes.lower(test.risk()));
            JsonNodes.texts(node, "cautions", test.cautions());
        }
        return root;
    }

    static ObjectNode nothingUnderstood(Reading reading) {
        ObjectNode root = JsonNodes.root("ranking");
        JsonNodes.texts(root, "kinds", reading.kinds());
        root.putArray("understood");
        notUnderstood(root, reading);
        root.putArray("causes");
        root.put("total", 0);
        return root;
    }

    private static void notUnderstood(ObjectNode root, Reading reading) {
        JsonNodes.texts(
                root,
                "notUnderstood",
                reading.notUnderstood().stream().map(Reading.Span::text).toList());
    }

    private static void cause(ObjectNode node, RankedCause cause) {
        node.put("id", cause.id());
        node.put("name", cause.name());
        node.put("probability", cause.probability());
        node.putArray("interval")
                .add(cause.interval().low())
                .add(cause.interval().high());
        node.put("cases", cause.cases());
        if (!cause.lacking().isEmpty()) {
            JsonNodes.texts(node, "lacking", cause.lacking());
        }
        node.put("priorDecibans", cause.priorDecibans());
        node.put("wordingDecibans", cause.wordingDecibans());
        if (!cause.wordingWords().isEmpty()) {
            JsonNodes.texts(node, "wordingWords", cause.wordingWords());
        }
        node.put("codeDecibans", cause.codeDecibans());
        ArrayNode evidence = node.putArray("evidence");
        for (Ranking.Evidence e : cause.evidence()) {
            ObjectNode weight = evidence.addObject();
            weight.put("symptom", e.symptomId());
            weight.put("state", e.stateId());
            weight.put("decibans", e.decibans());
        }
        node.put("unmentionedDecibans", cause.unmentionedDecibans());
        node.put("overlapDecibans", cause.overlapDecibans());
    }

    static ObjectNode reasons(List<Turn> turns, String causeId, List<Influence> behind, PairRanking pairs) {
        ObjectNode root = JsonNodes.root("reasons");
        ArrayNode list = root.putArray("turns");
        for (Turn t : turns) {
            ObjectNode node = list.addObject();
            node.put("symptom", t.symptomId());
            node.put("state", t.stateId());
            node.put("chance", t.chance());
            node.put("leader", t.leaderId());
            node.put("before", t.before());
            node.put("after", t.after());
            node.put("next", t.nextId());
            node.put("nextProbability", t.next());
        }
        root.put("cause", causeId);
        ArrayNode cases = root.putArray("cases");
        for (Influence i : behind) {
            cases.addObject().put("id", i.caseId()).put("decibans", i.decibans());
        }
        ObjectNode two = root.putObject("twoFaults");
        two.put("probability", pairs.probability());
        ArrayNode likeliest = two.putArray("pairs");
        for (PairRanking.Pair p : pairs.pairs()) {
            ObjectNode node = likeliest.addObject();
            node.put("first", p.firstId());
            node.put("second", p.secondId());
            node.put("probability", p.probability());
            node.put("overSingle", p.overSingle());
        }
        return root;
    }
}
