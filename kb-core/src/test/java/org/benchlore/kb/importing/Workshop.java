package org.benchlore.kb.importing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.ImportDraft.Told;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Reader;

/** A small invented workshop whose pack the tests of importing share. */
final class Workshop {
    static final Knowledge KNOWLEDGE = PackReader.read(List.of(
            new PackSource("workshop.yaml", resource("workshop.yaml")),
            new PackSource("kinds.yaml", resource("kinds.yaml"))));

    private static final Reader READER = Reader.of(KNOWLEDGE);

    private Workshop() {}

    static Importer importer(CaseStore store) {
        return new Importer(KNOWLEDGE, READER, store);
    }

    static ImportReview review(String text, ImportSettings settings) {
        try (CaseStore store = CaseStore.inMemory()) {
            return review(importer(store), text, "source", settings);
        }
    }

    static ImportReview diary(String text) {
        return review(text, ImportSettings.of(ImportKind.DIARY));
    }

    static ImportReview table(String text) {
        return review(text, ImportSettings.of(ImportKind.CSV));
    }

    static ImportReview review(Importer importer, String text, String source, ImportSettings settings) {
        try {
            return importer.review(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), source, settings);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Ids told of one thing, those not known as "?", in order. */
    static List<String> ids(ImportDraft draft, Item item) {
        return draft.told().stream()
                .filter(t -> t.item() == item)
                .map(t -> t.id().isEmpty() ? "?" : t.id())
                .toList();
    }

    /** Everything told but findings, in order, as "cause start-resistor-open". */
    static List<String> acts(ImportDraft draft) {
        return draft.told().stream()
                .filter(t -> t.item() != Item.FINDING && t.item() != Item.DATE)
                .map(Workshop::shown)
                .toList();
    }

    private static String shown(Told told) {
        return told.item().name().toLowerCase(Locale.ROOT) + " " + (told.id().isEmpty() ? "?" : told.id());
    }

    static String resource(String name) {
        try (InputStream in = Workshop.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
