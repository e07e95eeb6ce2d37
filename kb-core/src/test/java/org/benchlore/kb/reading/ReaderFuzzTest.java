package org.benchlore.kb.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.junit.jupiter.api.Test;

/** Whatever comes in, what goes out holds together; {@link FuzzMeasure} tries more of it. */
class ReaderFuzzTest {
    private static final int INPUTS = 200_000;
    private static final DeviceScope CORVANE = DeviceScope.parse("disc-recorder/corvane/corvane-300");

    private final Knowledge knowledge = Fixture.knowledge();
    private final Reader reader = Reader.of(knowledge);

    @Test
    void spans_states_and_orders_hold_for_any_text() {
        Gibberish gibberish = new Gibberish(20261125, List.of("no 12 V", "fan stands still", "lamp green"));
        int findings = 0;
        for (int i = 0; i < INPUTS; i++) {
            Reading reading = reader.read(gibberish.next(), i % 2 == 0 ? CORVANE : DeviceScope.ANY);
            Whole.check(knowledge, reading);
            findings += reading.understood().size();
        }
        // guards against a fuzz that never reaches the linker
        assertThat(findings).isGreaterThan(INPUTS / 5);
    }
}
