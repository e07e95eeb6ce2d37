package org.benchlore.kb.reading;

import java.util.List;
import org.benchlore.kb.reading.analysis.Token;
import org.benchlore.kb.reading.analysis.Words;

/** Leads that carry signals: what is taught of the mains lead as "lead" is not said of "network cable". */
final class Leads {
    private static final String MAINS = "mains";
    private static final Words LEADS = Words.of("lead", "flex");

    private static final Words SIGNALS = Words.terms("network lan ethernet video audio scart vga dvi hdmi displayport "
            + "component composite coax coaxial aerial antenna headphone headset earphone speaker loudspeaker sound phono rca jack "
            + "mic microphone guitar instrument midi usb data printer phone telephone modem dsl signal test probe meter scope "
            + "sensor ribbon camera optical fibre fiber toslink sync serial ide sata remote link ground crocodile");

    private static final Words LEADING = Words.spaced("of to from for");
    private static final Words ARTICLES = Words.spaced("the my his her your an a");

    private Leads() {}

    /** Whether something is told of the mains, so that a lead of signals is none of it. */
    static boolean mains(Sense sense) {
        return sense.symptom().name().contains(MAINS);
    }

    /** Where the word stands that makes a lead one of signals: "video cable", "lead of the headphones"; -1 for any other token. */
    static int signal(List<Token> tokens, String[] terms, int lead) {
        if (!LEADS.contains(terms[lead])) {
            return -1;
        }
        if (lead > 0 && SIGNALS.contains(terms[lead - 1])) {
            return lead - 1;
        }
        int at = lead + 1;
        if (at >= terms.length || !LEADING.contains(tokens.get(at).surface())) {
            return -1;
        }
        at++;
        at += at < terms.length && ARTICLES.contains(tokens.get(at).surface()) ? 1 : 0;
        return at < terms.length && SIGNALS.contains(terms[at]) ? at : -1;
    }
}
