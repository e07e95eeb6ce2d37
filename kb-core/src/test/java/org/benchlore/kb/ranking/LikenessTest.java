package org.benchlore.kb.ranking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PackReader;
import org.benchlore.kb.knowledge.PackSource;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;
import org.junit.jupiter.api.Test;

class LikenessTest {
    private static final String PACK = """
            pack: two
            version: 1.0.0
            licence: Apache-2.0
            title: Two causes
            about: Made up.
            scope: any
            from: memory
            symptoms:
              - id: noise
                name: noise
                about: Made up.
                reported: if-tested
                called: [noise]
                states:
                  - {id: quiet, normal: true, usual: 0.9, words: [quiet]}
                  - {id: loud, usual: 0.1, words: [loud], opposite: quiet}
                phrases:
                  loud: [growls like a bear]
            causes:
              - id: bearing
                name: Bearing worn
                kind: fault
                about: The rotor of a ventilator grinds in its sleeve.
                per-thousand: 10
                shows:
                  - {symptom: noise, states: {loud: 0.8}}
              - id: belt
                name: Belt slack
                kind: fault
                about: The rubber of a tape deck gets long.
                told: ["Singers sound drunk, the drawer sighs."]
                per-thousand: 30
                shows:
                  - {symptom: noise, states: {loud: 0.2}}
            """;

    private static final Knowledge KNOWLEDGE = PackReader.read(List.of(new PackSource("two.yaml", PACK)));
    private static final RankingModel MODEL = RankingModel.of(KNOWLEDGE, RankingSettings.DEFAULT);

    private static final double[] EVEN = {1, 1, 1};

    private static RankingQuery query(String words) {
        return new RankingQuery(List.of(Finding.of("noise", "loud")), DeviceScope.ANY, true).inWords(words);
    }

    @Test
    void words_of_an_entry_lift_its_cause_and_leave_the_unlisted_one_where_it_was() {
        RankingQuery silent = new RankingQuery(List.of(), DeviceScope.ANY, true);
        RankingQuery told = silent.inWords("The ventilator's sleeve is dry");

        assertThat(MODEL.probability(told, "bearing")).isGreaterThan(MODEL.probability(silent, "bearing"));
        assertThat(MODEL.probability(told, "belt")).isLessThan(MODEL.probability(silent, "belt"));
        assertThat(MODEL.probability(told, RankingModel.UNLISTED))
                .isCloseTo(MODEL.probability(silent, RankingModel.UNLISTED), within(1e-12));
    }

    @Test
    void words_scattered_over_many_entries_speak_for_a_cause_without_one() {
        List<String> words = List.of(
                "ventilator", "sleeve", "rubber", "deck", "antenna", "piston", "ledger", "garden", "marble", "violin");
        String causes = IntStream.range(0, words.size())
                .mapToObj(n -> """
                          - id: cause-%d
                            name: %s
                            kind: fault
                            about: Made up.
                            per-thousand: 10
                        """.formatted(n, words.get(n)))
                .collect(Collectors.joining());
        RankingModel many = RankingModel.of(
                PackReader.read(
                        List.of(new PackSource("many.yaml", PACK.substring(0, PACK.indexOf("    shows")) + causes))),
                RankingSettings.DEFAULT);
        RankingQuery silent = new RankingQuery(List.of(), DeviceScope.ANY, true);
        double before = many.probability(silent, RankingModel.UNLISTED);

        assertThat(many.probability(silent.inWords("the violin"), RankingModel.UNLISTED))
                .isLessThan(1.2 * before);
        assertThat(many.probability(
                        silent.inWords("antenna and piston over ledger, garden and marble"), RankingModel.UNLISTED))
                .isGreaterThan(1.2 * before);
    }

    @Test
    void however_many_words_fit_wording_alone_makes_no_cause_surer_than_its_trust() {
        RankingQuery silent = new RankingQuery(List.of(), DeviceScope.ANY, true);
        RankingQuery told =
                silent.inWords("bearing worn, rotor of the ventilator grinds in its sleeve, growls like a bear");

        assertThat(MODEL.probability(told, "belt")).isGreaterThan(0.02 * MODEL.probability(silent, "belt"));
    }

    @Test
    void words_and_findings_are_doubted_together() {
        RankingQuery told =
                query("bearing worn, rotor of the ventilator grinds in its sleeve, ventilator, growls like a bear");

        assertThat(MODEL.probability(told, "bearing"))
                .as("a tenth of doubt holds for the words, too")
                .isBetween(0.5, 0.97);
    }

    @Test
    void how_its_usual_states_are_told_belongs_to_an_entry() {
        double[] nats = new Likeness(KNOWLEDGE, List.copyOf(KNOWLEDGE.causes())).nats("growls in the evening", EVEN);

        assertThat(nats[0]).as("bearing shows it in eight of ten").isPositive();
        assertThat(nats[1]).as("belt in two of ten").isZero();
    }

    @Test
    void how_people_tell_of_a_cause_and_words_of_one_neighbourhood_belong_to_an_entry() {
        Likeness likeness = new Likeness(KNOWLEDGE, List.copyOf(KNOWLEDGE.causes()));

        assertThat(likeness.nats("drunk singers", EVEN)[1]).isGreaterThan(likeness.nats("drunk", EVEN)[1]);
        assertThat(likeness.nats("drunk singers", EVEN)[0]).isZero();
        assertThat(likeness.nats("tray", EVEN)[1])
                .as("a tray is a drawer, nearly")
                .isBetween(Double.MIN_VALUE, likeness.nats("drawer", EVEN)[1]);
    }

    @Test
    void a_later_note_counts_by_its_words_only_where_it_tells_of_a_fault() {
        Reader reader = Reader.of(KNOWLEDGE);
        List<Reading> notes = Stream.of(
                        "noise loud, ventilator old",
                        "opened, drawer washed, sleeve dry now",
                        "noise quiet, rubber of the tape deck fine",
                        "noise loud, sleeve dry")
                .map(text -> reader.read(text, DeviceScope.ANY))
                .toList();

        assertThat(RankingQuery.wordsOf(notes, KNOWLEDGE).lines().filter(line -> !line.isEmpty()))
                .containsExactly("noise loud, ventilator old", "noise loud, sleeve dry");
        assertThat(RankingQuery.wordsOf(notes.subList(1, 3), KNOWLEDGE))
                .as("the complaint counts, read or not")
                .isEqualTo("opened, drawer washed, sleeve dry now");
        List<Reading> unread = Stream.of("it sulks", "the drawer sighs")
                .map(text -> reader.read(text, DeviceScope.ANY))
                .toList();
        assertThat(RankingQuery.wordsOf(unread, KNOWLEDGE))
                .as("where nothing tells of a fault, words are all there is")
                .isEqualTo("it sulks\nthe drawer sighs");
    }

    @Test
    void what_is_denied_tells_of_no_fault() {
        Likeness likeness = new Likeness(KNOWLEDGE, List.copyOf(KNOWLEDGE.causes()));

        assertThat(likeness.nats("no drawer, ventilator", EVEN))
                .isEqualTo(likeness.nats("ventilator", EVEN))
                .isNotEqualTo(likeness.nats("drawer, ventilator", EVEN));
        assertThat(likeness.nats("not the old drawer", EVEN))
                .as("further off than two words")
                .isEqualTo(likeness.nats("drawer", EVEN));
    }

    @Test
    void unknown_words_and_no_words_change_nothing() {
        assertThat(MODEL.rank(query("zyx the of"))).isEqualTo(MODEL.rank(query("")));
    }

    @Test
    void a_long_log_does_not_outweigh_a_note() {
        String note = "rotor of the ventilator";
        String log = "the ".repeat(50) + note + " rubber tape deck".repeat(500);
        Likeness likeness = new Likeness(KNOWLEDGE, List.copyOf(KNOWLEDGE.causes()));

        assertThat(likeness.nats(log, EVEN)[0]).isEqualTo(likeness.nats(note, EVEN)[0]);
    }

    @Test
    void the_wording_has_a_part_of_its_own_in_the_reasons() {
        for (Ranking.RankedCause cause :
                MODEL.rank(query("a ventilator grinds")).causes()) {
            double parts = cause.priorDecibans()
                    + cause.wordingDecibans()
                    + cause.unmentionedDecibans()
                    + cause.overlapDecibans();
            for (Ranking.Evidence e : cause.evidence()) {
                parts += e.decibans();
            }
            double p = cause.probability();
            assertThat(parts).isCloseTo(10 * Math.log10(p / (1 - p)), within(1e-9));
            assertThat(cause.wordingDecibans() > 0).isEqualTo(cause.id().equals("bearing"));
        }
    }

    @Test
    void the_words_that_speak_for_a_cause_are_named_as_they_were_written() {
        for (Ranking.RankedCause cause :
                MODEL.rank(query("a Ventilator grinds, no drawer")).causes()) {
            if (cause.id().equals("bearing")) {
                assertThat(cause.wordingWords())
                        .contains("ventilator", "grinds")
                        .doesNotContain("a", "drawer");
            } else {
                assertThat(cause.wordingWords()).isEmpty();
            }
        }
    }
}
