package passband.evidence;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Every item of a compiled procedure, in the order of the sheet, as the limits file carries it.
 *
 * @param revision the label; {@code date} is its day
 * @param digest of the compiled procedure
 * @param phases empty where the procedure has none
 */
public record ItemList(Source source, Decision decision, List<String> phases, List<Item> items) {

  /** Whether it is of the older format, which carries points only. */
  public boolean pointsOnly() {
    return items.stream().allMatch(item -> item instanceof Item.Measured);
  }

  /**
   * What the items were compiled from.
   *
   * @param instruments in the order of their roles; one at least
   * @param language of the sheet by ISO 639-1: it says which decimal mark is written on it; English
   *     in a file that does not say
   * @param released whether the record of releases held it as it is when this was made; null in a
   *     file that does not say
   */
  public record Source(
      String procedure,
      String title,
      String revision,
      String date,
      String digest,
      String device,
      List<Instrument> instruments,
      String language,
      @Nullable Boolean released) {

    /** Whether it is known that this was not released. */
    public boolean isUnreleased() {
      return Boolean.FALSE.equals(released);
    }

    /** The name of the only instrument, or each with its role before it, for people. */
    public String analyzers() {
      List<String> names = new ArrayList<>();
      for (Instrument one : instruments) {
        names.add((instruments.size() == 1 ? "" : one.role() + " ") + one.name());
      }
      return String.join(", ", names);
    }
  }

  /** An instrument by the role that the procedure has for it, and the name of its profile. */
  public record Instrument(String role, String name) {}

  /**
   * How readings are compared with limits.
   *
   * @param rule {@code simple}, {@code guarded}, {@code managed} or {@code risk}
   * @param coverage the factor k of expanded uncertainties
   * @param risk the share of {@code risk}, such as 0.02; null for the other rules
   * @param guard by how many standard uncertainties limits are moved inward; zero for {@code
   *     simple}, and of {@code managed} for what is calculated
   * @param prior the share expected in tolerance before the test, such as 0.95; null where none is
   *     said
   */
  public record Decision(
      String rule,
      BigDecimal coverage,
      @Nullable BigDecimal risk,
      BigDecimal guard,
      @Nullable BigDecimal prior) {
    /** Without a prior. */
    public Decision(String rule, BigDecimal coverage, @Nullable BigDecimal risk, BigDecimal guard) {
      this(rule, coverage, risk, guard, null);
    }
  }
}
