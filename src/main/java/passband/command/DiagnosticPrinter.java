package passband.command;

import java.io.PrintStream;
import java.util.List;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.JsonReport;
import passband.diagnostic.SarifReport;
import passband.diagnostic.TextReport;

/** Prints diagnostics on one stream, their count on another. */
final class DiagnosticPrinter {
  private DiagnosticPrinter() {}

  /** In the form {@code text}, {@code json} or {@code sarif}; text is coloured on a terminal. */
  static void print(Diagnostics diagnostics, String form, Invocation invocation) {
    List<Diagnostic> all = diagnostics.list();
    invocation
        .out()
        .print(
            switch (form) {
              case "json" -> JsonReport.of(all);
              case "sarif" -> SarifReport.of(all, Version.text());
              default -> text(all, invocation.terminal());
            });
    printCount(diagnostics, invocation.err());
  }

  /** As text, both on one stream. */
  static void printText(Diagnostics diagnostics, PrintStream to) {
    to.print(text(diagnostics.list(), false));
    printCount(diagnostics, to);
  }

  private static String text(List<Diagnostic> all, boolean coloured) {
    return coloured ? AnsiColours.of(TextReport.of(all)) : TextReport.of(all);
  }

  private static void printCount(Diagnostics diagnostics, PrintStream err) {
    int errors = diagnostics.errorCount();
    int warnings = diagnostics.list().size() - errors;
    if (errors + warnings > 0) {
      err.println(count(errors, "error") + ", " + count(warnings, "warning"));
    }
  }

  private static String count(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }
}
