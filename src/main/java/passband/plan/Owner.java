package passband.plan;

import org.jspecify.annotations.Nullable;
import passband.model.Instruments;

/**
 * Whose step it is: the generator's, or an instrument's.
 *
 * @param role {@code device}, or the role of the instrument
 * @param label the instrument's printed name where the bench has several; null where it is clear
 */
public record Owner(String role, @Nullable String label) {
  /** The generator. */
  public static final Owner GENERATOR = new Owner(Instruments.DEVICE, null);

  /** Whether it is the generator. */
  public boolean isDevice() {
    return role.equals(Instruments.DEVICE);
  }
}
