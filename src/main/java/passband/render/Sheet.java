package passband.render;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;
import passband.evidence.ItemList;
import passband.plan.Unknowns;
import passband.words.Language;

/**
 * What the checklist prints, every number and sentence in final words; the template only lays it
 * out.
 *
 * @param unknown the ratings that nobody knows, for the reviewer
 * @param pictures where the limits lie, for the reviewer
 * @param items everything that the sheet asks for
 */
public record Sheet(
    Head head,
    List<Ask> identity,
    List<String> cautions,
    List<LeadLine> leads,
    List<Block> blocks,
    List<AllowLine> allowed,
    List<Unknowns.Line> unknown,
    List<Drawing> pictures,
    Ask result,
    ItemList items) {

  /**
   * What is tested, by which revision of the procedure.
   *
   * @param shortDigest the first twelve characters of the digest
   * @param device the printed name, likewise the analyzer
   * @param language in which it is printed
   * @param decision how readings are compared with limits, in a sentence
   * @param stopped what is to be done when the sheet is broken off, in sentences
   */
  public record Head(
      String name,
      String title,
      String revision,
      String date,
      String digest,
      String shortDigest,
      String device,
      String analyzer,
      String decision,
      String stopped,
      Language language) {}

  /** A warning that the source suppresses, for the reviewer. */
  public record AllowLine(String code, String title, String place, String reason) {}

  /**
   * What the technician fills in, ticks or chooses.
   *
   * @param id of its item
   * @param kind {@code record}, {@code choice} or {@code tick}
   * @param unit as printed; null where there is none
   * @param options of a choice; empty for others
   * @param pass the outcome that passes; null when any will do
   * @param limits what a recorded number has to be; null where any will do
   */
  public record Ask(
      String id,
      String kind,
      String text,
      @Nullable String unit,
      List<String> options,
      @Nullable String pass,
      @Nullable String limits) {
    /** The same with another text. */
    public Ask saying(String other) {
      return new Ask(id, kind, other, unit, options, pass, limits);
    }
  }

  /** A lead to collect; {@code mark} is its number in the drawings. */
  public record LeadLine(
      String mark, String title, String kind, String colour, String rating, Ask present) {}

  /**
   * A part of the sheet: its start, a section, an adjustment, a run or the taking off of leads.
   *
   * @param kind {@code start}, {@code section}, {@code adjust}, {@code run}, {@code clear} or
   *     {@code end}
   * @param number counts the runs; 0 for others
   * @param note what stands under the heading; null for nothing
   * @param branch the same for parts that are left out together
   * @param adjusted whether the adjustment was made; null for other parts
   * @param moves the leads that come off, where nothing else is done
   * @param run null when it is not a run
   */
  public record Block(
      String kind,
      int number,
      String title,
      @Nullable String note,
      String branch,
      @Nullable Ask adjusted,
      List<Ask> moves,
      List<StepLine> steps,
      @Nullable RunPart run) {}

  /**
   * A test on one outlet.
   *
   * @param outlet the printed name; null for a test without outlets
   * @param page a word for the pages of the outlet; null for a test without outlets
   * @param setup null for a test without one
   * @param state null for a test that is done in none
   */
  public record RunPart(
      @Nullable String phase,
      @Nullable String outlet,
      @Nullable String page,
      @Nullable SetupLines setup,
      @Nullable StateLines state,
      List<StepLine> before,
      List<Group> groups,
      List<StepLine> after,
      List<String> formulas) {}

  /**
   * How the leads go.
   *
   * @param name of the drawing
   * @param drawing null when a run before shows it
   * @param drawnAt the number and title of that run; null where it is drawn, or the run right
   *     before leaves the leads as they are to be
   * @param changes whether any lead is touched
   * @param jacks the heading above the jacks
   * @param wires each lead of it, and before them those that come off
   */
  public record SetupLines(
      String title,
      String name,
      @Nullable Drawing drawing,
      @Nullable String drawnAt,
      boolean changes,
      String jacks,
      List<WireLine> wires) {}

  /**
   * A lead of a wiring, or one that comes off for it.
   *
   * @param mark its letter in the drawing
   * @param terminals what it touches at the generator
   * @param jacks what it touches at instruments
   * @param change what is done with it, in a word or two
   * @param move its tick; null where it stays
   */
  public record WireLine(
      String mark,
      String lead,
      List<WireEnd> terminals,
      List<WireEnd> jacks,
      String change,
      @Nullable Ask move) {}

  /**
   * Where an end of a lead is to be.
   *
   * @param from where it is taken from; null where it does not move
   */
  public record WireEnd(String at, @Nullable String from) {}

  /** The state that a test is done in: what brings it about, and what ends it. */
  public record StateLines(String title, Ask enter, Ask leave) {}

  /**
   * A step.
   *
   * @param kind as in the language
   * @param ask null where it asks for nothing
   * @param lasts how many seconds it lasts, rounded up; null where it is neither a wait nor a rest
   */
  public record StepLine(String kind, String text, @Nullable Ask ask, @Nullable String lasts) {}

  /**
   * Lines whose steps are the same but for what stands on the line.
   *
   * @param writtenAt by box of a line, the place of the step at which it is written, from 0
   */
  public record Group(
      @Nullable String title,
      List<StepLine> steps,
      List<Line> lines,
      boolean hasSetting,
      boolean hasLoad,
      List<String> extras,
      List<Integer> writtenAt) {}

  /**
   * A point.
   *
   * @param on how long output is on; null where nothing says
   * @param asks what its steps ask for
   * @param steps the steps of its group with what stands on the line in them
   */
  public record Line(
      int number,
      String id,
      @Nullable String setting,
      @Nullable String load,
      List<String> extras,
      @Nullable String on,
      List<Box> boxes,
      List<Ask> asks,
      List<String> steps) {}

  /**
   * A reading's box.
   *
   * @param cells one character a cell: {@code 0} for a digit, {@code .} for the decimal point
   * @param limits what it has to be
   * @param tolerance the tolerance limits where they are not the acceptance limits; null where they
   *     are
   * @param judged whether it has limits
   * @param derived whether it is calculated, and only written as a control
   */
  public record Box(
      String id,
      String title,
      String unit,
      String cells,
      String limits,
      @Nullable String tolerance,
      boolean judged,
      boolean derived) {}
}
