package org.benchlore.kb.cases;

import java.io.StringWriter;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Lines of JSON: one event, or one whole case, per line. Strict in reading and bounded in both directions. */
final class CaseJson {
    static final String EVENT = "benchlore/event/1";
    static final String CASE = "benchlore/case/1";

    /** Longest line, in UTF-16 units; a case with a year of notes needs a tenth of it. */
    static final int MAX_LINE = 1 << 20;

    private static final int MAX_DEPTH = 12; // the deepest that is ours, a corrected finding's likelihoods, needs 5
    private static final int MAX_NUMBER = 64; // digits; a double needs 24

    private static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(MAX_DEPTH)
                    .maxDocumentLength(MAX_LINE)
                    .maxStringLength(MAX_LINE)
                    .maxNameLength(CaseEvent.Head.MAX_ID)
                    .maxNumberLength(MAX_NUMBER)
                    .build())
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();
    private static final JsonMapper MAPPER = JsonMapper.builder(FACTORY)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private CaseJson() {}

    /**
     * One line, without the line break. Keys that say nothing (empty notes, minutes not kept) are left out.
     *
     * @throws UnfitEventException if it would be longer than {@link #MAX_LINE}
     */
    static String write(CaseEvent event) {
        StringWriter line = new StringWriter(256);
        try (JsonGenerator json = FACTORY.createGenerator(ObjectWriteContext.empty(), line)) {
            EventWriter.write(event, json);
        }
        String text = wellFormed(line.toString());
        if (text.length() > MAX_LINE) {
            throw new UnfitEventException("event '" + event.head().eventId() + "' takes " + text.length()
                    + " characters as JSON, more than " + MAX_LINE + "; shorten its text or split it");
        }
        return text;
    }

    /** Escapes half surrogate pairs, which could not be stored as UTF-8; they can stand inside strings only. */
    private static String wellFormed(String line) {
        StringBuilder mended = null;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            boolean pair = Character.isHighSurrogate(c)
                    && i + 1 < line.length()
                    && Character.isLowSurrogate(line.charAt(i + 1));
            if (pair) {
                if (mended != null) {
                    mended.append(c).append(line.charAt(i + 1));
                }
                i++;
            } else if (Character.isSurrogate(c)) {
                mended = mended == null ? new StringBuilder(line.substring(0, i)) : mended;
                mended.append("\\u").append(Integer.toHexString(c));
            } else if (mended != null) {
                mended.append(c);
            }
        }
        return mended == null ? line : mended.toString();
    }

    /** Reads what {@link #write} wrote. */
    static CaseEvent read(String line) {
        JsonFields fields = parse(line, "event");
        String schema = fields.text("schema");
        if (!schema.equals(EVENT)) {
            throw new BadLineException("schema is '" + JsonFields.shown(schema) + "'", "expected " + EVENT, null);
        }
        return EventReader.read(fields);
    }

    static JsonFields parse(String line, String name) {
        return new JsonFields(tree(line), name);
    }

    /** An object of any kind. */
    static JsonNode object(String line) {
        JsonNode node = tree(line);
        if (!node.isObject()) {
            throw new BadLineException("the line is not a JSON object", "write {\"key\":value,…}", null);
        }
        return node;
    }

    private static JsonNode tree(String line) {
        if (line.length() > MAX_LINE) {
            throw tooLong();
        }
        try {
            return MAPPER.readTree(line);
        } catch (StreamConstraintsException e) {
            throw new BadLineException(
                    "the line is nested deeper than " + MAX_DEPTH + " or has a key or number that is too long",
                    "write what it says in fewer levels and shorter keys",
                    e);
        } catch (JacksonException e) {
            TokenStreamLocation at = e.getLocation();
            String what =
                    JsonFields.shown(e.getOriginalMessage().lines().findFirst().orElse("unreadable"));
            throw new BadLineException(
                    "not valid JSON" + (at == null ? "" : " at column " + at.getColumnNr()) + " (" + what + ")",
                    "correct the line; each line is one JSON object and no key comes twice",
                    e);
        }
    }

    static BadLineException tooLong() {
        return new BadLineException(
                "the line is longer than " + MAX_LINE + " characters", "shorten its texts or split the case", null);
    }
}
