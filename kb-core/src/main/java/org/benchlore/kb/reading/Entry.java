package org.benchlore.kb.reading;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchlore.kb.knowledge.Device;
import org.benchlore.kb.knowledge.Symptom;
import org.jspecify.annotations.Nullable;

/** Everything one sequence of terms may mean. Filled while a lexicon is built, read-only afterwards. */
final class Entry {
    /** The rank of what the packs say nothing about. */
    static final int LANGUAGE = 3;

    /** From so many senses on they are also kept by symptom; common words are taught for hundreds. */
    private static final int MANY = 8;

    List<Sense> names = List.of();
    List<Sense> words = List.of();
    List<Sense> phrases = List.of();
    Device.@Nullable Code code;

    @Nullable
    Cue cue;

    /**
     * The one term of meaning of a phrase where the packs only write it as a participle: "it was dropped" is not "it drops",
     * "is bricked" no brick. Empty where they write it otherwise as well.
     */
    @Nullable
    String participle;

    /** Set when it praises or damns whatever it is said of. */
    @Nullable
    Polarity polarity;

    /** One bit of 64 for each symptom of {@link #names} and of {@link #words}: no common one, no common symptom. */
    private long nameMarks;

    private long wordMarks;

    /** The first of many {@link #words} for each symptom. */
    private @Nullable Map<String, Sense> wordBySymptom;

    /** Rank among matches of equal length: the packs' words before the language's. */
    int rank() {
        return !phrases.isEmpty() ? 0 : code != null || !names.isEmpty() ? 1 : says() ? 2 : LANGUAGE;
    }

    /** Whether it can be said of a name. */
    boolean says() {
        return polarity != null || !words.isEmpty();
    }

    /** Whether {@code name} names a symptom that this phrase or name is about. */
    boolean speaksOf(Entry name) {
        List<Sense> own = phrases.isEmpty() ? names : phrases;
        if (own.isEmpty()) {
            return false;
        }
        String symptom = own.get(0).symptom().id();
        for (Sense sense : name.names) {
            if (sense.symptom().id().equals(symptom)) {
                return true;
            }
        }
        return false;
    }

    /** The same but for its phrases. */
    Entry withoutPhrases() {
        Entry rest = new Entry();
        rest.names = names;
        rest.nameMarks = nameMarks;
        rest.words = words;
        rest.wordMarks = wordMarks;
        rest.wordBySymptom = wordBySymptom;
        rest.code = code;
        rest.cue = cue;
        rest.polarity = polarity;
        return rest;
    }

    /** Whether it says anything. */
    boolean empty() {
        return names.isEmpty()
                && words.isEmpty()
                && phrases.isEmpty()
                && code == null
                && cue == null
                && polarity == null;
    }

    /** Whether it is a name of a symptom. */
    boolean names(Symptom symptom) {
        for (Sense sense : names) {
            if (sense.symptom().id().equals(symptom.id())) {
                return true;
            }
        }
        return false;
    }

    /** What it says of a symptom as a word, if the packs teach it. */
    @Nullable
    Sense saidOf(String symptomId) {
        if (wordBySymptom != null) {
            return wordBySymptom.get(symptomId);
        }
        for (Sense sense : words) {
            if (sense.symptom().id().equals(symptomId)) {
                return sense;
            }
        }
        return null;
    }

    /** Whether this word may say something of a symptom with that name; false only where it does not. */
    boolean maySay(Entry name) {
        return (wordMarks & name.nameMarks) != 0;
    }

    private static long mark(Sense sense) {
        return 1L << sense.symptom().id().hashCode();
    }

    void addName(Sense sense) {
        names = with(names, sense);
        nameMarks |= mark(sense);
    }

    void addPhrase(Sense sense) {
        phrases = with(phrases, sense);
    }

    void addWord(Sense sense) {
        words = with(words, sense);
        wordMarks |= mark(sense);
        if (wordBySymptom != null) {
            wordBySymptom.putIfAbsent(sense.symptom().id(), sense);
        } else if (words.size() >= MANY) {
            wordBySymptom = new HashMap<>();
            for (Sense word : words) {
                wordBySymptom.putIfAbsent(word.symptom().id(), word);
            }
        }
    }

    void addNameFirst(Sense sense) {
        names = first(names, sense);
        nameMarks |= mark(sense);
    }

    void addPhraseFirst(Sense sense) {
        phrases = first(phrases, sense);
    }

    /** Adds a sense once. Those of one symptom are added one after the other, so only the last ones can be the same. */
    private static List<Sense> with(List<Sense> senses, Sense sense) {
        String symptom = sense.symptom().id();
        for (int i = senses.size() - 1; i >= 0; i--) {
            Sense before = senses.get(i);
            if (!before.symptom().id().equals(symptom)) {
                break;
            }
            if (before.state() == sense.state()) {
                return senses;
            }
        }
        List<Sense> more = senses.isEmpty() ? new ArrayList<>(1) : senses;
        more.add(sense);
        return more;
    }

    private static List<Sense> first(List<Sense> senses, Sense sense) {
        List<Sense> more = senses.isEmpty() ? new ArrayList<>(1) : senses;
        more.add(0, sense);
        return more;
    }
}
