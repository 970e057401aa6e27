package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.util.List;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/** ISO 14289-1 (PDF/UA-1), all that a program can check of it, by veraPDF's rules. */
final class PdfUa {
  private PdfUa() {}

  static void assertTagged(byte[] pdf) throws Exception {
    VeraGreenfieldFoundryProvider.initialise();
    try (PDFAParser parser =
            Foundries.defaultInstance()
                .createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1);
        PDFAValidator validator =
            Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
      ValidationResult result = validator.validate(parser);
      List<String> failed =
          result.getTestAssertions().stream()
              .map(a -> a.getRuleId().getClause() + ": " + a.getMessage())
              .distinct()
              .toList();
      assertEquals(List.of(), failed);
      assertTrue(result.isCompliant());
      assertTrue(result.getTotalAssertions() > 1000, "it looked at something");
    }
  }
}
