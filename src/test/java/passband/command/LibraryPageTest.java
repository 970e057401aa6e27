package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import nu.validator.htmlparser.dom.HtmlDocumentBuilder;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Sheets;

/** {@code index.html} says of each procedure in the output what its own files say. */
class LibraryPageTest {
  private static final List<Plan> PLANS = List.of(Sheets.SUNDEW, Sheets.TEASEL, Sheets.YARROW);

  @TempDir Path work;
  private String said = "";

  @BeforeEach
  void copyLibrary() {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  private void run(String... words) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream stream = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    int status = Main.run(new Invocation(work, stream, stream, 0, "one", false), List.of(words));
    said = bytes.toString(StandardCharsets.UTF_8);
    assertEquals(0, status, said);
  }

  private String page() throws IOException {
    return Files.readString(work.resolve("out/index.html"));
  }

  private static List<Element> all(Element in, String tag) {
    List<Element> found = new ArrayList<>();
    NodeList list = in.getElementsByTagName(tag);
    for (int i = 0; i < list.getLength(); i++) {
      found.add((Element) list.item(i));
    }
    return found;
  }

  /** Each row by the procedure that it links to. */
  private Map<String, Element> rows() throws Exception {
    Document page = new HtmlDocumentBuilder().parse(new InputSource(new StringReader(page())));
    Map<String, Element> rows = new TreeMap<>();
    for (Element row : all(page.getDocumentElement(), "tr")) {
      for (Element link : all(row, "a")) {
        assertTrue(Files.exists(work.resolve("out/" + link.getAttribute("href"))));
        rows.put(link.getAttribute("href").split("/")[0], row);
      }
    }
    return rows;
  }

  @Test
  void itSaysOfEachWhatItsFilesSay() throws Exception {
    run("build", "procedures");
    Map<String, Element> rows = rows();
    assertEquals(PLANS.size(), rows.size());
    for (Plan plan : PLANS) {
      Element row = rows.get(plan.name().text());
      String text = row.getTextContent();
      for (String part :
          List.of(
              plan.title(),
              plan.device().title(),
              plan.revision().label() + ", " + plan.revision().date(),
              plan.instruments().titles(),
              "not released")) {
        assertTrue(text.contains(part), part + "\n" + text);
      }
      Path pdf = work.resolve("out/" + plan.name().text() + "/checklist.pdf");
      try (PDDocument paper = Loader.loadPDF(pdf.toFile())) {
        assertTrue(text.contains(paper.getNumberOfPages() + " page"), text);
      }
    }
  }

  @Test
  void itSaysWhatIsReleased() throws Exception {
    run("build", "procedures", "--without", "pdf");
    run("release", "--by", "A", "--on", "2026-11-02", "procedures/teasel/teasel-output.pband");
    run("build", "procedures", "--without", "pdf");
    Map<String, Element> rows = rows();
    assertFalse(rows.get("teasel-output").getTextContent().contains("not released"));
    assertTrue(rows.get("teasel-output").getTextContent().contains("released"));
    assertTrue(rows.get("yarrow-service").getTextContent().contains("not released"));
  }

  /** Built part by part, or all at once, or again: the same page. */
  @Test
  void itIsTheSameHoweverTheProceduresWereBuilt() throws IOException {
    run("build", "procedures", "--without", "pdf");
    String whole = page();
    run("build", "procedures", "--without", "pdf");
    assertEquals(whole, page());
    Files.delete(work.resolve("out/index.html"));
    run("build", "procedures", "--without", "pdf");
    assertEquals(whole, page());
    for (String part : List.of("yarrow", "sundew", "teasel")) {
      run("build", "procedures/" + part, "--without", "pdf", "--out", "parts");
    }
    assertEquals(whole, Files.readString(work.resolve("parts/index.html")));
  }

  /** Nobody is to find a sheet by it that no source declares any more. */
  @Test
  void aProcedureThatIsGoneIsNotListed() throws Exception {
    run("build", "procedures", "--without", "pdf");
    Files.delete(work.resolve("procedures/teasel/teasel-output.pband"));
    run("build", "procedures", "--without", "pdf");
    assertTrue(Files.exists(work.resolve("out/teasel-output/checklist.html")));
    assertEquals(List.of("sundew-energy", "yarrow-service"), List.copyOf(rows().keySet()));
  }

  @Test
  void aPageOfSomebodyElseStays() throws IOException {
    Files.createDirectories(work.resolve("out"));
    Files.writeString(work.resolve("out/index.html"), "mine");
    run("build", "procedures", "--without", "pdf");
    assertTrue(said.contains("index.html: Passband did not write this"), said);
    assertEquals("mine", page());
  }
}
