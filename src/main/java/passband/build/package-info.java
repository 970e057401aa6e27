/** Compiles what a command line names, unit by unit, and writes the output as a whole. */
package passband.build;
