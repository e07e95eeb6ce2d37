package org.benchlore.kb.reading;

import com.google.common.base.Splitter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchlore.kb.reading.analysis.Words;

/** The words by which {@link Mood} tells what is said from what is asked, planned, supposed or told in general. */
final class MoodWords {
    /** Sequences of words, found by their first one. */
    static final class Phrases {
        private final Map<String, List<List<String>>> byFirst = new HashMap<>();

        private Phrases() {}

        private Phrases(String lines) {
            for (String phrase : Splitter.on('|').trimResults().split(lines)) {
                add(Splitter.on(' ').splitToList(phrase));
            }
        }

        private static Phrases all(List<Phrases> several) {
            Phrases all = new Phrases();
            for (Phrases phrases : several) {
                phrases.byFirst.values().forEach(list -> list.forEach(all::add));
            }
            return all;
        }

        private void add(List<String> words) {
            byFirst.computeIfAbsent(words.get(0), first -> new ArrayList<>(2)).add(words);
        }

        /** Length of the longest phrase that starts at a word, 0 for none. */
        int at(List<String> words, int from, int end) {
            List<List<String>> phrases = byFirst.get(words.get(from));
            if (phrases == null) {
                return 0;
            }
            int longest = 0;
            for (List<String> phrase : phrases) {
                if (phrase.size() > longest && from + phrase.size() <= end && fits(phrase, words, from)) {
                    longest = phrase.size();
                }
            }
            return longest;
        }

        private static boolean fits(List<String> phrase, List<String> words, int from) {
            for (int i = 1; i < phrase.size(); i++) {
                if (!phrase.get(i).equals(words.get(from + i))) {
                    return false;
                }
            }
            return true;
        }
    }

    /** Verbs that, in front of a sentence, tell somebody what to do. */
    static final Words ORDERS =
            Words.spaced("check measure verify try replace swap order buy bring ask remember discharge tell "
                    + "remove let recap resolder desolder reflow inspect photograph lubricate send wait consider avoid give get "
                    + "find take keep connect make ensure see please pls");

    /** The same where the thing they are done to follows at once; alone they may be things ("charge current zero"). */
    static final Words ORDERS_WITH_OBJECT = Words.spaced(
            "test read heat set label charge record clean call start copy feed "
                    + "warm wash mind use fit look put need write solder grease compare probe open close mark rinse brush dry add pull unplug");

    static final Words OBJECTS =
            Words.spaced("the a an his her its it this that these all every both each them with for at whether "
                    + "if how only my your their our any another new one to in on into yourself me him out");

    /** May stand in front of an order. */
    static final Words LEADS = Words.spaced(
            "then next first and also now so or just finally better best always but ok okay well maybe kindly");

    /** What a request or plan is made of, wherever it stands; what follows in the sentence is no finding. */
    static final Phrases PLANS =
            new Phrases("i thought | i first thought | i had thought | i assumed | i had assumed | "
                    + "i want | we want | he wants | she wants | customer wants | owner wants | want to know | want to see | would like | going to | gonna | have to ask | has to ask "
                    + "| need to | needs to | need new | needs new | needs a new | needs another | needs a replacement | needs a clean | needs a good clean "
                    + "| needs a cleaning | needs a recap | needs a look | needs a service | needs a reflow | needs a swap | needs a second | plan to | planning to | intend to | about to order | let us "
                    + "| lets see | to be measured | to be checked | to be tested | to be replaced | to be done | to be ordered | to be tried | to be soaked "
                    + "| to be looked | to be opened | to be cleaned | to be fitted | to be confirmed | still to be | yet to be | wish list | asks if "
                    + "| asks whether | asked if | asked whether | wonder if | wonders if | wonder whether | wondering | wants to know "
                    + "| let me know | tell me | find out | see if | see whether | look whether | check if | check whether "
                    + "| check for | look for | looking for | whether | who has | can you | can we | can i | can somebody | can someone "
                    + "| can anyone | cannot say | would not say | i wish | could you | could we | could somebody | would you | will you | do you | did you | does anyone "
                    + "| has anyone | have you | shall i | shall we | should i | should we | may i | remember to | dont forget | supposed to be "
                    + "| ought to | in case | suppose | supposing | assuming | provided that | imagine | help if");

    /** What something is compared with; with a pronoun between, no plan: "as it should". */
    static final Words COMPARING = Words.spaced("as where what how than like");

    /** What leads on to what was read. */
    static final Words FOUND =
            Words.spaced("have has get got gets is was are were reads read measured measures found find see saw gives"
                    + " gave shows only but");

    /** What tells of a limit where a number follows. */
    static final Words LIMITING = Words.spaced("should must ought supposed");

    static final Words PRONOUNS = Words.spaced("it they he she this that these those one");
    static final Words EXPECTED = Words.spaced("should ought");

    /** What is bought, sold and sent; nothing in such a sentence is a finding of the unit. */
    static final Phrases TRADE = new Phrases(
            "ordered | on order | guarantee covers | guarantee does not | warranty covers | warranty does not | warranty only | "
                    + "must be paid | must be reported | must be returned | bought | shopping | waiting for | wanted | out of stock | invoice "
                    + "| quote | quote sent | estimate | postage | labour | total due | pcs | delivery | deliveries | spare | spares "
                    + "| price | eur | usd | gbp | paid | suppliers | supplier | shipping | donor with | for sale");

    /** Told of units in general. */
    static final Phrases GENERAL =
            new Phrases("usually | generally | typically | in general | as a rule | tends to | tend to | means "
                    + "| mean | points at | points to | point at | point to | indicates | indicate | suggests | proves | prove | must never "
                    + "| must not | must be zero | costs | can be cleaned | can be mended | can be repaired | can be replaced | can be fixed "
                    + "| manual says | manual states | manual warns | book says | leaflet says | data sheet says "
                    + "| is known for | are known for | is expected | thats how | that is how");

    /** Told of all units, and so is the whole sentence. */
    static final Phrases OF_ALL = new Phrases(
            "that how they | that how it is done | that nature | sooner or later | most of these | most of them "
                    + "| most people | this type | this kind of | this model is known | these models | these units | "
                    + "such units | they say a | is rarely the | are rarely the | is mostly the "
                    + "| is often the | is hardly ever the | nine times out of ten | all of these | by nature | the difference between | may be there "
                    + "| must be there | must be present | must be there first | typical signs | typical of | typical for | common on | common with "
                    + "| in these | on these | on those | of that kind | of this kind | often has | often have | this model often | these often "
                    + "| says the manual | according to the manual | i dreamt | i dreamed "
                    + "| i have read | i read that | on the internet | on the forum | in the forum | in a forum | people say "
                    + "| should never | should always | fault tree | fault finding chart | as donors | for parts only");

    /** In front of units in general. */
    static final Words MANY = Words.spaced("some many most all old older other such cheap modern");

    /** A unit; not this one where one of {@link #OTHER} stands in front. */
    static final Words DEVICES =
            Words.spaced("amplifier amp player recorder set radio tv television phone laptop notebook tablet printer"
                    + " console model unit machine deck receiver monitor mower router modem projector mixer");

    static final Words OTHER = Words.spaced("other another sister donor");

    /** What opens a sentence that tells how a sound or a bad part behaves. */
    static final Words KINDS = Words.spaced(
            "good healthy sound working intact normal bad blown dead weak worn faulty cold dry charged leaky tired swollen shorted");

    /** Told of a kind: in the present. */
    static final Words OF_A_KIND = Words.spaced(
            "reads rests shows measures gives is sits has looks sounds makes draws runs lasts puts pulls lets causes kills must");

    /** First words of a note's heading that speaks of what is to come or of all units. */
    static final Words HEADINGS = Words.spaced(
            "next todo plan parts wanted general rule reminder shipping question needed ordered order "
                    + "invoice quote estimate agenda tomorrow wish replacement common causes reasons suspects candidates checklist steps procedure hints");

    /** Words of a heading over what is taught, all of it up to the end of the line. */
    static final Words TEACHING = Words.spaced("theory lesson apprentice apprentices reference trainee tutorial");

    static final Words ASKING = Words.spaced("what which who whom whose how why where when");
    static final Words AUXILIARIES = Words.spaced(
            "is are was were do does did can could will would should shall has have had may " + "might must am");
    static final Words SUBJECTS =
            Words.spaced("i you he she it we they the a an this that these those there any anyone anybody someone "
                    + "somebody my your his her its their our");

    /** Who does things to the unit: what stands behind "if I" is tried, not supposed. */
    static final Words HANDS = Words.spaced("i you he she we they one someone somebody");

    /** Conditions of the unit for which a cue stands; what follows them is seen. */
    static final Words CONDITIONS =
            Words.spaced("warm hot cold loaded unloaded cooled heated tapped pressed touched left moved turned");

    /** Subjects that start the main clause behind "if …" without a comma. */
    static final Words MAIN_SUBJECTS = Words.spaced("it she nothing everything then");

    /** Words that keep a pronoun within the clause in front of it. */
    static final Words GOVERNORS = Words.spaced(
            "if in on of to with from at by for and or that when while through into over under before after");

    /** Of those, names of deeds as well: "discharge test", "a check". */
    static final Words DEED_NOUNS = Words.spaced("check discharge recap charge test");

    /** Orders by form that try something on the unit; an outcome may follow them. */
    static final Words TRIALS = Words.spaced(
            "pull unplug put remove swap replace take add connect keep leave let warm heat wash clean feed fit");

    /** Verbs of an outcome that has a subject of its own: "… and the hum is gone". */
    static final Phrases HAPPENS =
            new Phrases("is gone | is back | is away | is dead | is there | is good | is fine | is ok "
                    + "| is better | is worse | is unchanged | is quiet | is normal | is silent | are gone | are back | are there | are fine "
                    + "| goes away | goes quiet | goes dead | stays the same | stays dead | stays dark | stops | starts | works | runs "
                    + "| returns | disappears | vanishes | comes back | comes up | comes on | boots");

    static final Words NOT_YET = Words.spaced("should will must would shall if until to that");

    /** What makes a segment behind a trial its outcome. */
    static final Phrases SHOWN = new Phrases(
            "unchanged | no change | no difference | no better | no worse | no help | same fault "
                    + "| same trouble | same thing | same again | the same | is gone | gone | stays | stay | remains | remain "
                    + "| still the same | still no | still dead | still nothing | still there | still does | still will not | it works | works again | all is well | all is good");

    /** How often something has to be done over and over: a habit, no plan. */
    static final Phrases HABITS = new Phrases(
            "twice a | once a | every day | every night | every morning "
                    + "| every evening | every time | every hour | every week | every few | every two | every three | each time | each day "
                    + "| each night | daily | nightly | twice daily | constantly | all the time | over and over | again and again");

    /** Behind "three times" a habit as well. */
    static final Words EACH = Words.spaced("a an every each per");

    /** What may follow "did it" where it happened. */
    static final Words DID_IT = Words.spaced(
            "once twice again a the at in on every all only just yesterday today last now never for this with when while after before since three");

    /** Verbs of what a check or a run told, behind its name. */
    static final Words REPORTING = Words.spaced(
            "reports reported shows showed gives gave says said finds found passes passed fails failed ends ended holds");

    /** Subjects of what an order by form alone led to. */
    static final Words OUTCOMES = Words.spaced("it everything nothing she he they all");

    /** Things of the workshop that are not the unit. */
    static final Phrases NOT_THE_UNIT =
            new Phrases("coffee break | coffee is | coffee first | over coffee | kettle is on | kettle on | "
                    + "the other one | my old one | one i repaired | i am told | goes by the name | neighbours set | "
                    + "neighbours unit | neighbours one | friends set | friends unit | neighbour set | neighbour unit | "
                    + "neighbour one | friend set | friend unit | another unit | this series "
                    + "| no room on the bench | no charge for the | phone line | telephone line | "
                    + "of the meter | of my meter | our meter | our scope | of the scope | he also has | she also has "
                    + "| they also have | donor board | donor unit | some owners | many owners | bench light | bench lamp "
                    + "| workshop radio | workshop light | workshop lamp | shop radio | my soldering iron | "
                    + "machine in the shop | my meter | my multimeter | my scope | bench scope "
                    + "| hot air station | soldering station | my car | the van | my phone rang");

    /** What opens a clause about a thing that is not the unit. */
    static final Phrases OTHER_THINGS = new Phrases(
            "the other recorder | the other player | the other set | the other radio | the other unit | the other machine "
                    + "| the other deck | another recorder | another player | another set | the parcel | the postman | the courier | the workshop | the bench | my neighbour | the neighbour "
                    + "| the soldering iron | the new soldering iron | the shop | my glasses "
                    + "| his neighbour | her neighbour | their neighbour | a neighbour | his other | her other | their other");

    /** All that is told of plans, of trade, of units in general or of another thing. */
    static final Phrases TOLD = Phrases.all(List.of(PLANS, TRADE, OF_ALL, GENERAL, NOT_THE_UNIT));

    /** Words that change the mood from where they stand; a sentence without them and without "I'll" is as it begins. */
    static final Words TELLING = telling();

    /** Words that end the reach of a plan or question. */
    static final Words TURNS = Words.spaced("but however though although anyway");

    private MoodWords() {}

    private static Words telling() {
        Set<String> words =
                new HashSet<>(List.of("should", "would", "if", "unless", "will", "shall", "must", "to", "own"));
        words.addAll(TOLD.byFirst.keySet());
        return Words.of(words.toArray(String[]::new));
    }
}
