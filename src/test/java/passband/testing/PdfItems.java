package passband.testing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;

/** What a tagged PDF asks for, read back from its structure and the ink that belongs to it. */
public final class PdfItems {

  /** The words and the boxes of one item. */
  public static final class Ink {
    private final StringBuilder words = new StringBuilder();
    private int boxes;
    private Ink row = this;

    /**
     * All words of the table row that it stands in, without spaces; its own where it is in none.
     */
    public String wordsOfRow() {
      return row.words();
    }

    /** All its words, without spaces. */
    public String words() {
      return words.toString();
    }

    /** How many rectangles are drawn for it. */
    public int boxes() {
      return boxes;
    }
  }

  private final Map<COSDictionary, Map<Integer, Ink>> pages = new HashMap<>();
  private final Map<String, List<Ink>> items = new TreeMap<>();

  private PdfItems() {}

  /** By the identity of each item what asks for it: as many as there are elements that do. */
  public static Map<String, List<Ink>> of(byte[] pdf) throws IOException {
    PdfItems found = new PdfItems();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (PDPage page : document.getPages()) {
        Reader reader = new Reader();
        reader.processPage(page);
        found.pages.put(page.getCOSObject(), reader.inks);
      }
      found.walk(document.getDocumentCatalog().getStructureTreeRoot(), null, null);
    }
    return found.items;
  }

  private void walk(PDStructureNode node, Ink into, Ink row) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        Ink inRow = element.getStructureType().equals("TR") ? new Ink() : row;
        String id = element.getElementIdentifier();
        Ink own = id == null ? into : new Ink();
        if (id != null) {
          own.row = inRow == null ? own : inRow;
          items.computeIfAbsent(id, x -> new ArrayList<>()).add(own);
        }
        walk(element, own, inRow);
      } else if (into != null || row != null) {
        PdfContent content = PdfContent.of(node, kid);
        Ink ink = pages.get(content.page()).getOrDefault(content.number(), new Ink());
        add(ink, into);
        add(ink, row);
      }
    }
  }

  private static void add(Ink ink, Ink into) {
    if (into != null) {
      into.words.append(ink.words);
      into.boxes += ink.boxes;
    }
  }

  /** The ink of one page by the number of its marked content. */
  private static final class Reader extends PDFMarkedContentExtractor {
    private final Map<Integer, Ink> inks = new HashMap<>();
    private Ink current;

    @Override
    public void beginMarkedContentSequence(
        org.apache.pdfbox.cos.COSName tag, COSDictionary properties) {
      super.beginMarkedContentSequence(tag, properties);
      int number = properties == null ? -1 : properties.getInt("MCID", -1);
      current = number < 0 ? null : inks.computeIfAbsent(number, x -> new Ink());
    }

    @Override
    public void endMarkedContentSequence() {
      super.endMarkedContentSequence();
      current = null;
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
      if (operator.getName().equals("re") && current != null) {
        current.boxes++;
      }
      super.processOperator(operator, operands);
    }

    @Override
    protected void processTextPosition(TextPosition text) {
      super.processTextPosition(text);
      if (current != null) {
        current.words.append(text.getUnicode().strip());
      }
    }
  }
}
