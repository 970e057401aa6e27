package passband.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.limit.Decision;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Instruments;
import passband.model.Lead;
import passband.model.Named;
import passband.model.Reader;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;
import passband.words.Language;

/**
 * A compiled procedure.
 *
 * @param decision how readings are compared with limits
 * @param phases empty when the procedure has none
 * @param stages in bench order
 * @param made keeps what is worked out from the rest
 * @param source where it is written
 */
public record Plan(
    Word name,
    String title,
    Revision revision,
    Bench bench,
    Decision decision,
    List<Caution> cautions,
    List<String> phases,
    List<Stage> stages,
    List<Allowed> allowed,
    Made made,
    Source source) {
  private static final String LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";

  /**
   * What is on the bench.
   *
   * @param leads every lead and link of the sets that the procedure names
   */
  public record Bench(Device device, Instruments instruments, List<Lead> leads) {}

  /** The revision's label and date; the rest is null when it replaces none. */
  public record Revision(
      String label,
      String date,
      @Nullable String replaces,
      @Nullable String replacesDate,
      @Nullable String replacesDigest) {}

  /** A caution of the whole procedure. */
  public record Caution(Word name, String text) implements Named {}

  /** A warning that the source suppresses, with the reason; {@code place} is a kind and a name. */
  public record Allowed(String code, String reason, String place, Span span) {}

  /**
   * Where a procedure and its parts are written; its name where there is no such line.
   *
   * @param includes the block of each part that it includes, and the name that includes it
   */
  public record Source(
      Tree.Procedure tree, Span revision, Span decision, Map<Span, Span> includes) {
    /** Whether a place is in a part that the procedure includes. */
    public boolean inPart(Span place) {
      return includedBy(place) != null;
    }

    /** What includes the part that a place is in; null where it is in none. */
    public @Nullable Span includedBy(Span place) {
      for (Map.Entry<Span, Span> one : includes.entrySet()) {
        if (one.getKey().holds(place)) {
          return one.getValue();
        }
      }
      return null;
    }
  }

  /** The generator. */
  public Device device() {
    return bench.device;
  }

  /** The instruments. */
  public Instruments instruments() {
    return bench.instruments;
  }

  /** How what a limit is about is measured; null for what is swept or derived. */
  public Analyzer.@Nullable Measure measure(Limit limit) {
    return measure(limit.quantity(), limit.read().by());
  }

  /** How the instrument in a role, or the generator itself, measures a quantity. */
  public Analyzer.@Nullable Measure measure(String quantity, @Nullable String by) {
    if (by == null) {
      return null;
    }
    Reader reader = by.equals(Instruments.DEVICE) ? device() : instruments().in(by);
    return reader.measure(quantity);
  }

  /** Every lead and link of the sets that the procedure names. */
  public List<Lead> leads() {
    return bench.leads;
  }

  /** The language of its sheet: English where it says none, or none that there is. */
  public Language language() {
    Word code = source.tree.language();
    Language language = code == null ? null : Language.named(code.text());
    return language == null ? Language.ENGLISH : language;
  }

  /** The declaration. */
  public Tree.Procedure tree() {
    return source.tree;
  }

  /** The runs among the stages. */
  public List<Stage.Run> runs() {
    List<Stage.Run> runs = new ArrayList<>();
    for (Stage stage : stages) {
      if (stage instanceof Stage.Run run) {
        runs.add(run);
      }
    }
    return runs;
  }

  /** The choice of this name in a section; null where there is none. */
  public @Nullable PlanStep choice(String name) {
    for (Stage stage : stages) {
      for (PlanStep step : stage instanceof Stage.Section s ? s.steps() : List.<PlanStep>of()) {
        if (step.act() instanceof Act.Choose choose && choose.name().equals(name)) {
          return step;
        }
      }
    }
    return null;
  }

  /** The leads that some run's setup uses, in the order of their sets; see {@link #letter}. */
  public List<Lead> usedLeads() {
    Set<String> used = new HashSet<>();
    for (Stage.Run run : runs()) {
      if (run.setup() != null) {
        run.setup().wires().forEach(w -> used.add(w.lead().name().text()));
      }
    }
    List<Lead> inOrder = new ArrayList<>(leads());
    inOrder.removeIf(lead -> !used.contains(lead.name().text()));
    return inOrder;
  }

  /**
   * What a lead is called on the drawing, in the list of leads and in the steps: A to Z without I
   * and O, which are taken for 1 and 0; then AA and so on.
   *
   * @param index in the leads that are used, from 0
   */
  public static String letter(int index) {
    int last = index % LETTERS.length();
    String before = index < LETTERS.length() ? "" : letter(index / LETTERS.length() - 1);
    return before + LETTERS.charAt(last);
  }

  /** Every point, in bench order. */
  public List<Point> points() {
    return made.points(this);
  }

  /** Every limit, in bench order. */
  public List<Limit> limits() {
    return made.limits(this);
  }

  /** SHA-256 over the meaning, in lower-case hexadecimal. */
  public String digest() {
    return made.digest(this);
  }

  /** Whether what it means was released: nothing but {@link #released} makes it so. */
  public Release release() {
    return made.release;
  }

  /** Says whether what it means was released. It is no part of the meaning. */
  public void released(Release release) {
    made.release = release;
  }

  /** What is worked out from a plan when it is first asked for: a check needs no digest. */
  public static final class Made {
    private volatile Release release = Release.UNKNOWN;
    private @Nullable String digest;
    private @Nullable List<Point> points;
    private @Nullable List<Limit> limits;

    private synchronized String digest(Plan plan) {
      if (digest == null) {
        digest = Meaning.of(plan).digest();
      }
      return digest;
    }

    private synchronized List<Point> points(Plan plan) {
      if (points == null) {
        List<Point> all = new ArrayList<>();
        plan.runs().forEach(run -> all.addAll(run.points()));
        points = Collections.unmodifiableList(all);
      }
      return points;
    }

    private synchronized List<Limit> limits(Plan plan) {
      if (limits == null) {
        List<Limit> all = new ArrayList<>();
        points(plan).forEach(point -> all.addAll(point.limits()));
        limits = Collections.unmodifiableList(all);
      }
      return limits;
    }
  }
}
