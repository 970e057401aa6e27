/** Exact numbers, dimensions, units and the quantities of the trade. */
package passband.quantity;
