package org.benchlore.kb.knowledge;

/**
 * Head of a pack that was read.
 *
 * @param id kebab-case
 * @param version as written
 * @param licence SPDX name
 * @param title short
 * @param about what it covers
 * @param invented whether its makers and models are made up
 */
public record Pack(String id, String version, String licence, String title, String about, boolean invented) {}
