package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;
import org.jspecify.annotations.Nullable;

/**
 * Negations and what they reach, after NegEx: one in front negates the first thing within a few tokens, one behind the
 * thing before it; a comma, a clause and a sentence end the reach. A negated name without a word of its own ("no 12 V")
 * has the state its symptom says.
 */
final class Negations {
    private static final int LONGEST_LIST = 8;
    static final Words STOPS = Words.of("stop", "ceas", "quit");
    /** What follows them tells when, and is not denied: "has not worked since the update". */
    private static final Words TIMES = Words.of("since", "until", "till");

    private static final Set<Cue> DENYING =
            Collections.unmodifiableSet(EnumSet.of(Cue.NEGATION, Cue.NEGATION_AFTER, Cue.NORMAL, Cue.EXCEPT));

    private static final Words ARTICLES = Words.of("a", "an");
    static final Words MODALS = Words.of("will", "would");
    /** "No dust on the heads" says of the heads neither that they are missing nor that they are well. */
    private static final Words PLACING = Words.spaced("on at in inside around near behind under over onto");

    private static final Words LINKING = Words.of("be", "been", "have", "get", "got");
    private static final Words SPEAKERS = Words.spaced("i it he she we they you there");
    private static final Words ALL_BUT = Words.of("all", "everything");
    private static final Words ALL = Words.terms("all every each both");

    private final Passage passage;
    private final List<Claim> claims;
    private final int reach;

    /** By item; empty until a negation asks for them. */
    private final List<@Nullable List<Claim>> claimsOf = new ArrayList<>();

    Negations(Passage passage, List<Claim> claims, int reach) {
        this.passage = passage;
        this.claims = claims;
        this.reach = reach;
    }

    void apply() {
        for (Item item : passage.items) {
            if (item.free()) {
                apply(item);
            }
        }
        if (passage.asks()) {
            claims.forEach(this::answered);
        }
    }

    private void apply(Item item) {
        Cue cue = hidden(item) || stops(item) || deniesNext(passage, item) ? Cue.NEGATION : item.entry.cue;
        if (cue == null || !DENYING.contains(cue)) {
            return;
        }
        if (answer(item) || concord(item)) {
            item.done = true;
            return;
        }
        if (claimsOf.isEmpty()) {
            file();
        }
        item.done = switch (cue) {
            case NEGATION_AFTER -> behind(item, false);
            case NORMAL -> praised(item);
            case EXCEPT -> except(item);
            default -> before(item) || (!ofAnother(item) && behind(item, true));
        };
    }

    /** "No I didn't drop it": it answers somebody and denies nothing itself. */
    private boolean answer(Item item) {
        return item.to - item.from == 1
                && item.to < passage.size()
                && passage.term(item.from).equals("no")
                && SPEAKERS.contains(passage.token(item.to).surface());
    }

    /** "He don't read no disc": the same said twice. */
    private boolean concord(Item item) {
        Item next =
                item.to < passage.size() && passage.term(item.to - 1).equals("not") ? passage.itemAt(item.to) : null;
        for (int i = item.to + 1; next != null && i < next.to; i++) {
            if (passage.term(i).equals("no")) {
                return true;
            }
        }
        return false;
    }

    private void file() {
        claimsOf.addAll(Collections.nCopies(passage.items.size(), null));
        for (Claim claim : claims) {
            if (claim.name != null) {
                note(claim.name, claim);
            }
            if (claim.word != null && claim.word != claim.name) {
                note(claim.word, claim);
            }
        }
    }

    private void note(Item item, Claim claim) {
        List<Claim> of = claimsOf.get(item.index);
        if (of == null) {
            of = new ArrayList<>(1);
            claimsOf.set(item.index, of);
        }
        of.add(claim);
    }

    private List<Claim> claimsOf(int item) {
        List<Claim> of = claimsOf.get(item);
        return of == null ? List.of() : of;
    }

    /** "Pack swollen? No." */
    private void answered(Claim claim) {
        int asked = claim.to;
        while (asked < passage.size()
                && passage.sameSegment(asked, claim.to - 1)
                && !passage.token(asked).is("?")) {
            asked++;
        }
        boolean answer = asked + 1 < passage.size()
                && passage.token(asked).is("?")
                && (asked + 2 == passage.size() || passage.token(asked + 2).kind() == Token.Kind.PUNCTUATION);
        if (!answer) {
            return;
        }
        String word = passage.token(asked + 1).surface();
        boolean no = word.equals("no") || word.equals("nope") || word.equals("none");
        if (no || word.equals("yes")) {
            claim.negated ^= no;
            claim.cover(asked + 1, asked + 2);
            passage.item(asked + 1).ifPresent(item -> item.done = true);
        }
    }

    /** "Stopped clicking" denies the clicking, "stopped" alone is a state. */
    private boolean stops(Item item) {
        return item.to - item.from == 1
                && STOPS.contains(passage.term(item.from))
                && item.to < passage.size()
                && passage.token(item.to).surface().endsWith("ing");
    }

    /** "Nothing burnt in the supply", "nothing was dropped": a bare "nothing" in front of what is taught for trouble denies it. */
    static boolean deniesNext(Passage passage, Item item) {
        if (item.to - item.from != 1 || !passage.term(item.from).equals("nothing")) {
            return false;
        }
        int at = item.to;
        while (at < passage.size() && LINKING.contains(passage.term(at))) {
            at++;
        }
        Item next = at < passage.size() && passage.sameSegment(item.from, at) ? passage.itemAt(at) : null;
        return next != null
                && !next.entry.phrases.isEmpty()
                && !next.entry.phrases.get(0).stateOf().normal();
    }

    /**
     * "Still won't" may be a state word elsewhere; where it found no name, its "not" negates what follows. "No picture" holds
     * the name of what it denies.
     */
    private boolean hidden(Item item) {
        if (item.entry.cue != null || item.names || item.entry.words.isEmpty()) {
            return false;
        }
        String first = passage.token(item.from).term();
        String last = passage.token(item.to - 1).term();
        boolean opens = (first.equals("no") || first.equals("not")) && !passage.hidesName(item);
        return opens || last.equals("not") || last.equals("never");
    }

    /** "No scratches": what is denied stands within, where it says nothing of the thing before it ("screen has no scratches"). */
    private boolean ofAnother(Item negation) {
        for (int i = negation.from + 1; i < negation.to; i++) {
            if (negation.entry.cue == null && passage.content(i)) {
                return true;
            }
        }
        return false;
    }

    /** The claim of "no NAME" for the first symptom of the name that says what it means. */
    static Optional<Claim> bare(Item name) {
        for (Sense named : name.entry.names) {
            Symptom symptom = named.symptom();
            String negated = symptom.negated();
            String bare = symptom.bare();
            String state = negated != null ? negated : bare;
            if (state != null) {
                Claim claim = new Claim(symptom, symptom.indexOf(state), name, name.from, name.to);
                claim.negated = negated == null;
                claim.bareNegation = true;
                return Optional.of(claim);
            }
        }
        return Optional.empty();
    }

    private boolean before(Item negation) {
        Item target = next(negation);
        if (target == null) {
            return false;
        }
        if (refuses(negation) && target.free() && names(target)) {
            target.name = true;
            return true;
        }
        if (target.free()) {
            List<Claim> said = passage.term(negation.from).equals("neither") ? said(target) : List.of();
            if (toggle(negation, said)) {
                target.name = true;
                said.forEach(claim -> claim.listed = true);
                return true;
            }
            Item listed = listed(target);
            if (listed != null) {
                return toggle(negation, claimsOf(listed.index));
            }
            return !target.entry.names.isEmpty() && bind(negation, target);
        }
        List<Claim> of = claimsOf(target.index);
        if (!target.name) {
            return toggle(negation, of);
        }
        Claim claim = of.isEmpty() ? null : of.get(0);
        if (claim == null || claim.measured != null || claim.word == null) {
            return false;
        }
        boolean wordAhead = claim.word.from > negation.from && passage.sameSegment(target.from, claim.word.from);
        if (!wordAhead) {
            // a word in front of the negation does not speak of what is negated
            claim.dropped |= claim.word.to <= negation.from && bind(negation, target);
            return claim.dropped || bind(negation, target);
        }
        boolean sameThingTwice = claim.symptom.states().get(claim.state).id().equals(claim.symptom.negated());
        if (sameThingTwice) {
            claim.cover(negation.from, negation.to);
            return true;
        }
        return toggle(negation, List.of(claim));
    }

    /** "Will not restart": what a unit refuses is no trouble that it is free of. */
    private boolean refuses(Item negation) {
        return negation.from > 0
                && negation.to - negation.from == 1
                && MODALS.contains(passage.token(negation.from - 1).surface())
                && passage.sameSegment(negation.from - 1, negation.from);
    }

    private static boolean names(Item target) {
        return !target.entry.names.isEmpty()
                && Polarity.presence(target.entry.names.get(0).symptom());
    }

    /** What is said right behind a name without being linked to it: "neither channel distorted". */
    private List<Claim> said(Item name) {
        Item next = name.index + 1 < passage.items.size() ? passage.items.get(name.index + 1) : null;
        return next != null && next.from == name.to ? claimsOf(next.index) : List.of();
    }

    /** The first item of the packs that a negation can reach forwards, or null. */
    private @Nullable Item next(Item negation) {
        int steps = 0;
        boolean without = passage.token(negation.from).term().equals("without");
        boolean another = ofAnother(negation); // something that no pack knows is denied
        for (int i = negation.to; i < passage.size() && passage.sameSegment(negation.from, i); i++) {
            boolean times = TIMES.contains(passage.token(i).surface());
            if (times
                    || (another && PLACING.contains(passage.token(i).surface()))
                    || (without && MoodWords.REPORTING.contains(passage.token(i).surface()))) {
                return null;
            }
            Item item = passage.itemAt(i);
            if (item != null && item.entry.cue != null && item.free() && onlyCue(item)) {
                if (item.entry.cue == Cue.NEGATION) {
                    return null;
                }
            } else if (item != null && !passable(item)) {
                return item;
            }
            another |= passage.unexplained(i);
            steps += passage.skipped(i) ? 0 : 1;
            if (steps > reach) {
                return null;
            }
        }
        return null;
    }

    /** Readings whose rail stands further on, and "on" or "there" that turned out to be no state word. */
    private boolean passable(Item item) {
        boolean idle = claimsOf(item.index).isEmpty();
        boolean filler = item.free() && item.entry.names.isEmpty() && !passage.content(item.from);
        return idle && (item.done || filler);
    }

    /** A later member of "12 V or 5 V" about which something is said further on, or null. */
    private @Nullable Item listed(Item first) {
        Item last = first;
        for (int i = first.index + 1; i < passage.items.size() && i <= first.index + LONGEST_LIST; i++) {
            Item next = passage.items.get(i);
            if (next.entry.names.isEmpty() || !joinedByOr(last.to, next.from)) {
                return null;
            }
            boolean saidAhead = claimsOf(next.index).stream().anyMatch(c -> c.word != null && c.word.from > next.from);
            if (next.name && saidAhead) {
                return next;
            }
            last = next;
        }
        return null;
    }

    private boolean joinedByOr(int from, int to) {
        boolean or = false;
        for (int i = from; i < to; i++) {
            Token token = passage.token(i);
            or |= token.term().equals("or") || token.term().equals("nor");
        }
        return or && Lists.joined(passage, from, to);
    }

    /** Negates what stands before: always for "not seen", for a plain "no" only when nothing follows it. */
    private boolean behind(Item negation, boolean mustEnd) {
        if (mustEnd
                && negation.to < passage.size()
                && passage.sameSegment(negation.from, negation.to)
                && !endsHere(negation.to)) {
            return false;
        }
        for (int i = negation.from - 1; i >= 0 && negation.from - i <= reach; i--) {
            if (!passage.sameClause(i, negation.from)) {
                return false;
            }
            Item item = passage.itemAt(i);
            if (item == null || onlyCue(item)) {
                continue;
            }
            if (item.free()) {
                return !item.entry.names.isEmpty() && bind(negation, item);
            }
            // "drive clicking, not detected" denies no clicking
            return (!mustEnd || answers(item, negation))
                    && passage.sameSegment(i, negation.from)
                    && toggle(negation, claimsOf(item.index));
        }
        return false;
    }

    /** "Hum no, crackle yes": a thing and its answer alone. */
    private boolean answers(Item thing, Item no) {
        boolean opens = thing.from == 0
                || !passage.sameSegment(thing.from - 1, thing.from)
                || passage.token(thing.from - 1).kind() == Token.Kind.PUNCTUATION;
        return opens && thing.to == no.from && passage.token(no.from).surface().equals("no");
    }

    private boolean endsHere(int from) {
        for (int i = from; i < passage.size() && passage.sameSegment(from - 1, i); i++) {
            if (passage.token(i).kind() != Token.Kind.PUNCTUATION) {
                return false;
            }
        }
        return true;
    }

    private boolean bind(Item negation, Item name) {
        boolean behind = name.to == negation.from;
        if (negation.to - negation.from == 1
                && passage.token(negation.from).term().equals("not")
                && !behind
                && !ARTICLES.contains(passage.token(name.from).term())) {
            // "plays CD, not DVD" says nothing of a thing without a word for its state; "12 V present, 5 V not" does
            return false;
        }
        Optional<Claim> bare =
                behind && endsHere(negation.to) && faultBefore(name) ? Optional.of(normal(name)) : bare(name);
        if (bare.isPresent() && leftOff(negation, name, bare.get())) {
            name.name = true;
            return true;
        }
        bare.ifPresent(claim -> add(claim, negation, name));
        return bare.isPresent();
    }

    /** "Runs fine without the belt": taken off for a trial; "without the hum" tells of a fault that is gone. */
    private boolean leftOff(Item negation, Item name, Claim claim) {
        int article = name.from > negation.to ? name.from - 1 : name.from;
        String term = passage.token(article).term();
        return passage.term(negation.from).equals("without")
                && (term.equals("the") || ARTICLES.contains(term))
                && !claim.normal();
    }

    /** "The 5 V is low, the 12 V is not": what a thing is not is the fault of the one before. */
    private boolean faultBefore(Item name) {
        for (int i = name.index - 1; i >= 0 && near(i, name); i--) {
            List<Claim> told = claimsOf(i);
            if (!told.isEmpty()) {
                return told.stream().allMatch(claim -> !claim.negated && !claim.normal());
            }
        }
        return false;
    }

    private boolean near(int item, Item name) {
        return passage.sentence(passage.items.get(item).from) == passage.sentence(name.from);
    }

    private static Claim normal(Item name) {
        Symptom symptom = name.entry.names.get(0).symptom();
        return new Claim(symptom, symptom.indexOf(symptom.normal().id()), name, name.from, name.to);
    }

    /** "Nothing wrong with the fan". */
    private boolean praised(Item cue) {
        Item target = next(cue);
        if (target == null || !target.free() || target.entry.names.isEmpty()) {
            return false;
        }
        add(normal(target), cue, target);
        return true;
    }

    /** "All rails fine except 12 V": that one is in some other state, and what was said of all is not said of it. */
    private boolean except(Item cue) {
        Item target = next(cue);
        if (target == null || target.entry.names.isEmpty()) {
            return false;
        }
        if (!target.free()) {
            return butFor(cue, target);
        }
        Symptom symptom = target.entry.names.get(0).symptom();
        int sentence = passage.sentence(cue.from);
        for (int i = cue.index - 1; i >= Math.max(0, cue.index - LONGEST_LIST); i--) {
            for (Claim claim : claimsOf(i)) {
                claim.dropped |= claim.symptom.id().equals(symptom.id()) && passage.sentence(claim.from) == sentence;
            }
        }
        Claim claim = bare(target).filter(bare -> !bare.negated).orElseGet(() -> {
            Claim other = new Claim(symptom, symptom.indexOf(symptom.normal().id()), target, target.from, target.to);
            other.negated = true;
            other.anyOther = true;
            return other;
        });
        add(claim, cue, target);
        return true;
    }

    /** "All but the fan works": what is said of the others is not so of this one. */
    private boolean butFor(Item cue, Item target) {
        boolean any = false;
        for (Claim claim : claimsOf(target.index)) {
            boolean behind =
                    claim.word != null && claim.word.from >= target.to && ALL_BUT.contains(passage.term(cue.from));
            if (behind && claim.measured == null) {
                claim.negated = !claim.negated;
                claim.anyOther = true;
                claim.cover(cue.from, cue.to);
                any = true;
            }
        }
        return any;
    }

    private void add(Claim claim, Item cue, Item name) {
        claim.cover(cue.from, cue.to);
        name.name = true;
        claims.add(claim);
        note(name, claim);
    }

    private static boolean onlyCue(Item item) {
        Entry entry = item.entry;
        return entry.names.isEmpty() && entry.words.isEmpty() && entry.phrases.isEmpty() && entry.code == null;
    }

    private boolean toggle(Item negation, List<Claim> of) {
        for (Claim claim : of) {
            if (claim.measured == null && !denies(claim)) {
                claim.negated = !claim.negated;
                // "not every key works": some do
                claim.anyOther |= negation.to < passage.size() && ALL.contains(passage.term(negation.to));
                claim.cover(negation.from, negation.to);
                return true;
            }
        }
        return false;
    }

    /** Whether a claim rests on a phrase that denies something itself. */
    private boolean denies(Claim claim) {
        Item word = claim.word;
        return claim.name == null
                && word != null
                && Token.denies(passage.token(word.from).term());
    }
}
