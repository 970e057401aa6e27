/** Compiles what a command line names, unit by unit, and writes the output as a whole. */
@NullMarked
package passband.build;

import org.jspecify.annotations.NullMarked;
