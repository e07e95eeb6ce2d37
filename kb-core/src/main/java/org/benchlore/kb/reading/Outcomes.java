package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * "With the tuner module out it boots every time": what goes well in the sentence of a trial tells what the trial showed, not
 * how the unit is.
 */
final class Outcomes {
    private static final int REACH = 10;
    private static final Words GOING_WELL = Words.spaced("boot start complet come run get reach power");

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;

    Outcomes(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
    }

    /** Turns claims that go well behind a free name of a trial into claims of its outcome. */
    void take() {
        List<Claim> more = new ArrayList<>(0);
        for (Claim claim : lexicon.works() == null ? List.<Claim>of() : claims) {
            Item name = claim.dropped || !goesWell(claim) ? null : trialBefore(claim);
            Sense shown = name == null ? null : Trials.works(lexicon, name);
            if (name != null && shown != null) {
                claim.dropped = true;
                name.name = true;
                Claim outcome = new Claim(shown.symptom(), shown.state(), name, name.from, name.to);
                outcome.cover(claim.from, claim.to);
                outcome.word = claim.word;
                more.add(outcome);
            }
        }
        claims.removeIf(c -> c.dropped);
        if (!more.isEmpty()) {
            claims.addAll(more);
        }
    }

    private boolean goesWell(Claim claim) {
        boolean well = claim.measured == null && !claim.negated && claim.normal() && !Polarity.presence(claim.symptom);
        for (int i = claim.from; well && i < claim.to; i++) {
            if (GOING_WELL.contains(passage.token(i).term())) {
                return true;
            }
        }
        return false;
    }

    private @Nullable Item trialBefore(Claim claim) {
        for (int i = claim.from - 1;
                i >= Math.max(0, claim.from - REACH) && passage.sentence(i) == passage.sentence(claim.from);
                i--) {
            Item item = passage.itemAt(i);
            if (item != null && item.free() && !item.entry.names.isEmpty() && Trials.works(lexicon, item) != null) {
                return item;
            }
        }
        return null;
    }
}
