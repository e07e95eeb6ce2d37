package org.benchlore.kb.importing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitScanTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "corvane 300 sn C3-0417. no 12 V | C3-0417",
                "S/N C3-0417, no 12 V | C3-0417",
                "S/N0417 | 0417",
                "SN: 0417 | 0417",
                "sn#0417 | 0417",
                "snr. 0417 | 0417",
                "ser.0417 | 0417",
                "serno 0417 | 0417",
                "serial no. 0417 | 0417",
                "serial number=0417 | 0417",
            })
    void serial_numbers_are_found_behind_their_words(String text, String unit) {
        assertThat(UnitScan.first(text).map(UnitScan.Found::unit)).contains(unit);
    }

    @ParameterizedTest
    @ValueSource(strings = {"SN75176 driver dead", "sn74ls00 hot", "SNR12", "serial2 gone"})
    void part_numbers_that_begin_alike_are_none(String text) {
        assertThat(UnitScan.first(text)).isEmpty();
    }
}
