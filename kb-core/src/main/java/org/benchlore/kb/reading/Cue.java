package org.benchlore.kb.reading;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What the language itself says about a finding, whatever the packs teach: negation after the NegEx scheme (Chapman and
 * others, J. Biomed. Inform. 34:301-310, 2001), doubt, time, conditions, who says so.
 */
enum Cue {
    /** Negates what follows within reach. */
    NEGATION(
            "no | not | never | without | neither | no longer | absence of | lack of | lacks | free of | clean of | clear of | devoid of | fails to | "
                    + "failed to | unable to | refuses to | nothing on | nothing from | nothing at | not any | "
                    + "none of | nor any | nor a | nor any trace of | nor any sign of | nor a trace of | "
                    + "or any trace of | or any sign of | "
                    + "no sign of | no trace of | not getting | not seeing | does not have | is not a | not a | "
                    + "not a single | not one | not a trace of | not the slightest | cannot hear | cannot hear any | could not hear | "
                    + "could not hear any | cannot smell | cannot smell any | could not smell | could not smell any | "
                    + "could not see any | cannot see any | denies | denies that | denied that"),
    /** Opens a sentence and says nothing ("there is no smell"). */
    OPENING("there is | there are | there was | there were"),
    /** Negates what went before. */
    NEGATION_AFTER(
            "not seen | not found | not detected | not visible | not noticed | not observed | not heard | ruled out | "
                    + "nowhere | nowhere to be seen | nowhere to be found | cannot be found | "
                    + "could not be found | could not be seen | could not be heard | could not be detected | could not be observed | "
                    + "cannot be seen | cannot be heard | cannot be detected | not to be found | not to be seen | not to be heard"),
    /** Looks like negation and is none. */
    NO_NEGATION(
            "no change | no difference | not only | no doubt | no matter | not just | no wonder | no effect | "
                    + "not quite | no help | no luck | no idea | why not | not much | no good reason | nothing but | no more than"),
    /** No condition, though "load" stands in it. */
    UNLOADED(
            "without load | without a load | without any load | with no load | at no load | no load | off load | unloaded"),
    /** Says that nobody has looked. */
    UNCHECKED(
            "not checked | not tested | not measured | not looked at | not tried | not yet checked | not yet measured | "
                    + "not yet tested | did not check | did not measure | did not test | have not checked | have not measured | "
                    + "have not tested | could not measure | cannot measure | could not check | cannot check | to be checked | "
                    + "need to check | needs checking | should check | must check | will check | still to check | to check | "
                    + "todo | will measure | to measure | going to check | have not looked at | have not opened | not opened yet | "
                    + "not looked | have not tried | not yet tried"),
    /** A new statement begins. */
    BREAK("i mean | but | though | although | however | whereas | yet | because | even though | despite | otherwise | "
            + "then | so | which | therefore"),
    /** What follows is left out of what was said before. */
    EXCEPT(
            "except | except for | all but | everything but | all bar | everything bar | save for | apart from | other than | aside from | with the exception of"),
    /** Says that the thing is as it should be. */
    NORMAL(
            "no problem with | no problems with | no fault on | no fault with | no fault in | nothing wrong with | "
                    + "nothing wrong on | no issue with | no issues with | no trouble with | no complaint about | nothing odd on"),
    DOUBT("maybe | perhaps | possibly | probably | i think | i guess | i believe | i suspect | seems | seem | "
            + "seemingly | apparently | appears to | looks like | might | may be | may have | may well | may not | could be | not sure | not certain | "
            + "unsure | presumably | suspect | suspected | suspicious | likely | supposedly | sort of | kind of | "
            + "if i remember | hard to tell | hard to say | as far as i can tell | guess | questionable | must be | i reckon | "
            + "i suppose | might be | not so sure | i would say | could also be | would not swear | more or less sure | "
            + "if i read | no proof | possible | potentially | i fear | i bet | assume | i assume | kinda | sorta | or maybe | "
            + "perhaps not | allegedly | unclear | unconfirmed"),
    PAST("last year | last month | last week | last winter | last summer | years ago | year ago | months ago | "
            + "weeks ago | previously | used to | in the past | formerly | had been | a while back | some time ago | "
            + "back then | at the last repair | history of | once had | in earlier days | long ago | before the repair | "
            + "before repair | earlier on | on the last visit | at the last visit | last time | back in | when it came | "
            + "when it came in | before the new | before the change | before i changed | before the swap | before that | yesterday | "
            + "earlier this week | days ago | day ago | hours ago | month ago | week ago | some years back | in the old days | "
            + "on arrival | at first visit | in january | in february | in march | in april | in june | in july | in august | "
            + "in september | in october | in november | in december | last spring | last autumn | last january | last march | "
            + "last night | last wk | last yr | last mo | last fall | at their old | with the old | in those days | originally | until recently | at one time | had once | "
            + "was once | used to be | in spring | in autumn | before the caps"),
    /** What follows is of now. */
    NOW(
            "now | today | this time | currently | at present | at the moment | meanwhile | these days | here | by now | since then | "
                    + "as of today | right now | nowadays | anymore | any more"),
    OWNER(
            "owner | customer | caller | client | owner says | customer says | user says | they say | he says | she says | "
                    + "complaint | complains | reported by | according to | told me | was told | user | tells me | they told | "
                    + "brought in with | came in with"),
    MEASURED("measured | measures | metered | meter shows | meter says | scope shows | reads | reading | probed | "
            + "scoped | multimeter | dmm | measuring"),
    COLD("when cold | from cold | if cold | while cold | at cold | cold start | cold | in the cold | at first"),
    WARM("when warm | when hot | once warm | once hot | if warm | if hot | while warm | while hot | as it warms up | "
            + "after warming up | when it gets warm | when it gets hot | warmed up | warms up | warm | after warm-up | "
            + "until it warms up | once it is warm | when heated"),
    UNDER_LOAD("under load | with load | when loaded | loaded | on load | at load | with the load on | in use | "
            + "at full load | while playing | when the disc spins up | when the disc spins | when it spins up | during spin-up | "
            + "at spin-up | when the motor starts | when the motor runs | when loud | up loud | when turned up | at high volume | "
            + "at full volume | when the tray opens | when the tray moves | when recording | while recording | when it records | "
            + "when the light comes on | till the light comes on | when the backlight comes on | when the drive starts | "
            + "when the drive spins up | fully loaded | with everything connected | with everything plugged in | when it works hard | "
            + "when busy | loaded down | with the drive on | when the fan starts | when playing | when it plays"),
    AFTER_A_WHILE(
            "after a while | after some time | after a few minutes | after several minutes | after half an hour | "
                    + "after an hour | after a minute | after a few hours | eventually | later on | after hours | after minutes | "
                    + "after a few seconds | after a couple of minutes | after long use | after it ran for a while | after running for a while | "
                    + "after a good while | in the long run | in time | after a long time | after some minutes | after a couple of hours | "
                    + "half an hour in | an hour in | after hours of use | in the middle of a film | after a bit | before long"),
    INTERMITTENT(
            "sometimes | now and then | now and again | intermittent | intermittently | occasionally | occasional | "
                    + "every few days | every few hours | every few minutes | every few weeks | once in a while | every so often | "
                    + "every now and then | from time to time | at times | on and off | off and on | randomly | random | "
                    + "at random | sporadic | sporadically | not always | every other day | comes and goes | some days | "
                    + "once a day | once a week | erratically | every other time | most of the time | some of the time | half the time | "
                    + "every second time | one time in three | one time in two | some mornings | some evenings | once in ten | "
                    + "in fits and starts | hit and miss | when it feels like it | only sometimes | irregularly | "
                    + "every second start | every other start | every third time | every third start | out of ten | out of five"),
    STANDBY("in standby | on standby | in stand-by | during standby | when in standby | in standby mode"),
    /** Said of a code: more than once. */
    AGAIN("again and again | repeatedly | recurring | recurs | keeps coming back | keeps coming | over and over | "
            + "every time | many times | several times | all the time | constantly | twice | a few times | lots of"),
    /** Said of a code: one entry. */
    ONCE("once | one time | a single | single | just once | only once | one entry");

    /** Cues that tell when or how often. */
    static final Set<Cue> CONDITIONS =
            Collections.unmodifiableSet(EnumSet.of(COLD, WARM, UNDER_LOAD, AFTER_A_WHILE, INTERMITTENT, STANDBY));

    private final ImmutableList<String> phrases;

    Cue(String phrases) {
        this.phrases = ImmutableList.copyOf(Splitter.on('|').trimResults().split(phrases));
    }

    List<String> phrases() {
        return phrases;
    }

    /** The condition that a cue of {@link #CONDITIONS} stands for. */
    Reading.Condition condition() {
        return Reading.Condition.valueOf(name());
    }
}
