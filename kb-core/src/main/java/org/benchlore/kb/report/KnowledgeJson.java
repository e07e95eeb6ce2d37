package org.benchlore.kb.report;

import java.util.List;
import java.util.Locale;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.EntryKind;
import org.benchlore.kb.knowledge.PackProblem;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.knowledge.QualityReport;
import org.benchlore.kb.reading.UnknownPhrase;
import org.benchlore.kb.search.EntryLink;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Entries of the packs, what is wrong with them and what they lack, as JSON. */
final class KnowledgeJson {
    private KnowledgeJson() {}

    static ObjectNode entry(Record entry) {
        String kind = entry instanceof BenchTest
                ? EntryKind.TEST.id()
                : entry instanceof PowerOff
                        ? EntryKind.POWER_OFF.id()
                        : entry.getClass().getSimpleName().toLowerCase(Locale.ROOT);
        JsonNode fields = JsonNodes.tree(entry);
        String id = fields.path(entry instanceof Device ? "scope" : "id").asString();
        ObjectNode root = JsonNodes.root("entry");
        root.put("kind", kind);
        root.put("uri", new EntryLink(kind, id).uri());
        root.set("entry", fields);
        return root;
    }

    static ObjectNode check(List<PackProblem> problems) {
        ObjectNode root = JsonNodes.root("check");
        ArrayNode list = root.putArray("problems");
        for (PackProblem p : PackProblem.foremost(problems)) {
            ObjectNode node = list.addObject();
            node.put("file", p.file());
            node.put("line", p.line());
            node.put("column", p.column());
            node.put("severity", JsonNodes.lower(p.severity()));
            node.put("what", p.what());
            node.put("remedy", p.remedy());
        }
        root.put("total", problems.size());
        return root;
    }

    static ObjectNode quality(QualityReport report) {
        return JsonNodes.decision("quality", report);
    }

    static ObjectNode words(List<UnknownPhrase> phrases) {
        ObjectNode root = JsonNodes.root("words");
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
            JsonNodes.texts(node, "examples", phrase.examples());
        }
        return root;
    }
}
