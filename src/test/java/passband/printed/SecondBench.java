package passband.printed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.printed.PrintedSheet.Head;
import passband.printed.PrintedSheet.Heading;
import passband.printed.PrintedSheet.Line;
import passband.printed.PrintedSheet.Mark;
import passband.printed.PrintedSheet.OnlyIf;
import passband.printed.PrintedSheet.Step;
import passband.printed.PrintedSheet.Wired;

/**
 * A simple model of the bench, worked by the printed sentences alone. It knows nothing of how the
 * sheet was made; what it objects to is wrong with the page.
 */
final class SecondBench {
  private static final Pattern MOVED = Pattern.compile("(.+) from (.+)");
  private static final Pattern SEVERAL = Pattern.compile("(.+): (.+)");
  private static final Pattern REMOVE = Pattern.compile("Remove the (.+) from (.+) and (.+)\\.");
  private static final Pattern FOR_LINES = Pattern.compile(": (for each line|line [0-9]+)$");
  private static final Pattern ON_THE_LINE = Pattern.compile("the (.+) on the line");

  private final SheetWords words;
  private final List<String> objections = new ArrayList<>();
  private int lines;

  // the sheet
  private String test = "";
  private String outlet = "";
  private String mode = "";
  private final List<Step> steps = new ArrayList<>();
  private List<Step> forEachLine = List.of();

  // the bench
  private final Map<String, TreeSet<String>> leads = new LinkedHashMap<>();

  /** Whether {@code leads} are all that are on; not before that is confirmed. */
  private boolean known;

  /** The most leads that were in a terminal while leads were moved. */
  private final Map<String, Long> crowd = new LinkedHashMap<>();

  private final Map<String, String> dials = new LinkedHashMap<>();
  private String state = "?";
  private String selected = "?";
  private String setting = "?";
  private boolean running;
  private boolean on;
  private boolean wasOn;
  private boolean held;
  private boolean read;

  /** How often something was read since output came on. */
  private int reads;

  /** How long output has to rest, in s, before it comes again. */
  private double due;

  private SecondBench(SheetWords words) {
    this.words = words;
  }

  /** What working through a sheet came to. */
  record Result(int lines, List<String> objections) {}

  /** Works through the marks of a sheet; each objection with its page. */
  static Result work(List<Mark> marks, SheetWords words) {
    SecondBench bench = new SecondBench(words);
    marks.forEach(bench::go);
    int last = marks.get(marks.size() - 1).page();
    bench.once(last);
    bench.demand(!bench.on, last, "the sheet ends with output on");
    bench.bare(last, "at the end");
    bench.demand(bench.state.isEmpty(), last, "the sheet ends inside " + bench.state);
    return new Result(bench.lines, List.copyOf(bench.objections));
  }

  private void demand(boolean right, int page, String objection) {
    if (!right) {
      objections.add("page " + page + ": " + objection);
    }
  }

  private void go(Mark mark) {
    if (mark instanceof Heading heading) {
      once(heading.page());
      head(heading);
    } else if (mark instanceof Step step) {
      steps.add(step);
    } else if (mark instanceof OnlyIf only && Branches.isAdjustment(only)) {
      adjustment(only);
    } else if (mark instanceof Wired wired) {
      once(wired.page());
      wire(wired);
    } else if (mark instanceof Head && steps.stream().anyMatch(SecondBench::isForEachLine)) {
      forEachLine = List.copyOf(steps);
      steps.clear();
    } else if (mark instanceof Line line) {
      once(line.page());
      line(line);
    }
  }

  /** Whoever adjusts may wire as he likes, and turn on what he likes. */
  private void adjustment(OnlyIf only) {
    bare(only.page(), "before an adjustment");
    known = false;
    state = "?";
    forget();
    dials.clear();
  }

  private void bare(int page, String when) {
    demand(known, page, "it is not known which leads are on " + when);
    demand(leads.isEmpty(), page, "leads stay on " + when + ": " + leads.keySet());
  }

  // ---- the sheet ----

  /** What a line asks for stands under it, by its number. */
  private static boolean isForEachLine(Step step) {
    return !step.text().startsWith("Line ");
  }

  private void head(Heading heading) {
    if (heading.size() == 24) {
      outlet = heading.text();
    } else if (heading.size() == 13) {
      test = heading.text().replaceAll("^[0-9]+\\. | \u00b7 .*$| \\([^)]*\\)( \u00b7 .*)?$", "");
      mode = "";
    } else if (FOR_LINES.matcher(heading.text()).find()) {
      String named = FOR_LINES.matcher(heading.text()).replaceFirst("");
      mode = words.isMode(named) ? named : "";
    } else if (words.isWiring(heading.text()) && words.expected(test) != null) {
      demand(
          words.expected(test).wiring().equals(heading.text()),
          heading.page(),
          "another wiring is printed than that of " + test);
    }
  }

  /** What was said since the last heading, done once. */
  private void once(int page) {
    List<Step> all = List.copyOf(steps);
    steps.clear();
    all.forEach(step -> act(step, Map.of()));
  }

  /** Mode, setting and load are said for every line, so that any line can be done again alone. */
  private void line(Line line) {
    lines++;
    read = false;
    wasOn = false;
    held = false;
    forget();
    dials.remove("Load");
    forEachLine.forEach(step -> act(step, line.cells()));
    demand(due == 0, line.page(), "it has not rested after line " + line.number());
    demand(reads > 0 || !wasOn, line.page(), "it was on, and nothing was read");
    demand(read, line.page(), "nothing is read for line " + line.number());
    demand(!on, line.page(), "output stays on after line " + line.number());
    demand(!running, line.page(), "the analyzer runs on after line " + line.number());
  }

  private void act(Step step, Map<String, String> cells) {
    if (wire(step)) {
      return;
    }
    wired(step.page());
    SheetWords.Said said = words.said(step.text());
    if (said == null) {
      demand(false, step.page(), "a sentence that nobody explained: " + step.text());
      return;
    }
    Map<String, String> gaps = new LinkedHashMap<>();
    said.gaps().forEach((gap, text) -> gaps.put(gap, onLine(text, cells)));
    effect(said.effect(), gaps, step, cells);
  }

  private static String onLine(String text, Map<String, String> cells) {
    Matcher matcher = ON_THE_LINE.matcher(text);
    if (!matcher.matches()) {
      return text;
    }
    String column = matcher.group(1);
    return cells.entrySet().stream()
        .filter(cell -> cell.getKey().equalsIgnoreCase(column))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("?");
  }

  // ---- the bench ----

  /** A row of the table: what comes off, moves or is new, and what stays as it is. */
  private void wire(Wired row) {
    demand(!on, row.page(), "with output on: " + row);
    TreeSet<String> ends = new TreeSet<>();
    TreeSet<String> before = new TreeSet<>();
    places(row.terminal()).forEach(place -> end(place, "", ends, before));
    Arrays.stream(row.jack().split(", "))
        .filter(place -> !place.isEmpty())
        .forEach(place -> end(place, words.onAnalyzer(""), ends, before));
    switch (row.change()) {
      case "comes off" ->
          demand(ends.equals(leads.remove(row.lead())), row.page(), "not on: " + row);
      case "stays" -> demand(ends.equals(leads.get(row.lead())), row.page(), "not there: " + row);
      case "new" -> {
        demand(known, row.page(), "leads may be on already: " + row);
        demand(leads.put(row.lead(), ends) == null, row.page(), "connected already: " + row);
        ends.forEach(this::arrive);
      }
      case "moves" -> {
        boolean moves = !before.equals(ends) && before.equals(leads.put(row.lead(), ends));
        demand(moves, row.page(), "not there to move: " + row);
        ends.stream().filter(end -> !before.contains(end)).forEach(this::arrive);
      }
      default -> demand(false, row.page(), "nothing that can be done: " + row);
    }
  }

  private static List<String> places(String cell) {
    Matcher several = SEVERAL.matcher(cell);
    if (cell.isEmpty()) {
      return List.of();
    }
    return several.matches()
        ? Arrays.stream(several.group(2).split(", ")).map(t -> several.group(1) + ", " + t).toList()
        : List.of(cell);
  }

  private static void end(
      String place, String owner, TreeSet<String> ends, TreeSet<String> before) {
    Matcher moved = MOVED.matcher(place);
    ends.add(owner + (moved.matches() ? moved.group(1) : place));
    before.add(owner + (moved.matches() ? moved.group(2) : place));
  }

  private boolean wire(Step step) {
    Matcher remove = REMOVE.matcher(step.text());
    if (!remove.matches()) {
      return false;
    }
    quiet(step);
    TreeSet<String> ends = leads.remove(remove.group(1));
    TreeSet<String> said = new TreeSet<>(List.of(remove.group(2), remove.group(3)));
    demand(said.equals(ends), step.page(), "not there to remove: " + step.text());
    return true;
  }

  private void arrive(String terminal) {
    crowd.merge(terminal, leadsIn(terminal), Math::max);
  }

  private long leadsIn(String terminal) {
    return leads.values().stream().filter(ends -> ends.contains(terminal)).count();
  }

  /** A terminal never holds more leads on the way to a wiring than in it. */
  private void wired(int page) {
    crowd.forEach(
        (terminal, most) ->
            demand(
                leadsIn(terminal) >= most,
                page,
                "a lead is still to leave when one comes: " + terminal));
    crowd.clear();
  }

  private void quiet(Step step) {
    demand(!on, step.page(), "with output on: " + step.text());
  }

  private void effect(
      String effect, Map<String, String> gaps, Step step, Map<String, String> cells) {
    if (effect.startsWith("enter ")) {
      quiet(step);
      demand(state.isEmpty(), step.page(), "a state within a state: " + step.text());
      state = effect.substring("enter ".length());
      forget();
      dials.clear();
      return;
    }
    switch (effect) {
      case "nothing" -> {}
      case "bare" -> {
        leads.clear();
        known = true;
        off();
        state = "";
      }
      case "mode" -> select(gaps.get("mode"), step);
      case "setting" -> adjust(gaps, step);
      case "load" -> dial("Load", gaps.get("load"), step);
      case "other" -> gaps.forEach((name, value) -> dial(name, value, step));
      case "start" -> start(step);
      case "on" -> activate(words.onAnalyzer(gaps.get("key")), gaps.get("seconds"), step);
      case "on by hand" -> activate("by hand", gaps.get("seconds"), step);
      case "rest" -> rest(gaps.get("seconds"), step);
      case "hold" -> hold(step);
      case "read" -> {
        demand(running || held, step.page(), "the analyzer does not run: " + step.text());
        read(step, cells, on || held);
      }
      case "read of what is held" -> read(step, cells, wasOn);
      case "off" -> off();
      case "stays" ->
          gaps.forEach(
              (name, value) -> demand(value.equals(dials.get(name)), step.page(), step.text()));
      case "leave" -> leave(step);
      case "forget the panel" -> forget();
      default -> throw new IllegalArgumentException(effect);
    }
  }

  private void forget() {
    selected = "?";
    setting = "?";
  }

  private void select(String name, Step step) {
    quiet(step);
    selected = name;
    setting = "?";
  }

  private void adjust(Map<String, String> gaps, Step step) {
    quiet(step);
    demand(!selected.equals("?"), step.page(), "a setting without a mode: " + step.text());
    String where = gaps.getOrDefault("outlet", outlet);
    demand(where.equals(outlet), step.page(), "the knob of another outlet: " + step.text());
    setting = gaps.get("setting");
  }

  private void dial(String name, String value, Step step) {
    quiet(step);
    demand(!running, step.page(), "the analyzer runs: " + step.text());
    dials.put(name, value);
  }

  private void start(Step step) {
    demand(!running, step.page(), "it runs already: " + step.text());
    running = true;
    held = false;
  }

  private void activate(String by, String seconds, Step step) {
    demand(due == 0, step.page(), "it has not rested: " + step.text());
    demand(reads > 0 || !wasOn, step.page(), "it was on, and nothing was read: " + step.text());
    due = words.rest(selected, seconds);
    reads = 0;
    demand(!on, step.page(), "output is on already: " + step.text());
    demand(running, step.page(), "the analyzer does not run: " + step.text());
    demand(by.equals("by hand") || wiredTo(by, step), step.page(), "wrong key: " + step.text());
    on = true;
    wasOn = true;
  }

  private void rest(String seconds, Step step) {
    quiet(step);
    demand(Double.parseDouble(seconds) >= due, step.page(), "too short a rest: " + step.text());
    due = 0;
  }

  /** Whether a lead joins the key to the contact that turns the mode on. */
  private boolean wiredTo(String key, Step step) {
    if (!words.isMode(selected)) {
      return false;
    }
    TreeSet<String> wanted = new TreeSet<>(List.of(key, words.contact(selected, outlet)));
    return leads.containsValue(wanted);
  }

  private void hold(Step step) {
    demand(on, step.page(), "nothing to hold: " + step.text());
    held = true;
  }

  private void read(Step step, Map<String, String> cells, boolean delivered) {
    SheetWords.Expected expected = words.expected(test);
    if (expected == null) {
      demand(false, step.page(), "a test that nobody explained: " + test);
      return;
    }
    String at = "line " + cells.getOrDefault("No.", "?") + ": ";
    read = true;
    reads++;
    demand(held || !on || reads == 1, step.page(), at + "read more than once while it is on");
    demand(delivered == expected.on(), step.page(), at + "output is " + (on ? "on" : "off"));
    demand(expected.on() || !on, step.page(), at + "output is on");
    demand(wired().equals(wanted(expected)), step.page(), at + "wired as " + wired());
    demand(state.equals(expected.state()), step.page(), at + "inside '" + state + "'");
    if (!mode.isEmpty()) {
      demand(selected.equals(mode), step.page(), at + "the mode is " + selected);
      demand(setting.equals(cells.get("Setting")), step.page(), at + "the setting is " + setting);
    }
    cells.forEach((column, value) -> compareDial(column, value, step, at));
    words.rests().forEach((dial, rest) -> atRest(dial, rest, cells, step, at));
  }

  private void compareDial(String column, String value, Step step, String at) {
    boolean dial = column.equals("Load") || dials.containsKey(column);
    if (dial) {
      String set = dials.getOrDefault(column, "?");
      demand(value.equals(set), step.page(), at + column + " is at " + set);
    }
  }

  /** What the line does not give is where it rests. */
  private void atRest(String dial, String rest, Map<String, String> cells, Step step, String at) {
    boolean there = cells.containsKey(dial) || rest.equals(dials.get(dial));
    demand(there, step.page(), at + dial + " is at " + dials.getOrDefault(dial, "?"));
  }

  private Map<String, String> wired() {
    Map<String, String> all = new LinkedHashMap<>();
    leads.forEach((lead, ends) -> all.put(lead, String.join(" | ", ends)));
    return all;
  }

  private Map<String, String> wanted(SheetWords.Expected expected) {
    Map<String, String> all = new LinkedHashMap<>();
    words
        .wiring(expected.wiring(), outlet)
        .forEach(
            (lead, ends) ->
                all.put(lead, String.join(" | ", new TreeSet<>(List.of(ends.split(" \\| "))))));
    return all;
  }

  private void off() {
    on = false;
    running = false;
  }

  private void leave(Step step) {
    quiet(step);
    demand(!state.isEmpty(), step.page(), "no state to leave: " + step.text());
    state = "";
    forget();
    dials.clear();
  }
}
