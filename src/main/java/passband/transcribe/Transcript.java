package passband.transcribe;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.compile.Compiler;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.source.SourceFile;

/**
 * A table transcribed: what was found, and a draft that compiles without errors. What the compiler
 * refuses is not written: a rule that a row contradicts gives way to the stated limits, and a row
 * that is refused still is left out and named.
 */
public final class Transcript {
  private static final String FILE = "draft.pband";

  /** What a table without lower limits leaves untested. */
  private static final List<Code> UNTESTED = List.of(Code.MODE_UNTESTED, Code.SETTING_UNTESTED);

  private final Inference.Found found;
  private final Draft draft;
  private final String source;

  private Transcript(Inference.Found found, Draft draft, String source) {
    this.found = found;
    this.draft = draft;
    this.source = source;
  }

  /**
   * Transcribes a table.
   *
   * @param csv the table, UTF-8 or UTF-16
   * @param comma whether its decimal mark is a comma
   * @param name what the procedure is named after
   * @param title what it is called
   * @param date of the draft, YYYY-MM-DD
   * @throws TableFault when the table cannot be read, with the place
   */
  public static Transcript of(byte[] csv, boolean comma, String name, String title, String date)
      throws TableFault {
    Inference.Found found = Inference.of(TableReader.read(csv, comma));
    Draft draft = new Draft(found, DraftNames.name(name, "draft") + "-output", title, date);
    int most = 3 + found.table().rows().size() + 2 * found.modes().size();
    for (int i = 0; i < most; i++) {
      if (draft.isEmpty()) {
        throw new TableFault("no row of this table can be used as it is:" + reasons(draft));
      }
      String text = draft.write();
      List<Diagnostic> errors = errors(text);
      if (errors.isEmpty()) {
        String laid = Formatter.format(new SourceFile(FILE, text), new Diagnostics());
        return new Transcript(found, draft, laid == null ? text : laid);
      }
      change(draft, errors);
    }
    throw new IllegalStateException("the draft does not compile");
  }

  private static String reasons(Draft draft) {
    StringBuilder reasons = new StringBuilder();
    draft.toSettle().forEach(one -> reasons.append("\n  ").append(one));
    return reasons.toString();
  }

  private static List<Diagnostic> errors(String text) {
    Diagnostics diagnostics = new Diagnostics();
    Library library =
        new Library(
            DisplayPaths.prefixed("", ""),
            path -> {
              if (!path.equals(FILE)) {
                throw new NoSuchFileException(path);
              }
              return text.getBytes(StandardCharsets.UTF_8);
            },
            diagnostics);
    try {
      library.load(FILE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    new Compiler(library, null, diagnostics).compile();
    return diagnostics.list().stream().filter(Diagnostic::isError).toList();
  }

  /** Takes back what the compiler refuses. */
  private static void change(Draft draft, List<Diagnostic> errors) {
    boolean coarse =
        errors.stream()
            .anyMatch(e -> e.code() == Code.TOO_COARSE || e.code() == Code.LIMIT_BELOW_STEP);
    if (coarse && !draft.isFiner()) {
      draft.finer();
      return;
    }
    boolean changed = false;
    for (Diagnostic error : errors) {
      if (UNTESTED.contains(error.code())) {
        continue;
      }
      ManualRow row = row(draft, error);
      if (row != null && !ofRow(error.code()) && !draft.isStated(row.mode())) {
        draft.onlyStated(row.mode());
        return;
      }
      if (row != null) {
        draft.leaveOut(row, "refused as " + error.code().id());
        changed = true;
        break;
      }
    }
    for (Code untested : UNTESTED) {
      boolean said = errors.stream().anyMatch(e -> e.code() == untested);
      if (said && !changed && !draft.allows(untested)) {
        draft.allow(untested);
        changed = true;
      }
    }
    if (!changed) {
      throw new IllegalStateException("the draft does not compile: " + errors.get(0));
    }
  }

  /** Whether a row is refused whatever rule its mode has. */
  private static boolean ofRow(Code code) {
    return code == Code.LIMIT_BELOW_ZERO
        || code == Code.DUPLICATE_POINT
        || code == Code.REVERSED_RANGE
        || code == Code.LIMITS_FALL
        || code == Code.LIMITS_COPIED;
  }

  private static @Nullable ManualRow row(Draft draft, Diagnostic error) {
    ManualRow row = draft.row(error.span().line());
    for (Diagnostic.Note note : error.notes()) {
      row = row == null ? draft.row(note.span().line()) : row;
    }
    return row;
  }

  /** The draft, in the standard layout. */
  public String source() {
    return source;
  }

  Inference.Found found() {
    return found;
  }

  Draft draft() {
    return draft;
  }

  /** What was found, for people: what is to be settled, a line each. */
  public String text() {
    StringBuilder text = new StringBuilder();
    int rows = found.table().rows().size();
    int modes = found.modes().size();
    text.append(rows + (rows == 1 ? " row, " : " rows, "));
    text.append(modes + (modes == 1 ? " mode" : " modes") + "\n");
    text.append("To settle before the draft is used:\n");
    draft.toSettle().forEach(one -> text.append("  - ").append(one).append('\n'));
    return text.toString();
  }
}
