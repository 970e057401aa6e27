package passband.parse;

import java.util.BitSet;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * {@code merge-conflict}, an error: git has left both sides of a merge in the text, between lines
 * of its own. The form of these lines is git's, as git-merge(1) shows it.
 */
final class Conflicts {
  private static final String OURS = "<<<<<<< ";
  private static final String BASE = "|||||||";
  private static final String THEIRS = "=======";
  private static final String END = ">>>>>>> ";

  private Conflicts() {}

  /**
   * The lines to leave out: git's own, and those of all sides but the first. Each conflict is said
   * once.
   */
  static BitSet check(SourceFile source, Diagnostics diagnostics) {
    BitSet leftOut = new BitSet();
    if (!source.text().contains(OURS)) {
      return leftOut;
    }
    boolean inside = false;
    boolean other = false;
    for (int i = 1; i <= source.lineCount(); i++) {
      String line = source.line(i);
      if (line.startsWith(OURS)) {
        say(source, i, diagnostics);
        inside = true;
        other = false;
        leftOut.set(i);
      } else if (inside) {
        boolean end = line.startsWith(END);
        other |= line.startsWith(BASE) || line.startsWith(THEIRS);
        inside = !end;
        leftOut.set(i, end || other);
      }
    }
    return leftOut;
  }

  private static void say(SourceFile source, int line, Diagnostics diagnostics) {
    int start = source.lineStart(line);
    diagnostics
        .say(
            Code.MERGE_CONFLICT,
            new Span(source, start, start + source.line(line).stripTrailing().length()),
            "git could not merge the lines from here to '>>>>>>>': two branches have changed them")
        .hint(
            "keep what is right of both sides and remove git's marker lines; then look at the whole"
                + " by 'passband diff' with each branch");
  }
}
