package passband.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import passband.model.Lead;
import passband.model.Terminal;

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

  /** The words of the sheet. */
  public String text() {
    if (!at.isEmpty()) {
      List<String> places = new ArrayList<>();
      at.forEach(one -> places.add(place(one)));
      return (kind == Kind.REMOVE ? "Remove the " : "Connect the ")
          + lead.title()
          + (kind == Kind.REMOVE ? " from " : " to ")
          + String.join(" and ", places)
          + ".";
    }
    return switch (kind) {
      case REMOVE ->
          "Remove the " + lead.title() + " from " + place(from) + " and " + place(to) + ".";
      case MOVE -> "Move the " + lead.title() + " from " + place(from) + " to " + place(to) + ".";
      case CONNECT ->
          "Connect the " + lead.title() + " from " + place(from) + " to " + place(to) + ".";
    };
  }

  private static String place(Terminal terminal) {
    return terminal.ownerTitle() + ", " + terminal.title();
  }
}
