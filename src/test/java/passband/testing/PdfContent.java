package passband.testing;

import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;

/** Where content of an element of a PDF's structure is: a page, and a number on it. */
record PdfContent(COSDictionary page, int number) {

  /** A kid of an element that is content: a number on its page, or a reference to another page. */
  static PdfContent of(PDStructureNode element, Object kid) {
    if (kid instanceof PDMarkedContentReference reference) {
      return new PdfContent(reference.getPage().getCOSObject(), reference.getMCID());
    }
    return new PdfContent(((PDStructureElement) element).getPage().getCOSObject(), (Integer) kid);
  }
}
