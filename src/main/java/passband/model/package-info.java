/**
 * What the names stand for: devices, analyzers and leads with their quantities taken as exact
 * values. Values are {@link passband.quantity.Rational} in coherent SI units (degrees Celsius and
 * counts excepted) unless a name says otherwise.
 */
@NullMarked
package passband.model;

import org.jspecify.annotations.NullMarked;
