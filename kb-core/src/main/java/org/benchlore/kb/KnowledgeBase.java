package org.benchlore.kb;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.benchlore.kb.cases.CaseEvent;
import org.benchlore.kb.cases.CaseHistory;
import org.benchlore.kb.cases.CaseIds;
import org.benchlore.kb.cases.CaseStore;
import org.benchlore.kb.knowledge.DeviceScope;
import org.benchlore.kb.knowledge.Knowledge;
import org.benchlore.kb.knowledge.Risk;
import org.benchlore.kb.planning.TestPlanner;
import org.benchlore.kb.planning.TestProposal;
import org.benchlore.kb.ranking.Ranking;
import org.benchlore.kb.ranking.RankingModel;
import org.benchlore.kb.ranking.RankingQuery;
import org.benchlore.kb.reading.Finding;
import org.benchlore.kb.reading.Reader;
import org.benchlore.kb.reading.Reading;
import org.benchlore.kb.search.SearchQuery;
import org.benchlore.kb.search.SearchResult;

// sketch
public final class KnowledgeBase {
    private KnowledgeBase() {}
}
