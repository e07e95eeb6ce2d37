package org.benchlore.kb.reading;

import org.benchlore.kb.reading.analysis.Words;

/** Everyday words that are right as they stand although a bench word is one letter away. */
final class CommonWords {
    private static final Words WORDS = Words.spaced(
            "about above across after again against almost alone along already also "
                    + "although always among another answer anyone anything anyway apart around asked aside away "
                    + "became because become before began begin behind being believe below beside better between beyond "
                    + "board boards boots bought bound boxes bread bring bringing broad brother brought build buyer cable called "
                    + "calls cannot cared carry cases cause caused chance charge chart check cheap checked clean clear cleared "
                    + "close closed clothes coast colour comes coming could count course cover crash cross daily dates dealer "
                    + "different doing doors doubt drain drawn dream dress drink drive driver drives drops during early earth "
                    + "eight either empty enough entire every everything exact except exist extra faced facts fairly family "
                    + "father fault faults field fifty fight final finally finds first fixing floor folded folks follow forced "
                    + "forms found frame freely fresh friend front fruit fully funny further garden getting given gives giving "
                    + "glass going grade grand grass great ground group grown guess guest guests hands happy hardly heads "
                    + "hearing heart heavy hello helped hence hoped horse hours house human hundred image inner input instead "
                    + "inside issue items itself joint judge jumps keeps kinds knew known knows label large larger later laugh "
                    + "layer learn least leave leaves legal lever lifted liked limit lines linked lists lived lives local longer "
                    + "looks lower lucky lunch magic maker makes making marks match maybe meant measure meter metal might "
                    + "minor minute model money month months moved moves movie music named nearly needed needs never newer "
                    + "night noise north nothing notes number occur often older opened opens order other others ought "
                    + "outer outside owned owner owners paint paper parts party passed patch people pepper perhaps person "
                    + "phone photo piece place plain plane plant plate played player please point pointed popular posted "
                    + "pound press price print prior probe proof proper prove quick quickly quiet quite raise range rather "
                    + "reach react ready really reason refer relay remain rest right river rough round route rounds sales "
                    + "scale scene scope score second seems selling sense serve seven shall shape share sharp sheet shelf shift "
                    + "shoot shops shore shown shows sides sight signs silly since sixth sized skill sleep slide slight slower "
                    + "slowly small smart smile smoke solid solve sorry sort sorts sound source south space spare speak "
                    + "spend spent split spoke sport staff stage stand start starts state stated stays steel steps stick "
                    + "sticks still stock stone stood store story strange street strong stuff style sugar suite summer sunny "
                    + "super sure sweet table taken takes taking talks tapes taste taught teach tests thank thanks that their "
                    + "theme there these they thick thing things think third those though three threw throw tight tiled times "
                    + "tired title today together topic total touch tough toward tower track trade train treat tried trick "
                    + "trust truth trying turns twice under units until upper usual value video visit voice voltage wanted "
                    + "wants waste watch water weeks weird wheel where which while white whole whose winter within without "
                    + "woman wonder words worked works world worry worse worst worth would write wrong wrote years young yours");

    private CommonWords() {}

    static boolean contains(String word) {
        return WORDS.contains(word);
    }
}
