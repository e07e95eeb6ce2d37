package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;

/** Says of the silent members of a list what is said of one: "12, 5 and 3.3 V missing". */
final class ListSpread {
    private static final int LONGEST_LIST = 8;

    private final Passage passage;
    private final List<Claim> claims;
    private final List<Item> items;

    ListSpread(Passage passage, List<Claim> claims) {
        this.passage = passage;
        this.claims = claims;
        this.items = passage.items;
    }

    void spread() {
        int told = claims.size();
        for (int c = 0; c < told; c++) {
            Claim claim = claims.get(c);
            if (claim.name != null && claim.measured == null && !claim.listed) {
                List<Claim> same = new ArrayList<>(0);
                spread(claim, claim.name, -1, same);
                spread(claim, claim.name, 1, same);
                for (Claim other : same) {
                    claim.cover(other.from, other.to);
                }
                for (Claim other : same) {
                    other.cover(claim.from, claim.to);
                }
                claim.listed = !same.isEmpty();
                claims.addAll(same);
            }
        }
    }

    private void spread(Claim claim, Item start, int step, List<Claim> more) {
        int index = start.index + step;
        Item last = start;
        for (int n = 0; n < LONGEST_LIST && index >= 0 && index < items.size(); n++, index += step) {
            Item next = items.get(index);
            Item left = step < 0 ? next : last;
            Item right = step < 0 ? last : next;
            if (next.name || next.done || !next.names || !Lists.joined(passage, left.to, right.from)) {
                return;
            }
            Optional<Claim> same = sameSaid(claim, next);
            if (same.isEmpty()) {
                return;
            }
            next.name = true;
            same.get().listed = true;
            more.add(same.get());
            last = next;
        }
    }

    private static Optional<Claim> sameSaid(Claim claim, Item name) {
        if (claim.bareNegation) {
            return Negations.bare(name);
        }
        String state = claim.symptom.states().get(claim.state).id();
        for (Sense named : name.entry.names) {
            Symptom other = named.symptom();
            int index = other.indexOf(state);
            if (index >= 0) {
                Claim same = new Claim(other, index, name, name.from, name.to);
                same.negated = claim.negated;
                return Optional.of(same);
            }
        }
        return Optional.empty();
    }
}
