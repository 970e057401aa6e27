package passband.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import passband.limit.Decision;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Lead;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * A compiled procedure.
 *
 * @param leads every lead and link of the sets that the procedure names
 * @param decision how readings are compared with limits
 * @param phases empty when the procedure has none
 * @param stages in bench order
 * @param digested keeps the digest
 */
public record Plan(
    Word name,
    String title,
    Revision revision,
    Device device,
    Analyzer analyzer,
    List<Lead> leads,
    Decision decision,
    List<Caution> cautions,
    List<String> phases,
    List<Stage> stages,
    List<Allowed> allowed,
    Digested digested,
    Tree.Procedure tree) {

  /** The revision's label and date; the rest is null when it replaces none. */
  public record Revision(
      String label, String date, String replaces, String replacesDate, String replacesDigest) {}

  /** A caution of the whole procedure. */
  public record Caution(Word name, String text) {}

  /** A warning that the source quiets, with the reason. */
  public record Allowed(String code, String reason, String place) {}

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

  /** The leads that some run's setup uses, in the order of their sets; they are numbered from 1. */
  public List<Lead> usedLeads() {
    Set<String> used = new HashSet<>();
    for (Stage.Run run : runs()) {
      if (run.setup() != null) {
        run.setup().wires().forEach(w -> used.add(w.lead().name().text()));
      }
    }
    return leads.stream().filter(l -> used.contains(l.name().text())).toList();
  }

  /** Every point, in bench order. */
  public List<Point> points() {
    return runs().stream().flatMap(r -> r.points().stream()).toList();
  }

  /** Every limit, in bench order. */
  public List<Limit> limits() {
    return points().stream().flatMap(p -> p.limits().stream()).toList();
  }

  /** SHA-256 over the meaning, in lower-case hexadecimal. */
  public String digest() {
    return digested.of(this);
  }

  /** The digest of a plan, made when first asked for: a check needs none. */
  static final class Digested {
    private String digest;

    private synchronized String of(Plan plan) {
      if (digest == null) {
        digest = Digest.of(plan);
      }
      return digest;
    }
  }
}
