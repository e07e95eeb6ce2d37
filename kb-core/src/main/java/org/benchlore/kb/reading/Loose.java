package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;

/** Phrases whose words all stand close together, in another order or with other words between them. */
final class Loose {
    /** Tokens that may stand between the words of a phrase, for each of its words beyond the second. */
    private static final int GAP = 2;

    private static final int WIDEST = 12;

    /** Tokens in front of a phrase that are looked at for a negation. */
    private static final int FARTHEST = 4;

    /** Tokens in front of a phrase in which a negation turns it round; further off it only keeps it from being found. */
    private static final int DENIED = 2;

    private static final Comparator<Found> LONGEST_FIRST = Comparator.comparingInt((Found f) -> -f.bag().numbers.length)
            .thenComparingInt(f -> f.to() - f.from())
            .thenComparingInt(Found::from);

    private record Found(int from, int to, Bags.Bag bag, boolean denied) {}

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;
    private final boolean[] used;

    Loose(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
        this.used = new boolean[passage.size()];
        for (Claim claim : claims) {
            for (int i = claim.from; i < claim.to; i++) {
                used[i] = true;
            }
        }
        for (Item item : passage.items) {
            for (int i = item.from; item.done && i < item.to; i++) {
                used[i] = true;
            }
        }
    }

    /**
     * Lets a phrase of three words or more take the place of claims that rest on fewer of them: "reads fine on another
     * computer" is more than "reads fine".
     *
     * @param claims of a passage
     */
    static void outdo(Passage passage, Lexicon lexicon, List<Claim> claims) {
        List<Claim> fixed = new ArrayList<>();
        for (Claim claim : claims) {
            if (claim.measured != null) {
                fixed.add(claim);
            }
        }
        List<Found> found = new Loose(passage, lexicon, fixed).found(true);
        found.removeIf(Found::denied);
        if (found.isEmpty()) {
            return;
        }
        Map<Integer, List<Claim>> at = new HashMap<>();
        for (Claim claim : claims) {
            for (int i = claim.from; i < claim.to; i++) {
                at.computeIfAbsent(i, t -> new ArrayList<>(1)).add(claim);
            }
        }
        for (Found f : found) {
            Set<Claim> less = Collections.newSetFromMap(new IdentityHashMap<>());
            for (int i = f.from(); i < f.to(); i++) {
                less.addAll(at.getOrDefault(i, List.of()));
            }
            if (!less.isEmpty() && less.stream().allMatch(claim -> outdone(passage, claim, f))) {
                less.forEach(claim -> claim.dropped = true);
                Sense sense = f.bag().sense;
                claims.add(new Claim(sense.symptom(), sense.state(), null, f.from(), f.to()));
            }
        }
    }

    private static boolean outdone(Passage passage, Claim claim, Found f) {
        boolean within = claim.from >= f.from() - 1 && claim.to <= f.to() + 1;
        boolean same = claim.symptom.id().equals(f.bag().sense.symptom().id());
        return claim.measured == null && !claim.dropped && within && !same && content(passage, claim) < f.bag().content;
    }

    private static int content(Passage passage, Claim claim) {
        int content = 0;
        for (int i = claim.from; i < claim.to; i++) {
            Item item = passage.itemAt(i);
            boolean own = item == null || item == claim.name || item == claim.word;
            content += own && passage.content(i) ? 1 : 0;
        }
        return content;
    }

    /** Adds a claim for each phrase found among words that led to none. */
    void add() {
        for (Found f : found(false)) {
            if (free(f)) {
                for (int i = f.from(); i < f.to(); i++) {
                    used[i] = true;
                    passage.item(i).ifPresent(item -> item.done |= item.entry.rank() < Entry.LANGUAGE);
                }
                Sense sense = f.bag().sense;
                Claim claim = new Claim(sense.symptom(), sense.state(), null, f.from(), f.to());
                claim.negated = f.denied();
                claims.add(claim);
            }
        }
    }

    /** Phrases, all or those of many words of meaning, the longest first. */
    private List<Found> found(boolean many) {
        List<Found> found = new ArrayList<>(0);
        int from = 0;
        while (from < passage.size()) {
            int to = from;
            while (to < passage.size() && open(to, from)) {
                to++;
            }
            if (to - from > 1) {
                among(from, to, many, found);
            }
            from = Math.max(to, from + 1);
        }
        if (found.size() > 1) {
            found.sort(LONGEST_FIRST);
        }
        return found;
    }

    /** Looks for phrases among tokens that may belong together. */
    private void among(int from, int to, boolean many, List<Found> found) {
        for (int i = from; i < to; i++) {
            Bags.Filed filed = lexicon.bags().around(passage.number(i), many);
            if (filed != null) {
                around(i, Math.max(from, i - WIDEST), Math.min(to, i + WIDEST), filed, found);
            }
        }
    }

    private void around(int at, int from, int to, Bags.Filed filed, List<Found> found) {
        long marks = 0;
        for (int i = from; i < to; i++) {
            marks |= Terms.mark(passage.number(i));
        }
        for (int i = 0; i < filed.marks.length; i++) {
            if ((filed.marks[i] & ~marks) == 0) {
                match(filed.bags[i], at, from, to, found);
            }
        }
    }

    /** Whether a token may belong to a phrase with the one {@code at}. */
    private boolean open(int i, int at) {
        return passage.sameSegment(i, at) && passage.sameClause(i, at) && !used[i] && !passage.unreal(i);
    }

    /** Looks for a phrase around {@code at}, among the tokens from one to another. */
    private void match(Bags.Bag bag, int at, int first, int end, List<Found> found) {
        int from = Integer.MAX_VALUE;
        int to = -1;
        int last = -1;
        boolean ordered = true;
        for (int number : bag.numbers) {
            int place = nearest(number, at, first, end);
            if (place < 0) {
                return;
            }
            ordered &= place > last;
            if (number == bag.governed && place < last) {
                return;
            }
            last = place;
            from = Math.min(from, place);
            to = Math.max(to, place + 1);
        }
        if (Leads.mains(bag.sense) && ofSignals(from, to, bag)) {
            return;
        }
        int n = bag.numbers.length;
        int foreign = 0;
        int negation = -1;
        for (int i = from; i < to; i++) {
            boolean own = bag.holds(passage.number(i));
            boolean denies = !own && negation(i);
            foreign += own || denies || passage.skipped(i) ? 0 : 1;
            negation = denies ? i : negation;
        }
        for (int i = from - 1; negation < 0 && i >= Math.max(0, from - FARTHEST) && passage.sameSegment(i, from); i--) {
            negation = negation(i) ? i : -1;
        }
        boolean close = n > 2 ? foreign <= GAP * (n - 2) : foreign <= (ordered ? 1 : 0);
        boolean deniable = negation < 0 || (!bag.negates && from - negation <= DENIED);
        if (close && to - from >= n && (deniable || (bag.negates && negation < from))) {
            boolean denied = negation >= 0 && !bag.negates;
            found.add(new Found(denied ? Math.min(from, negation) : from, to, bag, denied));
        }
    }

    private boolean ofSignals(int from, int to, Bags.Bag bag) {
        for (int i = from; i < to; i++) {
            int signal = passage.signal(i);
            if (signal >= 0 && !bag.holds(passage.number(signal))) {
                return true;
            }
        }
        return false;
    }

    /** Where a term stands nearest to {@code at}, the earlier place first; -1 for nowhere. */
    private int nearest(int number, int at, int from, int to) {
        for (int off = 0; at - off >= from || at + off < to; off++) {
            if (at - off >= from && passage.number(at - off) == number) {
                return at - off;
            }
            if (at + off < to && passage.number(at + off) == number) {
                return at + off;
            }
        }
        return -1;
    }

    /** Whether a token denies, alone or as part of words that led to nothing. */
    private boolean negation(int i) {
        Item item = passage.itemAt(i);
        if (item != null && item.entry.cue != null) {
            return item.cue(Cue.NEGATION);
        }
        return (item == null || item.free()) && Token.denies(passage.term(i));
    }

    private boolean free(Found found) {
        for (int i = found.from(); i < found.to(); i++) {
            if (used[i]) {
                return false;
            }
        }
        return true;
    }
}
