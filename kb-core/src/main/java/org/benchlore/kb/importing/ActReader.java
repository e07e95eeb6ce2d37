package org.benchlore.kb.importing;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.reading.analysis.Token;
import org.jspecify.annotations.Nullable;

/**
 * Tells what was done, concluded and reached in the texts of one case, in their order. What the words do not say outright
 * is not guessed: a plan, a question, a denial or the work of others is no work, and a cause or fix that fits two entries
 * is none.
 */
final class ActReader {
    /** Words that tell of work only beside a part or a thing that the packs know. */
    private static final Set<String> VAGUE = Set.of(
            "new",
            "changed",
            "exchange",
            "replacement",
            "put in",
            "fitted",
            "installed",
            "built in",
            "popped in",
            "loaded",
            "removed",
            "cleared",
            "updated",
            "dried",
            "freed",
            "secured",
            "corrected",
            "charged",
            "changing",
            "formatted");

    private static final Set<Cue> FILLERS = EnumSet.of(Cue.FILLER, Cue.GOES_ON);
    private static final Set<Cue> OTHERS = EnumSet.of(Cue.OTHERS);
    private static final Set<Cue> NOT_SO = EnumSet.of(Cue.PLANNED, Cue.NEGATION);
    private static final Set<Cue> ENDS_WELL = EnumSet.of(Cue.GOOD, Cue.MENDED, Cue.RUN, Cue.LONG, Cue.WORKS_AGAIN);

    /** Those that tell of work on any thing where they begin or end what is said: "3 strips fitted". */
    private static final Set<String> PLACED = Set.of("put in", "fitted", "installed", "built in", "popped in");

    /** Units that a part is known by: "fitted 47 uF". */
    private static final Set<String> VALUES = Set.of("F", "ohm", "H");

    private static final Set<String> JOINTS = Set.of("and", "plus");

    /** Words of a member of a list, with the work in front of the first. */
    private static final int LONGEST_THING = 5;

    private final Names names;
    private final DeviceScope scope;
    private final NamedParts parts;
    private Optional<String> concluded = Optional.empty();
    private boolean worked;
    private boolean othersWorked;

    /** Whether the last work or ending told says that a fix was proven. */
    private boolean proven;

    ActReader(Names names, DeviceScope scope) {
        this.names = names;
        this.scope = scope;
        this.parts = new NamedParts(names, scope);
    }

    /** Whether the texts so far say that somebody had worked on the unit before. */
    boolean othersWorked() {
        return othersWorked;
    }

    /** What a text tells, in order of place; of one clause first the cause, then the test, the work, the ending. */
    List<Act> read(RawRecord.Part part) {
        List<Act> acts = new ArrayList<>();
        List<Clause> clauses = part.clauses();
        for (Clause clause : clauses) {
            othersWorked |= clause.has(Cue.WORKED_ON) || worksOfOthers(clause);
        }
        if (part.field() == ImportField.COMPLAINT) {
            return acts;
        }
        if (part.field() == ImportField.OUTCOME && named(part.text()).isPresent()) {
            acts.add(Act.ending(0, part.text().length(), named(part.text()).get(), null));
            return acts;
        }
        if (part.field() == ImportField.CAUSE) {
            diagnosis(part.text(), clauses, acts);
        }
        Endings endings = new Endings(worked);
        for (int i = 0; i < clauses.size(); i++) {
            Clause clause = clauses.get(i);
            Clause before = i > 0 && clauses.get(i - 1).sentence() >= clause.sentence() - 1 ? clauses.get(i - 1) : null;
            if (part.field() != ImportField.CAUSE) {
                conclusion(clause, sentenceMate(clauses, i + 1, clause), acts);
                test(clause, acts);
            }
            int known = acts.size();
            Clause mate = sentenceMate(clauses, i + 1, clause);
            Clause.Hit hit = done(clause, mate);
            boolean joined = hit != null && mate != null && joined(clause, hit, mate);
            if (hit != null && !joined) {
                work(hit, part.field() == ImportField.WORK, clause, before, acts);
            } else if (hit == null && part.field() == ImportField.WORK && namesOnly(clauses)) {
                silent(clause, acts);
            }
            if (acts.size() > known) {
                Act last = acts.remove(acts.size() - 1);
                endings.flush(acts);
                acts.add(last);
                endings.worked();
                worked = true;
            }
            acts.addAll(endings.hear(clause, part.field() == ImportField.OUTCOME));
            parts.passed(clause);
        }
        endings.finish(acts);
        return unsaid(merged(acts));
    }

    /** Without a "collected" in another text that says less than the ending before it, where no work lies between. */
    private List<Act> unsaid(List<Act> acts) {
        List<Act> kept = new ArrayList<>();
        for (Act act : acts) {
            boolean less = proven && act.outcome() == Outcome.FIXED;
            boolean changes = act.is(Act.Kind.WORK) || act.is(Act.Kind.ENDING);
            proven = less || (changes ? act.outcome() == Outcome.FIXED_AND_PROVEN : proven);
            if (!less) {
                kept.add(act);
            }
        }
        return kept;
    }

    /** "Cleaned and greased the mechanism": work whose thing stands behind the next. */
    private static boolean joined(Clause clause, Clause.Hit hit, Clause mate) {
        Clause.Hit next = done(mate, null);
        return hit.work() != null
                && next != null
                && next.work() != null
                && next.from() == 0
                && next.to() < mate.words().size()
                && NamedParts.terms(clause, 0, clause.words().size()).isEmpty();
    }

    /** The clause at a place, if it is of the same sentence as another. */
    private static @Nullable Clause sentenceMate(List<Clause> clauses, int place, Clause other) {
        boolean mate = place < clauses.size() && clauses.get(place).sentence() == other.sentence();
        return mate ? clauses.get(place) : null;
    }

    /** An ending said twice running is one; "works again" and "ran a week" is one that is proven. */
    private static List<Act> merged(List<Act> acts) {
        List<Act> merged = new ArrayList<>();
        for (Act act : acts) {
            Act before = merged.isEmpty() ? null : merged.get(merged.size() - 1);
            if (before != null && before.sameEnding(act)) {
                merged.set(
                        merged.size() - 1,
                        new Act(
                                Act.Kind.ENDING,
                                before.start(),
                                act.end(),
                                "",
                                act.certainty(),
                                act.outcome(),
                                act.afterDays() == null ? before.afterDays() : act.afterDays(),
                                false));
            } else {
                merged.add(act);
            }
        }
        return merged;
    }

    /** The outcome whose id a text is. */
    private static Optional<Outcome> named(String text) {
        return Stream.of(Outcome.values())
                .filter(o -> o.id().equals(text.strip()))
                .findFirst();
    }

    private static boolean worksOfOthers(Clause clause) {
        return clause.hits().stream().anyMatch(h -> h.work() != null && clause.before(h.from(), OTHERS));
    }

    /** A text that is there to name the cause. */
    private void diagnosis(String text, List<Clause> clauses, List<Act> acts) {
        Act unknown = null;
        for (Clause clause : clauses) {
            Set<String> said = NamedParts.terms(clause, 0, clause.words().size());
            Optional<String> cause = names.causeId(text.strip()).or(() -> names.cause(said, true, scope));
            boolean denied = clause.has(Cue.NEGATION) || clause.has(Cue.GOOD);
            if (cause.isPresent() && !denied) {
                conclude(clause, cause.get(), acts);
                return;
            }
            if (unknown == null && !said.isEmpty() && !denied && !clause.has(Cue.NOTHING_FOUND)) {
                unknown = Act.cause(clause.start(), clause.end(), "", true);
            }
        }
        if (unknown != null) {
            acts.add(unknown);
        }
    }

    private void conclusion(Clause clause, @Nullable Clause after, List<Act> acts) {
        if (clause.has(Cue.GOOD) || clause.has(Cue.NEGATION)) {
            return;
        }
        for (Clause.Hit hit : clause.hits()) {
            boolean outright = hit.is(Cue.CAUSE);
            if (!(outright || hit.is(Cue.FOUND)) || clause.before(hit.from(), NOT_SO)) {
                continue;
            }
            Set<String> said = NamedParts.terms(clause, 0, firstWork(clause, hit.from()));
            Optional<String> cause = names.cause(said, outright, scope);
            if (cause.isEmpty() && outright && after != null && NamedParts.actless(after) && !after.has(Cue.GOOD)) {
                // "it turned out to be the bridge, shorted": the state comes behind a comma
                Set<String> both = new LinkedHashSet<>(said);
                both.addAll(NamedParts.terms(after, 0, after.words().size()));
                cause = names.cause(both, true, scope);
            }
            if (cause.isPresent()) {
                conclude(clause, cause.get(), acts);
                return;
            }
            if (outright && !said.isEmpty()) {
                acts.add(Act.cause(clause.start(), clause.end(), "", true));
                return;
            }
        }
    }

    private static int firstWork(Clause clause, int from) {
        return clause.hits().stream()
                .filter(h -> h.from() > from && h.work() != null)
                .mapToInt(Clause.Hit::from)
                .findFirst()
                .orElse(clause.words().size());
    }

    private void conclude(Clause clause, String causeId, List<Act> acts) {
        concluded = Optional.of(causeId);
        acts.add(Act.cause(clause.start(), clause.end(), causeId, clause.asked() || clause.has(Cue.DOUBT)));
    }

    private void test(Clause clause, List<Act> acts) {
        for (Clause.Hit hit : clause.hits()) {
            if (hit.is(Cue.TEST) && !clause.before(hit.from(), Clause.NOT_OURS)) {
                Set<String> said =
                        NamedParts.terms(clause, hit.to(), clause.words().size());
                names.test(said.isEmpty() ? NamedParts.terms(clause, 0, hit.from()) : said, scope)
                        .ifPresent(id -> acts.add(Act.of(Act.Kind.TEST, clause.start(), clause.end(), id)));
                return;
            }
        }
    }

    /** @param label whether the text is there to tell of work */
    private void work(Clause.Hit hit, boolean label, Clause clause, @Nullable Clause before, List<Act> acts) {
        if (clause.has(Cue.TRIAL)) {
            addWork(clause, Optional.empty(), acts);
            return;
        }
        Optional<Work> kind = Optional.ofNullable(hit.work());
        int from = hit.to();
        Set<String> said = parts.things(clause, from, clause.words().size());
        if (said.isEmpty()) {
            said = parts.things(clause, 0, hit.from());
        }
        boolean thing = said.stream().anyMatch(names::isThing);
        Optional<String> fix =
                thing ? named(kind, clause, from, said, before, acts) : unnamed(kind, said, before, acts);
        boolean part = clause.words().stream().anyMatch(w -> Names.isPart(w) || value(w));
        boolean vague = hit.is(Cue.MENDED) || (VAGUE.contains(clause.surface(hit)) && !placed(clause, hit));
        boolean twice =
                thing && clause.hits().stream().filter(h -> h.work() != null).count() > 1;
        if (fix.isPresent()
                || part
                || twice
                || (!vague && !said.isEmpty())
                || (label && !said.isEmpty())
                || (!vague && before != null)) {
            addWork(clause, fix, acts);
        }
    }

    /** "3 strips fitted", "fitted a gizmo", "new brushes in". */
    private static boolean placed(Clause clause, Clause.Hit hit) {
        int last = clause.words().size() - 1;
        boolean first = IntStream.range(0, hit.from()).allMatch(i -> clause.within(i, FILLERS));
        if (clause.surface(hit).equals("new")) {
            boolean in = Set.of("in", "on").contains(clause.words().get(last).surface());
            return first && (in || clause.hits().stream().anyMatch(h -> h.from() != hit.from() && h.work() != null));
        }
        boolean told = hit.from() > 0 || !clause.surface(hit).equals("built in"); // "built in supply"
        return PLACED.contains(clause.surface(hit)) && ((first && told) || hit.to() == last + 1);
    }

    private static boolean value(Token word) {
        return word.kind() == Token.Kind.QUANTITY && VALUES.contains(word.unit());
    }

    /** Whether all that a text noted as work says is names, work and that it works, so that a name alone may be work. */
    private static boolean namesOnly(List<Clause> clauses) {
        return clauses.stream().allMatch(c -> done(c, null) != null || silent(c) || c.only(ENDS_WELL));
    }

    /** Whether a clause has no verb, and nothing that says how a thing was. */
    private static boolean silent(Clause clause) {
        return !clause.asked()
                && clause.hits().stream().allMatch(h -> h.is(Cue.FILLER) || h.is(Cue.LONG) || h.is(Cue.TEST))
                && NamedParts.terms(clause, 0, clause.words().size()).stream().noneMatch(NameWords::fault);
    }

    /** "Start resistor", "C412" or the id of a fix, noted as work: nothing in it but what the packs know by name, or a part. */
    private void silent(Clause clause, List<Act> acts) {
        if (!silent(clause)) {
            return;
        }
        Optional<String> id = names.fixId(clause.words());
        Set<String> said = NamedParts.withoutMeasures(
                NamedParts.terms(clause, 0, clause.words().size()));
        boolean named = clause.words().stream()
                .allMatch(w -> w.kind() != Token.Kind.WORD
                        || NameWords.of(w)
                                .filter(t -> said.contains(t) && !names.isThing(t))
                                .isEmpty());
        boolean part = clause.words().stream().anyMatch(Names::isPart);
        boolean thing = said.stream().anyMatch(names::isThing);
        if (id.isPresent() || (named && (part || thing))) {
            addWork(clause, id.or(() -> names.fix(Optional.empty(), said, scope)), acts);
        }
    }

    /** "Replaced the microswitch and fuse": things of few words joined by "and". */
    private static boolean several(Clause clause) {
        int things = 0;
        int start = 0;
        for (int i = 0; i <= clause.words().size(); i++) {
            if (i == clause.words().size()
                    || JOINTS.contains(clause.words().get(i).surface())) {
                boolean brief = i - start <= LONGEST_THING;
                things += brief && !NamedParts.terms(clause, start, i).isEmpty() ? 1 : 0;
                start = i + 1;
            }
        }
        return things > 1;
    }

    private static void addWork(Clause clause, Optional<String> fix, List<Act> acts) {
        acts.add(Act.work(clause.start(), clause.end(), fix.orElse(""), several(clause)));
    }

    /**
     * The first work in a clause that this bench says it did.
     *
     * @param after the next clause of the sentence, or null
     */
    private static Clause.@Nullable Hit done(Clause clause, @Nullable Clause after) {
        if (clause.asked()) {
            return null;
        }
        boolean refused = after != null && after.has(Cue.OTHERS) && after.has(Cue.NEGATION);
        for (Clause.Hit hit : clause.hits()) {
            boolean work = hit.work() != null || hit.is(Cue.MENDED);
            if (work && clause.ours(hit) && !(refused && clause.noun(hit))) {
                return hit;
            }
        }
        return null;
    }

    /** Work on a thing that is named. */
    private Optional<String> named(
            Optional<Work> kind, Clause clause, int from, Set<String> said, @Nullable Clause before, List<Act> acts) {
        Optional<String> cause = names.cause(said, false, scope).or(() -> implied(before));
        Optional<String> fix = names.fix(kind, said, scope);
        if (fix.isEmpty()) {
            fix = firstOfList(kind, clause, from);
        }
        Optional<String> known = concluded.or(() -> cause);
        if (fix.isEmpty()) {
            fix = known.flatMap(c -> names.fixFor(c, kind, said));
        }
        if (fix.isEmpty()) {
            fix = parts.fixNamedBefore(kind, said);
        }
        Optional<String> found = fix;
        cause.filter(c -> found.filter(f -> names.treats(f, c)).isPresent())
                .ifPresent(c -> implyCause(clause, before, c, said, acts));
        return fix;
    }

    /** "Replaced fuse and bridge rectifier": the first of several things that names a fix on its own. */
    private Optional<String> firstOfList(Optional<Work> kind, Clause clause, int from) {
        int start = from;
        for (int i = from; i <= clause.words().size(); i++) {
            boolean joint = i == clause.words().size()
                    || JOINTS.contains(clause.words().get(i).surface());
            if (joint) {
                Optional<String> fix = names.fix(kind, NamedParts.terms(clause, start, i), scope);
                if (fix.isPresent()) {
                    return fix;
                }
                start = i + 1;
            }
        }
        return Optional.empty();
    }

    /** Work on "it", or on a part known by its number only: what was just concluded or named says what it was. */
    private Optional<String> unnamed(Optional<Work> kind, Set<String> said, @Nullable Clause before, List<Act> acts) {
        if (before == null) {
            return concluded.flatMap(c -> names.fixFor(c, kind, said));
        }
        Optional<String> cause = concluded.or(() -> implied(before));
        Optional<String> fix = cause.flatMap(c -> names.fixFor(c, kind, said));
        if (fix.isPresent()) {
            if (concluded.isEmpty()) {
                conclude(before, cause.orElseThrow(), acts);
            }
            return fix;
        }
        if (!NamedParts.actless(before)) {
            return Optional.empty();
        }
        return parts.fixIn(kind, before, Set.of());
    }

    private void implyCause(Clause clause, @Nullable Clause before, String cause, Set<String> said, List<Act> acts) {
        if (concluded.isEmpty()) {
            boolean here = names.cause(said, false, scope).filter(cause::equals).isPresent();
            conclude(here || before == null ? clause : before, cause, acts);
        }
    }

    /** A cause named in the clause before work, without a word that says that it is one: "start resistor open, replaced". */
    private Optional<String> implied(@Nullable Clause before) {
        if (before == null
                || !NamedParts.actless(before)
                || before.has(Cue.GOOD)
                || before.before(before.words().size(), NOT_SO)) {
            return Optional.empty();
        }
        return names.cause(NamedParts.terms(before, 0, before.words().size()), false, scope);
    }
}
