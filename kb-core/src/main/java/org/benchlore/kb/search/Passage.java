package org.benchlore.kb.search;

import java.util.List;

/**
 * A passage that may be shown of a hit.
 *
 * @param words what the analyser makes of it, in order
 */
record Passage(String text, List<Word> words) {}
