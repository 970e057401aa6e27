/**
 * Pictures of the sheet: how a setup is wired, where limits lie. They are made of a few {@link
 * passband.draw.Shape}s, so that one drawing is the same in SVG and in PDF. Lengths are in units of
 * a quarter of a millimetre, with the origin at the top left.
 */
@NullMarked
package passband.draw;

import org.jspecify.annotations.NullMarked;
