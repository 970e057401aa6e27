package passband.plan;

import java.util.List;
import java.util.Locale;
import passband.model.Lead;
import passband.model.Terminal;
import passband.words.Language;

/**
 * One change of the wiring.
 *
 * @param kind what is done
 * @param lead what is taken in hand
 * @param from the terminal that is left ({@code REMOVE}: the first end; {@code MOVE}: the end that
 *     moves; {@code CONNECT}: the first end)
 * @param to the other end, or where the end moves to
 * @param at all that an accessory touches; empty for a lead or link
 */
public record Move(Kind kind, Lead lead, Terminal from, Terminal to, List<Terminal> at) {
  /** Copies the terminals. */
  public Move {
    at = List.copyOf(at);
  }

  /** Of a lead or link. */
  public Move(Kind kind, Lead lead, Terminal from, Terminal to) {
    this(kind, lead, from, to, List.of());
  }

  /** What is done. */
  public enum Kind {
    REMOVE,
    MOVE,
    CONNECT;

    /** As in identities and in the walk: {@code remove}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** In English, for whoever works on procedures. */
  public String text() {
    return text(Language.ENGLISH);
  }

  /** The words of the sheet. */
  public String text(Language language) {
    if (at.isEmpty()) {
      return language.of("move." + kind.word(), lead.title(), place(from), place(to));
    }
    String places = place(at.get(0));
    for (Terminal one : at.subList(1, at.size())) {
      places = language.of("list.and", places, place(one));
    }
    String key = kind == Kind.REMOVE ? "move.remove.whole" : "move.connect.whole";
    return language.of(key, lead.title(), places);
  }

  private static String place(Terminal terminal) {
    return terminal.ownerTitle() + ", " + terminal.title();
  }
}
