/** The knowledge that ships with Benchlore. */
module org.benchlore.kb.data {
    requires static transitive org.jspecify;
    requires transitive org.benchlore.kb;

    exports org.benchlore.kb.data;
}
