package org.benchlore.kb.knowledge;

/** What a pack holds: its sections, in the order they are bound. */
public enum EntryKind {
    CAUTION("cautions", "caution", "id"),
    STATE_SET("state-sets", "state set", "id"),
    SYMPTOM("symptoms", "symptom", "id"),
    TEST("tests", "test", "id"),
    FIX("fixes", "fix", "id"),
    CAUSE("causes", "cause", "id"),
    DEVICE("devices", "device", "scope"),
    POWER_OFF("power-off", "power-off rule", "id");

    final String section;
    final String word;
    final String idKey;

    EntryKind(String section, String word, String idKey) {
        this.section = section;
        this.word = word;
        this.idKey = idKey;
    }

    /** As in links and on the command line, such as {@code cause}. */
    public String id() {
        return word.replace(' ', '-');
    }
}
