package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchlore.kb.cases.Outcome;

/**
 * Hears how a case ended, clause by clause. "Ok" says something only after work, and only where little else is said;
 * together with an hour of running it says that the fix was proven. For one text; {@link #worked} carries over.
 */
final class Endings {
    /** A run that proves a fix, in seconds. Our choice: shorter ones are part of any repair. */
    private static final long PROOF = 3600;

    /** A night or a day, where nothing nearer is said. */
    private static final long LONG = 8 * 3600;

    private static final long DAY = 86_400;

    private static final Set<Cue> WEAK = Set.of(Cue.GOOD, Cue.MENDED, Cue.RUN, Cue.LONG);

    private static final Set<String> AGAIN = Set.of("again");

    private static final Set<Cue> NOT_SO = Set.of(Cue.NEGATION, Cue.PLANNED);

    /** How somebody tells the bench of it after the unit has left. */
    private static final Set<String> TELLING = Set.of("rang", "phoned", "called", "wrote", "mailed", "complained");

    /** What makes a run after the work no good one. */
    private static final Set<String> DASHED =
            Set.of("again", "still", "but", "until", "remains", "remained", "persists", "unchanged");

    /** What a sound unit does, of which "again" is good news. */
    private static final Set<String> DOES = Set.of(
            "works", "runs", "plays", "charges", "spins", "heats", "prints", "boots", "reads", "loads", "turns",
            "lights", "cools", "feeds", "records", "opens", "closes");

    private static final Set<String> SMALL = Set.of(
            "it", "again", "at", "with", "on", "the", "its", "own", "fully", "well", "fine", "now", "up", "and", "both",
            "all");

    private static final Set<Cue> ASIDE =
            Set.of(Cue.FILLER, Cue.LONG, Cue.GOOD, Cue.MENDED, Cue.WORKS_AGAIN, Cue.HANDED, Cue.OTHERS, Cue.GOES_ON);
    private static final Set<String> PEOPLE = Set.of(
            "customer",
            "customers",
            "owner",
            "client",
            "he",
            "she",
            "they",
            "him",
            "her",
            "mr",
            "mrs",
            "ms",
            "wife",
            "husband",
            "son",
            "daughter",
            "friend",
            "neighbour",
            "cash",
            "office",
            "school",
            "company",
            "firm",
            "club",
            "church",
            "family",
            "mother",
            "father");
    private static final Set<String> TITLES = Set.of("mr", "mrs", "ms", "dr");
    private static final Set<String> GLAD =
            Set.of("happy", "pleased", "delighted", "content", "satisfied", "grateful", "glad");

    private boolean worked;
    private boolean fixedBefore;

    /** Where a run after the work that nothing is said against begins; -1 for none. */
    private int tried = -1;

    private long triedFor;

    /** Whether something since the work says that it did not help. */
    private boolean against;

    /** Whether a new one is said to cost less than the repair. */
    private boolean dear;

    /** Whether nothing is to be done on it any more. */
    private boolean writtenOff;

    /** Whether somebody got in touch after the work. */
    private boolean toldOf;

    private boolean good;

    /** Whether the last run is told without a word of anything else. */
    private boolean clean;

    private boolean byItself;
    private long ran;
    private int from = -1;
    private int to;

    /** @param worked whether the case told of work before this text */
    Endings(boolean worked) {
        this.worked = worked;
    }

    /** Tells it that work was done. */
    void worked() {
        worked = true;
        tried = -1;
        against = false;
        writtenOff = false;
    }

    /**
     * Hears a clause.
     *
     * @param label whether the text is there to say how it ended, so that "ok" alone does
     * @return endings that are certain by now
     */
    List<Act> hear(Clause clause, boolean label) {
        List<Act> acts = new ArrayList<>();
        boolean more = false;
        for (Clause.Hit hit : clause.hits()) {
            Cue cue = hit.cue();
            if (cue != null && !clause.before(hit.from(), NOT_SO)) {
                more |= hear(clause, hit, cue, acts);
            }
        }
        toldOf |= (worked || good || fixedBefore) && says(clause, TELLING);
        if (toldOf && says(clause, AGAIN) && !clause.has(Cue.GOOD) && !more) {
            cameBack(clause, acts);
            return acts;
        }
        if (worked && faultless(clause)) {
            good = true;
            mark(clause);
            more = true;
        }
        boolean weak = clause.only(WEAK);
        boolean said = clause.has(Cue.GOOD) || clause.has(Cue.MENDED);
        boolean hopeful = said && clause.has(Cue.GOOD) && cheerful(clause);
        boolean told = (worked || label || good) && said && (weak || hopeful || label) && !clause.has(Cue.PLANNED);
        if (told && clause.has(Cue.NEGATION)) {
            if (label) {
                flush(acts);
                acts.add(Act.ending(clause.start(), clause.end(), Outcome.NOT_FIXED, null));
                return acts;
            }
            told = false;
        }
        if (told) {
            good = true;
            mark(clause);
            more = true;
        }
        boolean runs = clause.has(Cue.RUN) || said || more;
        OptionalLong seconds = clause.seconds();
        if (runs && (clause.has(Cue.LONG) || seconds.orElse(0) >= PROOF)) {
            ran = Math.max(ran, Math.max(seconds.orElse(0), clause.has(Cue.LONG) ? LONG : 0));
            mark(clause);
            clean = weak;
            more = true;
        }
        more |= handedOver(clause, acts);
        if (!more && !weak) {
            flush(acts);
        }
        return acts;
    }

    /**
     * "Tested for four hours with a film, picture bright. Handed over": who hands it over after a run has seen it work, and
     * who hands it over after work that nothing is said against holds it for mended.
     */
    private boolean handedOver(Clause clause, List<Act> acts) {
        against |= worked && speaksAgainst(clause);
        boolean handed = !clause.asked() && handed(clause);
        if (handed && dear && !worked && !writtenOff) {
            end(clause, Outcome.NOT_WORTH_IT, acts);
            return true;
        }
        if (handed && worked && !against) {
            boolean run = tried >= 0;
            from = from < 0 && run ? tried : from;
            ran = run ? Math.max(ran, triedFor) : ran;
            tried = -1;
            good = true;
            mark(clause);
            return true;
        }
        if (!acceptable(clause)) {
            tried = -1;
        } else if (worked && clause.has(Cue.RUN)) {
            triedFor = tried < 0 ? 0 : triedFor;
            tried = tried < 0 ? clause.start() : tried;
            triedFor = Math.max(
                    triedFor, clause.has(Cue.LONG) ? LONG : clause.seconds().orElse(0));
        }
        return false;
    }

    private static boolean acceptable(Clause clause) {
        return !clause.has(Cue.NEGATION) && !speaksAgainst(clause);
    }

    /** Whether a clause behind work says that not all is well. */
    private static boolean speaksAgainst(Clause clause) {
        boolean dashed = IntStream.range(0, clause.words().size())
                .anyMatch(i ->
                        DASHED.contains(clause.words().get(i).surface()) && !clause.worked(i) && !doesAgain(clause, i));
        boolean well = clause.has(Cue.WORKS_AGAIN) || clause.has(Cue.HANDED);
        return clause.has(Cue.PLANNED)
                || clause.has(Cue.NO_HELP)
                || clause.has(Cue.UNMENDED)
                || clause.has(Cue.BACK)
                || clause.has(Cue.WORSE)
                || clause.has(Cue.GIVEN_UP)
                || clause.has(Cue.NOT_WORTH)
                || (clause.has(Cue.NEGATION) && (clause.has(Cue.WORKS_AGAIN) || clause.has(Cue.MENDED)))
                || (!well && dashed);
    }

    /** "Charges at 2.1 A again": what it does again and nothing else is good news. */
    private static boolean doesAgain(Clause clause, int word) {
        return clause.words().get(word).surface().equals("again")
                && says(clause, DOES)
                && clause.words().stream()
                        .allMatch(w -> w.numeric() || SMALL.contains(w.surface()) || DOES.contains(w.surface()));
    }

    /** "Collected", "she paid on Friday", "customer happy"; what "picked up hum" is no unit that left. */
    private static boolean handed(Clause clause) {
        int n = clause.words().size();
        for (Clause.Hit hit : clause.hits()) {
            if (hit.is(Cue.HANDED) && !clause.before(hit.from(), NOT_SO)) {
                boolean aside = IntStream.range(0, hit.from()).allMatch(i -> aside(clause, i));
                return aside && (hit.to() == n || aside(clause, hit.to()));
            }
        }
        boolean free = n == 1 && clause.words().get(0).surface().equals("free");
        boolean out = clause.words().get(0).surface().equals("out")
                && IntStream.range(1, n).allMatch(i -> aside(clause, i));
        return free || out || (says(clause, GLAD) && says(clause, PEOPLE) && !clause.has(Cue.NEGATION));
    }

    /** Whether a word says who, when or how, and nothing of the unit. */
    private static boolean aside(Clause clause, int word) {
        String said = clause.words().get(word).surface();
        return clause.within(word, ASIDE)
                || Clause.timeWord(clause.words().get(word))
                || DateScan.WEEKDAYS.contains(said)
                || DateScan.WEEKDAY_NAMES.contains(said)
                || PEOPLE.contains(said)
                || (word > 0 && TITLES.contains(clause.words().get(word - 1).surface()));
    }

    /** "No reboot in 48 hours", or "no chewing" of a unit that ran. */
    private boolean faultless(Clause clause) {
        return clause.has(Cue.NEGATION)
                && clause.words().get(0).surface().equals("no")
                && Math.max(ran, clause.seconds().orElse(0)) >= PROOF;
    }

    /** "Sound ok on both channels now": says what is good, and that it was not. */
    private static boolean cheerful(Clause clause) {
        return !clause.has(Cue.NEGATION)
                && clause.words().stream()
                        .anyMatch(
                                w -> w.surface().equals("again") || w.surface().equals("now"));
    }

    /** @return whether it says that the unit works */
    private boolean hear(Clause clause, Clause.Hit hit, Cue cue, List<Act> acts) {
        switch (cue) {
            case WORKS_AGAIN -> {
                good = true;
                mark(clause);
                return true;
            }
            case RECOVERED -> {
                good = true;
                byItself |= !worked;
                mark(clause);
                return true;
            }
            case BY_ITSELF -> {
                if (clause.has(Cue.WORKS_AGAIN) || clause.has(Cue.GOOD) || clause.has(Cue.BACK) || good) {
                    good = true;
                    byItself = true;
                    mark(clause);
                    return true;
                }
            }
            case NOTHING_FOUND -> {
                if (worked) {
                    good = true;
                    mark(clause);
                    return true;
                }
                end(clause, Outcome.NO_FAULT_FOUND, acts);
            }
            case NO_HELP -> ifWorked(clause, Outcome.NOT_FIXED, acts);
            case BACK -> back(clause, hit, acts);
            case WORSE -> ifWorked(clause, Outcome.MADE_WORSE, acts);
            case NOT_WORTH -> end(clause, Outcome.NOT_WORTH_IT, acts);
            case DEAR -> dear = true;
            case GIVEN_UP -> giveUp(clause, Outcome.GIVEN_UP, acts);
            case UNMENDED -> giveUp(clause, worked ? Outcome.NOT_FIXED : Outcome.GIVEN_UP, acts);
            default -> {}
        }
        return false;
    }

    private void back(Clause clause, Clause.Hit hit, List<Act> acts) {
        boolean handedBack = hit.to() < clause.words().size()
                && Set.of("to", "home", "on", "in", "at")
                        .contains(clause.words().get(hit.to()).surface());
        if (handedBack || clause.has(Cue.BY_ITSELF) || clause.has(Cue.WORKS_AGAIN)) {
            return;
        }
        if (worked || good || fixedBefore) {
            cameBack(clause, acts);
        }
    }

    private void cameBack(Clause clause, List<Act> acts) {
        flush(acts);
        against = true;
        toldOf = false;
        OptionalLong seconds = clause.seconds();
        Integer days = seconds.isPresent() ? (int) Math.round((double) seconds.getAsLong() / DAY) : null;
        acts.add(Act.ending(clause.start(), clause.end(), Outcome.CAME_BACK, days));
    }

    private static boolean says(Clause clause, Set<String> words) {
        return clause.words().stream().anyMatch(w -> words.contains(w.surface()));
    }

    private void ifWorked(Clause clause, Outcome outcome, List<Act> acts) {
        if (worked) {
            end(clause, outcome, acts);
        }
    }

    /** What was not worth it is not given up besides. */
    private void giveUp(Clause clause, Outcome outcome, List<Act> acts) {
        if (!writtenOff || worked) {
            end(clause, dear && !worked ? Outcome.NOT_WORTH_IT : outcome, acts);
        }
    }

    private void end(Clause clause, Outcome outcome, List<Act> acts) {
        flush(acts);
        writtenOff |= outcome == Outcome.NOT_WORTH_IT || outcome == Outcome.GIVEN_UP;
        acts.add(Act.ending(clause.start(), clause.end(), outcome, null));
    }

    private void mark(Clause clause) {
        from = from < 0 ? clause.start() : from;
        to = clause.end();
    }

    /** As {@link #flush}, at the end of a text: a long run after work is the last word, too, where nothing follows. */
    void finish(List<Act> acts) {
        good |= worked && !against && clean && ran >= PROOF;
        flush(acts);
    }

    /** What was heard and waits for more of it. Call it before work. */
    void flush(List<Act> acts) {
        if (good) {
            Outcome outcome =
                    byItself ? Outcome.RECOVERED_BY_ITSELF : ran >= PROOF ? Outcome.FIXED_AND_PROVEN : Outcome.FIXED;
            acts.add(Act.ending(from, to, outcome, null));
            fixedBefore = true;
        }
        good = false;
        byItself = false;
        clean = false;
        ran = 0;
        from = -1;
    }
}
