package passband.edit;

import java.util.ArrayList;
import java.util.List;
import passband.parse.Marks;
import passband.source.SourceFile;
import passband.source.Span;

/** Lines, from 1, that fold into the first: a block, or several comments one after the other. */
public record Fold(int first, int last, boolean comment) {

  /** The folds of a text, however broken. */
  public static List<Fold> of(SourceFile source) {
    List<Fold> folds = new ArrayList<>();
    for (Span block : Marks.blocks(source)) {
      int last = source.lineOf(block.end()) - 1;
      if (last > block.line()) {
        folds.add(new Fold(block.line(), last, false));
      }
    }
    int firstComment = -1;
    int lastComment = -1;
    for (Marks.Mark mark : Marks.of(source)) {
      if (mark.kind() == Marks.Kind.COMMENT && startsLine(source, mark)) {
        int line = mark.span().line();
        if (line != lastComment + 1) {
          comments(folds, firstComment, lastComment);
          firstComment = line;
        }
        lastComment = line;
      }
    }
    comments(folds, firstComment, lastComment);
    return folds;
  }

  private static boolean startsLine(SourceFile source, Marks.Mark mark) {
    int start = source.lineStart(source.lineOf(mark.span().start()));
    return source.text().substring(start, mark.span().start()).isBlank();
  }

  private static void comments(List<Fold> folds, int first, int last) {
    if (last > first) {
      folds.add(new Fold(first, last, true));
    }
  }
}
