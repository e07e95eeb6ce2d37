package org.benchlore.kb.reading;

import java.util.List;
import java.util.Optional;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** State words with no free name beside them: what is said of the name before, of a thing tried, of half a name. */
final class Strays {
    private static final Words DEEDS =
            Words.spaced("ran put cut took gave held shook left swung pull unplug remove swap take let hold");

    /** Subjects of an outcome that stand for whatever the unit suffers from. */
    private static final Words TROUBLE = Words.spaced("fault trouble problem symptom complaint defect error behaviour");

    private static final Words ONE = Words.of("one", "ones", "fuse", "cells");
    private static final Words NEW = Words.of("new", "fresh", "replacement");

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;
    private final List<Item> items;

    Strays(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
        this.items = passage.items;
    }

    void link() {
        continued();
        replaced();
        trials();
        acts();
        heads();
    }

    /** "12 V fine cold, but low under load": a word with no name of its own goes on about the name before. */
    private void continued() {
        for (int w = 1; w < items.size(); w++) {
            Item word = items.get(w);
            if (!word.says || !word.free() || !continues(w)) {
                continue;
            }
            for (int i = w - 1; i >= 0 && word.from - items.get(i).to <= Linker.REACH; i--) {
                Item name = items.get(i);
                if (passage.sentence(name.from) != passage.sentence(word.from)) {
                    break;
                }
                Optional<Sense> sense = name.name ? WordLinks.match(name, word) : ofPhrase(name, word);
                if (sense.isPresent()) {
                    word.word = true;
                    Claim claim = new Claim(sense.get().symptom(), sense.get().state(), name, word.from, word.to);
                    claim.word = word;
                    claims.add(claim);
                    break;
                }
            }
        }
    }

    /** "Fuse was blown, new one holds": the thing put in its place is called by no name of its own. */
    private void replaced() {
        for (Item word : items) {
            if (!word.says || !word.free()) {
                continue;
            }
            int one = word.from - 1;
            while (one > 0 && passage.skipped(one)) {
                one--;
            }
            boolean another = one > 0
                    && ONE.contains(passage.token(one).surface())
                    && NEW.contains(passage.token(one - 1).surface());
            for (Claim claim : another ? List.copyOf(claims) : List.<Claim>of()) {
                boolean before = claim.to < one
                        && one - claim.to < Linker.REACH
                        && claim.measured == null
                        && passage.sentence(claim.from) == passage.sentence(word.from);
                Sense said = before ? word.entry.saidOf(claim.symptom.id()) : null;
                if (said != null) {
                    word.word = true;
                    if (said.state() != claim.state) {
                        Claim replaced = new Claim(said.symptom(), said.state(), null, one - 1, word.to);
                        replaced.word = word;
                        replaced.listed = true;
                        claims.add(replaced);
                    }
                    break;
                }
            }
        }
    }

    /** "Picture fine, then goes dark": what a word says of the thing that a phrase before spoke of well. */
    private Optional<Sense> ofPhrase(Item phrase, Item word) {
        int then = word.from - 1;
        while (then > phrase.to && !passage.token(then).surface().equals("then")) {
            then--;
        }
        if (then <= phrase.to || !phrase.done || phrase.entry.phrases.isEmpty()) {
            return Optional.empty();
        }
        Sense before = phrase.entry.phrases.get(0);
        Sense said =
                before.stateOf().normal() ? word.entry.saidOf(before.symptom().id()) : null;
        return Optional.ofNullable(said).filter(sense -> !sense.stateOf().normal());
    }

    /** Whether a connective and nothing foreign stands between an item and the one before. */
    private boolean continues(int w) {
        Item word = items.get(w);
        boolean connected = false;
        for (int i = word.from - 1; i >= Math.max(0, word.from - Linker.REACH); i--) {
            Item item = passage.itemAt(i);
            if (item != null) {
                if (item.entry.cue == null || item.word || item.name) {
                    return connected;
                }
                connected |= item.entry.cue == Cue.BREAK;
            } else {
                if (passage.content(i) && !passage.token(i).unit().equals("s")) {
                    return false;
                }
                connected = connected
                        || Plain.joining(passage.token(i))
                        || passage.token(i).term().equals("now");
            }
        }
        return false;
    }

    /** "Pushed all cards home again, now it starts": a trial's outcome may stand in the next part of the sentence. */
    private void trials() {
        for (Item name : items) {
            Sense works = name.names && name.free() ? Trials.works(lexicon, name) : null;
            for (int i = name.index + 1; works != null && i < items.size(); i++) {
                Item word = items.get(i);
                if (word.from - name.to > Linker.REACH || passage.sentence(word.from) != passage.sentence(name.from)) {
                    break;
                }
                Sense said = word.free() && tells(word)
                        ? word.entry.saidOf(works.symptom().id())
                        : null;
                if (said != null) {
                    WordLinks.join(claims, name, word, said);
                    break;
                }
            }
        }
    }

    /** "Cleared the codes, ran it an hour, none came back": a deed that is a name has its outcome in a later segment. */
    private void acts() {
        for (Item name : items) {
            if (!name.names || !name.free() || !act(name)) {
                continue;
            }
            for (int i = name.index + 1; i < items.size(); i++) {
                Item word = items.get(i);
                if (word.from - name.to > Linker.REACH || passage.sentence(word.from) != passage.sentence(name.from)) {
                    break;
                }
                boolean outcome = word.free()
                        && word.to - word.from > 1
                        && opens(word)
                        && !passage.sameSegment(name.from, word.from)
                        && tells(word);
                Optional<Sense> said = outcome ? WordLinks.match(name, word) : Optional.empty();
                if (said.isPresent()) {
                    WordLinks.join(claims, name, word, said.get());
                    break;
                }
            }
        }
    }

    private boolean act(Item name) {
        String first = passage.token(name.from).surface();
        return name.to - name.from > 1 && (first.endsWith("ed") || first.endsWith("ing") || DEEDS.contains(first));
    }

    /** Whether nothing of meaning stands in front of a word in its segment. */
    private boolean opens(Item word) {
        for (int i = word.from - 1; i >= 0 && passage.sameSegment(i, word.from); i--) {
            if (passage.content(i) && !TROUBLE.contains(passage.token(i).surface())) {
                return false;
            }
        }
        return true;
    }

    /** "Bus idle": a word with no name of its own beside the last word of one. */
    private void heads() {
        for (Item word : items) {
            if (!word.free() || word.entry.words.isEmpty() || !word.entry.phrases.isEmpty() || !tells(word)) {
                continue;
            }
            int head = word.from - 1;
            while (head >= 0 && passage.sameSegment(head, word.from) && passage.skipped(head)) {
                head--;
            }
            // praise goes with anything: "the amplifier works" is not said of the headphone amplifier,
            // nor is "the radio goes silent" of one of its bands
            boolean open = head >= 0
                    && word.entry.polarity == null
                    && !MoodWords.DEVICES.contains(passage.token(head).surface())
                    && passage.sameSegment(head, word.from)
                    && passage.unexplained(head)
                    && passage.token(head).kind() == Kind.WORD
                    && !passage.unreal(head);
            Sense said = open ? lexicon.referents().saidOfHead(passage.number(head), word.entry) : null;
            if (said != null && !ofAnother(head, said.symptom())) {
                word.word = true;
                Claim claim = new Claim(said.symptom(), said.state(), null, head, word.to);
                claim.word = word;
                claim.listed = true;
                claims.add(claim);
            }
        }
    }

    /** "Job card opened" is said of no memory card, "new cartridge" of any. */
    private boolean ofAnother(int head, Symptom symptom) {
        if (head == 0
                || !passage.sameSegment(head - 1, head)
                || !passage.content(head - 1)
                || passage.token(head - 1).kind() != Kind.WORD) {
            return false;
        }
        Item before = passage.itemAt(head - 1);
        return (before == null || before.names)
                && !symptom.id().contains(passage.token(head - 1).surface());
    }

    private boolean tells(Item word) {
        for (int i = word.from; i < word.to; i++) {
            if (passage.content(i)) {
                return true;
            }
        }
        return false;
    }
}
