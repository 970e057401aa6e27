package passband.syntax;

import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * {@code part NAME { … }}: lines of a procedure that several have in common.
 *
 * @param lines what it holds, as the procedure of its name would; without revision
 * @param span the whole block
 */
public record SharedPart(Tree.Procedure lines, Span span) implements Tree.Declaration {
  @Override
  public Word name() {
    return lines.name();
  }

  @Override
  public @Nullable Word title() {
    return null;
  }

  @Override
  public String kind() {
    return "part";
  }
}
