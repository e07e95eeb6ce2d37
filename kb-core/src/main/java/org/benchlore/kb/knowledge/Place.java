package org.benchlore.kb.knowledge;

/** Where something stands in a pack; line and column count from 1. */
record Place(String file, int line, int column) {
    @Override
    public String toString() {
        return file + ":" + line + ":" + column;
    }
}
