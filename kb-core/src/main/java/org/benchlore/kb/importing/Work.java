package org.benchlore.kb.importing;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableList;
import java.util.List;

/** Kinds of work at the bench: as diaries tell that it was done, and as packs name it in a fix ("Replace the fan"). */
enum Work {
    REPLACE(
            "replaced | changed | swapped | exchanged | renewed | substituted | fitted | installed | put in | put in new | "
                    + "put in a new | put new | new | built in | popped in | replacement of | replacement | exchange of | exchange | swapped out | "
                    + "changed out | changed over | recapped | replacing | changing | swapping | fitting | renewing | got new | "
                    + "got a new | took new",
            "replace | renew | fit | supply | change | exchange | substitute | swap | install | use"),
    CLEAN(
            "cleaned | washed | wiped | degreased | dusted | blew out | blown out | vacuumed | deoxidised | deoxidized | "
                    + "sprayed | squirt of | squirts of | shot of | polished | cleaning of | cleaning | washing | rinsed | flushed | neutralised | neutralized | "
                    + "deoxed | descaled",
            "clean | descale | wash | wipe | degrease | polish | flush | neutralise"),
    SOLDER(
            "resoldered | re soldered | soldered | reflowed | re flowed | reflow | reballed | touched up | retouched | "
                    + "soldered again | new soldered | resoldering of | resoldering | soldering of | reworked | redid",
            "resolder | solder | reflow | redo"),
    RESEAT(
            "reseated | re seated | reconnected | replugged | plugged in again | pushed in | pushed home | refitted | "
                    + "re fitted | refixed | tightened | retightened | retensioned | bent back | straightened | reattached | "
                    + "reinserted | reseating of | secured | reseating",
            "reseat | seat | refit | reconnect | reinsert | retension | secure | straighten | put | glue"),
    REPAIR(
            "restored | bridged | rebuilt | overhauled | serviced | patched | glued | repair of | "
                    + "rewired | jumpered | insulated | stabilised | stabilized | rebuilding of",
            "repair | restore | rebuild | mend | cure | bridge | stabilise | remake | protect | free | complete"),
    ADJUST(
            "adjusted | readjusted | re adjusted | aligned | realigned | re aligned | calibrated | recalibrated | "
                    + "corrected | trimmed | retimed | adjustment of | alignment of",
            "set | adjust | align | readjust | correct | retime | relearn | select | bring"),
    GREASE(
            "oiled | greased | lubricated | regreased | relubricated | re greased | lubrication of",
            "oil | grease | relubricate | lubricate"),
    REMOVE(
            "removed | took out | taken out | cleared | freed | took away | pulled out | got out | disconnected | took off | "
                    + "removal of",
            "remove | clear | take | retire | break | release | drain | open | leave"),
    LOAD(
            "reflashed | re flashed | flashed | reprogrammed | re programmed | programmed | updated | reloaded | rewrote | "
                    + "rewritten | formatted | reformatted | initialised | initialized | cloned | restored from | "
                    + "factory reset | loaded | firmware update",
            "rewrite | reload | load | update | format | initialise | clone | move"),
    DRY("dried | dried out the | charged | recharged", "dry | charge | let | rescue");

    private final ImmutableList<String> done;
    private final ImmutableList<String> named;

    Work(String done, String named) {
        Splitter or = Splitter.on('|').trimResults();
        this.done = ImmutableList.copyOf(or.splitToList(done));
        this.named = ImmutableList.copyOf(or.splitToList(named));
    }

    /** As told of work that was done. */
    List<String> done() {
        return done;
    }

    /** As packs begin the name of a fix, and as people note it under a heading such as "Repair". */
    List<String> named() {
        return named;
    }
}
