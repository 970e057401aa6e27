package passband.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Severity;
import passband.quantity.Units;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * One way to mend what a diagnostic is about.
 *
 * @param title what it does
 * @param edits what is written where, all in one file
 */
public record Fix(String title, List<Edit> edits) {
  private static final Pattern WRITE = Pattern.compile("write (?:'([^'…]+)'|(\"[^\"…]+\"))");
  private static final Pattern NEAREST =
      Pattern.compile("the nearest are (\\S+)( \\S+)? and (\\S+)( \\S+)?");
  private static final Pattern READ_AS = Pattern.compile("add ', read as …'; it measures (.*)");
  private static final Pattern ACCEPT = Pattern.compile("(accept +)([\\p{L}\\p{Nd}-]+)");
  private static final Pattern WITHIN = Pattern.compile("within .*?(?=, read as|\\s*(#.*)?$)");
  private static final Pattern SPAN =
      Pattern.compile("(?s)(\\S+)( [^\\s\\d]\\S*)?( +to +)(\\S+)( [^\\s\\d]\\S*)?");

  private static final List<String> TAKE_ALLOWS =
      List.of("device", "mode", "analyzer", "leads", "rule", "procedure", "setup", "test");

  /** A text in the place of a span. */
  public record Edit(Span span, String text) {}

  /** The ways to mend a diagnostic, the likeliest first; none where a person has to think. */
  public static List<Fix> of(Diagnostic diagnostic, Tree.File file) {
    List<Fix> fixes = new ArrayList<>();
    SourceFile source = diagnostic.span().file();
    Span span = diagnostic.span();
    for (passband.diagnostic.Fix fix : diagnostic.fixes()) {
      fixes.add(
          new Fix(
              fix.title(), fix.edits().stream().map(e -> new Edit(e.span(), e.text())).toList()));
    }
    switch (fixes.isEmpty() ? diagnostic.code() : Code.NOT_UTF_8) {
      case UNKNOWN_UNIT -> Units.suggest(span.text()).forEach(u -> fixes.add(replace(span, u)));
      case COMMA_IN_NUMBER -> comma(span, fixes);
      case UNTERMINATED_TEXT -> {
        int end = span.start() + span.text().replaceFirst("[ \t]*\\{?[ \t]*$", "").length();
        fixes.add(insert("close the text", at(source, end), "\""));
      }
      case UNCLOSED_BLOCK -> fixes.add(close(diagnostic));
      case REVERSED_RANGE -> swapped(span, fixes);
      case ALLOW_UNUSED ->
          fixes.add(new Fix("take the line out", List.of(new Edit(lines(span), ""))));
      case CAUTION_MISSING -> caution(span, file, fixes);
      case MISSING_BRACE ->
          fixes.add(insert("add an empty block", at(source, lineEnd(span)), " {\n}"));
      case UNKNOWN_ESCAPE -> fixes.add(insert("write a backslash", at(source, span.start()), "\\"));
      case SETTING_OFF_STEP -> nearest(diagnostic, fixes);
      case NOT_MEASURED -> readAs(diagnostic, fixes);
      case PEAK_AGAINST_RMS -> accept(span, "peak-voltage", "", fixes);
      case POWER_TOLERANCE_ON_CURRENT -> accept(span, "power", ", read as current", fixes);
      case UNIT_MISMATCH -> {
        if (diagnostic.hint() != null && diagnostic.hint().contains("read as current")) {
          accept(span, "power", ", read as current", fixes);
        }
      }
      case RULE_LOOSER_THAN_MODE -> fromOutput(span, fixes);
      default -> hinted(diagnostic, fixes);
    }
    if (diagnostic.code().severity() == Severity.WARNING
        && diagnostic.code() != Code.ALLOW_UNUSED) {
      allow(diagnostic, file, fixes);
    }
    return fixes.stream().distinct().toList();
  }

  private static Fix replace(Span span, String text) {
    return new Fix("write '" + text + "'", List.of(new Edit(span, text)));
  }

  private static Fix insert(String title, Span at, String text) {
    return new Fix(title, List.of(new Edit(at, text)));
  }

  private static Span at(SourceFile source, int offset) {
    return new Span(source, offset, offset);
  }

  /** The whole lines that a span is on, with their ends. */
  private static Span lines(Span span) {
    SourceFile source = span.file();
    int first = source.lineStart(span.line());
    int last = source.lineOf(span.end());
    int end = last < source.lineCount() ? source.lineStart(last + 1) : source.text().length();
    return new Span(source, first, end);
  }

  private static void hinted(Diagnostic diagnostic, List<Fix> fixes) {
    Matcher write = WRITE.matcher(diagnostic.hint() == null ? "" : diagnostic.hint());
    if (write.matches() && diagnostic.replacement() == null) {
      fixes.add(
          replace(diagnostic.span(), write.group(1) == null ? write.group(2) : write.group(1)));
    }
  }

  /** The offset at the end of a span's line, before its end-of-line characters. */
  private static int lineEnd(Span span) {
    SourceFile source = span.file();
    return source.lineStart(span.line()) + source.line(span.line()).stripTrailing().length();
  }

  private static void nearest(Diagnostic diagnostic, List<Fix> fixes) {
    Matcher near = NEAREST.matcher(diagnostic.hint() == null ? "" : diagnostic.hint());
    if (near.matches()) {
      boolean unit = diagnostic.span().text().matches(".*[^\\d.].*");
      fixes.add(replace(diagnostic.span(), near.group(1) + (unit ? text(near.group(2)) : "")));
      fixes.add(replace(diagnostic.span(), near.group(3) + (unit ? text(near.group(4)) : "")));
    }
  }

  private static void readAs(Diagnostic diagnostic, List<Fix> fixes) {
    Matcher hint = READ_AS.matcher(diagnostic.hint() == null ? "" : diagnostic.hint());
    if (hint.matches()) {
      for (String quantity : hint.group(1).split(", ")) {
        String added = ", read as " + quantity;
        fixes.add(
            insert(
                "add '" + added + "'",
                at(diagnostic.span().file(), lineEnd(diagnostic.span())),
                added));
      }
    }
  }

  /** Another quantity after {@code accept} on a span's line, and something at the line's end. */
  private static void accept(Span span, String quantity, String end, List<Fix> fixes) {
    SourceFile source = span.file();
    int start = source.lineStart(span.line());
    Matcher line = ACCEPT.matcher(source.line(span.line()));
    if (line.find()) {
      Span word = new Span(source, start + line.start(2), start + line.end(2));
      fixes.add(
          new Fix(
              "accept " + quantity + end,
              List.of(new Edit(word, quantity), new Edit(at(source, lineEnd(span)), end))));
    }
  }

  private static void fromOutput(Span span, List<Fix> fixes) {
    SourceFile source = span.file();
    int start = source.lineStart(span.line());
    Matcher within = WITHIN.matcher(source.line(span.line()));
    if (within.find()) {
      fixes.add(
          replace(new Span(source, start + within.start(), start + within.end()), "from output"));
    }
  }

  private static void comma(Span span, List<Fix> fixes) {
    String text = span.text();
    fixes.add(replace(span, text.replaceFirst(",", ".").replace(",", "")));
    fixes.add(replace(span, text.replace(",", "")));
    fixes.add(replace(span, text.replace(",", ", ")));
  }

  private static Fix close(Diagnostic diagnostic) {
    SourceFile source = diagnostic.span().file();
    int before =
        diagnostic.notes().isEmpty()
            ? source.text().length()
            : source.lineStart(diagnostic.notes().get(0).span().line());
    boolean midLine = before > 0 && source.text().charAt(before - 1) != '\n';
    return insert("close the block", at(source, before), (midLine ? "\n" : "") + "}\n");
  }

  /** {@code 219 to 179 mA}: the numbers change places, and each its unit where both have one. */
  private static void swapped(Span span, List<Fix> fixes) {
    if (span.text().startsWith("from ")) {
      swapped(new Span(span.file(), span.start() + 5, span.end()), fixes);
      return;
    }
    Matcher range = SPAN.matcher(span.text());
    if (range.lookingAt()) {
      boolean own = range.group(2) != null;
      String tail = span.text().substring(range.end());
      String fixed =
          own
              ? range.group(4)
                  + text(range.group(5))
                  + range.group(3)
                  + range.group(1)
                  + range.group(2)
              : range.group(4) + range.group(3) + range.group(1) + text(range.group(5));
      fixes.add(replace(span, fixed + tail));
    }
  }

  private static String text(String group) {
    return group == null ? "" : group;
  }

  private static void caution(Span span, Tree.File file, List<Fix> fixes) {
    Tree.Procedure procedure = procedure(span, file);
    if (procedure == null) {
      return;
    }
    SourceFile source = span.file();
    int line =
        procedure.cautions().isEmpty()
            ? last(procedure)
            : procedure.cautions().get(0).span().line() - 1;
    fixes.add(
        insert(
            "add a burn caution",
            at(source, source.lineStart(Math.min(line + 1, source.lineCount()))),
            "  caution burn \"High-frequency output burns. Touch no lead, pin or jack while the output"
                + " is on.\"\n"));
  }

  /** The last of the lines that say what a procedure is for. */
  private static int last(Tree.Procedure procedure) {
    int line = procedure.name().span().line();
    List<Word> words = new ArrayList<>(procedure.leads());
    words.add(procedure.device());
    words.add(procedure.analyzer());
    for (Word word : words) {
      line = word == null ? line : Math.max(line, word.span().line());
    }
    return procedure.decision() == null ? line : Math.max(line, procedure.decision().span().line());
  }

  private static Tree.Procedure procedure(Span span, Tree.File file) {
    return file.declarations().stream()
        .filter(d -> d instanceof Tree.Procedure p && p.span().holds(span))
        .map(Tree.Procedure.class::cast)
        .findFirst()
        .orElse(null);
  }

  /** An {@code allow} at the top of the innermost block that takes one; its reason is left open. */
  private static void allow(Diagnostic diagnostic, Tree.File file, List<Fix> fixes) {
    Span block = null;
    for (Outline entry : Outline.of(file)) {
      block = inner(entry, diagnostic.span(), block);
    }
    if (block == null) {
      return;
    }
    SourceFile source = block.file();
    int line = block.line();
    if (!source.line(line).stripTrailing().endsWith("{") || line >= source.lineCount()) {
      return;
    }
    String indent = source.line(line).replaceFirst("\\S.*", "") + "  ";
    fixes.add(
        insert(
            "allow " + diagnostic.code().id() + " here, and say why",
            at(source, source.lineStart(line + 1)),
            indent + "allow " + diagnostic.code().id() + " because \"\"\n"));
  }

  private static Span inner(Outline entry, Span span, Span found) {
    if (!entry.whole().holds(span) || !TAKE_ALLOWS.contains(entry.kind())) {
      return found;
    }
    Span block = entry.whole();
    for (Outline one : entry.inside()) {
      block = inner(one, span, block);
    }
    return block;
  }
}
