/** From a compiled procedure to files: limit tables and the checklist. */
@NullMarked
package passband.render;

import org.jspecify.annotations.NullMarked;
