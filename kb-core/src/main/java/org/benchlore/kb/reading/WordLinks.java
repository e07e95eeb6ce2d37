package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** Gives each state word to the name it stands nearest to, by what stands between. */
final class WordLinks {
    private static final double DEAREST = 7;
    private static final double DEAREST_PRAISE = 2;
    private static final Words PRONOUNS = Words.of("it", "that", "he", "she", "they", "this");
    private static final Words GOVERNORS =
            Words.of("with", "on", "off", "from", "at", "in", "to", "for", "by", "of", "after", "without", "through");

    private record Candidate(double cost, Item name, Item word, Sense sense) {
        int at() {
            return Math.min(name.from, word.from);
        }

        boolean nameFirst() {
            return name.from < word.from;
        }
    }

    private static final Comparator<Candidate> CHEAPEST_FIRST = Comparator.comparingDouble(Candidate::cost)
            .thenComparingInt(Candidate::at)
            .thenComparing(c -> !c.nameFirst())
            .thenComparing(c -> c.sense().symptom().id());

    private final Passage passage;
    private final Lexicon lexicon;
    private final List<Claim> claims;
    private final List<Item> items;

    WordLinks(Passage passage, Lexicon lexicon, List<Claim> claims) {
        this.passage = passage;
        this.lexicon = lexicon;
        this.claims = claims;
        this.items = passage.items;
    }

    void link() {
        words();
        sharpen();
    }

    private void words() {
        List<Candidate> candidates = new ArrayList<>();
        for (int w = 0; w < items.size(); w++) {
            Item word = items.get(w);
            if (word.says && word.free()) {
                around(w, -1, candidates);
                around(w, 1, candidates);
            }
        }
        if (candidates.size() > 1) {
            candidates.sort(CHEAPEST_FIRST);
        }
        for (Candidate c : candidates) {
            if (c.name.free() && c.word.free()) {
                join(claims, c.name, c.word, c.sense);
            }
        }
    }

    /** Claims what a word says of a name; neither is free after that. */
    static void join(List<Claim> claims, Item name, Item word, Sense sense) {
        name.name = true;
        word.word = true;
        Claim claim = new Claim(sense.symptom(), sense.state(), name, name.from, name.to);
        claim.word = word;
        claim.cover(word.from, word.to);
        claims.add(claim);
    }

    private void around(int w, int step, List<Candidate> candidates) {
        Item word = items.get(w);
        double passed = 0;
        Item member = null;
        for (int i = w + step; i >= 0 && i < items.size(); i += step) {
            Item name = items.get(i);
            if (member != null && name.names && Lists.joined(passage, name.to, member.from)) {
                // the last of "12, 5 and 3.3" stands for all of them
                member = name;
                continue;
            }
            int gapFrom = step < 0 ? name.to : word.to;
            int gapTo = step < 0 ? word.from : name.from;
            if (gapTo - gapFrom > Linker.REACH || !passage.sameClause(word.from, name.from)) {
                return;
            }
            if (!word.entry.phrases.isEmpty()
                    && !passage.sameSegment(word.from, name.from)
                    && lexicon.namesItself(passage, word)) {
                // "tinted picture, sound is fine": what tells by itself is not said of a thing beyond a comma
                return;
            }
            if (!name.names) {
                passed += name.entry.words.isEmpty() ? 0.25 : 2;
                continue;
            }
            Optional<Sense> taught = match(name, word);
            boolean open = !name.done && !name.name && !(step < 0 && ofQuantity(name, word));
            if (open && (taught.isPresent() || word.entry.polarity != null)) {
                double cost = passed + gapCost(gapFrom, gapTo, step < 0) + (step < 0 ? 0 : 0.5);
                Optional<Sense> sense = taught.isPresent() ? taught : praised(name, word, cost);
                if (sense.isPresent() && cost <= DEAREST) {
                    candidates.add(new Candidate(cost, name, word, sense.get()));
                    member = step < 0 ? name : null;
                }
            }
            if (name.name && taught.isPresent()) {
                // something is said of a nearer one already; the word goes on about that
                passed += DEAREST;
            }
            passed += 2;
        }
    }

    /** "Heater voltage fine" says nothing of the heater itself. */
    private boolean ofQuantity(Item name, Item word) {
        return name.to < word.from
                && Lexicon.QUANTITIES.contains(passage.term(name.to))
                && word.entry.polarity == Polarity.GOOD
                && name.entry.names.get(0).symptom().quantity() == null;
    }

    /** What a word says of a name: the sense of the word for the first of the name's symptoms that knows it. */
    static Optional<Sense> match(Item name, Item word) {
        if (!word.entry.maySay(name.entry)) {
            return Optional.empty();
        }
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
            } else if (token.kind() != Kind.PUNCTUATION && !passage.skipped(i)) {
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
            if (claim.name == null || word == null || !claim.normal()) {
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
}
