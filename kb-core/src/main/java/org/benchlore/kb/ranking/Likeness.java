package org.benchlore.kb.ranking;

import com.google.common.base.CharMatcher;
import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchlore.kb.knowledge.Cause;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Link;
import org.benchlore.kb.knowledge.State;
import org.benchlore.kb.knowledge.Symptom;
import org.benchlore.kb.reading.analysis.Lexer;
import org.benchlore.kb.reading.analysis.SilentWords;
import org.benchlore.kb.reading.analysis.Token;

/**
 * How much the words of a note that was not understood in full are those of a cause's entry. No list of phrases holds every
 * way in which a fault is told, and even a word that makes no finding ("padlock", "platter", "grinder") names a neighbourhood.
 * An entry's words are its name, aliases, how people tell of it, explanation, tests and fixes, and how the states are told that
 * it mostly shows; beside each word stands its {@link Kin group}. Each word of the note counts as ln P(word | entry) / P(word),
 * the entry's share of the word being smoothed by that of all entries with a Dirichlet prior (Zhai and Lafferty, ACM
 * Transactions on Information Systems 22:179-214, 2004), to the power {@value #POWER}, since words of one note repeat each
 * other. Immutable.
 */
final class Likeness {
    /**
     * Set with {@link #PRIOR}, {@link #RARE} and {@link #OWN} by log-loss on 1283 tellings, each compared with the entries without
     * itself, on 428 whose cause was taken out, and on 57 notes written before the packs were read; flat around it.
     */
    private static final double POWER = 0.6;

    /**
     * Findings beside which words count in full. On the demo's cases, whose findings are many, log-loss fell from 0.69 to 0.59,
     * and stayed on 280 notes with few.
     */
    private static final double FINDINGS = 3;

    /**
     * Words for each finding from which on they count in full: a terser note, "green light, no 12 V", has said all in its
     * findings. Log-loss is flat up to here on 280 notes, and 0.01 up on 500 complaints of a line each.
     */
    private static final double WORDS_EACH = 3;

    /**
     * What the cause behind a note gets, had it an entry, of the most that each word lends to any. The best of all entries gets
     * 0.33 in the middle of 100 notes of known causes, and 0.23 of 40 whose fault is in none. It took the mean chance of the
     * unlisted cause from 0.02 to 0.53 on these, to 0.03 on those, and from 0.03 to 0.39 on 60 that it was not set on.
     */
    private static final double OWN = 0.28;

    /** Entries of mean length that the smoothing is worth. */
    private static final double PRIOR = 0.8;

    /** Added to a word's count over all entries: a word heard once is no proof. */
    private static final double RARE = 8;

    /** From this share on a state belongs to the picture of a cause. */
    private static final double SHOWN = 0.5;

    /** Different words of a note that count in full; a pasted log of hundreds must not drown its findings. */
    private static final double NOTE = 40;

    private static final double NAMED = 2;
    private static final double TOLD = 0.25;

    /** "Phone" stands in few entries by chance; at half, log-loss on unseen notes fell by a twentieth. */
    private static final double UNIT = 0.5;

    /** A word's {@link Kin group} beside the word itself. */
    private static final double KIN = 0.5;

    /** How people tell of a cause is nearest to a note. */
    private static final double HEARD = 2;

    /** Beside {@link SilentWords}. */
    private static final Set<String> SILENT = Set.of("on", "off", "is", "was", "one", "all", "out", "up");

    /**
     * Words behind a denial that tell of nothing. On 100 notes that nothing was set on log-loss fell from 0.84 to 0.71 with two,
     * and to 0.74 with one or three, where before what was read as denied had been left out.
     */
    private static final int DENIED = 2;

    private record Posting(int cause, double weight) {}

    private final Map<String, List<Posting>> postings = new HashMap<>();
    private final int causes;

    /**
     * Reads the entries.
     *
     * @param listed the causes, in the order of the weights wanted
     */
    Likeness(Knowledge knowledge, List<Cause> listed) {
        causes = listed.size();
        Vocabulary vocabulary = new Vocabulary();
        List<Map<String, Double>> entries = new ArrayList<>(causes);
        Map<String, Double> counts = new HashMap<>();
        double words = 0;
        for (Cause cause : listed) {
            Map<String, Double> entry = entry(knowledge, cause, vocabulary);
            entry.forEach((term, count) -> counts.merge(term, count, Double::sum));
            words += length(entry);
            entries.add(entry);
        }
        for (int c = 0; c < causes; c++) {
            Map<String, Double> entry = entries.get(c);
            double relativeLength = length(entry) * causes / words;
            for (Map.Entry<String, Double> e : entry.entrySet()) {
                double usual = (counts.getOrDefault(e.getKey(), 0.0) + RARE) / causes;
                double share = Kin.namesUnit(e.getKey()) ? UNIT : 1;
                double weight = share * POWER * Math.log1p(e.getValue() / (relativeLength * PRIOR * usual));
                postings.computeIfAbsent(e.getKey(), term -> new ArrayList<>(2)).add(new Posting(c, weight));
            }
        }
    }

    private static Map<String, Double> entry(Knowledge knowledge, Cause cause, Vocabulary vocabulary) {
        Map<String, Double> entry = new HashMap<>();
        vocabulary.add(entry, cause.name(), NAMED);
        cause.aliases().forEach(alias -> vocabulary.add(entry, alias, NAMED));
        vocabulary.add(entry, cause.about(), 1);
        cause.told().forEach(text -> vocabulary.add(entry, text, HEARD));
        cause.fools().forEach(line -> vocabulary.add(entry, line, TOLD));
        cause.confirmedBy().forEach(id -> knowledge.test(id).ifPresent(test -> vocabulary.add(entry, test.name(), 1)));
        cause.fixedBy()
                .forEach(
                        remedy -> knowledge.fix(remedy.fixId()).ifPresent(fix -> vocabulary.add(entry, fix.name(), 1)));
        for (Link link : cause.shows()) {
            Symptom symptom = knowledge.symptom(link.symptomId()).orElseThrow();
            for (State state : symptom.states()) {
                if (!state.normal() && link.states().getOrDefault(state.id(), 0.0) >= SHOWN) {
                    vocabulary.add(entry, symptom.name(), 1);
                    vocabulary.add(entry, state.name(), 1);
                    Set<String> told = new HashSet<>();
                    state.phrases().forEach(phrase -> told.addAll(vocabulary.terms(phrase)));
                    told.forEach(term -> entry.merge(term, TOLD, Math::max));
                }
            }
        }
        return entry;
    }

    private static double length(Map<String, Double> entry) {
        return entry.values().stream().mapToDouble(Double::doubleValue).sum();
    }

    /** Whether any word of a note stands in an entry. */
    boolean knowsAnyOf(String note) {
        return terms(telling(note)).stream().anyMatch(postings::containsKey);
    }

    /**
     * What a note's words lend each cause, and last what they would lend the cause behind them.
     *
     * @return nats, 0 or more
     */
    double[] nats(String note, double[] prior) {
        return nats(telling(note), prior);
    }

    private double[] nats(List<Token> telling, double[] prior) {
        Set<String> known = new TreeSet<>(terms(telling));
        known.retainAll(postings.keySet());
        double[] nats = new double[causes + 1];
        double share = Math.min(1, NOTE / Math.max(1, known.size()));
        for (String term : known) {
            double most = 0;
            for (Posting p : postings.getOrDefault(term, List.of())) {
                if (prior[p.cause()] > 0) {
                    nats[p.cause()] += share * p.weight();
                    most = Math.max(most, p.weight());
                }
            }
            nats[causes] += share * OWN * most;
        }
        return nats;
    }

    /**
     * What a note's words lend each cause, as factors on the causes' shares. They leave the share of the unlisted cause as it
     * was, unless they are scattered over many entries and fit none well.
     * Beside more than {@value #FINDINGS} findings they count in proportion less, for then they repeat them.
     *
     * @param findings that stand beside the words
     * @param prior shares of the causes, the unlisted one last
     */
    double[] factors(String note, int findings, double[] prior) {
        List<Token> telling = telling(note);
        double told = findings == 0 ? 1 : telling.size() / (WORDS_EACH * findings);
        double share = Math.min(1, FINDINGS / Math.max(1, findings)) * Math.min(1, told);
        double[] nats = Arrays.stream(nats(telling, prior)).map(n -> share * n).toArray();
        double most = Arrays.stream(nats, 0, causes).max().orElse(0);
        double[] factors = new double[causes + 1];
        double before = 0;
        double after = 0;
        for (int c = 0; c < causes; c++) {
            factors[c] = Math.exp(nats[c] - most);
            before += prior[c];
            after += prior[c] * factors[c];
        }
        double mean = before > 0 ? after / before : 1;
        factors[causes] = Math.max(mean, Math.exp(Math.min(0, nats[causes] - most)));
        return factors;
    }

    /**
     * Words that stand in a cause's entry more than in others.
     *
     * @param telling words of a note
     * @param prior shares of the causes, the unlisted one last
     * @return as written, the strongest first; at most so many
     */
    List<String> words(List<Token> telling, int cause, double[] prior, int limit) {
        Map<String, Double> gains = new LinkedHashMap<>();
        for (Token token : telling) {
            double gain = gain(token.term(), cause, prior)
                    + Kin.of(token.term()).map(kin -> gain(kin, cause, prior)).orElse(0.0);
            if (gain > 0) {
                gains.putIfAbsent(token.surface(), gain);
            }
        }
        return gains.entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue().reversed())
                .limit(limit)
                .map(Map.Entry::getKey)
                .toList();
    }

    /** What a term lends a cause beyond what it lends the others in the middle. */
    private double gain(String term, int cause, double[] prior) {
        double own = 0;
        double all = 0;
        for (Posting p : postings.getOrDefault(term, List.of())) {
            own += p.cause() == cause ? p.weight() : 0;
            all += prior[p.cause()] * p.weight();
        }
        return own - all;
    }

    /** What words have in common with those of their meaning, and the groups they stand in. */
    private static List<String> terms(List<Token> telling) {
        List<String> terms = new ArrayList<>();
        for (Token token : telling) {
            terms.add(token.term());
            Kin.of(token.term()).ifPresent(terms::add);
        }
        return terms;
    }

    /** The words of a text, but for those behind a denial: "no adapter" does not tell of adapters. */
    static List<Token> telling(String text) {
        List<Token> telling = new ArrayList<>();
        int denied = 0;
        for (Token token : Lexer.tokens(text)) {
            if (token.kind() == Token.Kind.PUNCTUATION) {
                denied = 0;
            } else if (Token.denies(token.term())) {
                denied = DENIED;
            } else if (denied > 0) {
                denied--;
            } else if (tells(token)) {
                telling.add(token);
            }
        }
        return telling;
    }

    private static boolean tells(Token token) {
        boolean word = token.kind() == Token.Kind.WORD || token.kind() == Token.Kind.CODE;
        return word && !SILENT.contains(token.term()) && !SilentWords.ALL.contains(token.term());
    }

    /** The terms of texts, each different word analysed once: the packs use few words many times. */
    private static final class Vocabulary {
        /** What ends a word must not make it another one. */
        private static final Splitter WORDS =
                Splitter.on(' ').trimResults(CharMatcher.anyOf(".,;!?")).omitEmptyStrings();

        private final Map<String, List<String>> known = new HashMap<>();

        List<String> terms(String text) {
            List<String> terms = new ArrayList<>();
            for (String word : WORDS.split(text)) {
                terms.addAll(known.computeIfAbsent(word, w -> Likeness.terms(telling(w))));
            }
            return terms;
        }

        void add(Map<String, Double> entry, String text, double weight) {
            terms(text)
                    .forEach(term -> entry.merge(term, term.startsWith(Kin.MARK) ? KIN * weight : weight, Double::sum));
        }
    }
}
