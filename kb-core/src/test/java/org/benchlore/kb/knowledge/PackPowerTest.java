package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What forbids power, what powers, and what parts cost. */
class PackPowerTest {
    private static final String RULE = """
            power-off:
              - id: trips
                symptom: log-trip
                state: recurring
                why: it trips
                until: [lamp]
                fixes: [new-fuse]
            """;

    private static List<String> problems(String rest) {
        return PackReader.check(PackFixture.layered(PackFixture.shop(rest))).stream()
                .map(PackProblem::toString)
                .filter(problem -> problem.startsWith("shop.yaml"))
                .toList();
    }

    @Test
    void a_rule_says_what_forbids_power_and_what_lifts_that() {
        Knowledge read = PackReader.read(PackFixture.layered(PackFixture.shop(RULE + """
                tests:
                  - {id: measure-rails, refines: true, powers: true}
                fixes:
                  - {id: new-fuse, refines: true, done: [put|fitted fuse in]}
                """)));
        assertThat(read.powerOff())
                .containsExactly(new PowerOff(
                        "trips", "log-trip", "recurring", "it trips", List.of("lamp"), List.of("new-fuse")));
        assertThat(read.test("measure-rails").orElseThrow().powers()).isTrue();
        assertThat(read.fix("new-fuse").orElseThrow().powers()).isFalse();
        assertThat(read.fix("new-fuse").orElseThrow().done()).containsExactly("put|fitted fuse in");
        assertThat(problems(RULE)).isEmpty();
    }

    @Test
    void slips_in_a_rule_are_told_with_their_place_and_remedy() {
        assertThat(problems(RULE.replace("symptom: log-trip", "symptom: log-trp")))
                .containsExactly("shop.yaml:8:14: power-off rule 'trips': 'symptom': there is no symptom 'log-trp'; "
                        + "did you mean 'log-trip'?");
        assertThat(problems(RULE.replace("state: recurring", "state: absent")))
                .containsExactly(
                        "shop.yaml:9:12: power-off rule 'trips': 'state' is 'absent', which a sound unit shows; "
                                + "name the state in which the unit must not be powered");
        assertThat(problems(RULE.replace("[new-fuse]", "[new-fuze]")))
                .containsExactly("shop.yaml:12:13: power-off rule 'trips': 'fixes': there is no fix 'new-fuze'; "
                        + "did you mean 'new-fuse'?");
        assertThat(problems(RULE.replace("[lamp]", "[lmp]")))
                .containsExactly("shop.yaml:11:13: power-off rule 'trips': 'until': there is no symptom 'lmp'; "
                        + "did you mean 'lamp'?");
    }

    @Test
    void a_price_is_minutes_from_nothing_up() {
        String priced = "fixes:\n  - {id: new-fuse, refines: true, price: %s}\n";
        assertThat(PackReader.read(PackFixture.layered(PackFixture.shop(priced.formatted("2"))))
                        .fix("new-fuse")
                        .orElseThrow()
                        .price())
                .isEqualTo(2);
        assertThat(problems(priced.formatted("-2")))
                .singleElement()
                .asString()
                .startsWith("shop.yaml:7:42: fix 'new-fuse': 'price'");
    }

    @Test
    void a_rule_that_nothing_lifts_without_power_is_reported() {
        String stuck = RULE.replace("    fixes: [new-fuse]\n", "");
        assertThat(problems(stuck))
                .containsExactly(
                        "shop.yaml:11:12: power-off rule 'trips': no fix lifts it, and no test that leaves power"
                                + " off; name a fix under 'fixes', or under 'until' what such a test reads");
        assertThat(problems(stuck.replace("[lamp]", "[rail-12v]"))).isEmpty();
    }

    @Test
    void a_test_or_fix_that_speaks_of_power_says_whether_it_powers() {
        String speaks = RULE + """
                tests:
                  - {id: measure-rails, refines: true, steps: [Clip on., Plug it in and read.]}
                fixes:
                  - {id: new-fuse, refines: true, steps: [Fit it and switch on.], powers: %s}
                """;
        assertThat(problems(speaks.formatted("false")))
                .containsExactly("shop.yaml:14:58: test 'measure-rails' speaks of power ('Plug it in') and has no"
                        + " 'powers'; say whether the unit runs or is fed in it: 'powers: true' or 'powers: false'");
    }
}
