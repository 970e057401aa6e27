package passband.printed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.printed.PrintedSheet.Wired;

/** The leads, links and accessories of the second bench, moved by the printed sentences alone. */
final class SecondLeads {
  private static final Pattern MOVED = Pattern.compile("(.+) from (.+)");
  private static final Pattern SEVERAL = Pattern.compile("(.+): (.+)");
  private static final Pattern REMOVE = Pattern.compile("Remove the (.+?) from (.+ and .+)\\.");

  private final Map<String, TreeSet<String>> ends = new LinkedHashMap<>();

  /** The most leads that were in a terminal while leads were moved. */
  private final Map<String, Long> crowd = new LinkedHashMap<>();

  private final List<String> faults = new ArrayList<>();

  /** Whether these are all that are on; not before that is confirmed. */
  private boolean known;

  /**
   * A row of a wiring's table: what comes off, moves or is new, and what stays as it is; what is
   * wrong with it.
   *
   * @param jack with the instrument's name
   */
  List<String> wire(Wired row, String jack) {
    TreeSet<String> at = new TreeSet<>();
    TreeSet<String> before = new TreeSet<>();
    places(row.terminal(), at, before);
    places(jack, at, before);
    boolean right =
        switch (row.change()) {
          case "comes off" -> at.equals(ends.remove(row.lead()));
          case "stays" -> at.equals(ends.get(row.lead()));
          case "new" -> known && ends.put(row.lead(), at) == null;
          case "moves" -> !before.equals(at) && before.equals(ends.put(row.lead(), at));
          default -> false;
        };
    boolean added = row.change().equals("new") || row.change().equals("moves");
    at.stream()
        .filter(end -> added && (row.change().equals("new") || !before.contains(end)))
        .forEach(this::arrive);
    return right ? List.of() : List.of("nothing that can be done: " + row + "; " + ends());
  }

  /** The terminals of a cell, several of one owner after its name, and where they were before. */
  private static void places(String cell, TreeSet<String> at, TreeSet<String> before) {
    Matcher several = SEVERAL.matcher(cell);
    boolean named = several.matches();
    String owner = named ? several.group(1) + ", " : "";
    List<String> places = named ? List.of(several.group(2).split(", ")) : List.of(cell);
    for (String place : cell.isEmpty() ? List.<String>of() : places) {
      Matcher moved = MOVED.matcher(place);
      at.add(owner + (moved.matches() ? moved.group(1) : place));
      before.add(owner + (moved.matches() ? moved.group(2) : place));
    }
  }

  /** Whether a sentence takes a lead off, which is then done. */
  boolean removed(String text) {
    Matcher remove = REMOVE.matcher(text);
    faults.clear();
    if (remove.matches()) {
      TreeSet<String> said = new TreeSet<>(List.of(remove.group(2).split(" and ")));
      if (!said.equals(ends.remove(remove.group(1)))) {
        faults.add("not there to remove: " + text);
      }
    }
    return remove.matches();
  }

  /** What was wrong with the last removal. */
  List<String> faults() {
    return List.copyOf(faults);
  }

  private void arrive(String terminal) {
    crowd.merge(terminal, leadsIn(terminal), Math::max);
  }

  private long leadsIn(String terminal) {
    return ends.values().stream().filter(of -> of.contains(terminal)).count();
  }

  /** A terminal never holds more leads on the way to a wiring than in it: where one did. */
  List<String> wired() {
    List<String> crowded = new ArrayList<>();
    crowd.forEach(
        (terminal, most) -> {
          if (leadsIn(terminal) < most) {
            crowded.add("a lead is still to leave when one comes: " + terminal);
          }
        });
    crowd.clear();
    return crowded;
  }

  /** It is confirmed that none is on. */
  void takeOff() {
    ends.clear();
    known = true;
  }

  /** Somebody may have wired as he likes. */
  void forget() {
    known = false;
  }

  boolean areOff() {
    return known && ends.isEmpty();
  }

  boolean isOn(String lead) {
    return ends.containsKey(lead);
  }

  /** Whether a lead joins two terminals. */
  boolean join(String one, String other) {
    return ends.containsValue(new TreeSet<>(List.of(one, other)));
  }

  /** Whether a lead is in a terminal. */
  boolean touches(String lead, String terminal) {
    return ends.getOrDefault(lead, new TreeSet<>()).contains(terminal);
  }

  /** Whether some lead is in one of these terminals. */
  boolean carry(Set<String> terminals) {
    return ends.values().stream().anyMatch(of -> terminals.stream().anyMatch(of::contains));
  }

  /** Each lead with its ends. */
  Map<String, String> ends() {
    Map<String, String> all = new LinkedHashMap<>();
    ends.forEach((lead, of) -> all.put(lead, String.join(" | ", of)));
    return all;
  }

  @Override
  public String toString() {
    return ends().toString();
  }
}
