package passband.edit;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.parse.CursorContext;
import passband.plan.Point;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.resolve.Names;
import passband.resolve.Symbol;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.SharedPart;
import passband.syntax.Tree;

/**
 * What is said of the thing under the cursor.
 *
 * @param span the words that it is said of
 * @param markdown the text
 */
public record Hover(Span span, String markdown) {

  /** Of an offset; null where there is nothing to say. */
  public static @Nullable Hover at(Analysis analysis, int offset) {
    Hover name = name(analysis, offset);
    Hover row = row(analysis, offset, name);
    return row != null ? row : name != null ? name : word(analysis.source(), offset);
  }

  /** A row of a table, with what its names are. */
  private static @Nullable Hover row(Analysis analysis, int offset, @Nullable Hover name) {
    for (Tree.Row row : rows(analysis.file())) {
      if (row.span().touches(offset)) {
        List<Point> points = analysis.points(row);
        if (!points.isEmpty()) {
          String about = name == null ? "" : name.markdown + "\n\n";
          return new Hover(row.span(), about + PointText.table(points));
        }
      }
    }
    return null;
  }

  /** Every row of a table in a file. */
  static List<Tree.Row> rows(Tree.File file) {
    return file.declarations().stream()
        .flatMap(one -> tests(one).stream())
        .map(Tree.Test::table)
        .filter(table -> table != null && table.file() == null)
        .flatMap(table -> table.rows().stream())
        .toList();
  }

  private static List<Tree.Test> tests(Tree.Declaration one) {
    if (one instanceof SharedPart part) {
      return part.lines().tests();
    }
    return one instanceof Tree.Procedure procedure ? procedure.tests() : List.of();
  }

  private static @Nullable Hover name(Analysis analysis, int offset) {
    List<Names.Occurrence> here = analysis.symbols().at(analysis.source(), offset);
    if (here.isEmpty()) {
      return null;
    }
    Symbol declared = here.get(0).symbol();
    Span at = declared.name().span();
    String title = declared.title() == null ? "" : " — " + escaped(declared.title().text());
    return new Hover(
        here.get(0).span(),
        declared.kind()
            + " **"
            + declared.text()
            + "**"
            + title
            + "\n\n```pband\n"
            + at.file().line(at.line()).strip()
            + "\n```");
  }

  private static String allowed(Code code) {
    String question = code.question();
    String must = question == null ? "" : ". The reason must say " + question + ".";
    return "**" + code.id() + "**, " + code.weight() + ": " + code.title() + must;
  }

  private static @Nullable Hover word(SourceFile source, int offset) {
    Span span = wordAt(source, offset);
    if (span == null) {
      return null;
    }
    String text = span.text();
    CursorContext place = CursorContext.at(source, span.start());
    if (!place.before().isEmpty()
        && place.before().get(place.before().size() - 1).equals("allow")) {
      Code code = Code.find(text);
      return code == null ? null : new Hover(span, allowed(code));
    }
    if (place.before().isEmpty() && place.header() == null) {
      LanguageLine line = LanguageLine.find(place.block(), text);
      if (line != null) {
        return new Hover(span, "```pband\n" + line.form() + "\n```\n" + escaped(line.purpose()));
      }
    }
    QuantityKind kind = QuantityKind.find(text);
    if (kind != null) {
      return new Hover(span, "quantity **" + kind.name() + "** — " + kind.printed());
    }
    Unit unit = Units.find(text);
    boolean counted = !place.before().isEmpty();
    return unit == null || !counted
        ? null
        : new Hover(
            span,
            "unit **"
                + unit.printed()
                + "** of "
                + unit.dimension()
                + ", "
                + unit.factor().toPlain()
                + " in SI; UCUM `"
                + unit.ucum()
                + "`");
  }

  /** The word around an offset; null between words. */
  private static @Nullable Span wordAt(SourceFile source, int offset) {
    String text = source.text();
    int start = Math.min(offset, text.length());
    while (start > 0 && inWord(text.charAt(start - 1))) {
      start--;
    }
    int end = Math.min(offset, text.length());
    while (end < text.length() && inWord(text.charAt(end))) {
      end++;
    }
    return start == end ? null : new Span(source, start, end);
  }

  private static boolean inWord(char c) {
    return Character.isLetterOrDigit(c) || c == '-' || c == '°' || c == '%';
  }

  private static String escaped(String text) {
    return text.replaceAll("([\\\\`*_{}\\[\\]<>#|!])", "\\\\$1");
  }
}
