package org.benchlore.kb.importing;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseEvent.Head;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.Certainty;
import org.benchlore.kb.cases.Outcome;
import org.benchlore.kb.importing.ImportDraft.Item;
import org.benchlore.kb.importing.ImportDraft.Told;
import org.benchlore.kb.importing.RawRecord.Part;
import org.benchlore.kb.knowledge.BenchTest;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.reading.Reading.Source;
import org.jspecify.annotations.Nullable;

/**
 * The events of one record. Every word of it is kept in some event: notes hold what was seen, with the findings read from
 * it; words of work, conclusions and endings stand as notes on those. Findings are read from the words up to the work, so
 * that "12 V fine" behind it is not taken for the fault.
 */
final class Story {
    private static final Pattern EMPTY_BRACKETS = Pattern.compile("[(\\[]\\s*+[)\\]]");
    /** What a cause shows in fewer of its cases does not stand for it. The word's number in packs. */
    private static final double SELDOM = 0.1;

    private static final Duration STEP = Duration.ofMinutes(1);

    private final Knowledge knowledge;
    private final Reader reader;
    private final Names names;
    private final Heading heading;
    private final String caseId;
    private final long line;
    private final List<Told> told = new ArrayList<>();
    private final List<CaseEvent> events = new ArrayList<>();
    private final List<String> unread = new ArrayList<>();
    private final Map<Item, Integer> counts = new EnumMap<>(Item.class);

    private final Set<String> kinds = new LinkedHashSet<>();

    /** Tests and conclusions that wait for the note they stand in. */
    private final List<Act> waiting = new ArrayList<>();

    private List<Act> acts = List.of();
    private Optional<String> concluded = Optional.empty();
    private boolean proven;
    private int actsDone;
    private boolean reads = true;
    private Instant last;
    private @Nullable LocalDate fixedOn;

    /**
     * @param line where the record begins
     * @param opened its day, or the epoch
     */
    Story(Knowledge knowledge, Reader reader, Names names, Heading heading, String caseId, long line, Instant opened) {
        this.knowledge = knowledge;
        this.reader = reader;
        this.names = names;
        this.heading = heading;
        this.caseId = caseId;
        this.line = line;
        this.last = opened;
    }

    String caseId() {
        return caseId;
    }

    List<CaseEvent> events() {
        return events;
    }

    List<Told> told() {
        return told;
    }

    /** The class of the device, else those that the words name. */
    List<String> kinds() {
        return heading.scope().depth() > 0 ? heading.scope().path().subList(0, 1) : List.copyOf(kinds);
    }

    List<String> unread() {
        return unread;
    }

    /** Keeps the day as told. */
    void date(LocalDate day) {
        told.add(new Told(Item.DATE, day.toString(), ""));
    }

    /** What a case has and this one does not tell, but for tests, which many cases do without. */
    Set<Item> unknown() {
        Set<Item> unknown = EnumSet.allOf(Item.class);
        unknown.remove(Item.TEST);
        told.stream().filter(t -> !t.id().isEmpty()).forEach(t -> unknown.remove(t.item()));
        return unknown;
    }

    /**
     * Makes the events.
     *
     * @param parts the record's texts with what each tells, in order
     * @param workedOn whether somebody had worked on the unit before
     */
    void tell(Map<Part, List<Act>> parts, boolean workedOn) {
        acts = parts.values().stream().flatMap(List::stream).toList();
        for (Act act : acts) {
            concluded = act.is(Act.Kind.CAUSE) && act.known() ? Optional.of(act.id()) : concluded;
            Outcome outcome = act.outcome();
            proven = outcome == null ? proven : CaseTeller.cured(outcome);
        }
        told.addAll(heading.told());
        events.add(new CaseEvent.Opened(
                new Head(caseId + ":opened", caseId, last),
                heading.scope(),
                complaint(parts),
                heading.unit(),
                CaseHistory.OWN,
                workedOn));
        for (String words : heading.kept()) {
            if (Reader.takes(words)) {
                kinds.addAll(reader.read(words, heading.scope()).kinds());
            }
            events.add(new CaseEvent.Noted(next(Item.FINDING, 'n'), words, Source.SEEN, List.of()));
        }
        parts.forEach(this::text);
        concludeByCure();
    }

    /** The complaint as labelled, else the first sentence up to work, a conclusion or an ending. */
    private String complaint(Map<Part, List<Act>> parts) {
        if (!heading.complaint().isEmpty()) {
            return Wording.complaint(heading.complaint());
        }
        Optional<Part> first = parts.keySet().stream().findFirst().filter(p -> p.field() == ImportField.NOTES);
        return first.map(part -> {
                    String text = Stretch.blank(part.text(), 0, part.text().length(), places(part));
                    int act = parts.getOrDefault(part, List.of()).stream()
                            .filter(a -> !a.is(Act.Kind.TEST))
                            .mapToInt(Act::start)
                            .min()
                            .orElse(text.length());
                    int end = Math.min(act, Wording.sentenceEnd(text, 0));
                    return Wording.complaint(Wording.bare(
                            EMPTY_BRACKETS.matcher(text.substring(0, end)).replaceAll(" ")));
                })
                .orElse("");
    }

    private List<Stretch> places(Part part) {
        return heading.places().getOrDefault(part, List.of());
    }

    private Head next(Item item, char letter) {
        last = last.plus(STEP);
        return new Head(caseId + ":" + letter + counts.merge(item, 1, Integer::sum), caseId, last);
    }

    /** Notes, acts and endings of one text, in order. */
    private void text(Part part, List<Act> own) {
        part.date().ifPresent(date -> {
            Instant day = date.atStartOfDay(ZoneOffset.UTC).toInstant();
            last = day.isAfter(last) ? day : last;
        });
        // a table's column of readings stands beside the notes, not behind them
        reads |= part.field() == ImportField.MEASURED && part.line() == line;
        List<Stretch> elsewhere = new ArrayList<>(places(part));
        List<Stretch> blanked = new ArrayList<>(elsewhere);
        int from = 0;
        for (Act act : own) {
            actsDone++;
            if (act.is(Act.Kind.TEST) || act.is(Act.Kind.CAUSE)) {
                waiting.add(act);
                if (part.field() == ImportField.CAUSE && act.known()) {
                    blanked.add(new Stretch(act.start(), act.end()));
                    elsewhere.add(new Stretch(act.start(), act.end()));
                }
                continue;
            }
            boolean event = act.known() || act.is(Act.Kind.ENDING);
            blanked.add(new Stretch(act.start(), act.end()));
            // work and its ending may share a clause, and then share its words
            note(part, from, Math.max(from, event ? act.start() : act.end()), blanked, elsewhere);
            Outcome outcome = act.outcome();
            if (outcome == null) {
                work(act, part);
                reads = readsAfter(act);
            } else {
                ending(act, outcome, part);
                reads |= CaseTeller.failed(outcome);
            }
            from = act.end();
            int past = from;
            blanked.removeIf(s -> s.end() <= past);
        }
        note(part, from, part.text().length(), blanked, elsewhere);
    }

    /**
     * Whether what is seen after some work is still of the fault: the next that is told is that it did not help, or, after a
     * fix whose event parts before from after, more work.
     */
    private boolean readsAfter(Act work) {
        Optional<Act> next = acts.stream()
                .skip(actsDone)
                .filter(a -> a.is(Act.Kind.WORK) || a.is(Act.Kind.ENDING))
                .findFirst();
        boolean failed = next.map(Act::outcome).filter(CaseTeller::failed).isPresent();
        return failed || (work.known() && next.filter(a -> a.is(Act.Kind.WORK)).isPresent());
    }

    /**
     * A note of a stretch of text.
     *
     * @param blanked words to read no findings from
     * @param elsewhere words that are kept elsewhere, so that they alone make no note
     */
    private void note(Part part, int from, int to, List<Stretch> blanked, List<Stretch> elsewhere) {
        boolean kept = Stretch.blank(part.text(), from, to, elsewhere).chars().noneMatch(Character::isLetterOrDigit);
        String words = kept ? "" : Wording.bare(part.text().substring(from, to));
        List<Reading.Understood> understood = List.of();
        List<Finding> findings = List.of();
        if (reads && !words.isEmpty()) {
            Reading reading = reader.read(Stretch.blank(part.text(), from, to, blanked), heading.scope());
            kinds.addAll(reading.kinds());
            understood = reading.understood().stream().filter(u -> !u.past()).toList();
            findings = reading.findings();
            for (Reading.Span span : reading.notUnderstood()) {
                if (unread.size() < ImportDraft.MOST_UNREAD) {
                    unread.add(Wording.cut(span.text()));
                }
            }
        }
        for (Reading.Understood u : understood) {
            String id = u.finding().symptomId() + "=" + u.finding().state();
            told.add(new Told(Item.FINDING, id, Wording.cut(u.span().text())));
        }
        boolean complaint = part.field() == ImportField.COMPLAINT && !Wording.cutsComplaint(heading.complaint());
        if (!findings.isEmpty() || (!complaint && !words.isEmpty())) {
            events.add(new CaseEvent.Noted(
                    next(Item.FINDING, 'n'), complaint ? "" : words, source(part.field(), understood), findings));
        }
        for (Act act : waiting) {
            if (act.is(Act.Kind.CAUSE)) {
                cause(act, part);
            } else {
                test(act, part, from, understood);
            }
        }
        waiting.clear();
    }

    private static Source source(ImportField field, List<Reading.Understood> understood) {
        if (field == ImportField.COMPLAINT || field == ImportField.MEASURED) {
            return field == ImportField.COMPLAINT ? Source.OWNER : Source.MEASURED;
        }
        Set<Source> sources = EnumSet.noneOf(Source.class);
        understood.forEach(u -> sources.add(u.source()));
        return sources.size() == 1 ? sources.iterator().next() : Source.SEEN;
    }

    /** A test with those of the findings beside it, in the same sentence, that it reveals. */
    private void test(Act act, Part part, int offset, List<Reading.Understood> understood) {
        List<String> reveals = knowledge.test(act.id()).map(BenchTest::reveals).orElse(List.of());
        int end = Wording.sentenceEnd(part.text(), act.end() - 1);
        Map<String, Finding> results = new LinkedHashMap<>();
        for (Reading.Understood u : understood) {
            int at = u.span().start() + offset;
            if (at >= act.start() && at < end && reveals.contains(u.finding().symptomId())) {
                results.put(u.finding().symptomId(), u.finding());
            }
        }
        String words = part.text().substring(act.start(), act.end());
        told.add(new Told(Item.TEST, act.id(), Wording.cut(words)));
        events.add(new CaseEvent.Tested(next(Item.TEST, 't'), act.id(), List.copyOf(results.values()), null, words));
    }

    private void cause(Act act, Part part) {
        String words = part.text().substring(act.start(), act.end());
        told.add(new Told(Item.CAUSE, act.id(), Wording.cut(words)));
        if (act.known()) {
            boolean stands = concluded.filter(act.id()::equals).isPresent();
            boolean sure = stands && proven && act.certainty() == Certainty.LIKELY;
            events.add(new CaseEvent.Concluded(
                    next(Item.CAUSE, 'c'), act.id(), sure ? Certainty.PROVEN : act.certainty(), words));
        }
    }

    private void work(Act act, Part part) {
        String words = part.text().substring(act.start(), act.end());
        told.add(new Told(Item.FIX, act.id(), Wording.cut(words)));
        if (act.known()) {
            String cause =
                    names.meantFor(act.id(), concluded, heading.scope()).orElse(CaseEvent.FixApplied.UNKNOWN_CAUSE);
            events.add(new CaseEvent.FixApplied(next(Item.FIX, 'f'), act.id(), cause, null, words));
        }
    }

    private void ending(Act act, Outcome outcome, Part part) {
        String words = part.text().substring(act.start(), act.end());
        told.add(new Told(Item.OUTCOME, outcome.id(), Wording.cut(words)));
        Integer days = act.afterDays();
        LocalDate now = part.date().orElse(null);
        if (outcome == Outcome.CAME_BACK && days == null && fixedOn != null && now != null && now.isAfter(fixedOn)) {
            days = (int) ChronoUnit.DAYS.between(fixedOn, now);
        }
        events.add(new CaseEvent.Ended(next(Item.OUTCOME, 'o'), outcome, days, words));
        fixedOn = CaseTeller.cured(outcome) ? now : fixedOn;
    }

    /**
     * Where work on one thing cured the unit and no cause is named that the packs know, what they name that fix for was the
     * cause, unless words or findings speak of something else.
     */
    private void concludeByCure() {
        Optional<Act> cure = acts.stream()
                .filter(a -> a.is(Act.Kind.WORK))
                .reduce((a, b) -> b)
                .filter(a -> a.known() && !a.several());
        if (concluded.isPresent() || !proven) {
            return;
        }
        cure.flatMap(fix -> names.meantFor(fix.id(), Optional.empty(), heading.scope()))
                .filter(this::plausible)
                .filter(cause -> told.stream()
                        .filter(t -> t.item() == Item.CAUSE)
                        .allMatch(t -> names.hints(cause, NameWords.of(PhraseTable.words(t.words())))))
                .ifPresent(cause -> {
                    told.add(new Told(Item.CAUSE, cause, ""));
                    events.add(new CaseEvent.Concluded(
                            next(Item.CAUSE, 'c'), cause, Certainty.LIKELY, "by the fix that cured it"));
                });
    }

    /** Whether no finding speaks against a cause, as the packs weigh them, or is seldom seen with it. */
    private boolean plausible(String causeId) {
        for (Link link : knowledge.cause(causeId).map(Cause::shows).orElse(List.of())) {
            for (CaseEvent event : events) {
                if (event instanceof CaseEvent.Noted noted && !fits(link, noted.findings())) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean fits(Link link, List<Finding> findings) {
        return findings.stream()
                .filter(finding -> finding.symptomId().equals(link.symptomId()))
                .allMatch(finding -> {
                    double usual = knowledge
                            .symptom(finding.symptomId())
                            .flatMap(s -> s.state(finding.state()))
                            .map(State::usual)
                            .orElse(1.0);
                    double shown = link.states().getOrDefault(finding.state(), usual);
                    return shown >= usual && shown >= SELDOM;
                });
    }
}
