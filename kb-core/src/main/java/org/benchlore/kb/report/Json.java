package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.ImportResult;
import org.benchlore.kb.importing.ImportReview;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.PackProblem;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.planning.FixRecord;
import org.benchlore.kb.planning.NextStep;
import org.benchlore.kb.planning.Plan;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.planning.Worth;
import org.benchlore.kb.ranking.Estimate;
import org.benchlore.kb.ranking.Evaluation;
import org.benchlore.kb.ranking.Influence;
import org.benchlore.kb.ranking.PairRanking;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.Ranking.RankedCause;
import org.benchlore.kb.ranking.Turn;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.search.SearchHit;
import org.benchlore.kb.search.SearchResult;
import org.benchlore.kb.search.Suggestion;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.cfg.EnumFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;
import tools.jackson.databind.ser.std.ToStringSerializer;

/**
 * Writes answers as JSON, each one line with a {@code schema} name and version; the schema files lie beside this class's
 * module under {@code org/benchlore/kb/schema}. Thread-safe.
 */
public final class Json {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    /** For answers that are written as they are: every component by its name, what is absent as null. */
    private static final JsonMapper AS_IS = JsonMapper.builder()
            .enable(EnumFeature.WRITE_ENUMS_TO_LOWERCASE)
            .addModule(new SimpleModule().addSerializer(DeviceScope.class, ToStringSerializer.instance))
            .build();

    private Json() {}

    /**
     * A ranking with what was read and what to test next ({@code benchlore/ranking/1}).
     *
     * @param reading what the findings were read from
     * @param next proposals in order; may be empty
     */
    public static String ranking(Reading reading, Ranking ranking, List<TestProposal> next) {
        ObjectNode root = root("ranking");
        root.put("scope", ranking.scope().toString());
        ArrayNode understood = root.putArray("understood");
        for (Reading.Understood u : reading.understood()) {
            ObjectNode node = understood.addObject();
            node.put("text", u.span().text());
            finding(node, u.finding());
            node.put("start", u.span().start());
            node.put("end", u.span().end());
            node.put("source", lower(u.source()));
            if (u.past()) {
                node.put("past", true);
            }
            if (!u.conditions().isEmpty()) {
                ArrayNode conditions = node.putArray("conditions");
                u.conditions().forEach(c -> conditions.add(lower(c)));
            }
            if (!u.note().isEmpty()) {
                node.put("note", u.note());
            }
        }
        ArrayNode missed = root.putArray("notUnderstood");
        reading.notUnderstood().forEach(s -> missed.add(s.text()));
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
        ranking.findings().forEach(f -> finding(findings.addObject(), f));
        ArrayNode causes = root.putArray("causes");
        ranking.causes().forEach(c -> cause(causes.addObject(), c));
        cause(root.putObject("unlisted"), ranking.unlisted());
        ArrayNode tests = root.putArray("nextTests");
        for (TestProposal proposal : next) {
            BenchTest test = proposal.test();
            ObjectNode node = tests.addObject();
            node.put("id", test.id());
            node.put("name", test.name());
            node.put("bits", proposal.bits());
            node.put("bitsPerMinute", proposal.bitsPerMinute());
            node.put("minutes", test.minutes());
            node.put("risk", lower(test.risk()));
            texts(node, "cautions", test.cautions());
        }
        return write(root);
    }

    /**
     * What would change a ranking, and what moved it ({@code benchlore/reasons/1}).
     *
     * @param turns single findings that would change who leads
     * @param causeId the cause asked about
     * @param behind past cases that moved it most
     * @param pairs two faults at once
     */
    public static String reasons(List<Turn> turns, String causeId, List<Influence> behind, PairRanking pairs) {
        ObjectNode root = root("reasons");
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
        return write(root);
    }

    /** How well the ranking would have done ({@code benchlore/evaluation/1}). */
    public static String evaluation(Evaluation evaluation) {
        ObjectNode root = root("evaluation");
        root.put("scored", evaluation.scored());
        root.put("learnt", evaluation.learnt());
        root.put("tooFew", evaluation.tooFew());
        root.put("tells", evaluation.tells());
        figures(root.putObject("baseline"), evaluation.baseline());
        figures(root.putObject("packs"), evaluation.packs());
        figures(root.putObject("cases"), evaluation.cases());
        figures(root.putObject("both"), evaluation.both());
        estimate(root, "gain", evaluation.gain());
        ArrayNode bins = root.putArray("calibration");
        for (Evaluation.Bin b : evaluation.calibration()) {
            ObjectNode node = bins.addObject();
            node.put("from", b.from());
            node.put("to", b.to());
            node.put("cases", b.cases());
            node.put("said", b.said());
            estimate(node, "right", b.right());
        }
        ArrayNode curve = root.putArray("curve");
        for (Evaluation.Stretch s : evaluation.curve()) {
            ObjectNode node = curve.addObject();
            node.put("from", s.from());
            node.put("to", s.to());
            node.put("packs", s.packs());
            node.put("cases", s.cases());
            node.put("both", s.both());
            node.put("top1", s.top1());
        }
        ArrayNode reviews = root.putArray("reviews");
        for (Evaluation.Review r : evaluation.reviews()) {
            ObjectNode node = reviews.addObject();
            node.put("cause", r.causeId());
            if (!r.symptomId().isEmpty()) {
                node.put("symptom", r.symptomId());
                node.put("state", r.stateId());
                node.put("linked", r.linked());
            }
            node.put("opinion", r.opinion());
            node.put("experience", r.experience());
            node.put("cases", r.cases());
            node.put("decibans", r.decibans());
        }
        return write(root);
    }

    private static void figures(ObjectNode node, Evaluation.Figures figures) {
        estimate(node, "top1", figures.top1());
        estimate(node, "top3", figures.top3());
        estimate(node, "logLoss", figures.logLoss());
        estimate(node, "brier", figures.brier());
        node.put("ece", figures.calibrationError());
    }

    /** Ends of an interval that nothing bounds are left out: JSON has no infinity. */
    private static void estimate(ObjectNode parent, String name, Estimate estimate) {
        ObjectNode node = parent.putObject(name);
        node.put("value", estimate.value());
        if (Double.isFinite(estimate.low())) {
            node.put("low", estimate.low());
            node.put("high", estimate.high());
        }
    }

    private static void cause(ObjectNode node, RankedCause cause) {
        node.put("id", cause.id());
        node.put("name", cause.name());
        node.put("probability", cause.probability());
        node.putArray("interval")
                .add(cause.interval().low())
                .add(cause.interval().high());
        node.put("cases", cause.cases());
        node.put("priorDecibans", cause.priorDecibans());
        node.put("wordingDecibans", cause.wordingDecibans());
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

    private static void finding(ObjectNode node, Finding finding) {
        node.put("symptom", finding.symptomId());
        node.put("state", finding.state());
        if (!finding.certain()) {
            ObjectNode likelihoods = node.putObject("likelihoods");
            for (Map.Entry<String, Double> e : finding.likelihoods().entrySet()) {
                likelihoods.put(e.getKey(), e.getValue());
            }
        }
    }

    /** What to do now ({@code benchlore/next/1}). */
    public static String next(NextStep next) {
        return decision("next", next);
    }

    /** The whole plan ({@code benchlore/plan/1}). */
    public static String plan(Plan plan) {
        return decision("plan", plan);
    }

    /** The record of fixes ({@code benchlore/fixes/1}). */
    public static String fixes(List<FixRecord> fixes) {
        ObjectNode root = root("fixes");
        root.set("fixes", AS_IS.valueToTree(fixes));
        return write(root);
    }

    /** Whether to touch a unit ({@code benchlore/worth/1}). */
    public static String worth(Worth worth) {
        return decision("worth", worth);
    }

    /** The proof of a fix ({@code benchlore/proof/1}). */
    public static String proof(ProofPlan proof) {
        ObjectNode root = root("proof");
        ProofRecord known = proof.known();
        known.fixId().ifPresent(id -> root.put("fixId", id));
        root.put("failed", known.failed());
        root.put("seen", known.seen());
        root.put("seenHours", known.seenHours());
        conditions(root, known.conditions());
        root.put("cleanHours", known.cleanHours());
        root.put("otherHours", known.otherHours());
        root.put("confidence", proof.confidence());
        root.put("priorNotCured", proof.priorNotCured());
        proof.run().ifPresent(run -> {
            root.put("hours", run.hours());
            root.put("hoursAtMeanRate", run.hoursAtMeanRate());
            root.put("stillThere", run.stillThere());
            root.put("hoursLeft", run.hoursLeft());
        });
        ArrayNode checklist = root.putArray("checklist");
        for (ProofPlan.Item item : proof.checklist()) {
            ObjectNode node = checklist.addObject();
            node.put("step", item.step());
            node.put("ofFix", item.ofFix());
            item.result().ifPresent(r -> node.put("result", lower(r)));
            node.put("failedBefore", item.failedBefore());
            node.put("hours", item.hours());
            conditions(node, item.conditions());
        }
        return write(root);
    }

    private static void conditions(ObjectNode node, List<Reading.Condition> conditions) {
        texts(node, "conditions", conditions.stream().map(Json::lower).toList());
    }

    /** Phrases that notes use and the packs do not know ({@code benchlore/words/1}). */
    public static String words(List<UnknownPhrase> phrases) {
        ObjectNode root = root("words");
        ArrayNode all = root.putArray("phrases");
        for (UnknownPhrase phrase : phrases) {
            ObjectNode node = all.addObject();
            node.put("phrase", phrase.phrase());
            node.put("cases", phrase.cases());
            phrase.lean().ifPresent(lean -> {
                ObjectNode one = node.putObject("lean");
                one.put("causeId", lean.causeId());
                one.put("cases", lean.cases());
                one.put("decibans", lean.decibans());
            });
            ArrayNode proposals = node.putArray("proposals");
            for (UnknownPhrase.Proposal proposal : phrase.proposals()) {
                ObjectNode one = proposals.addObject();
                one.put("symptomId", proposal.symptomId());
                one.put("stateId", proposal.stateId());
                one.put("likeness", proposal.likeness());
            }
            texts(node, "examples", phrase.examples());
        }
        return write(root);
    }

    /** A text as YAML and JSON both quote it. */
    static String quoted(String text) {
        return write(StringNode.valueOf(text));
    }

    /** How good the packs are ({@code benchlore/quality/1}). */
    public static String quality(QualityReport report) {
        return decision("quality", report);
    }

    private static String decision(String name, Record answer) {
        ObjectNode root = root(name);
        AS_IS.valueToTree(answer).properties().forEach(p -> root.set(p.getKey(), p.getValue()));
        return write(root);
    }

    /** What a search found, with counts to narrow it down by ({@code benchlore/search/1}). */
    public static String search(SearchResult result) {
        ObjectNode root = hits(result.hits(), result.total());
        ObjectNode facets = root.putObject("facets");
        ObjectNode kinds = facets.putObject("kinds");
        result.kinds().forEach((kind, n) -> kinds.put(kind.id(), n));
        ObjectNode scopes = facets.putObject("scopes");
        result.scopes().forEach((scope, n) -> scopes.put(scope.toString(), n));
        ObjectNode outcomes = facets.putObject("outcomes");
        result.outcomes().forEach((outcome, n) -> outcomes.put(outcome.id(), n));
        result.didYouMean().ifPresent(words -> root.put("didYouMean", words));
        return write(root);
    }

    /** Cases like a case, as hits without counts ({@code benchlore/search/1}). */
    public static String similar(List<SearchHit> hits) {
        return write(hits(hits, hits.size()));
    }

    private static ObjectNode hits(List<SearchHit> found, long total) {
        ObjectNode root = root("search");
        ArrayNode hits = root.putArray("hits");
        for (SearchHit hit : found) {
            ObjectNode node = hits.addObject();
            node.put("kind", hit.kind().id());
            node.put("id", hit.id());
            node.put("title", hit.title());
            node.put("score", hit.score());
            node.put("snippet", hit.snippet().text());
            ArrayNode matches = node.putArray("matches");
            hit.snippet()
                    .matches()
                    .forEach(m -> matches.addArray().add(m.start()).add(m.end()));
            node.put("scope", hit.scope().toString());
            node.put("uri", hit.uri());
            hit.ended().ifPresent(outcome -> node.put("outcome", outcome.id()));
        }
        root.put("total", total);
        return root;
    }

    /** What somebody may be about to type ({@code benchlore/suggestions/1}). */
    public static String suggestions(List<Suggestion> suggestions) {
        ObjectNode root = root("suggestions");
        ArrayNode list = root.putArray("suggestions");
        for (Suggestion suggestion : suggestions) {
            ObjectNode node = list.addObject();
            node.put("text", suggestion.text());
            node.put("kind", suggestion.kind().id());
            node.put("id", suggestion.id());
            node.put("uri", suggestion.uri());
        }
        return write(root);
    }

    /** A reading that led to no finding, as a ranking without causes ({@code benchlore/ranking/1}). */
    public static String nothingUnderstood(Reading reading) {
        ObjectNode root = root("ranking");
        root.putArray("understood");
        ArrayNode missed = root.putArray("notUnderstood");
        reading.notUnderstood().forEach(span -> missed.add(span.text()));
        root.putArray("causes");
        return write(root);
    }

    /** What an import did ({@code benchlore/import/1}). */
    public static String imported(String source, ImportResult result) {
        ObjectNode root = root("import");
        root.put("source", source);
        root.put("cases", result.cases());
        root.put("events", result.events());
        root.put("added", result.added());
        root.put("known", result.known());
        root.put("leftOut", result.leftOut());
        ReviewJson.problems(root, result.problems(), result.moreProblems());
        return write(root);
    }

    /** What an import would bring ({@code benchlore/import-review/1}). */
    public static String importReview(ImportReview review) {
        ObjectNode root = root("import-review");
        ReviewJson.review(root, review);
        return write(root);
    }

    /** A knowledge entry, every field by its name ({@code benchlore/entry/1}). */
    public static String entry(Record entry) {
        String kind =
                entry instanceof BenchTest ? "test" : lower(entry.getClass().getSimpleName());
        ObjectNode fields = MAPPER.valueToTree(entry);
        ObjectNode root = root("entry");
        root.put("kind", kind);
        root.put("uri", "benchlore:" + kind + "/" + fields.path("id").asString());
        root.set("entry", fields);
        return write(root);
    }

    /** Problems of packs ({@code benchlore/check/1}). */
    public static String check(List<PackProblem> problems) {
        ObjectNode root = root("check");
        ArrayNode list = root.putArray("problems");
        for (PackProblem p : problems) {
            ObjectNode node = list.addObject();
            node.put("file", p.file());
            node.put("line", p.line());
            node.put("column", p.column());
            node.put("severity", lower(p.severity()));
            node.put("what", p.what());
            node.put("remedy", p.remedy());
        }
        return write(root);
    }

    /** One case as it stands ({@code benchlore/case-state/1}). */
    public static String history(CaseHistory history) {
        return write(history(root("case-state"), history));
    }

    /** Several cases ({@code benchlore/case-list/1}). */
    public static String histories(List<CaseHistory> histories) {
        ObjectNode root = root("case-list");
        ArrayNode list = root.putArray("cases");
        histories.forEach(h -> history(list.addObject(), h));
        return write(root);
    }

    private static ObjectNode history(ObjectNode node, CaseHistory history) {
        node.put("id", history.id());
        node.put("opened", history.openedAt().toString());
        node.put("scope", history.scope().toString());
        node.put("complaint", history.complaint());
        node.put("origin", history.origin());
        ArrayNode findings = node.putArray("findings");
        history.findings().forEach(f -> finding(findings.addObject(), f));
        if (history.causeId() != null) {
            node.put("cause", history.causeId());
        }
        if (history.certainty() != null) {
            node.put("certainty", lower(history.certainty()));
        }
        if (history.outcome() != null) {
            node.put("outcome", history.outcome().id());
        }
        node.put("withdrawn", history.withdrawn());
        return node;
    }

    /**
     * What recording an outcome did to the ranking of its cause for the same findings ({@code benchlore/outcome/1}).
     *
     * @param before probability of the cause before
     * @param after and after
     */
    public static String outcome(CaseHistory history, String causeId, double before, double after) {
        ObjectNode root = root("outcome");
        root.put("id", history.id());
        root.put("cause", causeId);
        root.put("before", before);
        root.put("after", after);
        if (history.outcome() != null) {
            root.put("outcome", history.outcome().id());
        }
        return write(root);
    }

    private static ObjectNode root(String name) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schema", "benchlore/" + name + "/1");
        return root;
    }

    static void texts(ObjectNode node, String name, List<String> texts) {
        ArrayNode array = node.putArray(name);
        texts.forEach(array::add);
    }

    private static String lower(Enum<?> value) {
        return lower(value.name());
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String write(JsonNode node) {
        return MAPPER.writeValueAsString(node);
    }
}
