package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class SourceTextTest {
    private static final Charset OLD = Charset.forName("windows-1252");

    private static String decoded(byte[] bytes) throws IOException {
        StringWriter text = new StringWriter();
        SourceText.reader(new ByteArrayInputStream(bytes)).transferTo(text);
        return text.toString();
    }

    @Test
    void every_encoding_gives_the_same_text_at_every_length() throws IOException {
        for (int length : List.of(0, 1, 2, 65_533, 65_534, 65_535, 65_536, 65_537, 200_000)) {
            for (String end : List.of("", "é\n", "é\r\nü", "é")) {
                String text = "x".repeat(length) + end;
                assertThat(decoded(text.getBytes(StandardCharsets.UTF_8))).isEqualTo(text);
                assertThat(decoded(("\uFEFF" + text).getBytes(StandardCharsets.UTF_8)))
                        .isEqualTo(text);
                assertThat(decoded(text.getBytes(OLD))).isEqualTo(text);
                assertThat(decoded(text.getBytes(StandardCharsets.UTF_16))).isEqualTo(text);
            }
        }
        String wide = "😀é€".repeat(40_000);
        assertThat(decoded(wide.getBytes(StandardCharsets.UTF_8))).isEqualTo(wide);
    }

    @Test
    void two_programs_may_have_written_to_one_file() throws IOException {
        ByteArrayOutputStream mixed = new ByteArrayOutputStream();
        mixed.writeBytes("Gerät\n".getBytes(StandardCharsets.UTF_8));
        mixed.writeBytes("Gerät\n".getBytes(OLD));
        mixed.writeBytes("Gerät\n".getBytes(StandardCharsets.UTF_8));
        assertThat(decoded(mixed.toByteArray())).isEqualTo("Gerät\n".repeat(3));
    }
}
