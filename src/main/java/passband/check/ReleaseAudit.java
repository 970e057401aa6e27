package passband.check;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.library.ReleaseEntry;
import passband.library.Released;
import passband.plan.Plan;
import passband.plan.Release;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Heading;

/**
 * Whether all procedures are released, and all that is released is there.
 *
 * <p>{@code not-released}, an error: a procedure that the record beside it does not hold as it is.
 * {@code release-missing}, an error: a record that holds a procedure which no source beside it
 * declares, and which was not withdrawn.
 */
public final class ReleaseAudit {
  private final List<Procedure> procedures;
  private final Diagnostics diagnostics;

  /**
   * What is kept of a compiled procedure.
   *
   * @param at where its revision is written
   * @param folder of its source
   */
  public record Procedure(String name, String revision, Span at, Release release, String folder) {

    /** Of a plan. */
    public static Procedure of(Plan plan, String folder) {
      Heading.Revision written = plan.tree().revision();
      Span at = written == null ? plan.name().span() : written.label().span();
      return new Procedure(plan.name().text(), plan.revision().label(), at, plan.release(), folder);
    }
  }

  private ReleaseAudit(List<Procedure> procedures, Diagnostics diagnostics) {
    this.procedures = procedures;
    this.diagnostics = diagnostics;
  }

  /**
   * Adds what is not as it should be.
   *
   * @param records by the folders that they are in
   */
  public static void run(
      List<Procedure> procedures, Map<String, SourceFile> records, Diagnostics diagnostics) {
    ReleaseAudit audit = new ReleaseAudit(procedures, diagnostics);
    procedures.forEach(audit::sayUnreleased);
    records.forEach(audit::look);
  }

  /**
   * Adds each entry that a record once had and has no more: the last ones can be taken away without
   * a gap in the chain, also together with their sources or with the whole record.
   *
   * @param before the records as they were, by their folders
   * @param now the records as they are, by their folders
   * @param revision where they were so
   */
  public static void sayLost(
      Map<String, SourceFile> before,
      Map<String, SourceFile> now,
      String revision,
      Diagnostics diagnostics) {
    before.forEach(
        (folder, record) -> {
          Set<String> kept = new HashSet<>();
          SourceFile after = now.get(folder);
          if (after != null) {
            Released.parse(after, new Diagnostics())
                .entries()
                .forEach(entry -> kept.add(entry.span().text()));
          }
          for (ReleaseEntry entry : Released.parse(record, new Diagnostics()).entries()) {
            if (!kept.contains(entry.span().text())) {
              diagnostics
                  .say(
                      Code.RECORD_GAP,
                      entry.span(),
                      "this entry stood in the record at %s and is no longer there",
                      revision)
                  .hint(
                      "restore the record from git; a procedure that is no longer in use is"
                          + " withdrawn: passband release --withdraw");
            }
          }
        });
  }

  private void sayUnreleased(Procedure one) {
    String missing = one.release.missing();
    if (missing != null && one.release != Release.UNKNOWN) {
      diagnostics
          .say(
              Code.NOT_RELEASED,
              one.at,
              "revision \"%s\" of '%s' is not released: %s",
              one.revision,
              one.name,
              missing)
          .hint(
              "when it is signed: passband release %s --by \"NAME\" --on DATE",
              one.at.file().path());
    }
  }

  private void look(String folder, SourceFile record) {
    Released released = Released.parse(record, diagnostics);
    for (String name : released.procedures()) {
      ReleaseEntry last = released.last(name);
      if (last != null && !last.withdrawn() && !isDeclared(name, folder)) {
        sayMissing(last);
      }
    }
  }

  private boolean isDeclared(String name, String folder) {
    for (Procedure one : procedures) {
      if (one.name.equals(name) && one.folder.equals(folder)) {
        return true;
      }
    }
    return false;
  }

  private void sayMissing(ReleaseEntry entry) {
    DiagnosticBuilder said =
        diagnostics.say(
            Code.RELEASE_MISSING,
            entry.span(),
            "revision \"%s\" of '%s' is released here, but no source in this folder declares it",
            entry.label(),
            entry.procedure());
    for (Procedure one : procedures) {
      if (one.name.equals(entry.procedure())) {
        said.note(one.at, "it is declared here")
            .hint("keep a source and its record in one folder: move them together");
        return;
      }
    }
    String record = entry.span().file().path();
    String folder = record.contains("/") ? record.substring(0, record.lastIndexOf('/')) : ".";
    said.hint(
        "restore its source; or, if it is no longer in use: passband release --withdraw %s %s --by"
            + " \"NAME\" --on DATE",
        entry.procedure(), folder);
  }
}
