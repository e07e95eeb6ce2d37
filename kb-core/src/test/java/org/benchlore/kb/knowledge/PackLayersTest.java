package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A later pack over an earlier one. */
class PackLayersTest {
    private static Knowledge read(String second) {
        return PackReader.read(PackFixture.layered(PackFixture.shop(second)));
    }

    private static List<String> errors(String second) {
        return PackReader.check(PackFixture.layered(PackFixture.shop(second))).stream()
                .filter(problem -> problem.severity() == PackProblem.Severity.ERROR)
                .map(PackProblem::toString)
                .toList();
    }

    @Test
    void an_id_used_again_by_accident_names_both_places() {
        assertThat(errors("cautions:\n  - {id: mains, hazard: heat, text: Hot.}\n"))
                .containsExactly("shop.yaml:7:10: caution 'mains' stands twice, first at p.yaml:11:9; rename one; "
                        + "a later pack that means to change it says 'replaces: true' or 'refines: true'");
    }

    @Test
    void replacing_leaves_nothing_of_the_old_entry() {
        Knowledge knowledge = read("cautions:\n  - {id: mains, replaces: true, hazard: heat, text: Hot.}\n");

        assertThat(knowledge.caution("mains"))
                .contains(new Caution("mains", Caution.Hazard.HEAT, "Hot.", Provenance.MEMORY));
    }

    @Test
    void replacing_needs_every_required_key() {
        assertThat(errors("cautions:\n  - {id: mains, replaces: true, hazard: heat}\n"))
                .containsExactly("shop.yaml:7:5: caution 'mains' has no 'text'; add the key 'text'");
    }

    @Test
    void refining_a_cause_replaces_the_keys_given_and_the_links_of_the_same_symptom() {
        Knowledge knowledge = read("""
                from: common-practice
                causes:
                  - id: fuse-open
                    refines: true
                    per-thousand: 60
                    shows:
                      - {symptom: lamp, states: {green: often}}
                """);

        Cause cause = knowledge.cause("fuse-open").orElseThrow();
        assertThat(cause.name()).isEqualTo("Fuse open");
        assertThat(cause.perThousand()).isEqualTo(60);
        assertThat(cause.from().kind()).isEqualTo(Provenance.Kind.COMMON_PRACTICE);
        assertThat(cause.shows())
                .extracting(Link::symptomId)
                .containsExactly("rail-12v", "rail-minus-12v", "log-trip", "lamp");
        Link lamp = cause.shows().get(3);
        assertThat(lamp.states()).containsEntry("green", 0.6);
        assertThat(lamp.from().kind()).isEqualTo(Provenance.Kind.COMMON_PRACTICE);
        assertThat(cause.shows().get(0).from())
                .as("a link left alone keeps its origin")
                .isEqualTo(Provenance.MEMORY);
    }

    @Test
    void refining_a_symptom_adds_words_to_those_there() {
        Symptom before = read("cautions: []\n").symptom("lamp").orElseThrow();
        Symptom after = read("""
                symptoms:
                  - id: lamp
                    refines: true
                    called: [little eye]
                    phrases:
                      green: [shines like a meadow]
                """).symptom("lamp").orElseThrow();

        assertThat(after.called()).containsAll(before.called()).contains("little eye");
        State green = after.states().get(after.indexOf("green"));
        assertThat(green.phrases())
                .containsAll(before.states().get(before.indexOf("green")).phrases())
                .contains("shines like a meadow");
        assertThat(after.states())
                .extracting(State::id)
                .isEqualTo(before.states().stream().map(State::id).toList());
    }

    @Test
    void refining_keeps_the_scope_unless_one_is_given() {
        String named = "scope: player\ncauses:\n  - {id: fuse-open, refines: true, per-thousand: 60%s}\n";

        assertThat(read(named.formatted("")).cause("fuse-open").orElseThrow().scope())
                .isEqualTo(DeviceScope.ANY);
        assertThat(read(named.formatted(", scope: player"))
                        .cause("fuse-open")
                        .orElseThrow()
                        .scope())
                .isEqualTo(DeviceScope.parse("player"));
    }

    @Test
    void a_device_is_refined_by_its_scope() {
        Knowledge knowledge = read("devices:\n  - {scope: player/corvane, refines: true, name: Corvane two}\n");

        assertThat(knowledge.devices()).singleElement().satisfies(device -> {
            assertThat(device.name()).isEqualTo("Corvane two");
            assertThat(device.nets()).hasSize(1);
        });
    }

    @Test
    void a_state_set_that_is_refined_reaches_its_symptoms() {
        Knowledge knowledge = read("""
                state-sets:
                  - id: rail
                    refines: true
                    states:
                      - {id: fine, normal: true, usual: 0.8, range: "-tol..+tol"}
                      - {id: absent, usual: 0.1, range: "..20%"}
                      - {id: low, usual: 0.06, range: "20%..-tol"}
                      - {id: high, usual: 0.04, range: "+tol.."}
                """);

        assertThat(knowledge.symptom("rail-12v").orElseThrow().states().get(1).range())
                .isEqualTo(new Range(Double.NEGATIVE_INFINITY, 12 * 0.2));
    }

    @Test
    void what_is_changed_must_be_there() {
        assertThat(errors("fixes:\n  - {id: new-fues, refines: true, minutes: 3}\n"))
                .contains("shop.yaml:7:29: there is no earlier fix 'new-fues' to change; did you mean 'new-fuse'?");
    }

    @Test
    void an_entry_cannot_do_both_nor_change_its_own_pack() {
        assertThat(errors("fixes:\n  - {id: new-fuse, refines: true, replaces: true, minutes: 3}\n"))
                .contains("shop.yaml:7:29: fix 'new-fuse' both replaces and refines; keep one of them");
        assertThat(
                        errors(
                                "cautions:\n  - {id: hot, hazard: heat, text: Hot.}\n  - {id: hot, refines: true, text: Very.}\n"))
                .containsExactly("shop.yaml:8:10: caution 'hot' changes an entry of its own pack, at shop.yaml:7:10; "
                        + "write it once");
    }

    @Test
    void packs_and_files_come_once() {
        assertThat(PackReader.check(PackFixture.layered("pack: power\nversion: 1\nlicence: x\ntitle: x\nabout: x\n")))
                .extracting(PackProblem::toString)
                .containsExactly(
                        "shop.yaml:1:1: pack 'power' was read before, from p.yaml; give one of them another id");
        PackSource source = new PackSource("p.yaml", PackFixture.GOOD);
        assertThat(PackReader.check(List.of(source, source)))
                .extracting(PackProblem::toString)
                .containsExactly("p.yaml:1:1: this file is given twice; give each file once");
    }

    @Test
    void a_source_may_be_that_of_another_pack() {
        Knowledge knowledge = read("from: {published: seen-one}\ncautions:\n  - {id: hot, hazard: heat, text: Hot.}\n");

        assertThat(knowledge.caution("hot").orElseThrow().from().citation()).isEqualTo("A handbook, table 7");
    }
}
