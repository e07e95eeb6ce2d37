package org.benchlore.kb.ranking.planted;

import java.sql.Connection;
import java.time.Instant;
import java.util.logging.Logger;
import org.apache.lucene.document.Document;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.report.Json;
import org.snakeyaml.engine.v2.api.LoadSettings;
import tools.jackson.databind.JsonNode;

/** Breaks every rule of the house, so that a test can see each of them bite. */
@SuppressWarnings({"ArrayRecordComponent", "ObjectToString"})
public class Planted {
    public record Leaky(double[] values) {}

    public static final class OwnRootException extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    public Document breaksMost(
            KnowledgeBase front, Connection connection, JsonNode node, LoadSettings yaml, Logger logger) {
        System.out.println(Instant.now() + "" + front + connection + node + yaml + logger + Json.class);
        new Thread(() -> {}).start();
        return new Document();
    }
}
