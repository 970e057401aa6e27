/**
 * The bench as a machine: the state that matters while a sheet is worked through, and what each
 * step needs of it and does to it.
 */
@NullMarked
package passband.bench;

import org.jspecify.annotations.NullMarked;
