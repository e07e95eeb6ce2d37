package org.benchlore.kb.reading;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.Passage.Item;
import org.benchlore.kb.reading.Reading.CodeSeen;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Token.Kind;
import org.benchlore.kb.reading.analysis.Words;

/** Log codes in running text: those the device packs know, and whatever else looks like one. */
final class Codes {
    private static final int REACH = 6;

    /** Letters that number parts on a board: R12, IC3. Such a token is a part, not a code, unless written with a hyphen. */
    private static final Pattern PART = Pattern.compile(
            "(r|c|l|d|q|u|t|f|j|k|x|y|s|p|w|m|b|ic|cn|tr|zd|jp|sw|vr|rv|bd|pl|sk|fb|fs|tp|rn)[0-9]{1,4}[a-z]?");

    private static final Pattern CODE = Pattern.compile("[a-z]{1,4}[0-9]{2,5}[a-z]?|0x[0-9a-f]{1,8}");

    /** A hyphen makes a code of a letter and a single digit. */
    private static final Pattern HYPHENED = Pattern.compile("[a-z]{1,4}[0-9]{1,5}[a-z]?");

    /** "x3" behind a code. */
    private static final Pattern COUNT = Pattern.compile("x[0-9]{1,4}");

    /** A letter that numbers no part, and a single digit. */
    private static final Pattern SHORT = Pattern.compile("[eghinoz][0-9]");

    private static final Words CODE_WORDS =
            Words.terms("code error err flt log logg list entry fault messag event histori memori store show display "
                    + "diag read");

    /** Words in front of which figures are a code. */
    private static final Words CALLING = Words.terms("code error err flt fehler");

    /** Words between those and the figures. */
    private static final Words CALLED = Words.terms("list no number code nr : , #");

    /** Tokens from a code to how often it came. */
    private static final int COUNT_REACH = 4;

    /** Members of a list of codes that are looked at on either side of one. */
    private static final int LONGEST_LIST = 8;

    /** More often is no count. */
    private static final int MOST_TIMES = 9999;

    /** Tokens from a code to what puts it into former times. */
    private static final int FORMER_REACH = 12;

    private static final int SINCE_REACH = 4;
    private static final Words LONG_AGO =
            Words.spaced("year years yr yrs long old before previously formerly originally");
    private static final Words NONE = Words.spaced("none nothing not never no");
    private static final Words MEANING = Words.spaced("means mean indicates points suggests");
    private static final String TWICE = "twic";
    private static final Words EVERY = Words.terms("every each daili nightli");

    private static final class Mentions {
        final String code;
        final boolean known;
        final int first;
        int count;
        boolean past = true;

        Mentions(String code, boolean known, int first) {
            this.code = code;
            this.known = known;
            this.first = first;
        }
    }

    private final Passage passage;
    private final Lexicon lexicon;

    Codes(Passage passage, Lexicon lexicon) {
        this.passage = passage;
        this.lexicon = lexicon;
    }

    /** Codes in order of their first place; claims for known ones are added to {@code claims}. */
    List<CodeSeen> read(List<Claim> claims) {
        if (!passage.holdsCodes()) {
            return List.of();
        }
        Map<String, Mentions> seen = new LinkedHashMap<>();
        Map<String, Claim> claimed = new LinkedHashMap<>();
        for (int i = 0; i < passage.size(); i++) {
            if (passage.unreal(i) && !explained(i)) {
                continue;
            }
            Item item = passage.itemAt(i);
            Device.Code code = item == null ? null : item.entry.code;
            if (item != null && code != null) {
                if (item.from == i) {
                    mention(code.code(), true, i, item.to, seen);
                    claim(code, item, claimed);
                }
            } else if (item == null ? (looksLikeCode(i) || figures(i)) : noPart(i, item)) {
                mention(written(i), false, i, i + 1, seen);
            }
        }
        claims.addAll(claimed.values());
        return seen.values().stream()
                .map(m -> new CodeSeen(m.code, m.known, m.count, m.past, spanOf(m.first)))
                .toList();
    }

    private void mention(String code, boolean known, int from, int to, Map<String, Mentions> seen) {
        Mentions mentions = seen.computeIfAbsent(code, c -> new Mentions(c, known, from));
        mentions.count += times(from, to);
        mentions.past &= former(from, to);
    }

    /** "H10 means that the lamp is gone": what a code means is told in general, that it came is not. */
    private boolean explained(int code) {
        for (int i = code + 1; i < passage.size() && i <= code + 2 && passage.sameSegment(i, code); i++) {
            if (MEANING.contains(passage.token(i).surface())) {
                return true;
            }
        }
        return false;
    }

    /** "Had H10 last year", "H10 from 2019, none since": told of former times, and not of the time since. */
    private boolean former(int from, int to) {
        boolean former = false;
        for (int i = to; i < passage.size() && i < to + FORMER_REACH && together(i, from); i++) {
            boolean beside = passage.sameSegment(i, from);
            if (cue(i, Cue.NOW)) {
                return former && !beside;
            }
            former |= (beside && longAgo(i)) || noneSince(i);
        }
        for (int i = from - 1; i >= 0 && i >= from - FORMER_REACH && together(i, from) && !cue(i, Cue.NOW); i--) {
            former |= longAgo(i);
        }
        return former;
    }

    private boolean together(int a, int b) {
        return passage.sentence(a) == passage.sentence(b);
    }

    private boolean cue(int i, Cue cue) {
        Item item = passage.itemAt(i);
        return item != null && item.entry.cue == cue;
    }

    /** "Yesterday" and "last week" are near enough for a log. */
    private boolean longAgo(int i) {
        return LONG_AGO.contains(passage.token(i).surface()) && cue(i, Cue.PAST);
    }

    private boolean noneSince(int i) {
        if (!NONE.contains(passage.token(i).surface())) {
            return false;
        }
        for (int s = i + 1; s < passage.size() && s <= i + SINCE_REACH && passage.sameSegment(s, i); s++) {
            if (passage.token(s).surface().equals("since")) {
                return true;
            }
        }
        return false;
    }

    /** How often a code is said to have come: "twice", "(6)", "2x"; 1 where nothing is said. */
    private int times(int from, int to) {
        int before = from == 0 ? 0 : (int) times(from - 1);
        if (before > 0) {
            return Math.min(before, MOST_TIMES);
        }
        for (int i = to; i < Math.min(passage.size(), to + COUNT_REACH); i++) {
            Token token = passage.token(i);
            boolean bracketed = token.kind() == Kind.NUMBER
                    && token.resolution() >= 1
                    && passage.token(i - 1).is("(")
                    && i + 1 < passage.size()
                    && passage.token(i + 1).is(")");
            int said = bracketed ? (int) token.value() : (token.term().equals(TWICE) ? 2 : (int) times(i));
            if (said > 0) {
                // "2x G4" is said of the next one
                boolean next = token.unit().equals("times")
                        && i + 1 < passage.size()
                        && passage.token(i + 1).kind() == Kind.CODE;
                return next ? 1 : Math.min(said, MOST_TIMES);
            }
            if (token.kind() == Kind.CODE || passage.sentence(i) != passage.sentence(from)) {
                return 1;
            }
        }
        return 1;
    }

    /** "Err list 21 21 40": whole numbers called codes. */
    private boolean figures(int at) {
        Token token = passage.token(at);
        if (token.kind() != Kind.NUMBER || token.resolution() < 1 || token.end() - token.start() < 2) {
            return false;
        }
        for (int i = at - 1; i >= 0 && i >= at - REACH; i--) {
            Token before = passage.token(i);
            if (CALLING.contains(before.term())) {
                return true;
            }
            if (before.kind() != Kind.NUMBER && !CALLED.contains(before.term())) {
                return false;
            }
        }
        return false;
    }

    private Reading.Span spanOf(int token) {
        Item item = passage.itemAt(token);
        return item == null ? passage.span(token, token + 1) : passage.span(item.from, item.to);
    }

    private String written(int token) {
        return passage.span(token, token + 1).text();
    }

    private boolean looksLikeCode(int i) {
        Token token = passage.token(i);
        if (token.kind() != Kind.CODE) {
            return false;
        }
        String written = passage.text.substring(token.start(), token.end());
        boolean capitals = written.equals(written.toUpperCase(Locale.ROOT)) || written.startsWith("0x");
        boolean hyphen = written.indexOf('-') > 0;
        boolean part = PART.matcher(token.term()).matches() && !hyphen && !counted(i);
        if (!capitals || part || COUNT.matcher(token.term()).matches()) {
            return false;
        }
        if (CODE.matcher(token.term()).matches()) {
            return true;
        }
        Pattern few = (hyphen || counted(i)) ? HYPHENED : SHORT;
        return few.matcher(token.term()).matches() && (again(i) || times(i, i + 1) > 1 || spokenOf(i));
    }

    /** "Faults C9 C9 C2", "errors L02 (23)": what would be a part but for being counted. */
    private boolean noPart(int at, Item item) {
        Token token = passage.token(at);
        boolean part = token.kind() == Kind.CODE
                && item.to - item.from == 1
                && PART.matcher(token.term()).matches();
        boolean code = part && looksLikeCode(at);
        item.done |= code;
        return code;
    }

    private boolean counted(int at) {
        return spokenOf(at) && (again(at) || times(at, at + 1) > 1);
    }

    /** Whether one is listed twice in a row, as no part would be: all in such a list are codes. */
    private boolean again(int at) {
        int from = at;
        for (int steps = 0; steps < LONGEST_LIST && from > 0 && beside(from); steps++) {
            from = before(from);
        }
        int i = from;
        for (int steps = 0; steps < 2 * LONGEST_LIST && next(i) < passage.size() && beside(next(i)); steps++) {
            if (passage.token(i).term().equals(passage.token(next(i)).term())) {
                return true;
            }
            i = next(i);
        }
        return false;
    }

    /** Whether a code stands right in front of a code, a comma between at most. */
    private boolean beside(int token) {
        int before = before(token);
        return before >= 0
                && passage.token(token).kind() == Kind.CODE
                && passage.token(before).kind() == Kind.CODE;
    }

    private int before(int token) {
        boolean comma = token > 1 && passage.token(token - 1).is(",");
        return comma ? token - 2 : token - 1;
    }

    private int next(int token) {
        boolean comma = token + 1 < passage.size() && passage.token(token + 1).is(",");
        return comma ? token + 2 : token + 1;
    }

    /** Whether the few words before a token or behind it speak of codes. */
    private boolean spokenOf(int at) {
        for (int i = Math.max(0, at - REACH); i < Math.min(passage.size(), at + REACH); i++) {
            if (CODE_WORDS.contains(passage.token(i).term())) {
                return true;
            }
        }
        return false;
    }

    private void claim(Device.Code code, Item item, Map<String, Claim> claimed) {
        Optional<Symptom> symptom = lexicon.symptom(code.symptomId());
        if (symptom.isEmpty()) {
            return;
        }
        Claim before = claimed.get(code.code());
        String state = before != null ? "recurring" : said(item, symptom.get());
        int index = symptom.get().indexOf(state);
        if (index < 0) {
            return;
        }
        if (before == null) {
            Claim claim = new Claim(symptom.get(), index, null, item.from, item.to);
            claim.over = former(item.from, item.to);
            cover(claim, item, symptom.get());
            claimed.put(code.code(), claim);
        } else if (!symptom.get().states().get(before.state).id().equals("absent")) {
            before.state = index;
            before.over &= former(item.from, item.to);
        }
        item.done = true;
    }

    private String said(Item code, Symptom symptom) {
        for (int i = code.from - 1; i >= 0 && i >= code.from - REACH && passage.sameSegment(i, code.from); i--) {
            Item item = passage.itemAt(i);
            if (item != null && item.cue(Cue.NEGATION)) {
                return "absent";
            }
        }
        int place = place(code, symptom);
        return place < 0 ? "once" : stateAt(place, symptom);
    }

    /** The nearest token that says how often, in the clause of a code; -1 if none does. */
    private int place(Item code, Symptom symptom) {
        for (int step = 0; step < REACH; step++) {
            for (int i : new int[] {code.to + step, code.from - 1 - step}) {
                boolean near = i >= 0 && i < passage.size() && passage.sameClause(i, code.from);
                if (near && !stateAt(i, symptom).isEmpty()) {
                    return i;
                }
            }
        }
        return -1;
    }

    private String stateAt(int token, Symptom symptom) {
        double times = times(token);
        if (times > 0) {
            return times > 1 ? "recurring" : "once";
        }
        if (EVERY.contains(passage.token(token).term())) {
            return "recurring";
        }
        Item item = passage.itemAt(token);
        if (item == null) {
            return "";
        }
        for (Sense sense : item.entry.words) {
            if (sense.symptom().id().equals(symptom.id())) {
                return sense.stateOf().id();
            }
        }
        return item.entry.cue == Cue.AGAIN ? "recurring" : item.entry.cue == Cue.ONCE ? "once" : "";
    }

    /** How often a token says: "4x", "x4", the number in "4 x"; 0 if it does not. */
    private double times(int token) {
        Token counted = passage.token(token);
        if (counted.unit().equals("times")) {
            return counted.value();
        }
        boolean by =
                token + 1 < passage.size() && passage.token(token + 1).term().equals("x");
        if (counted.kind() == Kind.NUMBER && by) {
            return counted.value();
        }
        return COUNT.matcher(counted.term()).matches()
                ? Integer.parseInt(counted.term().substring(1))
                : 0;
    }

    private void cover(Claim claim, Item code, Symptom symptom) {
        int place = place(code, symptom);
        for (int i = Math.max(0, code.from - REACH); i < passage.size() && i < code.to + REACH; i++) {
            Item item = passage.itemAt(i);
            boolean negation =
                    item != null && item.cue(Cue.NEGATION) && i < code.from && passage.sameSegment(i, code.from);
            if (negation || i == place) {
                claim.cover(item == null ? i : item.from, item == null ? i + 1 : item.to);
                if (item != null) {
                    item.done = true;
                }
            }
        }
    }
}
