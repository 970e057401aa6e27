package passband.parse;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.CommonToken;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * Hints for lines that cannot be read because they are written as one writes in a manual, a
 * spreadsheet, a word processor or another language: {@code max 3 W}, {@code 219–268}, {@code <=},
 * tabs for bars. What such a line ought to be is tried: a hint is given only when the line can then
 * be read.
 */
final class Notations {
  /** So many faulty lines of a file are tried; each costs a parse. */
  private static final int MOST = 12;

  private Notations() {}

  /** The same faults, with a hint and a fix where a line is in another notation. */
  static void say(SourceFile source, Diagnostics faults, Diagnostics all) {
    BitSet tried = new BitSet();
    List<Diagnostic> found = new ArrayList<>();
    faults.forEach(found::add);
    found.sort(Comparator.naturalOrder());
    for (Diagnostic one : found) {
      boolean open = one.code() == Code.UNTERMINATED_TEXT;
      boolean mends =
          (one.fixes().isEmpty() || open) && one.isError() && tried.cardinality() < MOST;
      if (mends && !tried.get(one.span().line())) {
        tried.set(one.span().line());
        all.add(mended(source, one));
      } else {
        all.add(one);
      }
    }
    all.take(faults);
  }

  private static Diagnostic mended(SourceFile source, Diagnostic fault) {
    int line = fault.span().line();
    int start = source.lineStart(line);
    String text = source.line(line);
    if (fault.code() == Code.UNTERMINATED_TEXT) {
      for (LineEdits.Edit edit : OpenTexts.closing(text, fault.span().start() - start)) {
        if (reads(source, line, List.of(edit))) {
          return hinted(fault, source, start, List.of(edit));
        }
      }
      return fault;
    }
    List<CommonToken> words = Lexer.lex(text);
    List<LineEdits.Edit> edits = NotationRules.edits(text, words);
    List<LineEdits.Edit> sure = new ArrayList<>(edits);
    sure.removeIf(LineEdits.Edit::guess);
    List<List<LineEdits.Edit>> tries = new ArrayList<>(List.of(sure));
    sure.forEach(edit -> tries.add(List.of(edit)));
    tries.add(edits);
    edits.forEach(edit -> tries.add(List.of(edit)));
    List<List<LineEdits.Edit>> tried = new ArrayList<>(List.of(List.of()));
    for (List<LineEdits.Edit> one : tries) {
      if (tried.contains(one)) {
        continue;
      }
      if (reads(source, line, one)) {
        return hinted(fault, source, start, one);
      }
      tried.add(one);
    }
    return fault;
  }

  /** Whether nothing is wrong with the line any more once it is changed. */
  private static boolean reads(SourceFile source, int line, List<LineEdits.Edit> edits) {
    String text = source.text();
    int start = source.lineStart(line);
    String written = source.line(line);
    String changed = text.substring(0, start) + NotationRules.apply(written, edits);
    SourceFile other =
        new SourceFile(source.path(), changed + text.substring(start + written.length()));
    Diagnostics left = new Diagnostics();
    Syntax.parsed(other, left);
    Set<Integer> lines = new HashSet<>();
    left.forEach(one -> lines.add(one.span().line()));
    return !lines.contains(line);
  }

  private static Diagnostic hinted(
      Diagnostic fault, SourceFile source, int start, List<LineEdits.Edit> edits) {
    List<Fix.Edit> all = new ArrayList<>();
    for (LineEdits.Edit edit : edits) {
      Span span = new Span(source, start + edit.from(), start + edit.to());
      all.add(new Fix.Edit(span, edit.text()));
    }
    String line = NotationRules.apply(source.line(fault.span().line()), edits).strip();
    String title = line.isEmpty() ? "leave this line out" : "write " + line;
    return fault.with(new Fix(title, all, true));
  }
}
