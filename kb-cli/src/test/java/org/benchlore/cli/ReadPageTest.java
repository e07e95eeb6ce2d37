package org.benchlore.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.benchlore.kb.data.ShippedPacks;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;

class ReadPageTest {
    @Test
    void when_a_finding_holds_is_said_beside_it_and_what_was_not_understood_below() {
        Knowledge knowledge = PackReader.read(ShippedPacks.all());
        Reading reading = Reader.of(knowledge).read("hums when it is warm, blorf wibble", DeviceScope.ANY);
        StringWriter out = new StringWriter();
        ReadPage page = new ReadPage(knowledge, new Page(new PrintWriter(out, true), false));

        page.understood(reading, Finding::symptomId);
        page.rest(reading);

        assertThat(out.toString().lines().map(String::strip))
                .anyMatch(line -> line.startsWith("\"hums when it is warm\": ") && line.endsWith(" (warm)"))
                .anyMatch(line -> line.startsWith("not understood: \"blorf wibble\""));
    }
}
