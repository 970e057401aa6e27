package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Fix;
import passband.diagnostic.Severity;
import passband.source.SourceFile;
import passband.syntax.Tree;
import passband.testing.Examples;
import passband.testing.Repository;

/**
 * Every case of the checks that has a hint: each of its fixes takes the fault away, and there is
 * one, but for those where the author has to look something up.
 */
class FixTest {
  /** What only the manual, the bench or the author's mind can say. */
  private static final Set<Code> FOR_A_PERSON =
      new TreeSet<>(
          Set.of(
              Code.USE_OUTSIDE_ROOT,
              Code.MISSING_ITEM,
              Code.UNKNOWN_WITHOUT_REASON,
              Code.UNCERTAINTY_UNKNOWN,
              Code.PRINTED_NAME_REPEATED,
              Code.STATED_TIGHTER,
              Code.STATED_UNUSED,
              Code.LIMIT_BELOW_ZERO,
              Code.NOTHING_ACCEPTED,
              Code.NOT_COMPARABLE,
              Code.READER_AMBIGUOUS,
              Code.NO_LOAD,
              Code.LOAD_OFF_RATED,
              Code.LOOSER_TOGETHER,
              Code.LOAD_NOT_AVAILABLE,
              Code.LOAD_NOT_WIRED,
              Code.LOAD_OVERPOWERED,
              Code.LIMITS_COPIED,
              Code.LIMITS_OUT_OF_FAMILY,
              Code.LIMIT_BELOW_STEP,
              Code.GAIN_ERROR_MISSED,
              Code.PREFIX_SLIP,
              Code.TERMINAL_CROWDED,
              Code.LEAD_UNRATED,
              Code.CONTACT_ON_OUTPUT,
              Code.DRAWING_OFF_PAPER,
              Code.ACTIVATION_OPEN,
              Code.POLES_NOT_JOINED,
              Code.ACTION_MISSING,
              Code.LEAKAGE_NOT_TO_EARTH,
              Code.MODE_UNTESTED,
              Code.OUTLET_UNTESTED,
              Code.SETTING_UNTESTED,
              Code.MERGE_CONFLICT,
              Code.STOP_EMPTIED,
              Code.ACTIVATION_EMPTIED,
              Code.STEP_EMPTIED,
              Code.PEAK_BELOW_SINE,
              Code.POLE_EARTHED,
              Code.EARTH_UNSAID,
              Code.POLE_UNWIRED,
              Code.ACTIVATION_IN_WORDS,
              Code.ACTS_WHILE_ON,
              Code.NOT_SET_AT_READING,
              Code.ACTIVATION_AMBIGUOUS,
              Code.PLACEHOLDER_MISSING,
              Code.AMBIGUOUS_PLACEHOLDER,
              Code.SCRIPT_NOT_PRINTABLE,
              Code.GLYPH_MISSING,
              Code.WRONG_KIND,
              Code.RELEASE_NOT_COMPARABLE,
              Code.REVISION_REUSED,
              Code.REPLACED_UNRECORDED,
              Code.RELEASE_UNAPPROVED,
              Code.NOT_RELEASED,
              Code.ALLOW_WITHOUT_REASON));

  private static Tree.File parsed(String text) {
    return passband.parse.Syntax.parse(
        new SourceFile("main.pband", text), new passband.diagnostic.Diagnostics());
  }

  /** The text after the edits of a fix. */
  static String applied(String text, Fix fix) {
    List<Fix.Edit> last = new ArrayList<>(fix.edits());
    last.sort(Comparator.comparing((Fix.Edit e) -> e.span().start()).reversed());
    String made = text;
    for (Fix.Edit edit : last) {
      made =
          made.substring(0, edit.span().start()) + edit.text() + made.substring(edit.span().end());
    }
    return made;
  }

  private static long count(String text, Code code) {
    return Examples.compile(text.getBytes(StandardCharsets.UTF_8)).diagnostics().stream()
        .filter(d -> d.code() == code)
        .count();
  }

  /** Allowed one by one, nothing is left that stops the build. */
  private static String allAllowed(String text) {
    String made = text;
    for (int i = 0; i < 20; i++) {
      String now = made;
      Diagnostic next =
          Examples.compile(now.getBytes(StandardCharsets.UTF_8)).diagnostics().stream()
              .filter(d -> d.isError() && d.span().file().path().equals("main.pband"))
              .findFirst()
              .orElse(null);
      if (next == null) {
        return now;
      }
      List<Fix> fixes = QuickFixes.of(next, parsed(now));
      Fix allow = fixes.get(fixes.size() - 1);
      made = applied(now, allow).replace("because \"\"", "because \"it is so\"");
    }
    return made;
  }

  private static long errors(String text) {
    return Examples.compile(text.getBytes(StandardCharsets.UTF_8)).diagnostics().stream()
        .filter(Diagnostic::isError)
        .count();
  }

  @Test
  void whatHasAHintHasFixesThatHelp() {
    Set<Code> unmended = new TreeSet<>();
    int mended = 0;
    for (Path file :
        Repository.files(Repository.ROOT.resolve("src/test/resources/cases"), ".pband")) {
      if (!file.getFileName().toString().startsWith("fires")
          || file.toString().contains("not-utf-8")) {
        continue;
      }
      String text = Repository.text(file).replace("\r\n", "\n");
      for (Diagnostic one : Examples.compile(text.getBytes(StandardCharsets.UTF_8)).diagnostics()) {
        boolean plain = one.hint() == null && one.fixes().isEmpty();
        if (plain || !one.span().file().path().equals("main.pband")) {
          continue;
        }
        for (Fix fix : one.fixes()) {
          String fixed = applied(text, fix);
          assertTrue(count(fixed, one.code()) < count(text, one.code()), file + ": " + fix);
        }
        assertTrue(one.fixes().stream().filter(Fix::preferred).count() <= 1, one.toString());
        mended += one.fixes().isEmpty() ? 0 : 1;
        if (one.fixes().isEmpty()) {
          unmended.add(one.code());
        }
      }
    }
    assertEquals(FOR_A_PERSON, unmended);
    assertTrue(mended > 20, "only " + mended);
  }

  /**
   * An allow quiets a warning or an error unless allowed, and nothing else; without a reason it
   * stops the build, and so does what it is for without it.
   */
  @Test
  void whatCanBeAllowedIsAllowedWhereItStands() {
    Set<Code> allowed = new TreeSet<>();
    for (Path file :
        Repository.files(Repository.ROOT.resolve("src/test/resources/cases"), ".pband")) {
      String name = file.getFileName().toString();
      if (!name.startsWith("fires") || file.toString().contains("not-utf-8")) {
        continue;
      }
      String text = Repository.text(file).replace("\r\n", "\n");
      var found = Examples.compile(text.getBytes(StandardCharsets.UTF_8)).diagnostics();
      if (found.stream().anyMatch(d -> !d.code().allowable())) {
        continue;
      }
      assertEquals(0, errors(allAllowed(text)), file.toString());
      for (Diagnostic one : found) {
        if (one.code() != Code.ALLOW_UNUSED && one.span().file().path().equals("main.pband")) {
          List<Fix> fixes = QuickFixes.of(one, parsed(text));
          Fix allow = fixes.get(fixes.size() - 1);
          assertTrue(allow.title().startsWith("allow " + one.code().id()), file + ": " + fixes);
          String open = applied(text, allow);
          assertEquals(0, count(open, one.code()), file.toString());
          assertEquals(1, count(open, Code.ALLOW_WITHOUT_REASON), file.toString());
          String quiet = open.replace("because \"\"", "because \"it is so\"");
          assertFalse(quiet.equals(text));
          assertEquals(0, count(quiet, one.code()), file.toString());
          assertEquals(
              count(text, Code.ALLOW_UNUSED), count(quiet, Code.ALLOW_UNUSED), file.toString());
          assertEquals(0, count(quiet, Code.ALLOW_WITHOUT_REASON), file.toString());
          allowed.add(one.code());
        }
      }
    }
    for (Code code : Code.values()) {
      boolean must = code.isErrorUnlessAllowed() || code.severity() == Severity.WARNING;
      assertEquals(must && code != Code.ALLOW_UNUSED, allowed.contains(code), code.id());
    }
  }
}
