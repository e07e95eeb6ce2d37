package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;

/**
 * What a column of a table, or a labelled line of a diary ("Cause: …"), tells of a case. The names are those of a mapping
 * file, in lower case.
 */
public enum ImportField {
    /** The day it came in. */
    DATE(
            false,
            "date | day | date in | date received | received | received on | opened | intake | came in | checked in | "
                    + "booked in | arrived | arrival | rcvd | recd | brought in | taken in | in"),
    /** The day it was closed. */
    CLOSED(
            false,
            "date out | closed | finished | completed | delivered | date closed | date done | handed over | collected | "
                    + "picked up | handed out | out"),
    /** Serial number or tag. */
    UNIT(
            false,
            "serial | serial number | serial no | serial nr | s/n | sn | snr | unit | unit no | unit id | tag | asset | "
                    + "asset tag | job | job no | job number | job id | ticket | ticket no | order no | ref | reference | "
                    + "no | number | id"),
    /** What it is. */
    DEVICE(
            false,
            "device | model | type | set | machine | maker | make | brand | family | make and model | make model | "
                    + "product | equipment | appliance | what | thing | item | mk | mdl | device type | article | board | revision"),
    /** What the owner says; nothing in it is taken for work of the bench. */
    COMPLAINT(
            true,
            "complaint | problem | customer complaint | owner complaint | customer | owner | customer says | owner says | "
                    + "says owner | says customer | reported | reported fault | fault reported | fault | symptom | symptoms | "
                    + "says | said | issue | fault description | description of fault | error | what is wrong"),
    /** Anything: findings, work and endings as they come. */
    NOTES(
            true,
            "notes | note | remarks | remark | comment | comments | description | details | text | history | log | diary | "
                    + "observations | observation | observed | seen | findings | bench notes | technician notes | "
                    + "what happened | report"),
    /** Readings and tests. */
    MEASURED(
            true,
            "measured | measurements | measurement | readings | values | tests | test | tested | checks | checked"),
    /** What it turned out to be. */
    CAUSE(
            true,
            "cause | root cause | cause of fault | reason | diagnosis | conclusion | culprit | found | fault found | "
                    + "found fault | defect | defective part | faulty part | bad part | turned out to be | it was"),
    /** What was done. */
    WORK(
            true,
            "fix | fixes | repair | repairs | work | work done | done | action | actions | action taken | remedy | "
                    + "repair done | solution | what was done | parts replaced | replaced | replaced parts | parts | service"),
    /** How it ended. */
    OUTCOME(
            true,
            "result | results | outcome | status | ended | ending | end | verdict | final | final test | proof run | state");

    private final boolean wordy;
    private final ImmutableList<String> labels;

    ImportField(boolean wordy, String labels) {
        this.wordy = wordy;
        this.labels = ImmutableList.copyOf(Splitter.on('|').trimResults().splitToList(labels));
    }

    /** The name in a mapping file. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether it holds sentences, so that several columns of it are read one after the other. */
    boolean wordy() {
        return wordy;
    }

    /** How people call it; of a unit, the better names first. */
    List<String> labels() {
        return labels;
    }
}
