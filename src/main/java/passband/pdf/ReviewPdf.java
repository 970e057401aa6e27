package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import passband.detect.Detection;
import passband.draw.Drawing;
import passband.plan.Plan;
import passband.render.BudgetTable;
import passband.render.Sheet;
import passband.render.SheetMaker;
import passband.words.Language;

/**
 * {@code review.pdf}: what the reviewer of a revision looks at and nobody needs at the bench. What
 * was allowed and why, ratings that nobody knows, and where the limits lie.
 */
public final class ReviewPdf {
  private final Sheet sheet;
  private final Detection detection;
  private final PartWriter write;
  private final Language language;

  private ReviewPdf(Sheet sheet, Detection detection, PartWriter write) {
    this.sheet = sheet;
    this.detection = detection;
    this.write = write;
    this.language = sheet.head().language();
  }

  /** The whole file. */
  public static byte[] of(Plan plan, Paper paper) {
    return printed(SheetMaker.sheet(plan), Detection.asItIs(plan), paper).bytes();
  }

  /** The whole file, with the number of its pages. */
  public static ChecklistPdf.Printed printed(Sheet sheet, Detection detection, Paper paper) {
    Language language = sheet.head().language();
    return PdfFile.printed(
        sheet,
        paper,
        new PdfFile.About(title(sheet) + ": " + language.of("reviewer"), 1, false, language),
        fonts -> new ReviewPdf(sheet, detection, new PartWriter(language, fonts, paper)).pages());
  }

  private static String title(Sheet sheet) {
    return sheet.head().title()
        + ", "
        + sheet.head().language().of("revision", sheet.head().revision());
  }

  private List<Flow.Page> pages() {
    write.section("Sect:reviewer");
    TextBlock title = write.block(19, true, write.inner(), title(sheet));
    write.add(TextPart.of(write.path("H1"), title, 0, 6, write.inner()).kept());
    write.heading(write.says("reviewer"));
    write.note(language.of("reviewer.bench", sheet.head().device(), sheet.head().analyzer()));
    write.note(language.of("digest") + ": " + sheet.head().digest());
    if (sheet.items().source().isUnreleased()) {
      write.note(write.says("reviewer.unreleased"));
    }
    write.note(sheet.head().decision());
    allowed();
    unknown();
    budgets();
    pictures();
    new DetectParts(detection, write, language).add();
    return write.pages();
  }

  private void allowed() {
    write.heading(write.says("reviewer.allowed"));
    if (sheet.allowed().isEmpty()) {
      write.note(write.says("reviewer.none"));
      return;
    }
    write.add(write.paragraph(write.says("reviewer.allowed.note"), false).kept());
    List<List<String>> rows = new ArrayList<>();
    sheet
        .allowed()
        .forEach(a -> rows.add(List.of(a.title() + " [" + a.code() + "]", a.place(), a.reason())));
    write.listing(
        write.shares(0.32, 0.2, 0.48),
        List.of(
            write.says("reviewer.warning"),
            write.says("reviewer.where"),
            write.says("reviewer.reason")),
        rows);
  }

  private void unknown() {
    write.heading(write.says("reviewer.unknown"));
    if (sheet.unknown().isEmpty()) {
      write.note(write.says("reviewer.none"));
      return;
    }
    write.add(write.paragraph(write.says("reviewer.unknown.note"), false).kept());
    List<List<String>> rows = new ArrayList<>();
    sheet.unknown().forEach(u -> rows.add(List.of(u.rating(), u.place(), u.reason())));
    write.listing(
        write.shares(0.2, 0.32, 0.48),
        List.of(
            write.says("reviewer.rating"),
            write.says("reviewer.where"),
            write.says("reviewer.why")),
        rows);
  }

  private void budgets() {
    List<BudgetTable> budgets = BudgetTable.expected(sheet.items(), language);
    write.heading(write.says("budget.heading"));
    if (budgets.isEmpty()) {
      write.note(write.says("budget.none"));
      return;
    }
    write.note(write.says("budget.note"));
    for (BudgetTable budget : budgets) {
      List<List<String>> rows = new ArrayList<>();
      budget.parts().forEach(part -> rows.add(part.cells()));
      rows.add(
          List.of(
              write.says("budget.combined", budget.value()),
              "",
              "",
              "",
              "",
              budget.freedom(),
              budget.standard(),
              "U = " + budget.expanded() + ", k = " + budget.factor()));
      String formula =
          budget.formula().isEmpty() ? "" : "; " + budget.quantity() + " = " + budget.formula();
      write.add(write.paragraph(budget.item() + formula, false).kept());
      write.listing(
          write.shares(0.2, 0.12, 0.13, 0.08, 0.11, 0.1, 0.14, 0.12),
          BudgetTable.headings(language),
          rows);
    }
  }

  private void pictures() {
    if (!sheet.pictures().isEmpty()) {
      write.heading(write.says("reviewer.charts"));
      for (int i = 0; i < sheet.pictures().size(); i += 2) {
        List<Drawing> two = sheet.pictures().subList(i, Math.min(i + 2, sheet.pictures().size()));
        write.add(new PicturesPart(write.path("Div:pictures"), two, write.inner()));
      }
    }
  }
}
