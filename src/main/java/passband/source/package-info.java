/** Texts, the files they come from, and places in them. */
@NullMarked
package passband.source;

import org.jspecify.annotations.NullMarked;
