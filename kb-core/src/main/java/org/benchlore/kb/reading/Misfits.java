package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** Sorts out what the trie found and the words around, or the form of its own, make something else of. */
final class Misfits {
    private static final Words DROPPED = Words.spaced("off by out in round around");
    private static final Words FELL = Words.spaced("for to into asleep behind through");
    private static final Words SILENT = Words.spaced("silent mute quiet dumb dark dead blank still");
    private static final Words DEGREES =
            Words.spaced("quite completely totally entirely almost nearly very rather all");
    private static final Words OBJECTS = Words.of("it", "them", "this");
    private static final Words LIMITING = Words.of("not", "only", "just");
    private static final Words ON = Words.of("on", "off");
    private static final String GONE = "gone";
    private static final String RAIL = "rail";

    /** What may follow "gone" where it means lost. */
    private static final Words ALTOGETHER = Words.spaced("altogether away missing forever astray when while until but");

    private static final Words OF_THE_SUPPLY = Words.spaced(
            "all main mains other output outputs secondary supply internal measured checked tested dc its");
    private static final Words TAKING = Words.spaced("take takes took taking taken in");
    private static final Words SAYING = Words.spaced("said says told tells reports reported thinks thought wants");
    private static final Words BILLED = Words.spaced("to made billed asked for this");
    private static final Words BILLS = Words.spaced("service extra minimum inspection labour delivery handling");

    private static final Words PARTICLES = Words.of("off", "out", "down", "up", "away");
    private static final Words WHILE = Words.spaced("while bit time");

    private static final Words PLACES = Words.of("the", "its", "my", "his", "her", "their", "our");

    /** Terms without one of which, and without a number or "cleaned", nothing is sorted out but a wrong participle. */
    private static final Words SUSPECT = Words.of(
            "no", "not", "neither", "code", "power", "on", "off", "drop", "fall", "after", "voltag", "charg", "lead",
            "flex", RAIL, GONE);

    private final List<Token> tokens;
    private final String[] terms;
    private final Trie trie;

    /** How many tokens in front of each are suspect. */
    private final int[] suspects;

    Misfits(List<Token> tokens, String[] terms, Trie trie) {
        this.tokens = tokens;
        this.terms = terms;
        this.trie = trie;
        this.suspects = new int[terms.length + 1];
        for (int i = 0; i < terms.length; i++) {
            Token token = tokens.get(i);
            boolean suspect = SUSPECT.contains(terms[i]) || token.kind() == Kind.NUMBER || cleaned(token);
            suspects[i + 1] = suspects[i] + (suspect ? 1 : 0);
        }
    }

    void sort(List<Trie.Match> all) {
        all.replaceAll(match -> misread(match)
                ? new Trie.Match(
                        match.from(), match.to(), match.depth(), match.entry().withoutPhrases())
                : match);
        all.removeIf(
                match -> match.entry().empty() || (suspects[match.to()] > suspects[match.from()] && misfits(match)));
    }

    private boolean misfits(Trie.Match match) {
        return dangling(match)
                || phrasal(match)
                || counts(match)
                || act(match)
                || refused(match)
                || turned(match)
                || ofAnother(match)
                || ofSignals(match)
                || paid(match);
    }

    /** "It drops" is not "it was dropped". */
    private boolean misread(Trie.Match match) {
        String participle = match.entry().participle;
        if (participle == null || participle.isEmpty()) {
            return false;
        }
        for (int i = match.from(); i < match.to(); i++) {
            if (terms[i].equals(participle) && !tokens.get(i).surface().endsWith("ed")) {
                return true;
            }
        }
        return false;
    }

    /**
     * "Still no", "lamp on", "neither channel", "no code", "no power": no words for a state where "no output", "on the socket",
     * "hums", "K-115" or "to the drive" goes on.
     */
    private boolean dangling(Trie.Match match) {
        if (match.to() == tokens.size() || match.to() - match.from() < 2 || match.rank() == Entry.LANGUAGE) {
            return false;
        }
        String last = terms[match.to() - 1];
        Token next = tokens.get(match.to());
        boolean denies = (last.equals("no") || last.equals("not")) && next.kind() != Kind.PUNCTUATION;
        boolean neither = terms[match.from()].equals("neither")
                && next.kind() == Kind.WORD
                && !next.term().equals("nor");
        return denies
                || neither
                || cutsName(match)
                || (last.equals("code") && next.kind() == Kind.CODE)
                || (last.equals("power") && next.term().equals("to"))
                || afterAWhile(match)
                || (match.depth() == 2 && ON.contains(last) && PLACES.contains(next.surface()));
    }

    /** "Goes off after" belongs to no "a while", which says when. */
    private boolean afterAWhile(Trie.Match match) {
        int last = match.to() - 1;
        while (last > match.from() && Plain.ARTICLES.contains(terms[last])) {
            last--;
        }
        return terms[last].equals("after")
                && last > match.from()
                && PARTICLES.contains(terms[last - 1])
                && last + 2 < terms.length
                && match.entry().names.isEmpty()
                && WHILE.contains(tokens.get(last + 2).surface());
    }

    /** "Has no power lamp" is not without power. */
    private boolean cutsName(Trie.Match match) {
        int last = match.to() - 1;
        return terms[last - 1].equals("no")
                && trie.find(List.of(terms[last], terms[last + 1]))
                        .filter(entry -> !entry.names.isEmpty())
                        .isPresent();
    }

    /** "Dropped it off on Monday", "it fell to me": the verb means another thing by what follows it. */
    private boolean phrasal(Trie.Match match) {
        int verb = match.to() - 1;
        if (verb > match.from() && OBJECTS.contains(tokens.get(verb).surface())) {
            verb--;
        }
        Words particles = terms[verb].equals("drop") ? DROPPED : terms[verb].equals("fall") ? FELL : null;
        int next = match.to();
        if (particles == null || match.rank() == Entry.LANGUAGE) {
            return false;
        }
        if (next < tokens.size() && OBJECTS.contains(tokens.get(next).surface())) {
            next++;
        }
        return next < tokens.size() && particles.contains(tokens.get(next).surface());
    }

    /** "Will not restart" says of no restarts that they are gone. */
    private boolean refused(Trie.Match match) {
        boolean refuses = match.from() > 0
                && terms[match.from()].equals("not")
                && Negations.MODALS.contains(tokens.get(match.from() - 1).surface());
        if (!refuses || match.entry().phrases.isEmpty()) {
            return false;
        }
        Sense said = match.entry().phrases.get(0);
        return said.stateOf().normal() && Polarity.presence(said.symptom());
    }

    /** "Rollers cleaned" tells what was done, not that they are clean. */
    private boolean act(Trie.Match match) {
        return match.to() - match.from() == 1 && cleaned(tokens.get(match.from()));
    }

    private static boolean cleaned(Token token) {
        return token.surface().equals("cleaned");
    }

    /** "Heater voltage fine" is the heater's, "voltages fine" the supply's; "38 V rail fine" is said of no other rail. */
    private boolean ofAnother(Trie.Match match) {
        if (match.from() == 0 || match.entry().phrases.isEmpty()) {
            return false;
        }
        Token before = tokens.get(match.from() - 1);
        boolean rail = terms[match.from()].equals(RAIL);
        if (rail || !terms[match.from()].equals("voltag")) {
            return rail && before.kind() == Kind.QUANTITY && before.unit().equals("V");
        }
        return before.kind() == Kind.WORD && Plain.content(before) && !OF_THE_SUPPLY.contains(before.surface());
    }

    /** "Network cable frayed" is not said of the mains lead. */
    private boolean ofSignals(Trie.Match match) {
        List<Sense> senses = match.entry().phrases.isEmpty() ? match.entry().names : match.entry().phrases;
        if (senses.isEmpty() || !Leads.mains(senses.get(0))) {
            return false;
        }
        for (int i = match.from(); i < match.to(); i++) {
            int signal = Leads.signal(tokens, terms, i);
            if (signal >= 0 && (signal < match.from() || signal >= match.to())) {
                return true;
            }
        }
        return false;
    }

    /** "Free of charge", "took charge of it", "no charge to the customer": money and care, not what a pack takes. */
    private boolean paid(Trie.Match match) {
        for (int i = Math.max(1, match.from()); i < match.to(); i++) {
            if (tokens.get(i).surface().equals("charge")) {
                String before = tokens.get(i - 1).surface();
                String next = i + 1 < tokens.size() ? tokens.get(i + 1).surface() : "";
                boolean of = before.equals("of")
                        && i > 1
                        && tokens.get(i - 2).surface().equals("free");
                boolean care = next.equals("of") && TAKING.contains(before);
                boolean person = before.equals("in")
                        && (next.isEmpty() || !Plain.content(tokens.get(i + 1)) || SAYING.contains(next));
                boolean none = before.equals("no") && BILLED.contains(next);
                if (of || care || person || none || BILLS.contains(before)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Packs' words that end with what only turned. */
    private boolean turned(Trie.Match match) {
        return match.rank() != Entry.LANGUAGE && turns(tokens, terms, match.to() - 1);
    }

    /** "Had gone yellowish", "went thin": it turned so, and did not go. */
    static boolean turns(List<Token> tokens, String[] terms, int gone) {
        Token token = terms[gone].equals(GONE) && gone + 1 < terms.length ? tokens.get(gone + 1) : null;
        return token != null
                && token.kind() == Kind.WORD
                && Plain.content(token)
                && !token.surface().endsWith("ly")
                && !ALTOGETHER.contains(token.surface());
    }

    /** "Fell quite silent": it went so, and did not fall. */
    static boolean turnsSilent(List<Token> tokens, int fell) {
        int next = fell + 1;
        next += next < tokens.size() && DEGREES.contains(tokens.get(next).surface()) ? 1 : 0;
        return next < tokens.size() && SILENT.contains(tokens.get(next).surface());
    }

    /** "3 of the 5 modems", "ok on 2.4, not on 5": no 5 V. */
    private boolean counts(Trie.Match match) {
        int last = match.to() - 1;
        if (last < 2 || match.from() < last - 1 || tokens.get(last).kind() != Kind.NUMBER) {
            return false;
        }
        boolean counted = last > 2
                && terms[last - 1].equals("the")
                && terms[last - 2].equals("of")
                && tokens.get(last - 3).kind() == Kind.NUMBER;
        return counted
                || (terms[last - 1].equals("on")
                        && LIMITING.contains(tokens.get(last - 2).surface()));
    }
}
