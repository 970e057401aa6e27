package passband.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.source.Span;
import passband.syntax.Ratings;

/**
 * One thing that a compiled procedure says.
 *
 * @param area what it is about, and so how a change of it is classified
 * @param key unique in a procedure, the same in another revision of it
 * @param subject what it is about in words
 * @param canonical what it says in the one way of writing it: equal exactly for equal meaning
 * @param shown what it says in words for people
 * @param sequence the names that stand in an order, for a fact that is an order; null for others
 * @param limit the limit, for a fact that is one; null for others
 * @param record what a recorded value has to be, for a fact that is that; null for others
 * @param owner the key of the fact that it is a part of: one that is new or gone takes its parts
 *     with it; null for a fact that stands by itself
 * @param span where it is written; null for what no line says
 */
public record Fact(
    Area area,
    String key,
    String subject,
    String canonical,
    String shown,
    @Nullable List<String> sequence,
    @Nullable Limit limit,
    @Nullable RecordLimit record,
    @Nullable String owner,
    @Nullable Span span) {

  /** What facts are about. */
  public enum Area {
    REVISION,
    TEXT,
    NAME,
    DECISION,
    CAUTION,
    GATE,
    CONDITION,
    ALLOW,
    WIRE,
    MOVES,
    LEAD,
    CONTACT,
    STATE,
    DUTY,
    STOP,
    STEPS,
    ORDER,
    POINT,
    LIMIT,
    RECORD,
    UNKNOWN,
    ANALYZER,
    PROFILE
  }

  /** A fact that is neither an order nor a limit, and no part of another. */
  static Fact of(
      Area area, String key, String subject, String canonical, String shown, @Nullable Span span) {
    return new Fact(area, key, subject, canonical, shown, null, null, null, null, span);
  }

  /** A text that says all there is to say. */
  static Fact text(Area area, String key, String subject, @Nullable String text, Span span) {
    return of(area, key, subject, Canonical.of(text), text == null ? "" : text, span);
  }

  /** A rating: what it is, or why nobody knows it. */
  static Fact rating(
      Area area,
      String key,
      String subject,
      String canonical,
      String shown,
      Ratings.@Nullable Unknown unknown,
      Span span) {
    return unknown == null
        ? of(area, key, subject, canonical, shown, span)
        : of(
            Area.UNKNOWN,
            key,
            subject,
            Canonical.of(canonical, unknown.reason()),
            FactText.known(shown, unknown),
            unknown.span());
  }

  /** What a recorded value has to be. */
  static Fact record(String key, String subject, RecordLimit limit, Span span) {
    return new Fact(
        Area.RECORD,
        key,
        subject,
        Canonical.of(limit.accept().lower(), limit.accept().upper(), limit.unit()),
        limit.text(),
        null,
        null,
        limit,
        null,
        span);
  }

  /** The order of things that are facts themselves. */
  static Fact order(Area area, String key, String subject, List<String> names, Span span) {
    List<String> sequence = List.copyOf(names);
    return new Fact(
        area,
        key,
        subject,
        Canonical.of(sequence),
        String.join(", ", sequence),
        sequence,
        null,
        null,
        null,
        span);
  }

  /** The same as a part of another fact. */
  Fact partOf(@Nullable String owner) {
    return new Fact(area, key, subject, canonical, shown, sequence, limit, record, owner, span);
  }

  /** The same under another key. */
  Fact underKey(String other) {
    return new Fact(area, other, subject, canonical, shown, sequence, limit, record, owner, span);
  }
}
