package org.benchlore.kb;

import com.google.common.base.Suppliers;
import java.util.List;
import java.util.function.Supplier;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.TestPlanner;
import org.benchlore.kb.ranking.Lesson;
import org.benchlore.kb.ranking.RankingModel;

/**
 * What packs and cases say together as of one position of the log. Immutable and thread-safe; the planner is made when
 * first asked for.
 */
final class Lore {
    private final long position;
    private final RankingModel model;
    private final Earliest earliest;
    private final List<Lesson> fitted;
    private final BenchRecord record;
    private final Supplier<TestPlanner> planner;

    /**
     * @param earliest not touched any more
     * @param fitted the lessons that the model's dependence was learnt from
     */
    Lore(
            Knowledge knowledge,
            long position,
            RankingModel model,
            Earliest earliest,
            List<Lesson> fitted,
            BenchRecord record) {
        this.position = position;
        this.model = model;
        this.earliest = earliest;
        this.fitted = fitted;
        this.record = record;
        this.planner = Suppliers.memoize(() -> new TestPlanner(knowledge, model, record));
    }

    long position() {
        return position;
    }

    RankingModel model() {
        return model;
    }

    Earliest earliest() {
        return earliest;
    }

    List<Lesson> fitted() {
        return fitted;
    }

    BenchRecord record() {
        return record;
    }

    TestPlanner planner() {
        return planner.get();
    }
}
