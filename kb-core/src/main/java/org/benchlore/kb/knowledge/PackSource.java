package org.benchlore.kb.knowledge;

/**
 * The text of a pack and the name to show in messages.
 *
 * @param name file name or path, as the author knows it
 * @param yaml the whole text
 */
public record PackSource(String name, String yaml) {}
