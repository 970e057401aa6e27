/**
 * The syntax tree: what an author wrote, with the place of every word, before any name is looked
 * up.
 */
@NullMarked
package passband.syntax;

import org.jspecify.annotations.NullMarked;
