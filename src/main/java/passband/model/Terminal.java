package passband.model;

import org.jspecify.annotations.Nullable;
import passband.syntax.TerminalKind;
import passband.syntax.Word;

/**
 * Where a lead's end goes.
 *
 * @param owner the outlet's name, or the role of the instrument
 * @param ownerTitle the printed name of the outlet or analyzer
 * @param title the printed name
 * @param holds how many leads it takes; a link goes in besides
 * @param floatsOn the {@link #id} of the pole whose potential a contact has, or for a jack {@link
 *     #EARTH} or {@link #FLOATING}; null where nothing says, and for what is neither
 * @param byHand whether a contact is a button that is pressed as it is, without a lead
 */
public record Terminal(
    TerminalKind kind,
    String owner,
    String ownerTitle,
    Word name,
    String title,
    int holds,
    @Nullable String floatsOn,
    boolean byHand)
    implements Named {

  /** The potential of a jack that is connected to earth inside its instrument. */
  public static final String EARTH = "earth";

  /** That of a jack that its instrument does not connect to earth. */
  public static final String FLOATING = "floating";

  /** Whether it is at the potential of earth by itself. */
  public boolean isEarthed() {
    return kind == TerminalKind.EARTH || (onAnalyzer() && EARTH.equals(floatsOn));
  }

  /** The name in the source: {@code mono-1.active}, {@code analyzer.load-high}. */
  public String id() {
    return owner + "." + name.text();
  }

  /** The same on another outlet, or on an instrument in another role. */
  Terminal on(String other) {
    return new Terminal(kind, other, ownerTitle, name, title, holds, floatsOn, byHand);
  }

  /** Whether it is on an instrument. */
  public boolean onAnalyzer() {
    return kind == TerminalKind.JACK || kind == TerminalKind.KEY;
  }

  /** Two terminals are the same when they have the same place, wherever they were declared. */
  public boolean same(Terminal other) {
    return name.text().equals(other.name.text()) && owner.equals(other.owner);
  }
}
