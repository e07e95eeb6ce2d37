package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;

/**
 * Claims that say a thing twice in one breath ("relay clicks, clicks, clicks again", "motor strains and stalls") become one;
 * of two that differ within one segment ("solenoid pulls weakly") the one out of the ordinary stands.
 */
final class Repeats {
    /** Claims looked back at. */
    private static final int REACH = 4;

    private Repeats() {}

    /** The claims, in order, without repeats. */
    static List<Claim> merged(Passage passage, List<Claim> claims) {
        List<Claim> kept = new ArrayList<>(claims.size());
        for (Claim claim : claims) {
            if (!joins(passage, kept, claim)) {
                kept.add(claim);
            }
        }
        kept.sort(Claim.BY_PLACE);
        return kept;
    }

    private static boolean joins(Passage passage, List<Claim> kept, Claim claim) {
        for (int i = kept.size() - 1; i >= Math.max(0, kept.size() - REACH); i--) {
            Claim before = kept.get(i);
            boolean same = before.measured == null
                    && claim.measured == null
                    && passage.sentence(before.from) == passage.sentence(claim.from)
                    && before.symptom.id().equals(claim.symptom.id());
            if (!same) {
                continue;
            }
            if (before.likeliest().equals(claim.likeliest())) {
                before.cover(claim.from, claim.to);
                return true;
            }
            if (before.negated != claim.negated && beside(passage, before, claim)) {
                kept.set(i, before.negated ? claim : before);
                return true;
            }
            boolean oneSegment = passage.sameSegment(before.to - 1, claim.from);
            if (oneSegment && normal(before) != normal(claim)) {
                Claim odd = normal(before) ? claim : before;
                odd.cover(before.from, before.to);
                odd.cover(claim.from, claim.to);
                kept.set(i, odd);
                return true;
            }
        }
        return false;
    }

    /** "Weak, not empty": a denied fault beside another one of the same symptom says no more. */
    private static boolean beside(Passage passage, Claim before, Claim claim) {
        Claim denied = before.negated ? before : claim;
        Claim other = before.negated ? claim : before;
        boolean own = denied.name != null && other.name != null && denied.name != other.name;
        return !own
                && denied.word != null
                && !denied.bareNegation
                && denied.state != other.state
                && !normal(other)
                && !denied.normal()
                && passage.segment(claim.from) - passage.segment(before.to - 1) <= 1;
    }

    private static boolean normal(Claim claim) {
        return claim.normal() != claim.negated;
    }
}
