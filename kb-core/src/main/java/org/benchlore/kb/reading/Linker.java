package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.List;
import org.benchlore.kb.reading.Passage.Item;

/**
 * Joins names with what is said of them: the nearest state word of the same clause, negations, lists. Every step looks
 * only a few tokens around, so the cost grows with the text.
 */
final class Linker {
    /** Tokens between a name and what is said of it. */
    static final int REACH = 12;

    private final Passage passage;
    private final Lexicon lexicon;
    private final int negationReach;
    private final List<Claim> claims = new ArrayList<>();
    private final List<Item> items;

    Linker(Passage passage, Lexicon lexicon, int negationReach) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.negationReach = negationReach;
        this.items = passage.items;
    }

    /** Claims in order of their first token. */
    List<Claim> link() {
        pass();
        for (boolean names : new boolean[] {false, true}) {
            if (passage.release(names)) {
                pass();
            }
        }
        Loose.outdo(passage, lexicon, claims);
        claims.removeIf(c -> c.dropped);
        new Echoes(passage, claims).add();
        new Loose(passage, lexicon, claims).add();
        bare();
        claims.removeIf(c -> c.dropped);
        Circumstances.drop(passage, claims);
        Thin.drop(passage, lexicon, claims);
        claims.sort(Claim.BY_PLACE);
        return Repeats.merged(passage, claims);
    }

    private void pass() {
        Unmeant unmeant = new Unmeant(passage);
        for (Item item : items) {
            item.done |= unmeant.is(item);
        }
        Ticks.add(passage, claims);
        new Values(passage, lexicon, claims).link();
        for (Item item : items) {
            item.done |= item.free() && unmeant.reached(item);
        }
        phrases(false);
        new WordLinks(passage, claims).link();
        phrases(true);
        new Strays(passage, lexicon, claims).link();
        new Outcomes(passage, lexicon, claims).take();
        new Negations(passage, claims, negationReach).apply();
        new ListSpread(passage, claims).spread();
    }

    /** Phrases; one that may also be a word for a name beside it waits until the words are linked. */
    private void phrases(boolean alsoWords) {
        for (Item item : items) {
            boolean now = alsoWords || item.entry.words.isEmpty();
            if (now && item.free() && !item.entry.phrases.isEmpty()) {
                Sense sense = item.entry.phrases.get(0);
                item.done = true;
                Claim claim = new Claim(sense.symptom(), sense.state(), null, item.from, item.to);
                claim.word = item;
                claims.add(claim);
            }
        }
    }

    private void bare() {
        for (Item item : items) {
            if (!item.free()) {
                continue;
            }
            for (Sense named : item.entry.names) {
                String bare = named.symptom().bare();
                if (bare != null) {
                    item.name = true;
                    claims.add(new Claim(named.symptom(), named.symptom().indexOf(bare), item, item.from, item.to));
                    break;
                }
            }
        }
    }
}
