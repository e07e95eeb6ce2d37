package org.benchlore.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchlore.kb.KnowledgeBase;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.TriedFix;
import org.benchlore.kb.importing.InVain;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Nearest;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.report.Json;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Cases: open, note, list, show, withdraw. */
@Command(
        name = "case",
        description = "Open a case, add to it, list or withdraw cases; 'benchlore show CASE' shows one.",
        mixinStandardHelpOptions = true,
        subcommands = {
            CaseCommand.Open.class,
            CaseCommand.Note.class,
            CaseCommand.ListCases.class,
            CaseCommand.Withdraw.class
        })
final class CaseCommand extends BenchCommand {
    @Spec
    @Nullable
    CommandSpec spec;

    CaseCommand(Bench bench) {
        super(bench);
    }

    @Override
    public Integer call() {
        throw new CommandLine.ParameterException(
                Objects.requireNonNull(spec).commandLine(),
                "say which: open, note, list or withdraw; 'benchlore show CASE' shows a case");
    }

    static CaseHistory known(KnowledgeBase kb, String id) {
        return kb.history(id)
                .orElseThrow(() -> new UsageException("no case '" + id + "'; "
                        + Nearest.remedy(
                                id,
                                kb.cases(200).stream().map(CaseHistory::id).toList(),
                                "'benchlore case list' lists them")));
    }

    /** A case to record in: what comes to one that was withdrawn would count for nothing. */
    static CaseHistory standing(KnowledgeBase kb, String id) {
        CaseHistory history = known(kb, id);
        if (history.withdrawn()) {
            throw new UsageException("case " + id + " was withdrawn; open another" + bringingBack(kb, id));
        }
        return history;
    }

    /** How the last withdrawal of a whole case is undone; empty where none stands. */
    private static String bringingBack(KnowledgeBase kb, String id) {
        List<CaseEvent.Withdrawn> all = kb.events(id).stream()
                .filter(CaseEvent.Withdrawn.class::isInstance)
                .map(CaseEvent.Withdrawn.class::cast)
                .toList();
        return all.stream()
                .filter(w -> w.targetEventId() == null
                        && all.stream().noneMatch(other -> w.head().eventId().equals(other.targetEventId())))
                .reduce((a, b) -> b)
                .map(w -> "; 'benchlore case withdraw " + id + " --event "
                        + w.head().eventId() + "' brings it back")
                .orElse("");
    }

    /** Opens a case. */
    @Command(name = "open", description = "Open a case with the owner's complaint.", mixinStandardHelpOptions = true)
    static final class Open extends BenchCommand {
        @Mixin
        SeenOptions seen = new SeenOptions();

        @Option(names = "--unit", paramLabel = "TAG", defaultValue = "", description = "Serial number or tag.")
        String unit = "";

        @Option(names = "--worked-on", description = "Somebody was in here before.")
        boolean workedOn;

        Open(Bench bench) {
            super(bench);
        }

        @Override
        public Integer call() {
            if (seen.nothing()) {
                throw new UsageException("open a case of what? Give the owner's complaint, such as \"no picture\"");
            }
            DeviceScope scope = seen.scope(DeviceScope.ANY);
            requireTag(unit);
            try (KnowledgeBase kb = open()) {
                warnOfUnknown(kb, scope);
                SeenOptions.Seen told = seen.read(kb, this, scope);
                String text = told.reading().text();
                String id = kb.newCaseId();
                kb.record(
                        new CaseEvent.Opened(kb.head(id), scope, text, unit, CaseHistory.OWN, workedOn),
                        new CaseEvent.Noted(kb.head(id), text, Reading.Source.OWNER, told.findings()));
                new Answer(bench, json).give(kb, id, "Opened case " + id + ".");
                if (!json) {
                    new ReadPage(kb.knowledge(), bench.page()).print(told);
                }
                return ExitCode.DONE;
            }
        }
    }

    /** Adds to a case. */
    @Command(
            name = "note",
            description = {
                "Add words, findings or a test result to a case, or how often the fault is seen:",
                "  benchlore case note CASE \"picture drops out\" --seen 3 --in 24 --condition warm"
            },
            mixinStandardHelpOptions = true)
    static final class Note extends BenchCommand {
        @Parameters(index = "0", paramLabel = "CASE", description = "Case id.")
        String id = "";

        @Parameters(
                index = "1..*",
                arity = "0..*",
                paramLabel = "WORDS",
                description = "What you saw or measured; - reads standard input.")
        List<String> words = new ArrayList<>();

        @Option(names = "--owner", description = "The owner said so.")
        boolean owner;

        @Option(names = "--test", paramLabel = "TEST", description = "The bench test this is the result of.")
        @Nullable
        String test;

        @Option(
                names = "--after",
                paramLabel = "FIX",
                description = "It was seen after this fix, which is noted as done now if it is not yet. Words that say"
                        + " it did not help (\"still the same\", \"no change\") hold it to have failed, as 'proof"
                        + " --failed' does.")
        @Nullable
        String after;

        @Option(
                names = "--minutes",
                paramLabel = "N",
                description = "Bench time the test took; without --test, that of the fix of --after.")
        @Nullable
        Double minutes;

        @Option(names = "--finding", paramLabel = "SYMPTOM=STATE", description = "A finding by id; may be repeated.")
        List<String> findings = new ArrayList<>();

        @Option(names = "--seen", paramLabel = "N", description = "Times the fault showed while it ran, 0 for never.")
        @Nullable
        Integer seen;

        @Option(names = "--in", paramLabel = "HOURS", description = "With --seen: in so many hours of run.")
        @Nullable
        Double hours;

        @Option(
                names = "--condition",
                paramLabel = "HOW",
                description = "With --seen: cold, warm, under-load, after-a-while or standby; may be repeated.")
        List<String> conditions = new ArrayList<>();

        Note(Bench bench) {
            super(bench);
        }

        @Override
        public Integer call() {
            String text = words(words);
            boolean told = !text.isBlank() || !findings.isEmpty();
            requireSense(told);
            List<Reading.Condition> how = ProofCommand.conditions(conditions);
            try (KnowledgeBase kb = open()) {
                CaseHistory history = standing(kb, id);
                List<CaseEvent> events = new ArrayList<>();
                if (after != null) {
                    done(kb, history, after, test == null ? minutes : null).ifPresent(events::add);
                }
                if (seen != null) {
                    events.add(run(kb.head(id), seen, hours, how));
                }
                SeenOptions.Seen read = SeenOptions.read(kb, text, findings, history.scope());
                if (told) {
                    events.add(note(kb, text, read.findings()));
                }
                Optional<String> failed = Optional.ofNullable(after).filter(fix -> InVain.told(text));
                failed.ifPresent(fix -> events.add(StillThere.failed(kb.head(id))));
                kb.record(events);
                String noted = !told
                        ? "Noted. See 'benchlore proof --case " + id + "'."
                        : read.findings().isEmpty() ? nothingRead(kb.knowledge(), test) : "Noted.";
                new Answer(bench, json)
                        .give(
                                kb,
                                id,
                                failed.map(fix -> noted + " " + new Names(kb.knowledge()).fix(fix)
                                                + " is held to have failed.")
                                        .orElse(noted));
                if (told && !json) {
                    new ReadPage(kb.knowledge(), bench.page()).print(read);
                }
                return ExitCode.DONE;
            }
        }

        /** Refuses options that do not go together. */
        private void requireSense(boolean told) {
            if (!told && seen == null) {
                throw new UsageException("note what? Give words, --finding SYMPTOM=STATE or --seen N --in HOURS");
            }
            if ((seen == null) != (hours == null) || (seen == null && !conditions.isEmpty())) {
                throw new UsageException("--seen and --in go together, and --condition with them");
            }
            if (test != null && !told) {
                throw new UsageException("--test goes with its result; give words or --finding SYMPTOM=STATE");
            }
            if (owner && !told) {
                throw new UsageException("--owner goes with what was said; give words or --finding SYMPTOM=STATE");
            }
            if (minutes != null && test == null && after == null) {
                throw new UsageException(
                        "--minutes goes with --test or --after: it is the bench time of a test or a fix");
            }
            if (seen != null && seen < 0) {
                throw new UsageException("--seen " + seen + ": give how often the fault showed, 0 for never");
            }
            if (hours != null && !(hours > 0)) {
                throw new UsageException("a run of " + ProofPage.hours(hours) + " tells nothing; give more than 0");
            }
            UnitOptions.noMinutes(minutes).ifPresent(wrong -> {
                throw new UsageException(wrong);
            });
        }

        private CaseEvent note(KnowledgeBase kb, String text, List<Finding> read) {
            String testId = test;
            if (testId == null) {
                return new CaseEvent.Noted(kb.head(id), text, owner ? Reading.Source.OWNER : Reading.Source.SEEN, read);
            }
            UnitOptions.noTest(kb, testId).ifPresent(wrong -> {
                throw new UsageException(wrong);
            });
            return new CaseEvent.Tested(kb.head(id), testId, read, minutes, text);
        }
    }

    /** The fix as done now, for the cause concluded; where it is noted and stands, only the minutes it took, if any. */
    private static Optional<CaseEvent> done(
            KnowledgeBase kb, CaseHistory history, String fix, @Nullable Double minutes) {
        String fixId = UnitOptions.fixId(kb, fix);
        Optional<CaseEvent.FixApplied> noted = history.fixes().stream()
                .reduce((first, last) -> last)
                .filter(last -> !last.result().inVain() || last.result() == TriedFix.Result.FAILED)
                .map(TriedFix::fix)
                .filter(last -> last.fixId().equals(fixId));
        if (noted.isPresent()) {
            return noted.filter(cure -> minutes != null)
                    .map(cure -> new CaseEvent.Corrected(
                            kb.head(history.id()),
                            cure.head().eventId(),
                            new CaseEvent.FixApplied(cure.head(), fixId, cure.causeId(), minutes, cure.note())));
        }
        String causeId = history.causeId() == null ? CaseEvent.FixApplied.UNKNOWN_CAUSE : history.causeId();
        return Optional.of(new CaseEvent.FixApplied(kb.head(history.id()), fixId, causeId, minutes, ""));
    }

    private static String nothingRead(Knowledge knowledge, @Nullable String testId) {
        return "Noted; no finding was read from it."
                + Optional.ofNullable(testId).flatMap(knowledge::test).stream()
                        .flatMap(t -> t.readings().stream().limit(1))
                        .flatMap(r -> knowledge.symptom(r.symptomId()).stream())
                        .map(s -> " The test reads " + s.name() + ": name it in the words, or give --finding " + s.id()
                                + "= with one of "
                                + s.states().stream().map(State::id).collect(Collectors.joining(", ")) + ".")
                        .collect(Collectors.joining());
    }

    private static CaseEvent.Checked run(
            CaseEvent.Head head, int seen, @Nullable Double hours, List<Reading.Condition> how) {
        try {
            return seen == 0
                    ? new CaseEvent.Checked(head, "", CaseEvent.Checked.Result.PASSED, null, hours, how, "")
                    : new CaseEvent.Checked(head, "", CaseEvent.Checked.Result.FAILED, seen, hours, how, "");
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    /** Answers with the case as it stands now. */
    private record Answer(Bench bench, boolean json) {
        void give(KnowledgeBase kb, String id, String done) {
            if (json) {
                bench.out().println(Json.history(known(kb, id)));
            } else {
                bench.page().text(0, done);
            }
        }
    }

    /** Lists cases. */
    @Command(name = "list", description = "List cases, the newest first.", mixinStandardHelpOptions = true)
    static final class ListCases extends BenchCommand {
        @Option(names = "--open", description = "Only those still open, not fixed, or come back.")
        boolean onlyOpen;

        @Option(
                names = "--limit",
                paramLabel = "N",
                defaultValue = "50",
                description = "Most to look through (default ${DEFAULT-VALUE}).")
        int limit;

        ListCases(Bench bench) {
            super(bench);
        }

        @Override
        public Integer call() {
            if (limit < 1) {
                throw new UsageException("--limit " + limit + " lists nothing; give 1 or more");
            }
            try (KnowledgeBase kb = open()) {
                List<CaseHistory> newest = kb.cases(limit);
                List<CaseHistory> cases =
                        newest.stream().filter(h -> !onlyOpen || h.unfinished()).toList();
                if (json) {
                    bench.out().println(Json.histories(cases));
                } else {
                    CasePage page = new CasePage(kb.knowledge(), bench.page());
                    cases.forEach(page::summary);
                }
                if (newest.size() == limit && limit < kb.caseCount()) {
                    bench.tell("looked at the newest " + limit + " of " + kb.caseCount()
                            + " cases; --limit looks further");
                }
                if (cases.isEmpty()) {
                    bench.tell(
                            "no " + (onlyOpen ? "open case" : "case yet") + "; 'benchlore case open WORDS' starts one");
                    return ExitCode.NOTHING_FOUND;
                }
                return ExitCode.DONE;
            }
        }
    }

    /** Takes a case or one of its events back. */
    @Command(
            name = "withdraw",
            description = "Take back a case, or one event of it; it then counts for nothing.",
            mixinStandardHelpOptions = true)
    static final class Withdraw extends BenchCommand {
        @Parameters(index = "0", paramLabel = "CASE", description = "Case id.")
        String id = "";

        @Option(
                names = "--event",
                paramLabel = "ID",
                description =
                        "Only this event of the case, by the id that 'benchlore show CASE' has in brackets; that of a"
                                + " withdrawal brings back what it took.")
        @Nullable
        String event;

        @Option(names = "--reason", paramLabel = "WORDS", defaultValue = "", description = "Why.")
        String reason = "";

        Withdraw(Bench bench) {
            super(bench);
        }

        @Override
        public Integer call() {
            try (KnowledgeBase kb = open()) {
                boolean withdrawn = known(kb, id).withdrawn();
                String eventId = event;
                if (withdrawn && eventId == null) {
                    throw new UsageException("case " + id + " is withdrawn already" + bringingBack(kb, id));
                }
                if (eventId != null
                        && kb.events(id).stream()
                                .noneMatch(e -> e.head().eventId().equals(eventId))) {
                    throw new UsageException("case " + id + " has no event '" + eventId + "'; 'benchlore show " + id
                            + "' has their ids in brackets");
                }
                kb.record(new CaseEvent.Withdrawn(kb.head(id), event, reason));
                new Answer(bench, json).give(kb, id, done(kb, withdrawn));
                return ExitCode.DONE;
            }
        }

        private String done(KnowledgeBase kb, boolean before) {
            boolean after = known(kb, id).withdrawn();
            if (event == null) {
                return "Withdrew case " + id + bringingBack(kb, id) + ".";
            }
            return before && !after
                    ? "Case " + id + " counts again."
                    : "Withdrew an event of case " + id + (after ? "; the case itself stays withdrawn." : ".");
        }
    }
}
