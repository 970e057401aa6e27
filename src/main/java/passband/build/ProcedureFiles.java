package passband.build;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.detect.Detection;
import passband.evidence.ItemList;
import passband.evidence.LimitsWriter;
import passband.library.UsageException;
import passband.pdf.ChecklistPdf;
import passband.pdf.ReviewPdf;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.Drawings;
import passband.render.LimitsCsv;
import passband.render.LimitsMetadata;
import passband.render.LimitsXlsx;
import passband.render.Sheet;
import passband.render.SheetMaker;

/**
 * The files of one procedure's folder.
 *
 * @param files each file's bytes by its path in the folder
 * @param pages of the sheet on paper; 0 where none is written
 */
record ProcedureFiles(Map<String, byte[]> files, int pages) {

  /** Makes some of the files. */
  private interface Maker {
    ProcedureFiles made();
  }

  /** Made on every processor where PDFs are among them, which take as long as all the rest. */
  static ProcedureFiles of(Plan plan, BuildOptions options) throws UsageException, IOException {
    Sheet sheet = SheetMaker.sheet(plan);
    Map<String, byte[]> files = new LinkedHashMap<>();
    List<Integer> pages = new ArrayList<>();
    InOrder.each(
        makers(plan, sheet, options),
        Maker::made,
        made -> {
          files.putAll(made.files);
          pages.add(made.pages);
        });
    return new ProcedureFiles(files, pages.stream().mapToInt(Integer::intValue).sum());
  }

  /** What takes longest comes first. */
  private static List<Maker> makers(Plan plan, Sheet sheet, BuildOptions options) {
    List<Maker> makers = new ArrayList<>();
    if (options.writes("pdf")) {
      makers.add(() -> checklist(ChecklistPdf.printed(sheet, options.paper())));
      makers.add(
          () ->
              file(
                  "review.pdf",
                  ReviewPdf.printed(sheet, Detection.asItIs(plan), options.paper()).bytes()));
    }
    makers.add(() -> others(sheet, options));
    return makers;
  }

  private static ProcedureFiles checklist(ChecklistPdf.Printed printed) {
    return new ProcedureFiles(Map.of("checklist.pdf", printed.bytes()), printed.pages());
  }

  private static ProcedureFiles file(String name, byte[] bytes) {
    return new ProcedureFiles(Map.of(name, bytes), 0);
  }

  private static ProcedureFiles others(Sheet sheet, BuildOptions options) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("checklist.html", Output.bytes(Checklist.of(sheet)));
    if (options.writes("pictures")) {
      Drawings.setups(sheet).forEach((name, svg) -> files.put("setups/" + name, Output.bytes(svg)));
      Drawings.limits(sheet).forEach((name, svg) -> files.put("limits/" + name, Output.bytes(svg)));
    }
    ItemList list = sheet.items();
    files.put("limits.csv", Output.bytes(LimitsCsv.of(list)));
    if (options.writes("xlsx")) {
      files.put("limits.xlsx", LimitsXlsx.of(list));
    }
    files.put("limits.csv-metadata.json", Output.bytes(LimitsMetadata.of(list)));
    files.put("limits.json", Output.bytes(LimitsWriter.of(list)));
    return new ProcedureFiles(files, 0);
  }
}
