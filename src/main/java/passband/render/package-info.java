/** From a compiled procedure to files: limit tables and the checklist. */
package passband.render;
