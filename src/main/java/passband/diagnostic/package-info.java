/** What the compiler finds: its codes, places, messages and hints, and how they are printed. */
@NullMarked
package passband.diagnostic;

import org.jspecify.annotations.NullMarked;
