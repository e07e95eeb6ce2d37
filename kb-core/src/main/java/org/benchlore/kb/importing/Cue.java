package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableList;
import java.util.List;

/** What bench people write to say how a repair went on and ended, whatever the device. */
enum Cue {
    /** Told outright: fixed. */
    WORKS_AGAIN(
            "works again | working again | runs again | running again | plays again | playing again | starts again | "
                    + "heats again | hot again | warm again | spins again | turns again | prints again | opens again | sucks again | "
                    + "cools again | brews again | sews again | drills again | lights again | lights up again | rings again | "
                    + "feeds again | moves again | cuts again | boots again | reads again | reads discs again | records again | loads again | charges again | plays now | "
                    + "again working | again in function | functions again | function again | works perfectly | works perfect | "
                    + "works now | now works | now working | it works now | now it works | works fine now | works normally | "
                    + "works as new | works like new | as good as new | like new again | is fixed | now fixed | fixed now | "
                    + "all fixed | fixed it | fixed the problem | fixed the fault | cured it | cured the fault | cured | "
                    + "problem solved | problem is solved | solved | problem fixed | fault fixed | fault cleared | fault cured | "
                    + "problem cured | that cured it | that fixed it | that did it | did the trick | problem gone | fault gone | "
                    + "problem is gone | fault is gone | fault has gone | error gone | error is gone | repair ok | repair successful | "
                    + "repair was successful | successfully repaired | back to life | alive again | living again | lives again | "
                    + "ok again | again ok | is ok again | fine again | good again | ok now | now ok | is ok now | is now ok | "
                    + "all ok now | now all ok | fine now | now fine | good now | now good | up and running | up and running again | "
                    + "in working order | in working order again | normal again | picture back | picture is back | sound back | "
                    + "sound is back | sound ok again | picture ok again | everything works again | all works again"),
    /** Told outright: the work before did not help. */
    NO_HELP("no change | no changes | no improvement | no difference | made no difference | makes no difference | "
            + "did not help | does not help | has not helped | did not work | no help | not helped | still dead | "
            + "still the same | still same | still not working | still does not work | still not ok | still no good | "
            + "still faulty | still bad | still defective | still broken | still no picture | still no sound | "
            + "still no power | still no function | still no life | same fault | same fault as before | same as before | "
            + "same problem | the same problem | same symptom | same symptoms | not solved | "
            + "not cured | not better | no better | no success | without success | without result | without any success | "
            + "not successful | unsuccessful | in vain | fault remains | problem remains | fault persists | problem persists | "
            + "fault still there | problem still there | fault is still there | fault still present | blew again | "
            + "blown again | blows again | tripped again"),
    /** Told outright: not mended, be it after work that did not help or without any. */
    UNMENDED(
            "not repaired | not mended | not fixed | no repair | unrepaired | left unrepaired | returned unrepaired | "
                    + "returned not repaired | returned as is | back unrepaired | taken back as is | taken home as is | left as is"),
    /** Told outright: it returned after it had worked. */
    BACK(
            "came back | come back | comes back | has come back | was back | is back | back again | back with | returned with | "
                    + "returned after | fault returned | problem returned | fault is back | problem is back | fault back | "
                    + "failed again | fails again | died again | broke again | broken again | dead again | again dead | "
                    + "does it again | did it again | doing it again | at it again | again defective | again broken | same fault again | same problem again | again the same | again same fault | "
                    + "fault again | recurred | reappeared | appeared again | relapse | gone again | warranty return | comeback | "
                    + "second time here | here again | here for the second time | second visit"),
    /** With {@link #BY_ITSELF} or alone: it went away without a repair. */
    RECOVERED("recovered | recovers | has recovered | healed itself | cured itself | fixed itself | repaired itself | "
            + "went away | fault went away | problem went away | fault disappeared | problem disappeared | "
            + "fault vanished"),
    BY_ITSELF("by itself | on its own | by its own | all by itself | of its own accord | from itself | from alone | "
            + "without doing anything | without any repair | without repair | nothing done | nothing was done | "
            + "did nothing | no repair done | no repair needed"),
    NOTHING_FOUND("no fault found | no faults found | nff | no fault to be found | no defect found | no error found | "
            + "no problem found | no fault seen | found no fault | found no defect | could find no fault | found nothing | "
            + "found nothing wrong | nothing found | nothing wrong found | nothing to find | could not reproduce | "
            + "cannot reproduce | can not reproduce | not reproducible | not reproduced | unable to reproduce | "
            + "fault not reproducible | fault did not show | fault does not show | works fine here | works ok here | "
            + "works here | no trouble found | ntf"),
    WORSE("made it worse | made worse | made things worse | worse than before | worse now | now worse | is worse now | "
            + "now completely dead | now totally dead | now it is dead | killed it | killed the board | destroyed it | "
            + "broke it | ruined it"),
    NOT_WORTH("not worth it | not worth | not worth repairing | not worth the repair | not worth fixing | "
            + "not worth the trouble | not worth the effort | not worth the money | is not worth | not worthwhile | "
            + "not worth while | beyond economic repair | beyond economical repair | beyond repair | ber | uneconomic | "
            + "uneconomical | not economic | not economical | no economic repair | scrapped | scrap | for scrap | to scrap | "
            + "to the scrap | was scrapped | written off | write off | write-off | for parts | used for parts | "
            + "kept for parts | to parts | declined | customer declined | owner declined | declined repair | "
            + "repair declined | quote declined | quote refused | estimate declined | estimate refused | "
            + "too expensive | too dear | too costly | recycled | to recycling | binned | total loss | disposed | advised against | to the tip | to the dump | "
            + "disposed of | thrown away | for spares | kept for spares"),
    GIVEN_UP("gave up | given up | giving up | give up | i give up | abandoned | not repairable | unrepairable | "
            + "irreparable | can not be repaired | cannot be repaired | could not repair | could not be repaired | "
            + "could not fix | no spare parts | no spares | no parts available | no parts to get | parts not available | "
            + "part not available | parts unobtainable | part unobtainable | parts unavailable | no part to get | "
            + "put aside | put on the shelf | shelved | stopped here"),
    /** A price that makes it not worth it where nothing is done. */
    DEAR("costs more than | cost more than | would cost more than | more than a new one | more than it is worth | "
            + "as much as a new one | the price of a new one | dearer than | more expensive than"),
    /** The unit left, and nobody complains. */
    HANDED(
            "collected | fetched | returned to him | returned to her | returned to them | returned to owner | returned to the owner | "
                    + "returned to customer | returned to the customer | returned monday | returned tuesday | returned wednesday | "
                    + "returned thursday | returned friday | returned saturday | picked up | picked it up | has it picked up | handed over | handed back | handed out | "
                    + "handed it over | handed it back | given back | gave it back | back with its owner | back with owner | "
                    + "back with the owner | gone home | went home | taken home | took it home | took home | took it with | took it away | took it along | paid | invoiced | "
                    + "no charge | free of charge | without charge | without invoice | no invoice | no bill | gratis | "
                    + "on the house | at no cost"),

    /** Says that it works, where little else is said. */
    GOOD(
            "ok | okay | oky | fine | good | perfect | alright | all right | well | correct | normal | works | working | worked | "
                    + "runs | running | plays | playing | starts | in order | in function | functions | functioning | functional | "
                    + "works ok | works fine | works well | works good | runs ok | runs fine | runs well | plays ok | plays fine | "
                    + "plays well | all good | all ok | all well | all fine | everything ok | everything fine | everything works | "
                    + "no fault | no faults | no fault any more | no more fault | no more faults | no problem | no problems | "
                    + "no error | no errors | no issue | no issues | no trouble | no complaint | no complaints | no failure | "
                    + "no failures | no dropout | no dropouts | no restart | no restarts | no reset | no resets | no crash | "
                    + "without fault | without a fault | quiet now | now quiet | silent now | without faults | without any fault | without problem | "
                    + "without problems | without a problem | without any problem | without error | without errors | "
                    + "without any error | without trouble | without failure | without a failure | w/o fault | w/o problem | "
                    + "w/o problems | w/o error | w/o errors | error free | fault free | trouble free | faultless | faultlessly | "
                    + "flawless | flawlessly | stable | steady | passed | test passed | tests passed | pass | success | successful | "
                    + "without a hitch | without hitch | since then ok | no further faults | no further trouble"),
    /** Good where little else is said, work where a thing is named ("repaired the feedback"). */
    MENDED("fixed | repaired | mended | done | finished | completed | ready"),
    /** Ran it. Says for how long with {@link #LONG} or a duration. */
    RUN(
            "ran | run | let run | let it run | ran it | test run | trial run | long run | proof run | soak | soaked | soak test | "
                    + "soak tested | soaking | burn in | burned in | burnt in | burn-in | on test | under test | on soak | tested | "
                    + "test | endurance test | endurance run | long term test | played | was running | has run | was on | been on | "
                    + "left on | left it on | left running | left it running | let it play | let play | kept it on | had it running | since"),
    LONG("overnight | over night | all day | all night | the whole day | whole day | the whole night | whole night | "
            + "all afternoon | all morning | all evening | the whole afternoon | whole afternoon | the whole evening | "
            + "whole evening | the whole morning | whole morning | over the weekend | whole weekend | the whole weekend | all weekend | all week | for a day | for days | "
            + "for a week | for weeks | for a month | a whole day | a whole week"),

    /** Names a cause outright. */
    CAUSE(
            "cause | cause was | cause is | the cause was | the cause is | the cause | root cause | root cause was | "
                    + "reason | reason was | the reason was | caused by | was caused by | culprit | culprit was | the culprit was | "
                    + "the culprit | turned out to be | turns out to be | turned out it was | turned out | turns out | turned to be | "
                    + "found to be | traced to | traced it to | tracked down to | traced back to | was due to | due to | because of | "
                    + "diagnosis | diagnosed as | guilty was | guilty | to blame | fault was | the fault was | fault is | "
                    + "problem was | the problem was | defect was | the defect was | "
                    + "is the reason | was the reason | was the cause | was the culprit | was the problem | was the fault | "
                    + "fault came from | hum came from | noise came from | smoke came from | crackle came from | "
                    + "which came from | this came from | that came from | located in | localised to | narrowed down to | in the end it was"),
    /** Names what was found; a cause if it is one of those known. */
    FOUND(
            "it was | it was the | it was a | found | find | discovered | identified | revealed | shows up as | could see | saw | there was | detected"),
    DOUBT("maybe | perhaps | possibly | probably | presumably | i think | i guess | i suspect | i believe | suspect | "
            + "suspected | suspicion | looks like | seems | seems to be | could be | might be | may be | likely | assume | "
            + "assumed | supposedly | my guess | not sure"),

    /** What follows was not done. */
    PLANNED("should | would | will | must | need | needs | needed | need to | needs to | have to | has to | want to | "
            + "to be | going to | could | can | might | may | if | ordered | order | on order | waiting for | waiting on | "
            + "plan | planned | plan to | next time | next step | recommend | recommended | suggest | suggested | offered | "
            + "todo | to do | try | trying to | instead of | before replacing | rather than | unless | until | awaiting | "
            + "quote for | quoted"),
    NEGATION("not | no | never | without | nothing | neither | none | nor"),
    /** What follows was done by others, or earlier. */
    OTHERS("owner | customer | client | somebody | someone | previous | previously | predecessor | earlier repair | "
            + "another shop | other shop | another workshop | other workshop | the dealer | he had | they had | "
            + "had been | had already | already been | last year | years ago | months ago | long ago | once before"),
    /** What was put in to see what it does, and says nothing of a repair. */
    TRIAL("to test | for a test | for test | for testing | as a test | to try | for a try | on trial | with mine | "
            + "with my own | with a known good | with known good | temporarily | provisionally"),
    /** Others had been inside. */
    WORKED_ON(
            "worked on before | worked on already | has been opened before | had been opened before | opened before | "
                    + "already opened | already been opened | somebody was inside | someone was inside | somebody has been inside | "
                    + "someone has been inside | somebody had been inside | someone had been inside | previous repair | "
                    + "previous repairs | earlier repairs | earlier repair attempt | previous repair attempt | "
                    + "repair attempt | attempted repair | bodged | botched | botched repair | amateur repair | "
                    + "repaired before | repaired elsewhere | other shop had | another shop had | other workshop had"),

    /** A bench test follows. */
    TEST("measured | measure | measuring | checked | check | checking | scoped | probed | inspected | looked at | "
            + "looked for | read | tried | compared | metered | did the | watched | tapped | unplugged"),

    /** Goes on with what was written before. */
    GOES_ON(
            "still | again | later | next day | the next day | update | continued | then | part arrived | parts arrived | "
                    + "parts came | part came | parts in | today | now | back on the bench | follow up | follow-up | addendum"),
    /** Says nothing of how it ended. */
    FILLER(
            "it | unit | set | device | machine | player | recorder | box | is | was | are | be | been | has | have | had | "
                    + "all | everything | and | for | after | that | this | the | a | an | with | so | "
                    + "far | till | here | back | to | of | on | in | at | by | from | returned | handed | given | "
                    + "delivered | sent | over | out | happy | shelf | bench | yesterday | finally | "
                    + "very | quite | already | result | days | day | hours | hour | weeks | week | months | month | year | "
                    + "years | about | more | than | disc | discs | tape | tapes | both | continuously | continuous | "
                    + "straight | long | whole | case | closed | job | any | further | final | i | we | he | she");

    private final ImmutableList<String> phrases;

    Cue(String phrases) {
        this.phrases = ImmutableList.copyOf(Splitter.on('|').trimResults().splitToList(phrases));
    }

    List<String> phrases() {
        return phrases;
    }
}
