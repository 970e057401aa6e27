package passband.resolve;

import org.jspecify.annotations.Nullable;
import passband.syntax.Word;

/**
 * Something with a name.
 *
 * @param kind what it is, in the words of the language
 * @param name where it is declared
 * @param title its printed name; null when it has none
 */
public record Symbol(String kind, Word name, @Nullable Word title) {

  /** A symbol is the same as another when they are declared at one place. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Symbol symbol && name.span().compareTo(symbol.name.span()) == 0;
  }

  @Override
  public int hashCode() {
    return name.span().start();
  }

  /** The name as written. */
  public String text() {
    return name.text();
  }
}
