/** The memory of a repair bench, as a library. Start at {@link org.benchlore.kb.KnowledgeBase}. */
module org.benchlore.kb {
    requires static transitive org.jspecify;
    requires com.google.common;
    requires re2j;
    requires java.sql;
    requires org.apache.commons.numbers.gamma;
    requires org.apache.commons.statistics.distribution;
    requires org.apache.lucene.analysis.common;
    requires org.apache.lucene.core;
    requires org.snakeyaml.engine;
    requires org.xerial.sqlitejdbc;
    requires tools.jackson.databind;

    exports org.benchlore.kb;
    exports org.benchlore.kb.knowledge;
    exports org.benchlore.kb.reading;
    exports org.benchlore.kb.cases;
    exports org.benchlore.kb.importing;
    exports org.benchlore.kb.ranking;
    exports org.benchlore.kb.planning;
    exports org.benchlore.kb.search;
    exports org.benchlore.kb.report;
}
