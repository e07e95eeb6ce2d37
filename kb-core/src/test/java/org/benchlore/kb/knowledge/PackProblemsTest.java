package org.benchlore.kb.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One slip in the sound pack, and the one problem it makes: where, what, remedy. */
class PackProblemsTest {
    /**
     * A slip.
     *
     * @param text what stands once in the sound pack
     * @param by what is written in its place
     * @param at where the problem is: the first place with this text from the slip on, else the last before it; empty
     *     where the message itself says enough
     * @param says what and remedy
     */
    record Slip(String text, String by, String at, String says) {
        @Override
        public String toString() {
            return by.isEmpty() ? "without " + text : by;
        }
    }

    private static Slip slip(String text, String by, String at, String says) {
        return new Slip(text, by, at, says);
    }

    static Stream<Slip> keys() {
        return Stream.of(
                slip(
                        "    minutes: 5\n",
                        "",
                        "id: measure-rails",
                        "test 'measure-rails' has no 'minutes'; add the key 'minutes'"),
                slip(
                        "    per-thousand: 20\n",
                        "",
                        "id: regulator",
                        "cause 'regulator-tired' has no 'per-thousand'; add the key 'per-thousand'"),
                slip(
                        "parts: [fuse]",
                        "prats: [fuse]",
                        "prats",
                        "fix 'new-fuse' has an unknown key 'prats'; did you mean 'parts'?"),
                slip(
                        "licence: Apache-2.0",
                        "licence: Apache-2.0\nzebra: 1",
                        "zebra",
                        "the pack has an unknown key 'zebra'; take it out; known here: pack, version, licence, title, about, invented, scope, from, sources, needs, cautions, state-sets, symptoms, tests, fixes, causes, devices, power-off"),
                slip(
                        "means: Look upstream.}",
                        "means: Look upstream, then down.}",
                        "then down",
                        "a reading of test 'measure-rails' has an unknown key 'then down.'; put the text before it in quotes: within braces a comma ends a value"),
                slip(
                        "version: 1.0.0",
                        "version: 1.0.0\nversion: 1.0.1",
                        "version: 1.0.1",
                        "key 'version' stands twice, first on line 2; keep one of them"),
                slip(
                        "pack: power",
                        "pack: Power",
                        "Power",
                        "the pack: 'pack' 'Power' is not kebab-case; use lower-case letters, digits and single hyphens, a letter first, as in 'rail-12v'"),
                slip(
                        "title: Rails",
                        "title:",
                        "\nabout",
                        "the pack: 'title' should be text, found nothing; write one text there"),
                slip(
                        "title: Rails",
                        "title: ''",
                        "''",
                        "the pack: 'title' is empty; write something, or leave the key out"),
                slip(
                        "title: Rails",
                        "title: [Rails]",
                        "[Rails]",
                        "the pack: 'title' should be text, found a list; write one text there"),
                slip(
                        "title: Rails",
                        "title: \"a\\u0007b\"",
                        "\"a",
                        "the pack: 'title' holds a control character or invisible mark; take it out"),
                slip(
                        "minutes: 5",
                        "opens: sometimes\n    minutes: 5",
                        "sometimes",
                        "test 'measure-rails': 'opens' is 'sometimes'; write true or false"),
                slip(
                        "tools: [multimeter]",
                        "tools: multimeter",
                        "multimeter",
                        "test 'measure-rails': 'tools' should be a list, found the text 'multimeter'; write [one, two] or a line starting with '- ' for each"),
                slip("steps: [Fit it.]", "steps: []", "[]", "fix 'new-fuse': 'steps' is empty; name at least one"),
                slip(
                        "quantity: {unit: V, nominal: 12, tolerance: 5%}",
                        "quantity: 12",
                        "12",
                        "the quantity of symptom 'rail-12v' should be keys with values, found the text '12'; write 'key: value'"),
                slip(
                        "scope: player/corvane",
                        "scope: Player/Corvane",
                        "Player",
                        "a device: 'scope' 'Player/Corvane' is not a device scope; write any, or class/family/model/revision in kebab-case"),
                slip(
                        "name: Fuse open\n    kind: fault",
                        "name: Fuse open\n    kind: flaut",
                        "flaut",
                        "cause 'fuse-open': 'kind' 'flaut' is not one of fault, innocent; did you mean 'fault'?"),
                slip(
                        "usual: 0.8, range",
                        "usual: 0.8, normal: yes, range",
                        "normal: yes",
                        "key 'normal' stands twice, first on line 18; keep one of them"),
                slip(
                        "text: Mains can kill.",
                        "text: &a Mains can kill.",
                        "&a",
                        "anchor '&a' is not accepted; take it out and write repeated values out"),
                slip(
                        "text: Mains can kill.",
                        "text: !!str Mains can kill.",
                        "!!str",
                        "tag 'tag:yaml.org,2002:str' is not accepted; take it out; quote the value if it is meant as text"),
                slip(
                        "text: Mains can kill.",
                        "text: *a",
                        "*a",
                        "alias '*a' is not accepted; write the value out; packs are read without aliases"),
                slip(
                        "text: Mains can kill.",
                        "text: Mains can kill.\n    [a, b]: 1",
                        "[a, b]",
                        "a key must be a word, found a list; write 'key: value'"));
    }

    static Stream<Slip> numbers() {
        return Stream.of(
                slip(
                        "minutes: 5",
                        "minutes: 2,2",
                        "2,2",
                        "test 'measure-rails': 'minutes' '2,2' is not a number; write a decimal point: 2.2"),
                slip(
                        "minutes: 5",
                        "minutes: soon",
                        "soon",
                        "test 'measure-rails': 'minutes' 'soon' is not a number; write a plain number with a decimal point"),
                slip(
                        "minutes: 5",
                        "minutes: 0",
                        "0\n",
                        "test 'measure-rails': 'minutes' is '0'; write a number between 0 and 100000, both excluded"),
                slip(
                        "minutes: 5",
                        "minutes: .nan",
                        ".nan",
                        "test 'measure-rails': 'minutes' '.nan' is not a number; write a plain number with a decimal point"),
                slip(
                        "per-thousand: 40",
                        "per-thousand: 1000",
                        "1000",
                        "cause 'fuse-open': 'per-thousand' is '1000'; write a number between 0 and 1000, both excluded"),
                slip(
                        "cases: 30",
                        "cases: 0.4",
                        "0.4",
                        "cause 'regulator-tired': 'cases' is '0.4'; write a number between 0.5 and 1000"),
                slip(
                        "misses: 0.02",
                        "misses: 1",
                        "1\n",
                        "test 'measure-rails': 'misses' is '1'; write a number between 0 and 1, both excluded"),
                slip(
                        "misses: 0.02",
                        "misses: 2%",
                        "2%",
                        "test 'measure-rails': 'misses' '2%' is not a number; write a share, such as 0.05 for 5 %"),
                slip(
                        "misses: 0.02",
                        "misses: oftn",
                        "oftn",
                        "test 'measure-rails': 'misses' 'oftn' is not a word of the scale; did you mean 'often'?"),
                slip(
                        "misses: 0.02",
                        "misses: whenever",
                        "whenever",
                        "test 'measure-rails': 'misses' 'whenever' is not a word of the scale; write a number between 0 and 1, or one of nearly-always, usually, often, sometimes, seldom, rarely, hardly-ever"));
    }

    static Stream<Slip> references() {
        return Stream.of(
                slip(
                        "{symptom: rail-12v, states: {absent: nearly-always}}",
                        "{symptom: rail-21v, states: {absent: nearly-always}}",
                        "rail-21v",
                        "a link of cause 'fuse-open': 'symptom': there is no symptom 'rail-21v'; did you mean 'rail-12v'?"),
                slip(
                        "{fix: new-fuse, works: 0.9}",
                        "{fix: hammer, works: 0.9}",
                        "hammer",
                        "a remedy of cause 'fuse-open': 'fix': there is no fix 'hammer'; correct the id, or add the fix to a pack"),
                slip(
                        "called: [\"12 V\"]\n    states: rail",
                        "called: [\"12 V\"]\n    states: rial",
                        "rial",
                        "symptom 'rail-12v': 'states': there is no state set 'rial'; did you mean 'rail'?"),
                slip(
                        "negated: absent",
                        "negated: abscent",
                        "abscent",
                        "symptom 'rail-12v': 'negated': there is no state 'abscent'; did you mean 'absent'?"),
                slip(
                        "state: low, means",
                        "state: weak, means",
                        "weak",
                        "a reading of test 'measure-rails': 'state': there is no state 'weak'; choose from fine, absent, low, high"),
                slip(
                        "\"off\": [no light]",
                        "out: [no light]",
                        "out",
                        "symptom 'lamp': 'phrases': there is no state 'out'; choose from green, off"),
                slip(
                        "opposite: green}",
                        "opposite: grene}",
                        "grene",
                        "symptom 'lamp': the opposite of 'off', 'grene', is not one of its states; did you mean 'green'?"),
                slip(
                        "published: seen-one",
                        "published: seen-oen",
                        "seen-oen",
                        "caution 'mains': 'from': 'published': there is no source 'seen-oen'; did you mean 'seen-one'?"),
                slip(
                        "from: memory",
                        "from: hearsay",
                        "hearsay",
                        "the pack: 'from' is 'hearsay'; write memory, common-practice, or {published: SOURCE-ID, clause: \"…\"}"),
                slip(
                        "symptom: log-trip, means",
                        "symptom: lamp, means",
                        "lamp",
                        "a code of device 'player/corvane': 'symptom': 'lamp' lacks the states absent, once, recurring; use a symptom with the states absent, once, recurring"));
    }

    static Stream<Slip> twice() {
        return Stream.of(
                slip(
                        "id: unseen-one",
                        "id: seen-one",
                        "seen-one",
                        "source 'seen-one' stands twice, first at p.yaml:8:10; keep one of them, or give it another id"),
                slip(
                        "state-sets:",
                        "  - {id: mains, hazard: heat, text: Hot.}\nstate-sets:",
                        "mains, hazard",
                        "caution 'mains' stands twice, first at p.yaml:11:9; rename one; a later pack that means to "
                                + "change it says 'replaces: true' or 'refines: true'"),
                slip(
                        "usual: 0.7, words: [lit]}",
                        "usual: 0.7, words: [lit]}\n      - {id: green, usual: 0.2}",
                        "green, usual: 0.2",
                        "symptom 'lamp' has the state 'green' twice, first on line 45; keep one of them"),
                slip(
                        "{symptom: log-trip, states: {absent: 0.95}}",
                        "{symptom: rail-12v, states: {absent: 0.95}}",
                        "rail-12v",
                        "cause 'fuse-open' names the symptom 'rail-12v' twice, first on line 66; put its states into one link"),
                slip(
                        "{fix: new-fuse, works: 0.9}",
                        "{fix: new-fuse, works: 0.9}\n      - {fix: new-fuse, works: 0.8}",
                        "new-fuse, works: 0.8",
                        "cause 'fuse-open' names the fix 'new-fuse' twice; keep one of them"),
                slip(
                        "- {net: P12, symptom: rail-12v}",
                        "- {net: P12, symptom: rail-12v}\n      - {net: P12, symptom: lamp}",
                        "P12, symptom: lamp",
                        "device 'player/corvane' has the net 'P12' twice, first on line 118; keep one of them"),
                slip(
                        "{symptom: rail-minus-12v, state: low, means",
                        "{symptom: rail-12v, state: absent, means",
                        "",
                        "test 'measure-rails' reads 'rail-12v' as 'absent' twice; keep one of them"));
    }

    static Stream<Slip> states() {
        return Stream.of(
                slip(
                        "usual: 0.1, range",
                        "usual: 0.2, range",
                        "",
                        "state set 'rail': 'usual' of all states sums to 1.1; make it sum to 1"),
                slip(
                        "usual: {fine: 0.7,",
                        "usual: {fine: 0.6,",
                        "{fine",
                        "symptom 'rail-minus-12v': 'usual' sums to 0.9; make it sum to 1"),
                slip(
                        "usual: {fine: 0.7, absent: 0.2, low: 0.05, high: 0.05}",
                        "usual: {fine: 0.7, absent: 0.2, low: 0.1}",
                        "{fine",
                        "symptom 'rail-minus-12v': 'usual' leaves out the state 'high'; name every state, summing to 1"),
                slip(
                        "{id: green, normal: true, usual: 0.7,",
                        "{id: green, usual: 0.7,",
                        "- {id: green",
                        "symptom 'lamp' has no normal state; mark what a sound unit shows with 'normal: true'"),
                slip(
                        "name: dark, usual",
                        "name: dark, normal: true, usual",
                        "",
                        "symptom 'lamp' has a second normal state 'off'; keep 'normal: true' on one state only"),
                slip(
                        "{absent: nearly-always}}\n",
                        "{absent: 0.9, low: 0.1}}\n",
                        "{absent",
                        "cause 'fuse-open', symptom 'rail-12v': the states named sum to 1 and leave nothing for fine, high; lower them so that they sum to less than 1"),
                slip(
                        "{\"off\": usually}",
                        "{\"off\": usually, green: sometimes}",
                        "{\"off",
                        "cause 'fuse-open', symptom 'lamp': all states are named and sum to 1.1; leave one out, it takes the rest, or make them sum to 1"),
                slip(
                        "{\"off\": usually}",
                        "{}",
                        "{}",
                        "cause 'fuse-open', symptom 'lamp': no state is named; name at least one, or take the link out"));
    }

    static Stream<Slip> ranges() {
        return Stream.of(
                slip(
                        "range: \"+tol..\"",
                        "range: \"tol+..\"",
                        "\"tol+",
                        "state 'high' of state set 'rail': 'tol+..' is not a range; write LOW..HIGH with ends such as 10%, -tol, +tol or 4.75; leave an open end out"),
                slip(
                        "unit: V, nominal: 12, tolerance: 5%",
                        "unit: Volt, nominal: 12, tolerance: 5%",
                        "Volt",
                        "the quantity of symptom 'rail-12v': 'unit' is 'Volt'; choose from V, A, W, ohm, Hz, degC, h, F, s, %, 1"),
                slip(
                        "nominal: 12, tolerance: 5%",
                        "nominal: 12, tolerance: 100%",
                        "100%",
                        "the quantity of symptom 'rail-12v': 'tolerance' is '100%'; write more than 0% and less than 100%; for a quantity without a normal value leave 'nominal' and 'tolerance' out and write plain ranges"),
                slip(
                        "nominal: 12, tolerance: 5%",
                        "nominal: 12, tolerance: 0.6",
                        "0.6",
                        "the quantity of symptom 'rail-12v': 'tolerance' is '0.6'; write it in percent of nominal, as in 5%"),
                slip(
                        "    quantity: {unit: V, nominal: 12, tolerance: 5%}\n",
                        "",
                        "rail\n",
                        "symptom 'rail-12v' has ranges (fine, absent, low, high) but no quantity; add 'quantity', or take the ranges out"),
                slip(
                        "nominal: 12, tolerance",
                        "nominal: 0, tolerance",
                        "0,",
                        "the quantity of symptom 'rail-12v': 'nominal' is 0; leave it out and write plain ranges"),
                ownRanges(
                        "..1, 2..",
                        "\"2..",
                        "symptom 'rail-12v': the ranges of 'absent' and 'low' leave a gap from 1 to 2 V; "
                                + "let one end where the next begins"),
                ownRanges(
                        "..3, 2..",
                        "\"2..",
                        "symptom 'rail-12v': the ranges of 'absent' and 'low' overlap from 2 to 3 V; "
                                + "let one end where the next begins"),
                ownRanges(
                        "..3, 12..3",
                        "\"12..",
                        "symptom 'rail-12v': the range of state 'low' is empty or upside down; put the lower end first"),
                ownRanges(
                        "..3, 4,5..",
                        "\"4,5",
                        "state 'low' of symptom 'rail-12v': '4,5..' is not a range; write a decimal point: '4.5..'"));
    }

    /** Ranges of the states absent and low, in place of the shared set. */
    private static Slip ownRanges(String ranges, String at, String says) {
        String[] both = ranges.split(", ", 2);
        String states =
                "states:%n      - {id: absent, usual: 0.2, range: \"%s\"}%n      - {id: low, normal: true, usual: 0.8, range: \"%s\"}%n    negated"
                        .formatted(both[0], both[1])
                        .replace(System.lineSeparator(), "\n");
        return slip("states: rail\n    negated", states, at, says);
    }

    static Stream<Slip> brokenOff() {
        return Stream.of(
                slip(
                        "title: Rails",
                        "title: Rails: all",
                        ": all",
                        "the YAML breaks off here (mapping values are not allowed here), so the rest of the file was not checked; quote the text if it holds ': ', or check the indentation"),
                slip(
                        "title: Rails",
                        "title: Rails\n\tmore: 1",
                        "\tmore",
                        "the YAML breaks off here (found character '\\t(TAB)' that cannot start any token), so the rest of the file was not checked; "
                                + "indent with spaces, not tabs, and quote text that starts with @, ` or %"),
                slip(
                        "    minutes: 5",
                        "   minutes: 5",
                        "minutes: 5",
                        "the YAML breaks off here (expected <block end>, but found '<block mapping start>', in what starts on line 89), so the rest of the file was not checked; "
                                + "line this up with its neighbours; quote a value that starts with a quote but goes on after it"),
                slip(
                        "parts: [fuse]",
                        "parts: [fuse",
                        ": easy",
                        "the YAML breaks off here (expected ',' or ']', but got :, in what starts on line 107), so the rest of the file was not checked; "
                                + "close the list with ']' and quote items that hold , [ ] { } or ': '"),
                slip(
                        "title: Rails",
                        "title: \"Rails\\d\"",
                        "d\"",
                        "the YAML breaks off here (found unknown escape character d(100)), so the rest of the file was not checked; "
                                + "use single quotes, in which a backslash is only a backslash"),
                slip(
                        "title: Rails",
                        "title: 'Rails' all",
                        "all\n",
                        "the YAML breaks off here (expected <block end>, but found '<scalar>', in what starts on line 1), so the rest of the file was not checked; "
                                + "line this up with its neighbours; quote a value that starts with a quote but goes on after it"),
                slip(
                        "title: Rails",
                        "title: @Rails",
                        "@",
                        "the YAML breaks off here (found character '@' that cannot start any token), so the rest of the file was not checked; "
                                + "indent with spaces, not tabs, and quote text that starts with @, ` or %"));
    }

    static Stream<Slip> logLines() {
        return Stream.of(
                slip(
                        "'^(?P<time>.{19}) (?P<code>K-\\d)$'",
                        "'^(?P<time>.{19} K-\\d$'",
                        "'^",
                        "a log line of device 'player/corvane': 'pattern' is not a sound pattern: missing closing ) near '^(?P<time>.{19} K-\\d$'; mend it; RE2 syntax has neither look-around nor back-references"),
                slip(
                        "'^(?P<time>.{19}) (?P<code>K-\\d)$'",
                        "'^(?P<time>(.{900}){900}) K$'",
                        "'^",
                        "a log line of device 'player/corvane': 'pattern' repeats too much; use * or + in place of large or nested {n} repeats"),
                slip(
                        "(?P<code>K-\\d)$'",
                        "(?P<cod>K-\\d)$'",
                        "",
                        "a log line of device 'player/corvane': 'pattern' has an unknown group 'cod'; did you mean 'code'?"),
                slip(
                        "yyyy-MM-dd HH:mm:ss",
                        "yyyy-MM-dd jj:mm",
                        "yyyy",
                        "a log line of device 'player/corvane': 'time' 'yyyy-MM-dd jj:mm' is not a date and time format; use letters such as yyyy-MM-dd HH:mm:ss, other letters in single quotes"),
                slip(
                        "        time: yyyy-MM-dd HH:mm:ss\n",
                        "",
                        "",
                        "a log line of device 'player/corvane': 'pattern' has a group 'time' but there is no 'time' format; add it, as in 'time: yyyy-MM-dd HH:mm:ss'"),
                slip(
                        "(?P<time>.{19})",
                        ".{19}",
                        "yyyy",
                        "a log line of device 'player/corvane': 'time' is given, but the pattern has no group 'time'; name the group: (?P<time>…)"));
    }

    /** A slip is reported where it is, as what it is, and nothing else is blamed for it. */
    @ParameterizedTest
    @MethodSource({"keys", "numbers", "references", "twice", "states", "ranges", "brokenOff", "logLines"})
    void a_slip_makes_one_problem(Slip slip) {
        String text = PackFixture.spoilt(slip.text(), slip.by());

        List<PackProblem> problems = PackReader.check(PackFixture.pack(text)).stream()
                .filter(problem -> problem.severity() == PackProblem.Severity.ERROR)
                .toList();

        assertThat(problems).extracting(p -> p.what() + "; " + p.remedy()).contains(slip.says());
        assertThat(problems).hasSize(1);
        PackProblem problem = problems.get(0);
        if (!slip.at().isEmpty()) {
            int slipped = PackFixture.GOOD.indexOf(slip.text());
            int after = text.indexOf(slip.at(), slipped);
            int expected = after >= 0 ? after : text.lastIndexOf(slip.at(), slipped);
            assertThat(position(text, problem)).as(problem.toString()).isEqualTo(expected);
        }
    }

    private static int position(String text, PackProblem problem) {
        int line = 1;
        int at = 0;
        while (line < problem.line()) {
            at = text.indexOf('\n', at) + 1;
            line++;
        }
        return at + problem.column() - 1;
    }
}
