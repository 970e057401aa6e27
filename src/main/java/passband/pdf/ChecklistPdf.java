package passband.pdf;

import passband.plan.Plan;
import passband.render.Sheet;
import passband.render.SheetMaker;
import passband.words.Language;

/** {@code checklist.pdf}: the technician's sheet on paper. */
public final class ChecklistPdf {
  private ChecklistPdf() {}

  /** A file. */
  public record Printed(byte[] bytes, int pages) {}

  /** The whole file. */
  public static byte[] of(Plan plan, Paper paper) {
    return printed(SheetMaker.sheet(plan), paper).bytes();
  }

  /** The whole file, with the number of its pages. */
  public static Printed printed(Sheet sheet, Paper paper) {
    Language language = sheet.head().language();
    String revision = language.of("revision", sheet.head().revision());
    String title = sheet.head().title() + ", " + revision;
    return PdfFile.printed(
        sheet,
        paper,
        new PdfFile.About(title, 0, true, language),
        fonts -> new SheetParts(sheet, fonts, paper).pages());
  }
}
