package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ParsedPacksTest {
    private static final Path READING_PACK = Path.of("src/test/resources/org/benchlore/kb/reading/reading-pack.yaml");
    private static final int HEAD = 16;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("made/packs.parsed");
    }

    private static Optional<YamlNode> yaml(PackSource source) {
        return YamlText.parse(source, new Problems());
    }

    private YamlNode again(PackSource source) {
        ParsedPacks first = ParsedPacks.read(file());
        first.parse(source, new Problems());
        first.keep(file());
        ParsedPacks second = ParsedPacks.read(file());
        assertThat(second.find(source.yaml())).isNotNull();
        return second.parse(source, new Problems()).orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a: b",
                "- one\n- two\n-   - three\n",
                "key: 'it''s'\nother: \"tab\\tand \\u00e9\"\nnone:\nlist: []\ntable: {}\n",
                "text: >-\n  folded\n  over lines\n\n  and so on\nlast: |\n  kept\n   as is\n",
                "plain: over\n  two lines\nflow: [a, b c,\n  'd', {e: f}]\n",
                "\uFEFFohms: 4.7 kΩ, 47 µF\r\nnext: \"Ω\" # said so\r\nface: '\uD83D\uDE42 x'\r\nafter: x\r\n",
                "same: a\ndeep: {a: {b: {c: [a, {a: a}]}}}"
            })
    void a_tree_comes_back_as_it_was_with_every_place(String text) {
        PackSource source = new PackSource("odd.yaml", text);

        assertThat(again(source)).isEqualTo(yaml(source).orElseThrow());
    }

    @Test
    void a_whole_pack_comes_back_as_it_was() {
        PackSource source = PackSource.read(READING_PACK);

        assertThat(again(source)).isEqualTo(yaml(source).orElseThrow());
    }

    @Test
    void a_text_under_another_name_has_its_places_there() {
        again(new PackSource("one.yaml", "a: b"));
        PackSource renamed = new PackSource("two.yaml", "a: b");

        assertThat(ParsedPacks.read(file()).parse(renamed, new Problems())).isEqualTo(yaml(renamed));
    }

    @Test
    void an_edited_text_is_parsed_anew() {
        again(new PackSource("one.yaml", "a: b"));
        PackSource edited = new PackSource("one.yaml", "a: c");

        assertThat(ParsedPacks.read(file()).find(edited.yaml())).isNull();
        assertThat(again(edited)).isEqualTo(yaml(edited).orElseThrow());
    }

    @Test
    void problems_are_found_each_time() {
        List<PackSource> twice = PackFixture.pack(PackFixture.GOOD + "\nabout: again\n");
        for (int i = 0; i < 2; i++) {
            assertThatThrownBy(() -> PackReader.read(twice, file(), true))
                    .isInstanceOf(BadPackException.class)
                    .hasMessageContaining("stands twice");
            assertThat(file()).doesNotExist();
        }
    }

    @Test
    void reading_with_and_without_gives_the_same() {
        List<PackSource> packs = List.of(PackSource.read(READING_PACK));
        Knowledge plain = PackReader.read(packs);
        for (int i = 0; i < 2; i++) {
            Knowledge kept = PackReader.read(packs, file(), true);
            assertThat(List.copyOf(kept.symptoms())).isEqualTo(List.copyOf(plain.symptoms()));
            assertThat(List.copyOf(kept.causes())).isEqualTo(List.copyOf(plain.causes()));
            assertThat(kept.devices()).isEqualTo(plain.devices());
        }
    }

    @Test
    void nothing_is_written_unasked_and_no_other_file_is_left() throws IOException {
        PackReader.read(PackFixture.pack(PackFixture.GOOD), file(), false);
        assertThat(folder.resolve("made")).doesNotExist();

        PackReader.read(PackFixture.pack(PackFixture.GOOD), file(), true);
        try (Stream<Path> files = Files.list(folder.resolve("made"))) {
            assertThat(files).containsExactly(file());
        }
    }

    @Test
    void a_file_that_cannot_be_written_or_read_is_done_without() throws IOException {
        Path taken = folder.resolve("taken/packs.parsed");
        Files.createDirectories(taken.resolve("full"));
        Path below = Files.writeString(folder.resolve("text"), "x").resolve("packs.parsed");

        assertThat(PackReader.read(PackFixture.pack(PackFixture.GOOD), taken, true)
                        .symptoms())
                .isNotEmpty();
        assertThat(PackReader.read(PackFixture.pack(PackFixture.GOOD), below, true)
                        .symptoms())
                .isNotEmpty();
    }

    /** Cut anywhere or with any byte changed, the file is not believed. */
    @Test
    void a_torn_or_damaged_file_is_not_believed() throws IOException {
        PackSource source = new PackSource("small.yaml", "a: [b, 'c', {d: e}]");
        YamlNode tree = again(source);
        byte[] whole = Files.readAllBytes(file());
        for (int i = 0; i < whole.length; i++) {
            Files.write(file(), Arrays.copyOf(whole, i));
            assertThat(ParsedPacks.read(file()).find(source.yaml())).isNull();
            byte[] damaged = whole.clone();
            damaged[i] ^= 0x21;
            Files.write(file(), damaged);
            assertThat(ParsedPacks.read(file()).find(source.yaml())).isNull();
            assertThat(ParsedPacks.read(file()).parse(source, new Problems())).contains(tree);
        }
    }

    /** Bytes that somebody made up, with a checksum that fits, neither break the reader nor fill the memory. */
    @Test
    void a_forged_file_breaks_nothing() throws IOException {
        PackSource source = PackSource.read(READING_PACK);
        again(source);
        byte[] whole = Files.readAllBytes(file());
        Random random = new Random(5);
        for (int i = 0; i < 300; i++) {
            byte[] forged = whole.clone();
            for (int j = 0; j < 3; j++) {
                forged[HEAD + random.nextInt(forged.length - HEAD)] = (byte) random.nextInt();
            }
            CRC32C checksum = new CRC32C();
            checksum.update(forged, HEAD, forged.length - HEAD);
            ByteBuffer.wrap(forged).putLong(HEAD - Long.BYTES, checksum.getValue());
            Files.write(file(), forged);
            assertThatCode(() -> ParsedPacks.read(file()).parse(source, new Problems()))
                    .doesNotThrowAnyException();
        }
    }
}
