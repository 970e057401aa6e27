/**
 * {@code checklist.pdf}: the sheet laid out on paper with PDFBox. Lengths are in points, y grows
 * downward from the top of the page. Loaded only when a PDF is asked for.
 */
@NullMarked
package passband.pdf;

import org.jspecify.annotations.NullMarked;
