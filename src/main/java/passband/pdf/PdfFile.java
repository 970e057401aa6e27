package passband.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import passband.render.Sheet;
import passband.words.Language;

/**
 * A file on paper, tagged, the same bytes every time: a head and a foot on every page around what
 * it is about.
 */
final class PdfFile {
  /** Between what stands at the left and at the right of a page's head. */
  private static final double GAP = 12;

  private final Sheet sheet;
  private final Paper paper;
  private final Language language;
  private final About about;
  private final PDDocument document = new PDDocument();
  private final Tags tags = new Tags();

  private PdfFile(Sheet sheet, Paper paper, About about) {
    this.sheet = sheet;
    this.paper = paper;
    this.language = about.language();
    this.about = about;
  }

  /** From the type to pages. */
  interface Content {
    List<Flow.Page> pages(Fonts fonts);
  }

  /**
   * What is said of a file.
   *
   * @param title of the document
   * @param id a number that no other file of the procedure has
   * @param language of the document
   * @param serial whether every page after the first, which asks for it, has a box for the serial
   *     number
   */
  record About(String title, int id, boolean serial, Language language) {}

  /** The whole file, with the number of its pages. */
  static ChecklistPdf.Printed printed(Sheet sheet, Paper paper, About about, Content content) {
    try {
      return new PdfFile(sheet, paper, about).printed(content);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private ChecklistPdf.Printed printed(Content content) throws IOException {
    try (document) {
      Fonts fonts = new Fonts(document);
      List<Flow.Page> pages = content.pages(fonts);
      for (int i = 0; i < pages.size(); i++) {
        page(pages.get(i), i + 1, pages.size(), fonts);
      }
      tags.finish(document);
      describe();
      ByteArrayOutputStream out = new ByteArrayOutputStream(1 << 16);
      document.save(out);
      return new ChecklistPdf.Printed(CrossReference.counted(out.toByteArray()), pages.size());
    }
  }

  private void page(Flow.Page page, int number, int of, Fonts fonts) throws IOException {
    PDPage made = new PDPage(new PDRectangle((float) paper.width(), (float) paper.height()));
    made.getCOSObject().setName("Tabs", "S");
    document.addPage(made);
    tags.startPage(made);
    try (PDPageContentStream out = new PDPageContentStream(document, made)) {
      Canvas canvas = new Canvas(out, fonts, tags, paper.height());
      canvas.artifact(() -> margins(canvas, page.label(), number, of, fonts));
      for (Flow.Placed placed : page.parts()) {
        if (placed.again()) {
          canvas.again(() -> placed.part().draw(canvas, Paper.MARGIN, placed.y()));
        } else {
          placed.part().draw(canvas, Paper.MARGIN, placed.y());
        }
      }
    }
  }

  private void margins(Canvas canvas, String label, int number, int of, Fonts fonts)
      throws IOException {
    double right = paper.width() - Paper.MARGIN;
    String corner = fonts.cut(label, 14, true, paper.inner() / 2);
    double cornerWidth = fonts.width(corner, 14, true);
    String digest = " \u00b7 " + sheet.head().shortDigest();
    String name =
        sheet.head().name() + " \u00b7 " + language.of("revision", sheet.head().revision());
    if (sheet.items().source().isUnreleased()) {
      digest = " \u00b7 " + language.of("unreleased").toUpperCase(Locale.ROOT) + digest;
    }
    double room = paper.inner() - cornerWidth - GAP - fonts.width(digest, 9, true);
    canvas.text(fonts.cut(name, 9, true, room) + digest, Paper.MARGIN, 32, 9, true);
    canvas.text(corner, right - cornerWidth, 33, 14, true);
    canvas.line(Paper.MARGIN, 39, right, 39, 0.7);
    String authority = language.of("authority");
    String serial = language.of("serial");
    double bottom = paper.height() - 24;
    String page = language.of("page", number, of);
    canvas.text(authority, Paper.MARGIN, bottom, 9, true);
    double pageAt = right - fonts.width(page, 9, true);
    canvas.text(page, pageAt, bottom, 9, true);
    // Pages are taken apart, and those of two generators lie on one bench.
    if (about.serial() && number > 1) {
      double from = Paper.MARGIN + fonts.width(authority, 9, true) + 2 * GAP;
      canvas.text(serial, from, bottom, 9, true);
      double box = from + fonts.width(serial, 9, true) + GAP / 2;
      canvas.rect(box, bottom - 12, pageAt - 2 * GAP - box, 17, 0.9);
    }
  }

  // ---- about the document ----

  private void describe() throws IOException {
    String title = about.title;
    PDDocumentCatalog catalog = document.getDocumentCatalog();
    catalog.setLanguage(language.code());
    PDMarkInfo marked = new PDMarkInfo();
    marked.setMarked(true);
    catalog.setMarkInfo(marked);
    PDViewerPreferences preferences =
        new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
    preferences.setDisplayDocTitle(true);
    catalog.setViewerPreferences(preferences);
    document.getDocumentInformation().setTitle(title);
    document.getDocumentInformation().setCreator("Passband");
    document.getDocumentInformation().setCreationDate(date());
    long digest = Long.parseUnsignedLong(sheet.head().digest().substring(0, 15), 16);
    document.setDocumentId(digest + about.id);
    PDMetadata metadata = new PDMetadata(document);
    metadata.importXMPMetadata(xmp(title).getBytes(StandardCharsets.UTF_8));
    catalog.setMetadata(metadata);
  }

  /** The revision's day: the sheet depends on no clock. */
  private Calendar date() {
    String[] parts = sheet.head().date().split("-");
    Calendar date = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
    date.clear();
    date.set(
        Integer.parseInt(parts[0]), Integer.parseInt(parts[1]) - 1, Integer.parseInt(parts[2]));
    return date;
  }

  private String xmp(String title) {
    String escaped = title.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    return """
        <?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
         <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
           <pdfuaid:part>1</pdfuaid:part>
           <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
           <dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
          </rdf:Description>
         </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="w"?>
        """
        .formatted(escaped, language.code());
  }
}
