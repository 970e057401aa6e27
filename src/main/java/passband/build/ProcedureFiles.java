package passband.build;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import passband.detect.Detection;
import passband.evidence.Evidence;
import passband.evidence.ItemList;
import passband.evidence.LimitsWriter;
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

  static ProcedureFiles of(Plan plan, BuildOptions options) {
    Sheet sheet = SheetMaker.sheet(plan);
    // The PDF takes as long as all the rest: where a processor is idle it makes that.
    CompletableFuture<ChecklistPdf.Printed> pdf =
        options.writes("pdf")
            ? CompletableFuture.supplyAsync(() -> ChecklistPdf.printed(sheet, options.paper()))
            : null;
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("checklist.html", Output.bytes(Checklist.of(sheet)));
    if (options.writes("pictures")) {
      Drawings.setups(sheet).forEach((name, svg) -> files.put("setups/" + name, Output.bytes(svg)));
      Drawings.limits(sheet).forEach((name, svg) -> files.put("limits/" + name, Output.bytes(svg)));
    }
    ItemList list = Evidence.of(plan).list();
    files.put("limits.csv", Output.bytes(LimitsCsv.of(list)));
    if (options.writes("xlsx")) {
      files.put("limits.xlsx", LimitsXlsx.of(list));
    }
    files.put("limits.csv-metadata.json", Output.bytes(LimitsMetadata.of(list)));
    files.put("limits.json", Output.bytes(LimitsWriter.of(list)));
    int pages = 0;
    if (pdf != null) {
      ChecklistPdf.Printed printed = joined(pdf);
      pages = printed.pages();
      files.put("checklist.pdf", printed.bytes());
      ChecklistPdf.Printed review =
          ReviewPdf.printed(sheet, Detection.asItIs(plan), options.paper());
      files.put("review.pdf", review.bytes());
    }
    return new ProcedureFiles(files, pages);
  }

  /** What was made on another thread; a failure there is one here. */
  private static <T> T joined(CompletableFuture<T> made) {
    try {
      return made.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException runtime) {
        throw runtime;
      } else if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw e;
    }
  }
}
