package passband.plan;

import org.jspecify.annotations.Nullable;

/**
 * Whether what a procedure means was released.
 *
 * @param missing what is missing for that, as it goes on after "not released: "; null where it was
 *     released
 */
public record Release(@Nullable String missing) {
  /** It was released as it is. */
  public static final Release RELEASED = new Release(null);

  /** Nobody has looked, because something is wrong with the procedure. */
  public static final Release UNKNOWN = new Release("it has errors");

  /** Whether it was released as it is. */
  public boolean isReleased() {
    return missing == null;
  }
}
