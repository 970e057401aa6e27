/** The compiled procedure: points with their limits, steps and wiring in bench order. */
package passband.plan;
