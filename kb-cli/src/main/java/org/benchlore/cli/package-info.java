/** The command line: a thin layer over the public API. Read {@link org.benchlore.cli.Benchlore} first. */
@NullMarked
package org.benchlore.cli;

import org.jspecify.annotations.NullMarked;
