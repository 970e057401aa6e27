/** From text to syntax tree: words, lines and blocks, statements. */
@NullMarked
package passband.parse;

import org.jspecify.annotations.NullMarked;
