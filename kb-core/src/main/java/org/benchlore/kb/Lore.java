package org.benchlore.kb;

import com.google.common.base.Suppliers;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.planning.BenchRecord;
import org.benchlore.kb.planning.CaseWork;
import org.benchlore.kb.planning.TestPlanner;
import org.benchlore.kb.ranking.Lesson;
import org.benchlore.kb.ranking.RankingModel;

/**
 * What packs and cases say together as of one position of the log. Immutable and thread-safe; the record of fixes and
 * tests and the planner are made when first asked for.
 */
final class Lore {
    private final long position;
    private final RankingModel model;
    private final Earliest earliest;
    private final List<Lesson> fitted;
    private final Map<String, CaseWork> work;
    private final Supplier<BenchRecord> record;
    private final Supplier<TestPlanner> planner;

    /**
     * @param earliest not touched any more
     * @param fitted the lessons that the model's dependence was learnt from
     * @param work what was done, by case; cases in which nothing was done are left out; not touched any more
     */
    Lore(
            Knowledge knowledge,
            long position,
            RankingModel model,
            Earliest earliest,
            List<Lesson> fitted,
            Map<String, CaseWork> work) {
        this.position = position;
        this.model = model;
        this.earliest = earliest;
        this.fitted = fitted;
        this.work = Collections.unmodifiableMap(work);
        this.record = Suppliers.memoize(() -> BenchRecord.of(knowledge, work.values()));
        this.planner = Suppliers.memoize(() -> new TestPlanner(knowledge, model, record()));
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

    Map<String, CaseWork> work() {
        return work;
    }

    BenchRecord record() {
        return record.get();
    }

    TestPlanner planner() {
        return planner.get();
    }
}
