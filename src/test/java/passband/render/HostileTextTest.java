package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import nu.validator.client.EmbeddedValidator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diff.PlanDiff;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.testing.Examples;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * Names and texts that mean something in HTML, CSS, SVG or PDF, or that do not fit, in every
 * output.
 */
class HostileTextTest {

  static List<String> texts() {
    return List.of(
        "</script></style></title><img src=x onerror=alert(1)>",
        "a \\\"quoted\\\" & <b>bold</b> 'text' ${{name} #{{x} <#if>",
        "}; @page {{ content: url(http://x) } /* */ \\\\ \\n end",
        "\u6d4b\u8bd5 \ud83d\udd25 \u00b5\u03a9 \u2264 \u00b1",
        "W".repeat(400),
        "word ".repeat(120).strip(),
        "-->]]>&amp;&#0;%s%n\\t".replace("\\t", "tab"));
  }

  private static Plan plan(String text) {
    String source =
        Examples.framed(
                "test",
                """
                  section intro "%s" {
                    confirm "%s"
                    record  note "%s"
                    choose  colour "%s" from "%s", "none of these" pass "none of these"
                  }
                  test t "%s" {
                    outlet bip
                    setup  bipolar
                    inside device.service
                    accept power from output, read as current
                    allow  load-off-rated because "%s"
                    table {
                      mode | setting/W  | load/ohm | ramp
                      thin | 1, 20, 40  | 100      | slow
                      thin | 20         | 110      | fast
                    }
                    after {
                      caution also "%s"
                    }
                  }
                """)
            .replace("procedure example \"Example\"", "procedure example \"%s\"")
            .replace("setup bipolar \"Bipolar\"", "setup bipolar \"%s\"")
            .replace("\"Output burns.\"", "\"%s\"")
            .replace("%s", text);
    Snippet snippet = Examples.compile(source.getBytes(StandardCharsets.UTF_8));
    return snippet.plan();
  }

  private static void assertValid(String html) throws Exception {
    EmbeddedValidator validator = new EmbeddedValidator();
    validator.setOutputFormat(EmbeddedValidator.OutputFormat.GNU);
    String said =
        validator
            .validate(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)))
            .lines()
            .filter(l -> !l.contains("Content Security Policy (meta tag)"))
            .filter(l -> !l.contains("info warning"))
            .collect(Collectors.joining("\n"));
    assertEquals("", said);
  }

  @ParameterizedTest
  @MethodSource("texts")
  void everyOutputIsWhole(String text) throws Exception {
    Plan plan = plan(text);
    String html = Checklist.of(plan);
    assertValid(html);
    assertFalse(html.contains("<img"), "markup is escaped");
    assertEquals(1, html.split("<script>", -1).length - 1);
    assertEquals(1, html.split("</style>", -1).length - 1);
    Plan other = plan("other");
    assertValid(DiffPage.of(PlanDiff.between(List.of(plan), List.of(other)), null));
    for (Map<String, String> drawings : List.of(Drawings.setups(plan), Drawings.limits(plan))) {
      for (String svg : drawings.values()) {
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
      }
    }
    byte[] pdf = ChecklistPdf.of(plan, Paper.A4);
    try (var document = Loader.loadPDF(pdf)) {
      String all = new PDFTextStripper().getText(document);
      plan.limits().forEach(l -> assertTrue(all.contains(l.end(l.accept().upper())), l.id()));
    }
  }

  static List<Path> goldens() {
    return Repository.files(Repository.ROOT.resolve("src/test/resources/golden"), ".pband");
  }

  /** Tests of every shape the language has. */
  @ParameterizedTest
  @MethodSource("goldens")
  void everyShapeIsPrinted(Path file) throws Exception {
    Snippet snippet = Examples.compile(Repository.text(file).getBytes(StandardCharsets.UTF_8));
    for (Plan plan : snippet.plans()) {
      if (snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable())) {
        assertValid(Checklist.of(plan));
        try (var document = Loader.loadPDF(ChecklistPdf.of(plan, Paper.LETTER))) {
          assertTrue(document.getNumberOfPages() > 0);
        }
      }
    }
  }
}
