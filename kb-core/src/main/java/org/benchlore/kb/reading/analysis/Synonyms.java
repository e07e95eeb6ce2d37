package org.benchlore.kb.reading.analysis;

import com.google.common.base.Splitter;
import java.util.HashMap;
import java.util.Map;

/**
 * Short forms, regional spellings and slang that mean the same whatever the pack: both the packs' phrases and the text are
 * read, and searched, with the first word of each line. All as stems.
 */
public final class Synonyms {
    private static final double MINUTE = 60;
    private static final double HOUR = 3600;
    private static final String MINUTES = "600s";

    private static final Map<String, String> SAME = new HashMap<>();

    static {
        for (String line : new String[] {
            "capacitor cap condenser",
            "electrolytic lytic elko elco",
            "mosfet fet",
            "optocoupler opto optoisolator photocoupler",
            "micro mcu microcontroller uc",
            "crystal xtal quartz",
            "temperatur temp",
            "lead cabl cord",
            "television tv telly",
            "wifi wlan",
            "network lan ethernet",
            "ground earth",
            "board pcb",
            "transformer trafo xfmr",
            "regulator reg",
            "connector conn",
            "battery batt accu",
            "amplifier amp",
            "speaker loudspeaker spkr",
            "dead kaput knacker bust defunct duff dud bork",
            "nothing zilch nada nowt",
            "colour color",
            "grey gray",
            "centr center",
            "mould mold",
            "mouldy moldy",
            "fibr fiber",
            "aerial antenna",
            "ok okay alright",
            "pictur pic",
            "sound snd",
        }) {
            String first = "";
            for (String word : Splitter.on(' ').split(line)) {
                first = first.isEmpty() ? word : first;
                SAME.put(word, first);
            }
        }
    }

    private Synonyms() {}

    /** The term that stands for a token: a word's synonyms have one, and so have all spans of minutes, "20 min" as "ten minutes". */
    public static String of(Token token) {
        if (token.kind() == Token.Kind.WORD) {
            return of(token.term());
        }
        boolean minutes = token.unit().equals("s") && token.value() >= MINUTE && token.value() < HOUR;
        return minutes ? MINUTES : token.term();
    }

    /** The word that stands for a stem and its synonyms. */
    public static String of(String stem) {
        return SAME.getOrDefault(stem, stem);
    }
}
