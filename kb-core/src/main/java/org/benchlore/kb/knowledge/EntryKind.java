package org.benchlore.kb.knowledge;

/** The sections of a pack, in the order they are bound. */
enum EntryKind {
    CAUTION("cautions", "caution", "id"),
    STATE_SET("state-sets", "state set", "id"),
    SYMPTOM("symptoms", "symptom", "id"),
    TEST("tests", "test", "id"),
    FIX("fixes", "fix", "id"),
    CAUSE("causes", "cause", "id"),
    DEVICE("devices", "device", "scope");

    final String section;
    final String word;
    final String idKey;

    EntryKind(String section, String word, String idKey) {
        this.section = section;
        this.word = word;
        this.idKey = idKey;
    }
}
