/** What the compiler looks for in a compiled procedure, each check small and by itself. */
@NullMarked
package passband.check;

import org.jspecify.annotations.NullMarked;
