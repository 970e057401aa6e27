package passband.edit;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Fix;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * What an editor offers to do about a diagnostic: its own fixes, and to allow what can be allowed.
 */
public final class QuickFixes {
  private static final List<String> TAKE_ALLOWS =
      List.of("device", "mode", "analyzer", "leads", "rule", "part", "procedure", "setup", "test");

  private QuickFixes() {}

  /**
   * The likeliest first, an allow last; none where a person has to think.
   *
   * @param file the diagnostic's own
   */
  public static List<Fix> of(Diagnostic diagnostic, Tree.File file) {
    List<Fix> fixes = new ArrayList<>(diagnostic.fixes());
    Code code = diagnostic.code();
    Span block = code.allowable() ? block(diagnostic.span(), file) : null;
    if (block != null && code != Code.ALLOW_UNUSED) {
      fixes.add(allow(code, block));
    }
    return fixes;
  }

  /** An {@code allow} at the top of a block; its reason is left open. */
  private static Fix allow(Code code, Span block) {
    SourceFile source = block.file();
    int start = source.lineStart(block.line() + 1);
    String indent = source.line(block.line()).replaceFirst("\\S.*", "") + "  ";
    return Fix.insert(
        "allow "
            + code.id()
            + " here, and say "
            + (code.question() == null ? "why" : code.question()),
        new Span(source, start, start),
        indent + "allow " + code.id() + " because \"\"\n");
  }

  /** The innermost block around a span that takes an allow and is opened on its first line. */
  private static @Nullable Span block(Span span, Tree.File file) {
    Span block = null;
    for (Outline entry : Outline.of(file)) {
      block = inner(entry, span, block);
    }
    if (block == null || block.line() >= block.file().lineCount()) {
      return null;
    }
    return block.file().line(block.line()).stripTrailing().endsWith("{") ? block : null;
  }

  private static @Nullable Span inner(Outline entry, Span span, @Nullable Span found) {
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
