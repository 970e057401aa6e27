/** What the compiler finds: its codes, places, messages and hints, and how they are printed. */
package passband.diagnostic;
