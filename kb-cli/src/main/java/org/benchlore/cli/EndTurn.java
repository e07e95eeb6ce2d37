package org.benchlore.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Decision;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Fix;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.jspecify.annotations.Nullable;

/** Names the cause, notes a fix, finishes the case. Each answer is stored when it is whole; Enter leaves a question. */
final class EndTurn {
    private static final int TOP = 5;
    /** Minutes, and chance of harm, from which it is asked whether the work is worth it; our choice. */
    private static final double LONG = 45;

    private static final double RISKY = 0.05;
    private static final String WHICH = "number> ";

    private final WorkCase work;
    private final Lines lines;
    private final Page page;
    private final WorkPage show;

    /** What was typed for a number, to go on with. */
    private Optional<String> instead = Optional.empty();

    /** A fix and the cause it would be for. */
    private record Remedy(Fix fix, Cause cause) {}

    EndTurn(WorkCase work, Lines lines, Page page, WorkPage show) {
        this.work = work;
        this.lines = lines;
        this.page = page;
        this.show = show;
    }

    /** The words or the command that came in place of a number, to be taken as any line now. */
    Optional<String> instead() {
        return instead;
    }

    /** Asks until a number of the list comes; empty for Enter or the end of input. */
    private Optional<Integer> pick(List<String> items) {
        return pick(items, false);
    }

    /** @param leave whether words and commands leave the question as well, and are kept */
    private Optional<Integer> pick(List<String> items, boolean leave) {
        show.numbered(items);
        while (true) {
            Optional<String> answer =
                    lines.ask(WHICH, "The number of a line above; Enter leaves the question, and nothing is stored.");
            if (answer.isEmpty() || answer.get().isEmpty()) {
                return Optional.empty();
            }
            List<Integer> picked = Lines.picked(answer.get(), items.size());
            if (picked.size() == 1) {
                return Optional.of(picked.get(0));
            }
            if (leave && (WorkWords.obeyed(answer.get()) || answer.get().matches("(?U).*\\p{L}.*\\s.*"))) {
                page.text(0, "The question is left; what you wrote comes next.");
                instead = answer;
                return Optional.empty();
            }
            page.text(0, "A number from 1 to " + items.size() + ", please, or Enter to leave it.");
        }
    }

    /** Names the cause. */
    void cause() {
        page.text(0, "Which cause was it?");
        Ranking ranking = work.ranking();
        List<String> ids = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Ranking.RankedCause cause : ranking.causes().stream().limit(TOP).toList()) {
            ids.add(cause.id());
            names.add(cause.name());
        }
        ids.add(RankingModel.UNLISTED);
        names.add(Names.UNLISTED);
        names.add("another one, by its id (see 'benchlore search')");
        pick(names, true)
                .flatMap(n -> n < ids.size() ? Optional.of(ids.get(n)) : byId())
                .ifPresent(this::conclude);
    }

    private Optional<String> byId() {
        while (true) {
            Optional<String> id = lines.ask(
                    "cause id> ",
                    "Such as mechanism-grease-hardened, as 'benchlore search' shows it; Enter leaves it.");
            if (id.isEmpty()
                    || id.get().isEmpty()
                    || work.kb().knowledge().cause(id.get()).isPresent()) {
                return id.filter(i -> !i.isEmpty());
            }
            page.text(
                    0,
                    "No cause has that id; "
                            + BenchCommand.nearest(
                                    id.get(),
                                    work.kb().knowledge().causes().stream()
                                            .map(Cause::id)
                                            .toList()));
        }
    }

    private void conclude(String causeId) {
        page.text(0, "How sure?");
        List<Certainty> sure = List.of(Certainty.values());
        Certainty certainty =
                pick(sure.stream().map(EndTurn::words).toList()).map(sure::get).orElse(Certainty.SUSPECTED);
        String note = causeId.equals(RankingModel.UNLISTED)
                ? lines.ask("what was wrong (Enter: not known)> ", "In your words, for the next one like it, or Enter.")
                        .orElse("")
                : "";
        work.record(new CaseEvent.Concluded(work.head(), causeId, certainty, note));
        page.text(0, "Stored.");
    }

    /** Notes a fix, and whether it helped. */
    void fix() {
        if (remedies().isEmpty()) {
            page.text(0, "No fix is known here for the leading causes.");
            return;
        }
        page.text(0, "Which fix?");
        pickFix(true).ifPresent(this::apply);
    }

    private Optional<Remedy> pickFix(boolean leave) {
        List<Remedy> remedies = remedies();
        return pick(
                        remedies.stream()
                                .map(r -> r.fix().name() + ", for: " + r.cause().name())
                                .toList(),
                        leave)
                .map(remedies::get);
    }

    /** Whether no check since the last fix went well. */
    private boolean unproven() {
        return !ProofRecord.of(work.history()).somethingPassed();
    }

    private List<Remedy> remedies() {
        Set<String> causes = new LinkedHashSet<>();
        String concluded = work.history().causeId();
        if (concluded != null) {
            causes.add(concluded);
        }
        work.ranking().causes().stream().limit(TOP).forEach(c -> causes.add(c.id()));
        List<Remedy> remedies = new ArrayList<>();
        causes.stream()
                .flatMap(id -> work.kb().knowledge().cause(id).stream())
                .forEach(cause -> cause.fixedBy().stream()
                        .flatMap(r -> work.kb().knowledge().fix(r.fixId()).stream())
                        .forEach(fix -> remedies.add(new Remedy(fix, cause))));
        return remedies.subList(0, Math.min(2 * TOP, remedies.size()));
    }

    /** Weighs the fix that is advised, or one of the list. */
    void worth() {
        Optional<Fix> advised =
                work.next().repair().flatMap(r -> work.kb().knowledge().fix(r.fixId()));
        if (advised.isPresent()) {
            new WorthTurn(work, lines, page).weigh(advised.get());
            return;
        }
        page.text(0, "No fix is worth its time by the figures. Which one is it about?");
        List<Remedy> remedies = remedies();
        pick(remedies.stream().map(r -> r.fix().name()).toList())
                .ifPresent(n ->
                        new WorthTurn(work, lines, page).weigh(remedies.get(n).fix()));
    }

    /** Long, dear or risky work is worth a thought first, once. */
    private boolean toBeWeighed(Fix fix) {
        boolean heavy =
                fix.minutes() >= LONG || fix.makesWorse() >= RISKY || fix.risk().compareTo(Risk.MEDIUM) >= 0;
        return heavy
                && work.history().events().stream()
                        .noneMatch(e ->
                                e instanceof CaseEvent.Weighed w && w.fixId().equals(fix.id()));
    }

    private void apply(Remedy remedy) {
        if (toBeWeighed(remedy.fix())) {
            page.text(
                    0,
                    String.format(
                            Locale.ROOT,
                            "Is it worth it? About %.0f minutes, and it leaves one unit in %.0f worse. y weighs it first, Enter goes on.",
                            remedy.fix().minutes(),
                            1 / remedy.fix().makesWorse()));
            boolean weigh =
                    lines.yes("weigh> ", "y weighs what the work costs and returns; Enter goes on with the fix.");
            if (weigh
                    && new WorthTurn(work, lines, page)
                            .weigh(remedy.fix())
                            .filter(d -> d != Decision.WORK)
                            .isPresent()) {
                return;
            }
        }
        page.heading(remedy.fix().name());
        remedy.fix().cautions().stream()
                .flatMap(id -> work.kb().knowledge().caution(id).stream())
                .forEach(c -> page.caution(c.text()));
        page.numbered(2, remedy.fix().steps());
        page.text(0, "When it is done: the minutes it took, or 'done'. Enter alone leaves it.");
        Optional<String> answer = lines.ask(
                        "done> ", "The minutes it took, or a word on how it went, once it is done; Enter leaves it.")
                .filter(a -> !a.isEmpty());
        if (answer.isEmpty() || WorkWords.obeyed(answer.get())) {
            page.text(0, "The fix is not noted.");
            return;
        }
        work.record(new CaseEvent.FixApplied(
                work.head(),
                remedy.fix().id(),
                remedy.cause().id(),
                minutes(answer.get()),
                answer.get().matches("(?i)done|y|yes|ok|[\\d.]+( *min.*)?") ? "" : answer.get()));
        page.text(0, "Stored. Did it help? yes, no, or Enter while you cannot tell.");
        Optional<Boolean> helped = helped();
        if (helped.isEmpty()) {
            page.text(0, "'proof' goes through what proves it, 'run' notes hours of run.");
        } else if (helped.get()) {
            new ProofTurn(work, lines, page).take();
        } else {
            work.record(new CaseEvent.Ended(work.head(), Outcome.NOT_FIXED, null, ""));
            page.text(0, "Stored: it did not help. Go on with what you see now.");
        }
    }

    private Optional<Boolean> helped() {
        while (true) {
            String answer = lines.ask("helped> ", "yes, no, or Enter while you cannot tell.")
                    .orElse("");
            if (answer.isEmpty() || WorkWords.obeyed(answer)) {
                return Optional.empty();
            }
            if (answer.matches("(?i)y(es)?|no?")) {
                return Optional.of(answer.matches("(?i)y.*"));
            }
            page.text(0, "yes or no, please, or Enter while you cannot tell.");
        }
    }

    private static @Nullable Double minutes(String answer) {
        return Lines.number(answer.replaceAll("(?i) *min.*$", ""))
                .filter(m -> m >= 0)
                .orElse(null);
    }

    /** Whether the case was finished. */
    boolean end() {
        page.text(0, "How did it end?");
        List<Outcome> outcomes = List.of(Outcome.values());
        Optional<Integer> picked = pick(outcomes.stream().map(EndTurn::words).toList());
        if (picked.isEmpty()) {
            return false;
        }
        Outcome outcome = outcomes.get(picked.get());
        if (outcome == Outcome.CAME_BACK && work.history().outcome() == null) {
            page.text(0, "It has not left yet: end it first, or say that the fix did not help.");
            return false;
        }
        if (outcome.cured()) {
            if (work.history().causeId() == null) {
                cause();
            }
            if (work.history().cure().isEmpty()) {
                page.text(0, "No fix is noted that may have done it. Which one did?");
                pickFix(false)
                        .ifPresent(r -> work.record(new CaseEvent.FixApplied(
                                work.head(), r.fix().id(), r.cause().id(), null, "")));
            }
            if (!meant(outcome)) {
                return false;
            }
        }
        if (outcome == Outcome.FIXED_AND_PROVEN && unproven() && !new ProofTurn(work, lines, page).run()) {
            if (ProofRecord.of(work.history()).failed()) {
                return false;
            }
            page.text(0, "Nothing is noted that proves it: it goes down as fixed, not proven yet.");
            outcome = Outcome.FIXED;
        }
        Integer days = outcome == Outcome.CAME_BACK
                ? lines.ask("days since hand-over (Enter: not known)> ", "A number of days, or Enter.")
                        .filter(d -> d.matches("\\d{1,5}"))
                        .map(Integer::valueOf)
                        .orElse(null)
                : null;
        String note = lines.ask("a note (Enter: none)> ", "Anything worth keeping with the ending, or Enter.")
                .orElse("");
        work.record(new CaseEvent.Ended(work.head(), outcome, days, note));
        page.text(
                0,
                "Stored: " + outcome.id() + ". Sheets: 'benchlore sheet " + work.id()
                        + "', and with '--kind handover' for the owner.");
        return true;
    }

    /** Says what a repair goes down without, and asks where that is everything. */
    private boolean meant(Outcome outcome) {
        boolean cause = work.history().causeId() != null;
        boolean fix = work.history().cure().isPresent();
        StillThere.warning(work.kb().knowledge(), page, work.history()).ifPresent(w -> page.text(0, w + "."));
        if (cause != fix) {
            page.text(0, "No " + (cause ? "fix" : "cause") + " is noted: the case goes down without one.");
        }
        if (cause || fix) {
            return true;
        }
        page.text(
                0,
                "Neither a cause nor a fix is noted: it would go down as "
                        + Page.words(outcome)
                        + " without either, and nothing is learnt from it. y stores that, Enter leaves the case open.");
        return lines.yes("store> ", "y or Enter.");
    }

    private static String words(Certainty certainty) {
        return switch (certainty) {
            case SUSPECTED -> "a guess";
            case LIKELY -> "it fits all that was seen";
            case PROVEN -> "shown by a test or by the cure";
        };
    }

    private static String words(Outcome outcome) {
        return switch (outcome) {
            case FIXED_AND_PROVEN -> "fixed, and it held through a proof run";
            case FIXED -> "fixed, not proven yet";
            case NOT_FIXED -> "the fix did not help";
            case CAME_BACK -> "the fault came back after hand-over";
            case RECOVERED_BY_ITSELF -> "the fault went away by itself";
            case NO_FAULT_FOUND -> "no fault found";
            case MADE_WORSE -> "made worse";
            case NOT_WORTH_IT -> "not worth it";
            case GIVEN_UP -> "given up";
        };
    }
}
