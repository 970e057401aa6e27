package passband.plan;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.source.Span;
import passband.syntax.LimitExpression;
import passband.syntax.Ratings;

/**
 * One thing that a compiled procedure says.
 *
 * @param area what it is about, and so how a change of it is classified
 * @param key unique in a procedure, the same in another revision of it
 * @param subject what it is about in words
 * @param canonical what it says in the one way of writing it: equal exactly for equal meaning
 * @param shown what it says in words for people
 * @param told what it says as values, where a change of it is judged by them; null for others
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
    @Nullable Told told,
    @Nullable String owner,
    @Nullable Span span) {

  /** What a fact says as values. */
  public sealed interface Told {}

  /** The names that stand in an order. */
  private record Order(List<String> names) implements Told {}

  /** What a reading has to be. */
  private record OfLimit(Limit limit) implements Told {}

  /** What a recorded value has to be. */
  private record OfRecord(RecordLimit limit) implements Told {}

  /** What is done, in order. */
  private record OfSteps(List<PlanStep> steps, List<String> shown) implements Told {}

  /** What a profile or a rule says that a quantity has to be, as written. */
  private record Written(LimitExpression limit) implements Told {}

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
    RUN,
    STATE,
    DUTY,
    STOP,
    STEPS,
    CALCULATION,
    ORDER,
    POINT,
    LIMIT,
    RECORD,
    RULE,
    UNKNOWN,
    ANALYZER,
    PROFILE
  }

  /** A fact that is neither an order nor a limit, and no part of another. */
  static Fact of(
      Area area, String key, String subject, String canonical, String shown, @Nullable Span span) {
    return new Fact(area, key, subject, canonical, shown, null, null, span);
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
        new OfRecord(limit),
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
        new Order(sequence),
        null,
        span);
  }

  /** The same of a reading's limit. */
  Fact with(Limit limit) {
    return telling(new OfLimit(limit));
  }

  /** The same of steps, with each in words. */
  Fact with(List<PlanStep> steps, List<String> each) {
    return telling(new OfSteps(List.copyOf(steps), List.copyOf(each)));
  }

  /** The same of what a profile or a rule writes. */
  Fact with(LimitExpression written) {
    return telling(new Written(written));
  }

  private Fact telling(Told other) {
    return new Fact(area, key, subject, canonical, shown, other, owner, span);
  }

  /** The names that stand in an order; null for a fact that is none. */
  public @Nullable List<String> sequence() {
    return told instanceof Order order ? order.names : null;
  }

  /** The limit of a reading; null for a fact that is none. */
  public @Nullable Limit limit() {
    return told instanceof OfLimit of ? of.limit : null;
  }

  /** What a recorded value has to be; null for a fact that is not that. */
  public @Nullable RecordLimit record() {
    return told instanceof OfRecord of ? of.limit : null;
  }

  /** What is done, in order; null for a fact that is not that. */
  public @Nullable List<PlanStep> steps() {
    return told instanceof OfSteps of ? of.steps : null;
  }

  /** What is done, each step in words; null for a fact that is not that. */
  public @Nullable List<String> stepsShown() {
    return told instanceof OfSteps of ? of.shown : null;
  }

  /** What a profile or a rule writes of a quantity; null for a fact that is not that. */
  public @Nullable LimitExpression written() {
    return told instanceof Written of ? of.limit : null;
  }

  /** The same as a part of another fact. */
  Fact partOf(@Nullable String owner) {
    return new Fact(area, key, subject, canonical, shown, told, owner, span);
  }

  /** The same under another key. */
  Fact underKey(String other) {
    return new Fact(area, other, subject, canonical, shown, told, owner, span);
  }
}
