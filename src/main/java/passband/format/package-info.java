/** The one layout of a source file. */
@NullMarked
package passband.format;

import org.jspecify.annotations.NullMarked;
