package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.PowerOff;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Reading.CodeSeen;
import org.benchlore.kb.reading.Reading.Contradiction;
import org.benchlore.kb.reading.Reading.Span;
import org.benchlore.kb.reading.Reading.Understood;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.Token;
import org.jspecify.annotations.Nullable;

/**
 * Reads what people write at the bench into findings. Immutable and thread-safe; one lexicon is built per scope that the
 * packs tell apart, on first use.
 *
 * <p>The way through: tokens ({@code analysis.Lexer}), the packs' words in them ({@code Trie}), readings told from nominal
 * values ({@code Values}), names joined with what is said of them ({@code Linker}, {@code Negations}), and what the
 * sentence says about that ({@code Context}).
 */
public final class Reader {
    /** Longest text read at once, in UTF-16 units. */
    public static final int MOST_CHARACTERS = 1 << 20;

    /** Tokens a negation reaches. NegEx is reported with five and with six. */
    static final int NEGATION_REACH = 6;

    private final List<Symptom> symptoms;
    private final List<Device> devices;
    private final Kinds kinds;
    private final Set<PowerOff.Sign> hazards;
    private final Set<DeviceScope> scopes;
    private final int negationReach;

    /** At most one per scope named in the packs. */
    private final Map<DeviceScope, Lexicon> lexicons = new ConcurrentHashMap<>();

    private Reader(List<Symptom> symptoms, List<Device> devices, Set<PowerOff.Sign> hazards, int negationReach) {
        this.symptoms = List.copyOf(symptoms);
        this.hazards = Set.copyOf(hazards);
        this.devices = devices.stream().filter(device -> !device.onlyKind()).toList();
        this.kinds = new Kinds(devices);
        this.negationReach = negationReach;
        Set<DeviceScope> named = new HashSet<>();
        named.add(DeviceScope.ANY);
        symptoms.forEach(s -> named.add(s.scope()));
        this.devices.forEach(d -> named.add(d.scope()));
        this.scopes = Set.copyOf(named);
    }

    /** A reader that knows the words of these packs. */
    public static Reader of(Knowledge knowledge) {
        Set<PowerOff.Sign> hazards = knowledge.powerOff().stream()
                .map(rule -> new PowerOff.Sign(rule.symptomId(), rule.stateId()))
                .collect(Collectors.toSet());
        return new Reader(List.copyOf(knowledge.symptoms()), knowledge.devices(), hazards, NEGATION_REACH);
    }

    static Reader of(List<Symptom> symptoms, List<Device> devices, int negationReach) {
        return new Reader(symptoms, devices, Set.of(), negationReach);
    }

    /** Whether a text is short enough to be read; what came by import may not be. */
    public static boolean takes(String text) {
        return text.length() <= MOST_CHARACTERS;
    }

    /**
     * Reads a note.
     *
     * @param text any text; findings, spans and what was not understood refer to it exactly
     * @param scope the device it is about; {@link DeviceScope#ANY} when unknown
     * @return never fails on odd text; an empty text gives an empty reading
     * @throws TextTooLongException if the text has more than {@link #MOST_CHARACTERS}
     */
    public Reading read(String text, DeviceScope scope) {
        if (!takes(text)) {
            throw new TextTooLongException(text.length(), MOST_CHARACTERS);
        }
        Lexicon lexicon = lexicon(scope);
        LogParse log = LogParse.inNote(text, lexicon);
        List<Token> tokens = Lexer.tokens(log.prose());
        @Nullable Kinds.Name[] units = kinds.names(tokens);
        Passage passage = new Passage(text, tokens, units, lexicon);
        Kinds.Named named = Kinds.in(passage, units);
        passage.nameUnit(named.unit());
        List<Claim> claims = new ArrayList<>();
        List<CodeSeen> codes = log.with(new Codes(passage, lexicon).read(claims));
        claims.removeIf(claim -> log.counts(claim.symptom.id()));
        claims.addAll(new Linker(passage, lexicon, negationReach).link());
        claims.sort(Claim.BY_PLACE);
        List<Understood> understood = new ArrayList<>(understood(passage, claims));
        understood.addAll(log.understood());
        understood.sort(Comparator.comparingInt((Understood u) -> u.span().start())
                .thenComparingInt(u -> u.span().end())
                .thenComparing(u -> u.finding().symptomId()));
        return new Reading(
                text,
                scope,
                understood,
                notUnderstood(Leftovers.of(passage, claims, named.spoken()), log.unread()),
                new Quantities(passage, lexicon).list(),
                contradictions(understood),
                codes,
                scope.depth() == 0 ? named.ids() : scope.path().subList(0, 1));
    }

    /**
     * Reads a pasted log with the line patterns of the scope's device packs; where there are none, by what logs have in common.
     *
     * @param log whole lines; those no pattern fits are listed, not guessed at
     * @param scope the device it is from
     * @throws TextTooLongException if the log has more than {@link #MOST_CHARACTERS}
     */
    public LogReading readLog(String log, DeviceScope scope) {
        if (!takes(log)) {
            throw new TextTooLongException(log.length(), MOST_CHARACTERS);
        }
        return LogParse.of(log, lexicon(scope)).reading();
    }

    private Lexicon lexicon(DeviceScope scope) {
        Lexicon own = lexicons.get(scope);
        if (own != null) {
            return own;
        }
        DeviceScope nearest = DeviceScope.ANY;
        for (DeviceScope around : scope.lineage()) {
            if (scopes.contains(around)) {
                nearest = around;
            }
        }
        return lexicons.computeIfAbsent(nearest, s -> Lexicon.of(symptoms, devices, hazards, s));
    }

    private static List<Span> notUnderstood(List<Span> inProse, List<Span> inLog) {
        if (inLog.isEmpty()) {
            return inProse;
        }
        List<Span> all = new ArrayList<>(inProse);
        all.addAll(inLog);
        all.sort(Comparator.comparingInt(Span::start));
        return all;
    }

    private static List<Understood> understood(Passage passage, List<Claim> claims) {
        Stretches.stretch(passage, claims);
        Context context = new Context(passage, claims);
        List<Understood> understood = new ArrayList<>(claims.size());
        for (int i = 0; i < claims.size(); i++) {
            Claim claim = claims.get(i);
            Set<Cue> cues = context.of(i);
            Span span = passage.span(claim.stretchFrom, claim.stretchTo);
            understood.add(new Understood(
                    claim.finding(cues.contains(Cue.DOUBT)),
                    span,
                    Context.source(claim, cues),
                    Context.conditions(cues),
                    claim.over || (cues.contains(Cue.PAST) && !claim.symptom.history()),
                    claim.note));
        }
        return understood;
    }

    /** Each finding against the first one of its symptom that says something else under the same conditions. */
    private static List<Contradiction> contradictions(List<Understood> understood) {
        Set<String> symptoms = new HashSet<>();
        boolean twice = false;
        for (Understood u : understood) {
            twice |= !symptoms.add(u.finding().symptomId());
        }
        if (!twice) {
            return List.of();
        }
        List<Contradiction> contradictions = new ArrayList<>();
        Map<List<Object>, Integer> firsts = new HashMap<>();
        for (int i = 0; i < understood.size(); i++) {
            Understood u = understood.get(i);
            if (!u.past()) {
                String symptom = u.finding().symptomId();
                Integer first = firsts.putIfAbsent(List.of(symptom, u.conditions()), i);
                if (first != null && !Reading.agree(understood.get(first).finding(), u.finding())) {
                    contradictions.add(new Contradiction(symptom, first, i));
                }
            }
        }
        return contradictions;
    }
}
