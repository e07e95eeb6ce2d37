package org.benchlore.kb.reading.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Collectors;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LexerTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "12V",
                "12 V",
                "+12 volts",
                "12-volt",
                "12v",
                "12V0",
                "12.0 V",
                "12 VDC",
                "12\u00a0V",
                "１２V",
                "+12V"
            })
    void twelve_volts_are_one_token_however_written(String text) {
        assertThat(terms(text)).containsExactly("12v");
    }

    // RKM notation, IEC 60062:2016 (from memory), and 3V3 in the same style
    @ParameterizedTest
    @CsvSource({
        "4k7,4700,ohm", "4K7,4700,ohm", "0R47,.47,ohm", "100R,100,ohm", "2M2,2200000,ohm", "1R0,1,ohm", "4n7,4.7e-9,F",
        "3p3,3.3e-12,F", "2u2,2.2e-6,F", "1F0,1,F", "3V3,3.3,V", "0R4,.4,ohm", "1k2,1200,ohm", "10k,10000,ohm"
    })
    void letters_stand_for_the_decimal_sign(String text, double value, String unit) {
        assertThat(only(text).unit()).isEqualTo(unit);
        assertThat(only(text).value()).isCloseTo(value, within(value * 1e-12));
    }

    @ParameterizedTest
    @CsvSource({
        "50 mV,.05,V",
        "3 kV,3000,V",
        "220 µF,.00022,F",
        "220 μF,.00022,F",
        "47 Ω,47,ohm",
        "47 Ω,47,ohm",
        "1 MΩ,1000000,ohm",
        "5 mΩ,.005,ohm",
        "45 °C,45,degC",
        "45 degrees C,45,degC",
        "45℃,45,degC",
        "75 %,75,%",
        "20 minutes,1200,s",
        "2 h,7200,s",
        "-12 V,-12,V",
        "−12V,-12,V",
        "minus 12 V,-12,V",
        "100 kHz,100000,Hz",
        "120 mA,.12,A",
        "'3,26 V',3.26,V",
        "'1,200 h',4320000,s",
        "'1,234.5 V',1234.5,V",
        "'1,234,567 h',4444441200,s",
        "½ A,.5,A",
        "2½ h,9000,s",
        "¾ V,.75,V"
    })
    void units_and_their_prefixes_come_to_base_units(String text, double value, String unit) {
        assertThat(only(text).unit()).isEqualTo(unit);
        assertThat(only(text).value()).isCloseTo(value, within(Math.abs(value) * 1e-12));
    }

    /** NIST SP 811 (2008), appendix B, from memory: t/°C = (t/°F - 32) / 1.8. */
    @ParameterizedTest
    @CsvSource({
        "212 °F,100",
        "32 degF,0",
        "-40 °F,-40",
        "158 degrees Fahrenheit,70",
        "one hundred fahrenheit,37.7777778"
    })
    void degrees_fahrenheit_come_to_celsius(String text, double celsius) {
        assertThat(only(text).unit()).isEqualTo("degC");
        assertThat(only(text).value()).isCloseTo(celsius, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({
        "nine point four volts,9.4,V",
        "five point oh one volts,5.01,V",
        "five point zero eight volts,5.08,V",
        "twelve volt,12,V",
        "twenty-two ohms,22,ohm",
        "three hundred and twenty volts,320,V",
        "minus twelve volts,-12,V",
        "half an amp,.5,A",
        "Half a volt,.5,V",
        "a quarter of an hour,900,s",
        "half an hour,1800,s",
        "an hour,3600,s",
        "a sec,1,s",
        "one and a half volts,1.5,V",
        "three quarters of an hour,2700,s",
        "T2A,2,A",
        "F500mA,.5,A",
        "T3.15A,3.15,A",
        "10 k,10000,ohm",
        "1µ5,1.5e-6,F",
        "100n,1e-7,F",
        "2R2,2.2,ohm",
        "1 MOhm,1e6,ohm",
        "negative 12 V,-12,V"
    })
    void spoken_and_marked_values_are_quantities(String text, double value, String unit) {
        assertThat(only(text).unit()).isEqualTo(unit);
        assertThat(only(text).value()).isCloseTo(value, within(Math.abs(value) * 1e-12));
    }

    @Test
    void power_on_hours_are_a_quantity_and_what_it_is_of() {
        assertThat(terms("41200 power-on hours")).containsExactly("148320000s", "power", "on", "hour");
    }

    @Test
    void a_unit_said_once_is_meant_for_the_whole_list() {
        assertThat(terms("between 11.8 and 12.1 V")).containsExactly("between", "11.8v", "and", "12.1v");
        assertThat(terms("4.1, 4.1 and 3.2 mV")).containsExactly("0.0041v", ",", "0.0041v", "and", "0.0032v");
        assertThat(Lexer.tokens("11 to 12 mV").get(0).value()).isCloseTo(0.011, within(1e-15));
    }

    @Test
    void dots_lead_to_a_value_as_in_a_table() {
        assertThat(terms("12V ...... 12.03")).containsExactly("12v", "=", "12.03");
        assertThat(terms("12V . . . . 12.03")).containsExactly("12v", "=", "12.03");
        assertThat(terms("well ... 5 V")).endsWith("5v");
        assertThat(terms("hm .... no")).doesNotContain("=");
    }

    @Test
    void pronouns_ordinals_and_shares_are_no_quantities() {
        assertThat(Lexer.tokens("the left one, a second relay, half the time, no one, two months, 12/5/3.3"))
                .noneMatch(t -> t.kind() == Kind.QUANTITY);
        assertThat(terms("12/5/3.3")).containsExactly("12", "/", "5", "/", "3.3");
    }

    @Test
    void what_is_gone_is_not_what_goes() {
        assertThat(terms("goes went going")).containsOnly("go");
        assertThat(terms("gone")).containsExactly("gone");
        assertThat(terms("past paste pasted")).containsExactly("past", "paste", "paste");
        assertThat(terms("strips striped stripes")).containsExactly("strip", "stripe", "stripe");
        assertThat(terms("records recordings couple couplings late later"))
                .containsExactly("record", "recording", "coupl", "coupling", "late", "later");
        assertThat(terms("dimmer dimly dimmest")).containsOnly("dim");
        assertThat(terms("cooler cleaner hardly")).containsExactly("cooler", "cleaner", "hardly");
    }

    @Test
    void ranges_and_tolerances_are_told_from_values() {
        assertThat(only("3.2-3.3 V").value()).isCloseTo(3.25, within(1e-12));
        assertThat(only("3.2-3.3 V").spread()).isCloseTo(0.05, within(1e-12));
        assertThat(only("±5 %").tolerance()).isTrue();
        assertThat(only("+/-5%").tolerance()).isTrue();
        assertThat(only("5 %").tolerance()).isFalse();
    }

    @Test
    void codes_stay_whole_and_dates_are_no_quantities() {
        assertThat(terms("K-207 K207")).containsExactly("k207", "k207");
        assertThat(Lexer.tokens("2021-03-04 10:00:00")).extracting(Token::kind).containsOnly(Kind.OTHER);
        assertThat(terms("5VSB")).containsExactly("5vsb");
    }

    @Test
    void plural_and_tense_fold_but_other_endings_stay() {
        assertThat(terms("blinks blinking blinked blink")).containsOnly("blink");
        assertThat(terms("flashes flashing flash")).containsOnly("flash");
        assertThat(terms("dips dipped dipping")).containsOnly("dip");
        assertThat(terms("rises rising rise")).containsOnly("rise");
        assertThat(terms("corroded corrodes")).containsOnly("corrod");
        assertThat(terms("batteries battery")).containsOnly("battery");
        assertThat(terms("blown blew blows")).containsOnly("blow");
        assertThat(terms("mains")).containsExactly("mains");
        assertThat(terms("controller control")).containsExactly("controller", "control");
        assertThat(terms("fins fine")).doesNotHaveDuplicates();
        assertThat(terms("filings file droppings drop shavings shave")).doesNotHaveDuplicates();
        assertThat(terms("cans can't")).containsExactly("cans", "can", "not");
    }

    @Test
    void the_dot_of_an_abbreviation_ends_nothing() {
        assertThat(terms("ca. 20 min vs. 5 V."))
                .doesNotContainSequence("ca", ".")
                .containsOnlyOnce(".");
    }

    @Test
    void contractions_yield_their_negation() {
        assertThat(terms("isn't won't can't cannot doesnt"))
                .containsExactly("be", "not", "will", "not", "can", "not", "can", "not", "do", "not");
    }

    @Test
    void search_sees_the_same_terms_with_the_same_offsets() throws Exception {
        String text = "No +12 volts, K-207; the FÜSE isn't blown ﬁne 3V3";
        List<Token> tokens = Lexer.tokens(text).stream()
                .filter(t -> t.kind() != Kind.PUNCTUATION)
                .toList();
        try (BenchAnalyzer analyzer = new BenchAnalyzer();
                TokenStream stream = analyzer.tokenStream("any", text)) {
            stream.reset();
            for (Token token : tokens) {
                assertThat(stream.incrementToken()).isTrue();
                assertThat(stream.getAttribute(CharTermAttribute.class)).hasToString(token.term());
                assertThat(stream.getAttribute(OffsetAttribute.class).startOffset())
                        .isEqualTo(token.start());
                assertThat(stream.getAttribute(OffsetAttribute.class).endOffset())
                        .isEqualTo(token.end());
            }
            assertThat(stream.incrementToken()).isFalse();
            stream.end();
            assertThat(stream.getAttribute(OffsetAttribute.class).endOffset()).isEqualTo(text.length());
        }
        assertThat(tokens.stream().map(Token::term).collect(Collectors.joining(" ")))
                .isEqualTo("no 12v k207 the fuse be not blow fine 3.3v");
    }

    private static List<String> terms(String text) {
        return Lexer.tokens(text).stream().map(Token::term).toList();
    }

    private static Token only(String text) {
        List<Token> tokens = Lexer.tokens(text);
        assertThat(tokens).hasSize(1);
        return tokens.get(0);
    }
}
