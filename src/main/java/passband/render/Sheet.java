package passband.render;

import java.util.List;
import passband.draw.Drawing;

/**
 * What the checklist prints, every number and sentence in final words; the template only lays it
 * out.
 *
 * @param shortDigest the first twelve characters of the digest
 * @param pictures where the limits lie, for the reviewer
 */
public record Sheet(
    String name,
    String title,
    String revision,
    String date,
    String digest,
    String shortDigest,
    String device,
    String analyzer,
    String decision,
    List<String> cautions,
    List<LeadLine> leads,
    List<Block> blocks,
    List<AllowLine> allowed,
    List<Drawing> pictures,
    int readings) {

  /** A warning that the source quiets, for the reviewer. */
  public record AllowLine(String code, String title, String place, String reason) {}

  /** A lead to collect; {@code mark} is its number in the drawings. */
  public record LeadLine(String mark, String title, String kind, String colour, String rating) {}

  /**
   * A part of the sheet: a section, an adjustment, a run or the taking off of leads.
   *
   * @param kind {@code section}, {@code adjust}, {@code run} or {@code clear}
   * @param number counts the runs; 0 for others
   * @param note what stands under the heading; null for nothing
   * @param run null when it is not a run
   */
  public record Block(
      String kind, int number, String title, String note, List<StepLine> steps, RunPart run) {}

  /**
   * A test on one outlet.
   *
   * @param outlet the printed name; null for a test without outlets
   * @param page a word for the pages of the outlet; null for a test without outlets
   * @param drawing the wiring; null when there is none, or the run before shows it
   * @param moves the changes of the wiring, in order
   * @param stays the leads that stay where they are
   * @param enter what brings the state about; null for none
   * @param leave what ends it; null for none
   */
  public record RunPart(
      String phase,
      String outlet,
      String page,
      String setup,
      Drawing drawing,
      List<String> moves,
      List<String> stays,
      String stateTitle,
      String enter,
      List<StepLine> before,
      List<Group> groups,
      String leave,
      List<StepLine> after,
      List<String> formulas) {}

  /** A step; {@code kind} as in the language. */
  public record StepLine(
      String kind, String text, String name, String unit, List<String> outcomes, String pass) {}

  /** Lines whose steps are the same but for what stands on the line. */
  public record Group(
      String title,
      List<String> steps,
      List<Line> lines,
      boolean hasSetting,
      boolean hasLoad,
      boolean hasTimes,
      List<String> extras) {}

  /** A point. */
  public record Line(
      int number,
      String id,
      String setting,
      String load,
      List<String> extras,
      String on,
      String rest,
      List<Box> boxes) {}

  /**
   * A reading's box.
   *
   * @param cells one character a cell: {@code 0} for a digit, {@code .} for the decimal point
   * @param limits what it has to be
   * @param tolerance the tolerance limits where they are not the acceptance limits; null where they
   *     are
   * @param low the least reading accepted, as printed; null when that side is open
   * @param high the greatest
   * @param decimals how many a reading has to have
   * @param judged whether it has limits
   */
  public record Box(
      String id,
      String title,
      String unit,
      String cells,
      String limits,
      String tolerance,
      String low,
      String high,
      int decimals,
      boolean judged) {}
}
