/** From text to syntax tree: words, lines and blocks, statements. */
package passband.parse;
