package passband.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.plan.Plan;
import passband.plan.Point;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Heading;
import passband.syntax.Tree;

/**
 * {@code caution-missing}, an error, which cannot be suppressed: output is delivered and the sheet
 * does not say that it burns.
 */
final class BurnCaution implements Check {
  private static final String CAUTION =
      "caution burn \"High-frequency output burns. Touch no lead, pin or jack while the output is"
          + " on.\"";

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    if (delivers(plan) && !warns(plan)) {
      diagnostics
          .say(
              Code.CAUTION_MISSING,
              plan.name().span(),
              "this procedure delivers output but has no 'caution burn'")
          .hint("add %s", CAUTION)
          .fix(added(plan));
    }
  }

  private static Fix added(Plan plan) {
    Span first = null;
    for (Heading.Caution caution : plan.tree().cautions()) {
      if (caution.name().text().equals("burn")) {
        return Fix.replace(caution.span(), CAUTION);
      }
      first = first == null && !plan.source().inPart(caution.span()) ? caution.span() : first;
    }
    SourceFile source = plan.name().span().file();
    int line = first == null ? headEnd(plan) + 1 : first.line();
    int at = source.lineStart(Math.min(line, source.lineCount()));
    return Fix.insert("add a burn caution", new Span(source, at, at), "  " + CAUTION + "\n");
  }

  /** The last of the lines that say what a procedure is for. */
  private static int headEnd(Plan plan) {
    Tree.Procedure procedure = plan.tree();
    List<Span> head = new ArrayList<>();
    head.add(procedure.name().span());
    procedure.leads().forEach(word -> head.add(word.span()));
    procedure.instruments().forEach(one -> head.add(one.span()));
    if (procedure.device() != null) {
      head.add(procedure.device().span());
    }
    if (procedure.decision() != null) {
      head.add(procedure.decision().span());
    }
    head.removeIf(plan.source()::inPart);
    return Collections.max(head).line();
  }

  private static boolean delivers(Plan plan) {
    for (Point point : plan.points()) {
      if (point.mode() != null) {
        return true;
      }
    }
    return false;
  }

  private static boolean warns(Plan plan) {
    for (Plan.Caution caution : plan.cautions()) {
      if (caution.name().text().equals("burn") && !caution.text().isBlank()) {
        return true;
      }
    }
    return false;
  }
}
