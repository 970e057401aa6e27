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
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDMarkedContent;
import org.apache.pdfbox.text.PDFMarkedContentExtractor;
import org.apache.pdfbox.text.TextPosition;

/**
 * All ink of a PDF with its place, and what its structure says.
 *
 * @param pages from the first
 * @param said the text of the structure's elements in order, without spaces
 */
public record PdfInk(List<Page> pages, String said) {

  /** A page of a size in points; paths by their corners. */
  public record Page(float width, float height, List<Letter> letters, List<float[]> corners) {}

  /**
   * A letter that is not a space.
   *
   * @param x its left edge
   * @param y its baseline, from the top of the page
   * @param tagged whether it belongs to the structure
   */
  public record Letter(String text, float x, float y, float width, float size, boolean tagged) {
    private boolean isApart(Letter before) {
      float gap = x - before.x - before.width;
      return Math.abs(y - before.y) > 0.5 || gap > 0.15 * size || x < before.x;
    }
  }

  /** The words of the structure's text as an eye tells them apart, each with how often it is. */
  public Map<String, Integer> words() {
    StringBuilder text = new StringBuilder();
    for (Page page : pages) {
      Letter last = null;
      for (Letter letter : page.letters) {
        if (letter.tagged) {
          text.append(last == null || letter.isApart(last) ? " " : "").append(letter.text);
          last = letter;
        }
      }
    }
    Map<String, Integer> words = new TreeMap<>();
    for (String word : text.toString().strip().split(" ")) {
      words.merge(word, 1, Integer::sum);
    }
    return words;
  }

  /** Reads a file. */
  public static PdfInk of(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<Page> pages = new ArrayList<>();
      Map<COSDictionary, Map<Integer, StringBuilder>> texts = new HashMap<>();
      for (PDPage page : document.getPages()) {
        Reader reader = new Reader(page);
        reader.processPage(page);
        pages.add(reader.page);
        texts.put(page.getCOSObject(), reader.texts);
      }
      StringBuilder said = new StringBuilder();
      walk(document.getDocumentCatalog().getStructureTreeRoot(), texts, said);
      return new PdfInk(pages, said.toString());
    }
  }

  private static void walk(
      PDStructureNode node,
      Map<COSDictionary, Map<Integer, StringBuilder>> texts,
      StringBuilder said) {
    for (Object kid : node.getKids()) {
      if (kid instanceof PDStructureElement element) {
        walk(element, texts, said);
      } else {
        PdfContent content = PdfContent.of(node, kid);
        said.append(texts.get(content.page()).getOrDefault(content.number(), new StringBuilder()));
      }
    }
  }

  /** The ink of one page. */
  private static final class Reader extends PDFMarkedContentExtractor {
    private final Page page;
    private final Map<Integer, StringBuilder> texts = new HashMap<>();
    private StringBuilder current;

    Reader(PDPage of) {
      float width = of.getMediaBox().getWidth();
      float height = of.getMediaBox().getHeight();
      page = new Page(width, height, new ArrayList<>(), new ArrayList<>());
    }

    @Override
    public void beginMarkedContentSequence(COSName tag, COSDictionary properties) {
      super.beginMarkedContentSequence(tag, properties);
      int number = properties == null ? -1 : properties.getInt(COSName.MCID, -1);
      current = number < 0 ? null : texts.computeIfAbsent(number, x -> new StringBuilder());
    }

    @Override
    public void endMarkedContentSequence() {
      super.endMarkedContentSequence();
      current = null;
    }

    @Override
    protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
      switch (operator.getName()) {
        case "m", "l", "c" -> corner(operands, operands.size() - 2, 0, 0);
        case "re" -> {
          corner(operands, 0, 0, 0);
          corner(operands, 0, number(operands, 2), number(operands, 3));
        }
        default -> {}
      }
      super.processOperator(operator, operands);
    }

    private void corner(List<COSBase> operands, int at, float right, float up) {
      float y = page.height - number(operands, at + 1) - up;
      page.corners.add(new float[] {number(operands, at) + right, y});
    }

    private static float number(List<COSBase> operands, int at) {
      return ((COSNumber) operands.get(at)).floatValue();
    }

    @Override
    protected void processTextPosition(TextPosition text) {
      String letter = text.getUnicode().strip();
      if (!letter.isEmpty()) {
        page.letters.add(
            new Letter(
                letter,
                text.getXDirAdj(),
                text.getYDirAdj(),
                text.getWidthDirAdj(),
                text.getFontSizeInPt(),
                current != null));
        if (current != null) {
          current.append(letter);
        }
      }
    }

    @Override
    public List<PDMarkedContent> getMarkedContents() {
      return List.of();
    }
  }
}
