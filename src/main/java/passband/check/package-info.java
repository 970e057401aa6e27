/** What the compiler looks for in a compiled procedure, each check small and by itself. */
package passband.check;
