package org.benchlore.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.importing.InVain;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.reading.Reading;

/** One case, word by word, until it is finished or the input ends. */
final class WorkLoop {
    private static final int REASONS = 3;

    private final WorkCase work;
    private final Lines lines;
    private final Page page;
    private final WorkPage show;

    /** A command typed where a result was asked for. */
    private Optional<String> left = Optional.empty();

    WorkLoop(WorkCase work, Lines lines, Page page) {
        this.work = work;
        this.lines = lines;
        this.page = page;
        this.show = new WorkPage(work.kb().knowledge(), page);
    }

    void run() {
        stands(work.ranking());
        advise();
        comesAndGoes(work.kb().read(work.history().complaint(), work.history().scope()));
        page.text(0, "Say what you see or measure, 'test' for the next test, '?' for help.");
        while (true) {
            Optional<String> line = left.isEmpty() ? lines.ask("> ") : left;
            left = Optional.empty();
            if (line.isEmpty() || WorkWords.leaves(line.get())) {
                page.text(0, "Everything is stored. Go on with 'benchlore work " + work.id() + "'.");
                return;
            }
            if (!line.get().isEmpty() && finished(line.get())) {
                return;
            }
        }
    }

    /** Does what a line says; true when the case is finished. */
    private boolean finished(String line) {
        Ranking before = work.ranking();
        switch (line.toLowerCase(Locale.ROOT)) {
            case "?" -> page.bullets(2, WorkWords.HELP);
            case "why" -> why();
            case "plan" -> plan();
            case "worth" -> ending().worth();
            case "doubt" -> doubt();
            case "test" -> {
                TestTurn turn = new TestTurn(work, lines, page, show);
                if (turn.take()) {
                    moved(before);
                }
                left = turn.command();
            }
            case "log" -> {
                page.text(0, "Paste the log; end it with a line that holds only a full stop.");
                note(lines.paste(), before);
            }
            case "undo" -> undo(before);
            case "cause" -> {
                EndTurn turn = ending();
                turn.cause();
                left = turn.instead();
            }
            case "fix" -> {
                EndTurn turn = ending();
                turn.fix();
                left = turn.instead();
                again(before);
            }
            case "proof" -> {
                new ProofTurn(work, lines, page).take();
                again(before);
            }
            case "run" -> {
                new ProofTurn(work, lines, page).run();
                again(before);
            }
            case "end" -> {
                return ending().end();
            }
            default -> note(line, before);
        }
        return false;
    }

    private EndTurn ending() {
        return new EndTurn(work, lines, page, show);
    }

    private void note(String text, Ranking before) {
        if (text.isBlank()) {
            return;
        }
        if (Lines.number(text).isPresent()) {
            page.text(0, "A number alone says nothing, and is not stored: what was it, and in which unit?");
            return;
        }
        Optional<String> elsewhere = WorkWords.elsewhere(text);
        if (elsewhere.isPresent()) {
            page.text(0, elsewhere.get());
            return;
        }
        Reading reading = work.kb().read(text, work.history().scope());
        Optional<CaseEvent.FixApplied> failed = work.history().cure().filter(cure -> InVain.told(text));
        work.record(new CaseEvent.Noted(work.head(), text, source(reading), reading.findings()));
        show.understood(reading);
        if (failed.isPresent()) {
            work.record(StillThere.failed(work.head()));
            page.text(
                    0,
                    "Stored; "
                            + new Names(work.kb().knowledge()).fix(failed.get().fixId())
                            + " is held to have failed. 'undo' takes that back.");
            moved(before);
        } else if (reading.findings().isEmpty()) {
            page.text(0, "Stored as a note; nothing in it was understood.");
            again(before); // how it is worded may move the ranking all the same
        } else {
            page.text(0, "Stored.");
            moved(before);
            comesAndGoes(reading);
        }
    }

    /** The ranking after something was found, a doubt where it speaks against the leader, and what to do now. */
    private void moved(Ranking before) {
        Ranking after = work.ranking();
        show.move(before, after);
        if (work.history().cure().isEmpty()) {
            show.against(before, after);
        }
        advise();
    }

    /** The same where the ranking moved at all. */
    private void again(Ranking before) {
        if (!work.ranking().causes().equals(before.causes())) {
            moved(before);
        }
    }

    /** What to do now: prove the fix, test, or stop testing and which fix. */
    private void advise() {
        CaseHistory history = work.history();
        Optional<CaseEvent.FixApplied> cure = history.cure();
        if (cure.isPresent()) {
            show.standing(cure.get().fixId());
        } else if (work.tells()) {
            show.advice(work.next());
        }
    }

    private void comesAndGoes(Reading reading) {
        boolean intermittent =
                reading.understood().stream().anyMatch(u -> u.conditions().contains(Reading.Condition.INTERMITTENT));
        if (intermittent && ProofRecord.of(work.history()).seen() == 0) {
            page.text(
                    0,
                    "It comes and goes: 'run' keeps how often it shows in how many hours; without that nobody can say"
                            + " for how long to run it after the fix.");
        }
    }

    private void plan() {
        if (!work.tells()) {
            page.text(0, "Nothing to plan by yet. Say what you see or measure.");
            return;
        }
        new PlanPage(work.kb().knowledge(), page)
                .print(work.plan(), work.query().findings());
    }

    private void doubt() {
        if (!work.tells()) {
            page.text(0, "Nothing to doubt yet. Say what you see or measure.");
            return;
        }
        new ReasonsPage(work.kb().knowledge(), page).print(work.kb(), work.query(), work.ranking(), REASONS);
    }

    /** Measured if any of it was; the owner's if all of it is. */
    private static Reading.Source source(Reading reading) {
        List<Reading.Source> sources =
                reading.understood().stream().map(Reading.Understood::source).toList();
        if (sources.contains(Reading.Source.MEASURED)) {
            return Reading.Source.MEASURED;
        }
        return !sources.isEmpty() && sources.stream().allMatch(s -> s == Reading.Source.OWNER)
                ? Reading.Source.OWNER
                : Reading.Source.SEEN;
    }

    private void why() {
        CaseHistory history = work.history();
        new RankingPage(work.kb().knowledge(), page)
                .print(
                        work.kb().read("", history.scope()),
                        work.query(),
                        work.ranking(),
                        work.done(),
                        Optional.empty(),
                        1,
                        5);
    }

    private void undo(Ranking before) {
        List<CaseEvent> events = work.history().events();
        CaseEvent last = events.get(events.size() - 1);
        if (last instanceof CaseEvent.Opened) {
            page.text(
                    0, "Nothing to take back; 'benchlore case withdraw " + work.id() + "' takes back the whole case.");
            return;
        }
        work.record(new CaseEvent.Withdrawn(work.head(), last.head().eventId(), ""));
        page.text(0, "Taken back: " + new CasePage(work.kb().knowledge(), page).line(last));
        stands(before);
    }

    /** The ranking and what it was before, if there is anything to rank by. */
    private void stands(Ranking before) {
        if (work.tells()) {
            show.move(before, work.ranking());
        } else {
            page.text(0, "Nothing to rank by.");
        }
    }
}
