package org.benchlore.kb.reading;

import com.google.common.base.Splitter;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.analysis.Words;

/** Words that praise or damn anything, for symptoms whose pack does not teach them. */
enum Polarity {
    GOOD(
            "fine | ok | okay | good | normal | all right | perfect | lovely | great | healthy | as it should | as they should | "
                    + "as it should be | as they should be | as it ought to | as they ought to | as it ought to be | as they ought to be | sound | spot on | happy | in order | checks out | tests good | tests fine | tests ok | faultless | "
                    + "like new | as new | not bad | not faulty | not broken | in spec | all in spec | within spec | in range | all in range | within limits | in tolerance | "
                    + "where it should be | where they should be | bang on | as expected | in good order | working | no problem | up to scratch | well"),
    BAD(
            "dead | bad | faulty | broken | failed | defective | kaput | shot | not right | not good | not well | knackered | toast | "
                    + "has had it | is gone | stopped working | quit working | packed up | given up | gave up | not ok | not fine | tests bad | done for");

    private static final Words PRESENCE = Words.of("absent", "none", "no-change", "no-help");

    private final String spelled;

    Polarity(String spelled) {
        this.spelled = spelled;
    }

    List<String> words() {
        return Splitter.on('|').trimResults().splitToList(spelled);
    }

    /** Whether a symptom is normally not there, or its trial of no use. */
    static boolean presence(Symptom symptom) {
        return PRESENCE.contains(symptom.normal().id());
    }

    /** What it says of a symptom: praise its normal state, blame the only other one; nothing of what is there or not. */
    Optional<Sense> of(Symptom symptom) {
        if (presence(symptom)) {
            return Optional.empty();
        }
        int normal = symptom.indexOf(symptom.normal().id());
        if (this == GOOD) {
            return Optional.of(new Sense(symptom, normal));
        }
        List<State> others = symptom.states().stream().filter(s -> !s.normal()).toList();
        return others.size() == 1
                ? Optional.of(new Sense(symptom, symptom.indexOf(others.get(0).id())))
                : Optional.empty();
    }
}
