package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What is told of a unit: words, findings by id, and what device it is. */
final class SeenOptions {
    @Parameters(
            arity = "0..*",
            paramLabel = "WORDS",
            description = "What is seen and measured; - reads standard input.")
    List<String> words = new ArrayList<>();

    @Option(names = "--device", paramLabel = "SCOPE", description = "class/family/model/revision, as far as known.")
    @Nullable
    String device;

    @Option(names = "--finding", paramLabel = "SYMPTOM=STATE", description = "A finding by id; may be repeated.")
    List<String> findings = new ArrayList<>();

    /**
     * What was told.
     *
     * @param reading what the words were read as
     * @param findings those of the words, and those given by id in their place
     */
    record Seen(Reading reading, List<Finding> findings) {}

    boolean nothing() {
        return findings.isEmpty() && words.stream().allMatch(String::isBlank);
    }

    /** The device given, else another. */
    DeviceScope scope(DeviceScope otherwise) {
        return device == null ? otherwise : BenchCommand.scope(device);
    }

    Seen read(KnowledgeBase kb, BenchCommand command, DeviceScope scope) {
        return read(kb, command.words(words), findings, scope);
    }

    /** Findings given outright replace what the words say of the same symptom. */
    static Seen read(KnowledgeBase kb, String words, List<String> given, DeviceScope scope) {
        Reading reading = kb.read(words, scope);
        TreeMap<String, Finding> all = new TreeMap<>();
        reading.findings().forEach(f -> all.put(f.symptomId(), f));
        BenchCommand.findings(kb, given).forEach(f -> all.put(f.symptomId(), f));
        return new Seen(reading, List.copyOf(all.values()));
    }
}
