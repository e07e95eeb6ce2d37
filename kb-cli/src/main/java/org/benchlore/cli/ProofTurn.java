package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchlore.kb.cases.CaseEvent.Checked;
import org.benchlore.kb.planning.ProofPlan;
import org.benchlore.kb.planning.ProofRecord;
import org.benchlore.kb.planning.Rate;
import org.benchlore.kb.reading.Reading.Condition;
import org.jspecify.annotations.Nullable;

/** Goes through a fix's proof, step by step, and notes runs. Each answer is stored at once; Enter leaves the rest. */
final class ProofTurn {
    private static final String NUMBER = "(\\d{1,5}(?:[.,]\\d{1,3})?) *";
    private static final String UNIT = "(h|hours?|min|minutes?)";
    private static final Pattern RUN = Pattern.compile(NUMBER + UNIT + "?");

    /** In other words a number may be of anything: "p 12 V" is no run. */
    private static final Pattern HOURS = Pattern.compile(NUMBER + UNIT + "\\b");

    private static final Pattern TIMES = Pattern.compile("\\d{1,5}");
    private static final double MINUTES = 60;

    private final WorkCase work;
    private final Lines lines;
    private final Page page;
    private final ProofPage show;

    ProofTurn(WorkCase work, Lines lines, Page page) {
        this.work = work;
        this.lines = lines;
        this.page = page;
        this.show = new ProofPage(work.kb().knowledge(), page);
    }

    private ProofPlan plan() {
        return work.kb().proof(ProofRecord.of(work.history()), Rate.LEVEL, Optional.empty(), work.id());
    }

    /** The steps not yet done, one by one, then what is believed. */
    void take() {
        ProofPlan before = plan();
        if (before.known().fixId().isEmpty() || before.known().failed()) {
            page.text(0, "No fix to prove; 'fix' notes one, 'run' how often the fault shows.");
            return;
        }
        List<ProofPlan.Item> open = before.open();
        if (!open.isEmpty()) {
            page.text(
                    0,
                    "Prove it. Each step: p passed, f failed, n left out; hours and how may follow (p 2 h warm)."
                            + " Enter leaves the rest for later.");
        }
        for (ProofPlan.Item item : open) {
            page.hanging(2, 4, item.step());
            Optional<Checked.Result> result = step(item);
            if (result.isEmpty()) {
                page.text(0, "Left for later; 'proof' goes on with it.");
                break;
            }
            if (result.get() == Checked.Result.FAILED) {
                failed();
                return;
            }
        }
        believed();
    }

    private Optional<Checked.Result> step(ProofPlan.Item item) {
        while (true) {
            Optional<String> answer = lines.ask(
                    "p/f/n> ", "p passed, f failed, n left out; hours and how may follow: p 2 h warm. Enter: later.");
            if (answer.isEmpty() || answer.get().isEmpty()) {
                return Optional.empty();
            }
            Optional<Checked> check = check(item.step(), answer.get());
            if (check.isPresent()) {
                work.record(check.get());
                page.text(0, "Stored: " + Page.words(check.get().result()) + ".");
                return check.map(Checked::result);
            }
            page.text(0, "p, f or n, please, such as 'p', 'p 2 h warm' or 'n'; Enter for later.");
        }
    }

    /** "p 2 h warm", "failed", "n"; other words behind it are a note. */
    private Optional<Checked> check(String step, String answer) {
        Matcher first =
                Pattern.compile("(?i)(p|passed|f|failed|n|not done)\\b(.*)").matcher(answer);
        if (!first.matches()) {
            return Optional.empty();
        }
        Checked.Result result = switch (first.group(1).toLowerCase(Locale.ROOT).charAt(0)) {
            case 'p' -> Checked.Result.PASSED;
            case 'f' -> Checked.Result.FAILED;
            default -> Checked.Result.NOT_DONE;
        };
        boolean done = result != Checked.Result.NOT_DONE;
        String rest = first.group(2).strip();
        String told = rest.toLowerCase(Locale.ROOT);
        Double hours = done ? hours(HOURS.matcher(told)) : null;
        List<Condition> how = done ? conditions(told) : List.of();
        String note = hours == null && how.isEmpty() ? rest : "";
        return Optional.of(new Checked(work.head(), step, result, null, hours, how, note));
    }

    private static @Nullable Double hours(Matcher matcher) {
        if (!matcher.find()) {
            return null;
        }
        double number = Double.parseDouble(matcher.group(1).replace(',', '.'));
        String unit = matcher.group(2);
        return unit != null && unit.startsWith("m") ? number / MINUTES : number;
    }

    private static List<Condition> conditions(String words) {
        List<Condition> conditions = new ArrayList<>();
        for (Condition condition : Condition.values()) {
            String name = Page.words(condition);
            if (condition != Condition.INTERMITTENT
                    && (words.contains(name) || words.contains(name.replace(' ', '-')))) {
                conditions.add(condition);
            }
        }
        return conditions;
    }

    private void failed() {
        page.text(0, "That speaks against the fix: it is taken not to have cured. Go on with what you see now.");
    }

    private void believed() {
        ProofPlan proof = plan();
        show.print(proof);
        if (proof.open().isEmpty() && !proof.checklist().isEmpty()) {
            page.text(0, "The list is done. 'run' notes hours without the fault, 'end' finishes the case.");
        } else if (proof.run().filter(r -> r.hoursLeft() > 0).isPresent()) {
            page.text(0, "'run' notes hours without the fault.");
        }
    }

    /** Hours of run, and how often the fault showed; whether it was noted that it did not. */
    boolean run() {
        Optional<Double> hours = number("How many hours did it run?", "hours> ", RUN);
        if (hours.filter(h -> h > 0).isEmpty()) {
            hours.ifPresent(none -> page.text(0, "A run of 0 hours tells nothing, and is not stored."));
            return false;
        }
        Optional<Double> times = number("How often did the fault show? 0 for never.", "times> ", TIMES);
        if (times.isEmpty()) {
            return false;
        }
        page.text(0, "How: cold, warm, under load, after a while, standby? Enter for no matter.");
        List<Condition> how = conditions(lines.ask(
                        "how> ", "One or several of cold, warm, under load, after a while, standby; Enter: no matter.")
                .orElse("")
                .toLowerCase(Locale.ROOT));
        int seen = (int) Math.min(1_000_000, Math.round(times.get()));
        work.record(
                seen == 0
                        ? new Checked(work.head(), "", Checked.Result.PASSED, null, hours.get(), how, "")
                        : new Checked(work.head(), "", Checked.Result.FAILED, seen, hours.get(), how, ""));
        page.text(0, "Stored.");
        ProofRecord known = ProofRecord.of(work.history());
        if (known.failed() && seen > 0) {
            failed();
        } else {
            show.print(plan());
        }
        return seen == 0;
    }

    private Optional<Double> number(String question, String prompt, Pattern form) {
        page.text(0, question);
        while (true) {
            Optional<String> answer = lines.ask(prompt, question + " Enter leaves it, and nothing is stored.");
            if (answer.isEmpty() || answer.get().isEmpty()) {
                return Optional.empty();
            }
            String told = answer.get().strip().toLowerCase(Locale.ROOT);
            if (form.matcher(told).matches()) {
                return Optional.ofNullable(hours(RUN.matcher(told)));
            }
            page.text(0, "A number, please, or Enter to leave it.");
        }
    }
}
