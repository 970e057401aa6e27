package passband.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.detect.Detection;
import passband.detect.Detection.Finding;
import passband.detect.Fault;
import passband.detect.Proposal;

/**
 * What would catch the faults that are not caught everywhere: each piece of advice once, with the
 * faults, sizes and places that it is for.
 */
final class DetectAdvice {
  /** So many places are named; of more, how many. */
  private static final int NAMED = 3;

  /** What is said of a mode on an outlet of which no output is read. */
  static final String UNTESTED =
      "a test of this mode on this outlet, at its lowest, a middle and its highest setting";

  private final Detection detection;
  private final List<Item> items = new ArrayList<>();
  private final Map<String, Integer> numbers = new LinkedHashMap<>();
  private final Map<Fault, Set<Integer>> byFault = new LinkedHashMap<>();

  DetectAdvice(Detection detection) {
    this.detection = detection;
  }

  /**
   * A piece of advice.
   *
   * @param number from one, in the order of the faults
   * @param lines of the source; empty where it is given in words alone
   * @param place where they go; empty without lines
   * @param reasons a fault each, with its sizes and places
   */
  public record Item(
      int number, String words, String place, List<String> lines, List<String> reasons) {}

  /** All, once every fault has been asked for. */
  List<Item> items() {
    return List.copyOf(items);
  }

  /** The numbers of what would catch a fault, as printed: {@code 1, 4}. */
  String numbers(Fault fault, boolean always) {
    for (Map.Entry<Proposal, String> one : proposals(fault).entrySet()) {
      Proposal proposal = one.getKey();
      String where = proposal.inside() ? "in the test " : "after the test ";
      add(fault, proposal.text(), where + proposal.test(), proposal.lines(), one.getValue());
    }
    if (always && !isWhole(fault)) {
      boolean some = byFault.containsKey(fault);
      add(fault, detection.advice(fault), "", List.of(), some ? "at other places" : "");
    }
    List<String> texts = new ArrayList<>();
    byFault.getOrDefault(fault, Set.of()).forEach(number -> texts.add(number.toString()));
    return String.join(", ", texts);
  }

  /** The number of what would read the output of a mode on an outlet that nothing reads. */
  String number(String untested) {
    return Integer.toString(add(UNTESTED, "", List.of(), "output of " + untested));
  }

  private void add(Fault fault, String words, String place, List<String> lines, String reason) {
    String of = reason.isEmpty() ? fault.id() : fault.id() + " " + reason;
    byFault.computeIfAbsent(fault, f -> new LinkedHashSet<>()).add(add(words, place, lines, of));
  }

  private int add(String words, String place, List<String> lines, String reason) {
    String key = words + place + lines;
    Integer number = numbers.get(key);
    if (number == null) {
      number = items.size() + 1;
      numbers.put(key, number);
      items.add(new Item(number, words, place, lines, new ArrayList<>()));
    }
    items.get(number - 1).reasons().add(reason);
    return number;
  }

  /** Of a fault the proposals, each with the sizes and places that it is for. */
  Map<Proposal, String> proposals(Fault fault) {
    Map<Proposal, Map<String, Set<String>>> sizes = new LinkedHashMap<>();
    for (Finding one : detection.findings()) {
      Proposal proposal = one.proposal();
      if (one.fault().equals(fault) && proposal != null) {
        sizes
            .computeIfAbsent(proposal, p -> new LinkedHashMap<>())
            .computeIfAbsent(one.size().text(), s -> new LinkedHashSet<>())
            .add(place(one));
      }
    }
    Map<Proposal, String> all = new LinkedHashMap<>();
    sizes.forEach((proposal, some) -> all.put(proposal, reason(some)));
    return all;
  }

  private String place(Finding one) {
    boolean nowhere = List.of("output", one.fault().over()).contains(one.where());
    return nowhere ? "" : detection.words().of(one.where());
  }

  /** Sizes at the same places stand together. */
  private static String reason(Map<String, Set<String>> places) {
    Map<Set<String>, List<String>> together = new LinkedHashMap<>();
    places.forEach(
        (size, some) -> together.computeIfAbsent(some, p -> new ArrayList<>()).add(size));
    List<String> reasons = new ArrayList<>();
    together.forEach(
        (some, sizes) -> {
          String of = String.join(" and ", sizes);
          String at = named(some);
          reasons.add(of.isEmpty() || at.isEmpty() ? of + at : of + ": " + at);
        });
    return String.join("; ", reasons);
  }

  private static String named(Set<String> places) {
    List<String> all = new ArrayList<>(places);
    return all.size() <= NAMED + 1
        ? String.join(", ", all)
        : String.join(", ", all.subList(0, NAMED)) + " and " + (all.size() - NAMED) + " more";
  }

  /** Whether there are lines for every size and place that lets a fault through. */
  boolean isWhole(Fault fault) {
    for (Finding other : detection.findings()) {
      boolean open = other.fault().equals(fault) && other.outcome().isUnnoticed();
      if (open && other.proposal() == null) {
        return false;
      }
    }
    return true;
  }
}
