package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.jspecify.annotations.Nullable;

/**
 * Joins names with what is said of them: the nearest state word of the same clause, negations, lists. Every step looks
 * only a few tokens around, so the cost grows with the text.
 */
final class Linker {
    private static final int REACH = 12;
    private static final double DEAREST = 7;
    private static final int LONGEST_LIST = 8;
    private static final double DEAREST_PRAISE = 2;
    private static final Set<String> PRONOUNS = Set.of("it", "that", "he", "she", "they", "this");
    private static final Set<String> GOVERNORS =
            Set.of("with", "on", "off", "from", "at", "in", "to", "for", "by", "of", "after", "without", "through");
    private static final Set<String> PREPOSITIONS =
            Set.of("off", "out", "up", "down", "on", "in", "over", "around", "through");
    private static final Set<String> PLACES =
            Set.of("the", "a", "an", "his", "her", "its", "my", "their", "our", "of", "this", "that", "each", "every");

    private static final Set<String> REACHING = Set.of(
            "drop", "fall", "sag", "dip", "sink", "collaps", "go", "come", "rise", "climb", "jump", "shoot", "down",
            "up", "creep", "settl", "back");
    private static final List<String> WORKS = List.of("work");

    private record Candidate(double cost, Item name, Item word, Sense sense) {
        int at() {
            return Math.min(name.from, word.from);
        }

        boolean nameFirst() {
            return name.from < word.from;
        }
    }

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
        for (Item item : items) {
            item.done |= supposed(item) || preposition(item) || adverb(item) || verb(item);
        }
        Ticks.add(passage, claims);
        new Values(passage, lexicon, claims).link();
        for (Item item : items) {
            item.done |= item.free() && reached(item);
        }
        phrases(false);
        words();
        sharpen();
        phrases(true);
        continued();
        trials();
        new Outcomes(passage, lexicon, claims).take();
        heads();
        new Negations(passage, claims, negationReach).apply();
        spread();
    }

    /** "Off the front display", "out of service": where a place follows, "off" and "out" are no states. */
    private boolean preposition(Item item) {
        boolean plain = item.to - item.from == 1
                && item.entry.names.isEmpty()
                && PREPOSITIONS.contains(passage.token(item.from).term());
        return plain
                && item.to < passage.size()
                && PLACES.contains(passage.token(item.to).term());
    }

    /** "Sinks to 10.3" names no heatsink. */
    private boolean verb(Item item) {
        Token token = passage.token(item.from);
        boolean third = item.to - item.from == 1
                && !item.entry.names.isEmpty()
                && token.surface().endsWith("s")
                && !token.surface().equals(token.term());
        return third
                && item.to + 1 < passage.size()
                && passage.token(item.to).term().equals("to")
                && (passage.token(item.to + 1).kind() == Kind.NUMBER
                        || passage.token(item.to + 1).kind() == Kind.QUANTITY);
    }

    /** "Drops to 1 V" names no rail of 1 V. */
    private boolean reached(Item item) {
        Token token = passage.token(item.from);
        boolean number = token.kind() == Kind.NUMBER || token.kind() == Kind.QUANTITY;
        return number
                && item.to - item.from == 1
                && item.from > 1
                && passage.token(item.from - 1).term().equals("to")
                && REACHING.contains(passage.token(item.from - 2).term());
    }

    /** "It is still" is a state, "still no answer" is none. */
    private boolean adverb(Item item) {
        boolean still =
                item.to - item.from == 1 && passage.token(item.from).term().equals("still");
        return still
                && item.to < passage.size()
                && passage.sameSegment(item.from, item.to)
                && passage.token(item.to).kind() != Kind.PUNCTUATION;
    }

    /** Whether an item is only spoken of or still to be looked at. */
    private boolean supposed(Item item) {
        if (item.entry.names.isEmpty() && item.entry.words.isEmpty() && item.entry.phrases.isEmpty()) {
            return false;
        }
        if (passage.unreal(item.from) || passage.unreal(item.to - 1)) {
            return true;
        }
        for (int i = item.from - 1; i >= 0 && i >= item.from - REACH && passage.sameSegment(i, item.from); i--) {
            Optional<Item> cue = passage.item(i);
            if (cue.isPresent() && cue.get().cue(Cue.UNCHECKED)) {
                return true;
            }
        }
        for (int i = item.to; i < passage.size() && i < item.to + REACH && passage.sameSegment(i, item.from); i++) {
            if (passage.item(i).filter(cue -> cue.cue(Cue.UNCHECKED)).isPresent()) {
                return true;
            }
        }
        return false;
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

    private void words() {
        List<Candidate> candidates = new ArrayList<>();
        for (int w = 0; w < items.size(); w++) {
            Item word = items.get(w);
            if (word.entry.says() && word.free()) {
                around(w, -1, candidates);
                around(w, 1, candidates);
            }
        }
        candidates.sort(Comparator.comparingDouble(Candidate::cost)
                .thenComparingInt(Candidate::at)
                .thenComparing(c -> !c.nameFirst())
                .thenComparing(c -> c.sense().symptom().id()));
        for (Candidate c : candidates) {
            if (c.name.free() && c.word.free()) {
                take(c);
            }
        }
    }

    private void take(Candidate c) {
        c.name.name = true;
        c.word.word = true;
        Claim claim = new Claim(c.sense.symptom(), c.sense.state(), c.name, c.name.from, c.name.to);
        claim.word = c.word;
        claim.cover(c.word.from, c.word.to);
        claims.add(claim);
    }

    private void around(int w, int step, List<Candidate> candidates) {
        Item word = items.get(w);
        double passed = 0;
        Item member = null;
        for (int i = w + step; i >= 0 && i < items.size(); i += step) {
            Item name = items.get(i);
            if (member != null && !name.entry.names.isEmpty() && Lists.joined(passage, name.to, member.from)) {
                // the last of "12, 5 and 3.3" stands for all of them
                member = name;
                continue;
            }
            int gapFrom = step < 0 ? name.to : word.to;
            int gapTo = step < 0 ? word.from : name.from;
            if (gapTo - gapFrom > REACH || !passage.sameClause(word.from, name.from)) {
                return;
            }
            if (!name.entry.names.isEmpty() && !name.done && !name.name) {
                double cost = passed + gapCost(gapFrom, gapTo, step < 0) + (step < 0 ? 0 : 0.5);
                Optional<Sense> taught = match(name, word);
                Optional<Sense> sense = taught.isPresent() ? taught : praised(name, word, cost);
                if (sense.isPresent() && cost <= DEAREST) {
                    candidates.add(new Candidate(cost, name, word, sense.get()));
                    member = step < 0 ? name : null;
                }
            }
            if (name.name && match(name, word).isPresent()) {
                // something is said of a nearer one already; the word goes on about that
                passed += DEAREST;
            }
            passed += name.entry.names.isEmpty() && name.entry.words.isEmpty() ? 0.25 : 2;
        }
    }

    /** What a word says of a name: the sense of the word for the first of the name's symptoms that knows it. */
    private static Optional<Sense> match(Item name, Item word) {
        for (Sense named : name.entry.names) {
            Sense said = word.entry.saidOf(named.symptom().id());
            if (said != null) {
                return Optional.of(said);
            }
        }
        return Optional.empty();
    }

    /** What praise or blame behind a name says of it, where the pack does not teach the word and nothing else is the subject. */
    private Optional<Sense> praised(Item name, Item word, double cost) {
        Polarity polarity = word.entry.polarity;
        if (polarity == null || cost > DEAREST_PRAISE || word.from < name.to || !subject(name)) {
            return Optional.empty();
        }
        for (int i = name.to; i < word.from; i++) {
            if (PRONOUNS.contains(passage.token(i).term())) {
                return Optional.empty();
            }
        }
        return polarity.of(name.entry.names.get(0).symptom());
    }

    /** Whether no preposition governs a name. */
    private boolean subject(Item name) {
        for (int i = name.from - 1; i >= Math.max(0, name.from - 2) && passage.sameSegment(i, name.from); i--) {
            if (GOVERNORS.contains(passage.token(i).term())) {
                return false;
            }
        }
        return true;
    }

    /** Cost of what stands between; over {@link #DEAREST} when the word plainly belongs to something else. */
    private double gapCost(int from, int to, boolean wordLast) {
        double cost = 0;
        int join = -1;
        int lastContent = -1;
        int firstContent = -1;
        for (int i = from; i < to; i++) {
            Token token = passage.token(i);
            if (token.is(",") || token.is("(") || token.is(")") || token.is("-")) {
                cost += 3;
                join = wordLast ? i : (join < 0 ? i : join);
            } else if (token.term().equals("and") || token.term().equals("with")) {
                cost += 1;
                join = wordLast ? i : (join < 0 ? i : join);
            } else if (passage.unexplained(i)) {
                cost += 1;
                lastContent = i;
                firstContent = firstContent < 0 ? i : firstContent;
            } else if (token.kind() != Kind.PUNCTUATION && !Plain.skipped(token)) {
                cost += 0.3;
            }
        }
        boolean foreign = join >= 0 && (wordLast ? lastContent > join : firstContent >= 0 && firstContent < join);
        return foreign ? DEAREST + 1 : cost;
    }

    /** "The tray opens halfway": what follows a word at once may say that it is not quite so. */
    private void sharpen() {
        for (Claim claim : claims) {
            Item word = claim.word;
            if (claim.name == null
                    || word == null
                    || !claim.symptom.states().get(claim.state).normal()) {
                continue;
            }
            for (int i = word.index + 1; i < items.size() && items.get(i).from - word.to <= 1; i++) {
                Item more = items.get(i);
                if (more.entry.cue == Cue.NEGATION) {
                    break;
                }
                Sense said = more.free() ? more.entry.saidOf(claim.symptom.id()) : null;
                boolean close = passage.sameSegment(word.from, more.from) && passage.sameClause(word.from, more.from);
                if (said != null && close && !said.stateOf().normal()) {
                    claim.state = said.state();
                    claim.cover(more.from, more.to);
                    more.word = true;
                    break;
                }
            }
        }
    }

    /** "12 V fine cold, but low under load": a word with no name of its own goes on about the name before. */
    private void continued() {
        for (int w = 1; w < items.size(); w++) {
            Item word = items.get(w);
            if (!word.free() || !word.entry.says() || !continues(w)) {
                continue;
            }
            for (int i = w - 1; i >= 0 && word.from - items.get(i).to <= REACH; i--) {
                Item name = items.get(i);
                if (passage.sentence(name.from) != passage.sentence(word.from)) {
                    break;
                }
                Optional<Sense> sense = name.name ? match(name, word) : Optional.empty();
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

    /** "Pushed all cards home again, now it starts": a trial's outcome may stand in the next part of the sentence. */
    private void trials() {
        for (Item name : items) {
            Symptom symptom = name.free() && !name.entry.names.isEmpty() ? trial(name) : null;
            for (int i = name.index + 1; symptom != null && i < items.size(); i++) {
                Item word = items.get(i);
                if (word.from - name.to > REACH || passage.sentence(word.from) != passage.sentence(name.from)) {
                    break;
                }
                Sense said = word.free() && tells(word) ? word.entry.saidOf(symptom.id()) : null;
                if (said != null) {
                    take(new Candidate(0, name, word, said));
                    break;
                }
            }
        }
    }

    /** The symptom of a name that tells of something tried, which works or makes no difference. */
    private @Nullable Symptom trial(Item name) {
        Symptom symptom = name.entry.names.get(0).symptom();
        Sense works =
                lexicon.trie().find(WORKS).map(e -> e.saidOf(symptom.id())).orElse(null);
        boolean tried =
                Polarity.presence(symptom) && works != null && !works.stateOf().normal();
        return tried ? symptom : null;
    }

    /** "Bus idle": a word with no name of its own beside the last word of one. */
    private void heads() {
        for (Item word : items) {
            if (!word.free() || word.entry.words.isEmpty() || !word.entry.phrases.isEmpty() || !tells(word)) {
                continue;
            }
            int head = word.from - 1;
            while (head >= 0 && passage.sameSegment(head, word.from) && Plain.skipped(passage.token(head))) {
                head--;
            }
            boolean open = head >= 0
                    && passage.sameSegment(head, word.from)
                    && passage.unexplained(head)
                    && passage.token(head).kind() == Kind.WORD
                    && !passage.unreal(head);
            Sense said = open ? lexicon.referents().saidOfHead(passage.term(head), word.entry) : null;
            if (said != null) {
                word.word = true;
                Claim claim = new Claim(said.symptom(), said.state(), null, head, word.to);
                claim.word = word;
                claim.listed = true;
                claims.add(claim);
            }
        }
    }

    private boolean tells(Item word) {
        for (int i = word.from; i < word.to; i++) {
            if (Plain.content(passage.token(i))) {
                return true;
            }
        }
        return false;
    }

    /** Whether a connective and nothing foreign stands between an item and the one before. */
    private boolean continues(int w) {
        Item word = items.get(w);
        boolean connected = false;
        for (int i = word.from - 1; i >= Math.max(0, word.from - REACH); i--) {
            Optional<Item> item = passage.item(i);
            if (item.isPresent()) {
                if (item.get().entry.cue == null || item.get().word || item.get().name) {
                    return connected;
                }
                connected |= item.get().entry.cue == Cue.BREAK;
            } else {
                if (Plain.content(passage.token(i))) {
                    return false;
                }
                connected |= Plain.joining(passage.token(i))
                        || passage.token(i).term().equals("now");
            }
        }
        return false;
    }

    /** "12, 5 and 3.3 V missing": what is said of one member of a list is said of the silent ones too. */
    private void spread() {
        List<Claim> more = new ArrayList<>();
        for (Claim claim : List.copyOf(claims)) {
            if (claim.name != null && claim.measured == null && !claim.listed) {
                List<Claim> same = new ArrayList<>();
                spread(claim, claim.name, -1, same);
                spread(claim, claim.name, 1, same);
                for (Claim other : same) {
                    claim.cover(other.from, other.to);
                }
                for (Claim other : same) {
                    other.cover(claim.from, claim.to);
                }
                claim.listed = !same.isEmpty();
                more.addAll(same);
            }
        }
        claims.addAll(more);
    }

    private void spread(Claim claim, Item start, int step, List<Claim> more) {
        int index = start.index + step;
        Item last = start;
        for (int n = 0; n < LONGEST_LIST && index >= 0 && index < items.size(); n++, index += step) {
            Item next = items.get(index);
            Item left = step < 0 ? next : last;
            Item right = step < 0 ? last : next;
            if (next.name || next.done || next.entry.names.isEmpty() || !Lists.joined(passage, left.to, right.from)) {
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
