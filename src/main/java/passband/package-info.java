/** A compiler for output-verification procedures of energy-delivering medical generators. */
package passband;
