package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/** "C14 reads 12 ohms, swollen": a participle left alone behind a comma goes on about the part named just before. */
final class Fragments {
    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;

    Fragments(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
    }

    void link() {
        for (Item word : passage.items) {
            // praise and blame go with anything: "fan stopped, dead" tells of the unit as well
            if (word.free()
                    && !word.entry.words.isEmpty()
                    && !word.entry.phrases.isEmpty()
                    && word.entry.polarity == null
                    && word.from > 1
                    && participle(word)
                    && alone(word)) {
                go(word);
            }
        }
    }

    private void go(Item word) {
        int end = word.from;
        while (end > 0 && passage.token(end - 1).kind() != Kind.PUNCTUATION) {
            end--;
        }
        end--;
        if (end <= 0 || passage.sentence(end) != passage.sentence(word.from)) {
            return;
        }
        for (int i = end - 1; i >= 0 && passage.sameSegment(i, end - 1); i--) {
            Sense said = said(i, word);
            if (said != null) {
                word.word = true;
                Claim claim = new Claim(said.symptom(), said.state(), null, word.from, word.to);
                claim.word = word;
                claim.listed = true;
                claims.add(claim);
                return;
            }
        }
    }

    /** What a word says of the part that a token names alone, or null. */
    private @Nullable Sense said(int part, Item word) {
        Entry entry = passage.token(part).kind() == Kind.PUNCTUATION
                ? null
                : lexicon.trie().find(List.of(passage.term(part))).orElse(null);
        for (Sense named : entry == null ? List.<Sense>of() : entry.names) {
            Sense said = word.entry.saidOf(named.symptom().id());
            if (said != null) {
                return said;
            }
        }
        return null;
    }

    /** "Swollen", "leaking" and not "hums", which the unit does. */
    private boolean participle(Item word) {
        String last = passage.token(word.to - 1).surface();
        return last.endsWith("en") || last.endsWith("ed") || last.endsWith("ing");
    }

    /** Whether nothing else stands between the stops on either side. */
    private boolean alone(Item word) {
        int before = word.from - 1;
        while (before >= 0 && passage.skipped(before)) {
            before--;
        }
        int behind = word.to;
        while (behind < passage.size() && passage.skipped(behind)) {
            behind++;
        }
        boolean ends = behind == passage.size() || passage.token(behind).kind() == Kind.PUNCTUATION;
        return ends && before > 0 && passage.token(before).kind() == Kind.PUNCTUATION;
    }
}
