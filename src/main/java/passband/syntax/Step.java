package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/** One thing the technician does, in the author's words. */
public sealed interface Step {
  /** Where it stands. */
  Span span();

  /** Calls the method for this kind; null where that gives null. */
  <T> @Nullable T accept(Visitor<T> visitor);

  /** What to do with each kind. */
  interface Visitor<T> {
    @Nullable T act(Do step);

    @Nullable T confirm(Confirm step);

    @Nullable T record(Record step);

    @Nullable T pause(Wait step);

    @Nullable T caution(Caution step);

    @Nullable T perform(Perform step);

    @Nullable T choose(Choose step);
  }

  /** {@code do "…"}. */
  record Do(Word text, Span span) implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.act(this);
    }
  }

  /** {@code confirm [NAME] "…"}: a box to tick; {@code name} is null where there is none. */
  record Confirm(@Nullable Word name, Word text, Span span) implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.confirm(this);
    }
  }

  /**
   * {@code record NAME "…" [in UNIT] [LIMIT]}: a blank to fill in; {@code unit} and {@code limit}
   * are null where there is none.
   */
  record Record(
      Word name, Word text, @Nullable Word unit, @Nullable LimitExpression limit, Span span)
      implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.record(this);
    }
  }

  /** {@code wait 30 s ["…"]}. */
  record Wait(Amount time, @Nullable Word text, Span span) implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.pause(this);
    }
  }

  /** {@code caution NAME "…"}. */
  record Caution(Word name, Word text, Span span) implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.caution(this);
    }
  }

  /** {@code perform NAME}: an action of the device or the analyzer. */
  record Perform(List<Word> action, Span span) implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.perform(this);
    }
  }

  /**
   * {@code choose NAME "…" from "a", "b" [pass "a"]}: one of several outcomes; {@code pass} is null
   * when any will do.
   */
  record Choose(Word name, Word text, List<Word> outcomes, @Nullable Word pass, Span span)
      implements Step {
    @Override
    public <T> @Nullable T accept(Visitor<T> visitor) {
      return visitor.choose(this);
    }
  }
}
