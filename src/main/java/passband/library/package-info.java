/** A library's files: where its root is, how bytes become text, and what each file uses. */
@NullMarked
package passband.library;

import org.jspecify.annotations.NullMarked;
