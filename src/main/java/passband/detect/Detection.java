package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.plan.Plan;
import passband.plan.Stage;

/**
 * What a procedure catches.
 *
 * @param findings of every entry of the catalogue, size and place, in the order of the catalogue
 * @param gains in the order of the sheet
 * @param falseFails of a good generator
 * @param masked gain errors that a fault of the bench hides
 * @param idle what may be left out together, in the order of the sheet
 * @param readings how many readings take part
 * @param untested modes on outlets of which no output is read
 * @param notes what is left out
 */
public record Detection(
    Plan plan,
    List<Finding> findings,
    List<Gain> gains,
    List<FalseFail> falseFails,
    List<Masked> masked,
    List<IdleRow> idle,
    int readings,
    List<String> untested,
    List<Note> notes) {

  /**
   * What becomes of a fault of one size at one place.
   *
   * @param where in words; empty where the procedure has nothing of the kind
   * @param power the probability that the sheet fails, given the fault
   * @param proposal the cheapest lines that would catch it; null where it is caught, or none of
   *     those that are tried would
   * @param places the same for the readings of each mode and outlet alone
   */
  public record Finding(
      Fault fault,
      Fault.Size size,
      String where,
      Chance power,
      Outcome outcome,
      @Nullable Proposal proposal,
      Map<Place, Cell> places) {

    /** Whether it is less noticed than another one. */
    public boolean isWorseThan(Finding other) {
      return new Cell(power, outcome).isWorseThan(new Cell(other.power, other.outcome));
    }
  }

  /** A probability with what it means. */
  public record Cell(Chance power, Outcome outcome) {
    /** Whether it is less noticed than another one: what is inside the tolerance need not be. */
    public boolean isWorseThan(Cell other) {
      int order = outcome.compareTo(other.outcome);
      return order < 0 || (order == 0 && power.value() < other.power.value());
    }
  }

  /**
   * The probability that a good generator fails while every reading, of whatever quantity, uses up
   * one share of its tolerance.
   *
   * @param share 0.9 for nine tenths
   */
  public record FalseFail(double share, Chance low, Chance high) {}

  /**
   * A row that adds nothing against this catalogue.
   *
   * @param point its identity
   * @param loss the greatest loss of power over the catalogue when it goes alone
   */
  public record IdleRow(String point, double loss) {}

  /** Of a compiled procedure, with everything that is printed. */
  public static Detection of(Plan plan) {
    return of(plan, true);
  }

  /** Without advice: rows that would catch more, and rows that add nothing. */
  public static Detection asItIs(Plan plan) {
    return of(plan, false);
  }

  private static Detection of(Plan plan, boolean advice) {
    SheetLines lines = SheetLines.of(plan);
    Kernel kernel = new Kernel();
    List<Instance> instances = Instances.of(lines);
    Proposals proposals = new Proposals(lines, kernel);
    List<Finding> findings = new ArrayList<>();
    for (Instance instance : instances) {
      findings.add(finding(instance, kernel, proposals, advice));
    }
    return new Detection(
        plan,
        List.copyOf(findings),
        Gain.of(lines, kernel, true),
        FalseFails.of(lines, kernel),
        Masked.of(lines, instances, kernel),
        advice ? Idle.of(lines, instances, kernel) : List.of(),
        lines.all().size(),
        untested(plan, lines),
        notes(lines));
  }

  private static Finding finding(
      Instance instance, Kernel kernel, Proposals proposals, boolean advice) {
    Chance power = instance.failing(kernel);
    Map<Place, Cell> cells = new LinkedHashMap<>();
    for (Place place : instance.places()) {
      Instance there =
          instance.alone(line -> line.point().mode() != null && Place.of(line).equals(place));
      Chance alone = there.failing(kernel);
      cells.put(place, new Cell(alone, proposals.outcome(there, alone, place)));
    }
    Outcome outcome = proposals.outcome(instance, power, null);
    boolean open = outcome == Outcome.PARTLY || outcome.isUnnoticed();
    return new Finding(
        instance.fault(),
        instance.size(),
        instance.where(),
        power,
        outcome,
        open && advice ? proposals.of(instance) : null,
        cells);
  }

  private static List<String> untested(Plan plan, SheetLines lines) {
    List<String> tested = new ArrayList<>();
    lines.places().keySet().forEach(place -> tested.add(place.text()));
    List<String> untested = new ArrayList<>();
    for (Mode mode : plan.device().modes()) {
      for (Outlet outlet : mode.outlets()) {
        Place place = new Place(mode.name().text(), mode.title(), outlet.name().text());
        if (!tested.contains(place.text())) {
          untested.add(place.text());
        }
      }
    }
    return untested;
  }

  private static List<Note> notes(SheetLines lines) {
    List<Note> notes = new ArrayList<>();
    if (!lines.plan().phases().isEmpty()) {
      notes.add(new Note(Note.Kind.PHASE, lines.plan().phases().get(0).toString()));
    }
    Set<String> optional = new LinkedHashSet<>();
    for (Stage.Run run : lines.runs()) {
      if (run.when().condition().option() != null) {
        optional.add(run.test().text());
      }
    }
    if (!optional.isEmpty()) {
      notes.add(new Note(Note.Kind.OPTION, String.join(", ", optional)));
    }
    if (lines.workedOut() > 0) {
      notes.add(new Note(Note.Kind.DERIVED, String.valueOf(lines.workedOut())));
    }
    if (lines.unknownErrors() > 0) {
      notes.add(new Note(Note.Kind.UNKNOWN, String.valueOf(lines.unknownErrors())));
    }
    return notes;
  }

  /**
   * Something that is left out.
   *
   * @param value a name or a number for its sentence
   */
  public record Note(Kind kind, String value) {
    /** Which. */
    public enum Kind {
      /** All phases but the first, whose name is the value. */
      PHASE,
      /** The tests that are done after a choice alone, whose names are the value: they count. */
      OPTION,
      /** So many limits of derived values. */
      DERIVED,
      /** The errors of so many readings, which nobody states. */
      UNKNOWN
    }
  }

  /** Identities in words. */
  public RowWords words() {
    return RowWords.of(plan);
  }

  /**
   * What would catch a fault, in words, with what this bench lacks for it, or else where it goes in
   * a table of tests.
   */
  public String advice(Fault fault) {
    String lacking = new Lacking(plan).of(fault);
    String more = lacking.isEmpty() ? new TableTests(plan).of(fault) : lacking;
    return more.isEmpty() ? fault.advice() : fault.advice() + " (" + more + ")";
  }

  /** The worst outcome of each entry, over its sizes and places outside of the tolerance. */
  public Map<Fault, Finding> worst() {
    Map<Fault, Finding> worst = new LinkedHashMap<>();
    for (Finding finding : findings) {
      worst.merge(finding.fault(), finding, (a, b) -> b.isWorseThan(a) ? b : a);
    }
    return worst;
  }
}
