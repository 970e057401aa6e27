package passband.printed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
  private static final Pattern FOR_LINES = Pattern.compile(": (for each line|line [0-9]+)$");
  private static final String BUTTON = "a button";
  private static final Pattern ON_OUTLET = Pattern.compile(" \u00b7 (.+)$");

  private final SheetWords words;
  private final List<String> objections = new ArrayList<>();
  private int lines;

  // the sheet
  private String test = "";
  private String outlet = "";
  private String mode = "";

  /** What has to be closed to activate, in full. */
  private String contact = "";

  /** The contact in a row of its own above the line; null where there is none. */
  private String above;

  /** What another outlet delivers at the same time, in that row; null for nothing. */
  private String besideAbove;

  private final List<Step> steps = new ArrayList<>();
  private List<Step> forEachLine = List.of();

  // the bench
  private final SecondLeads leads = new SecondLeads();
  private final SecondPartner partner = new SecondPartner();
  private final Map<String, String> dials = new LinkedHashMap<>();
  private String state = "?";
  private String selected = "?";
  private String setting = "?";
  private final Set<String> running = new TreeSet<>();
  private boolean on;
  private boolean wasOn;
  private final Set<String> held = new TreeSet<>();
  private boolean read;

  /** The instrument whose key a hand holds, or a button of its own; empty for neither. */
  private String hand = "";

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

  private void quiet(Step step) {
    demand(!on, step.page(), "with output on: " + step.text());
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
      demand(!on, wired.page(), "with output on: " + wired);
      leads.wire(wired, words.jack(wired)).forEach(fault -> demand(false, wired.page(), fault));
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
    leads.forget();
    state = "?";
    forget();
    dials.clear();
  }

  private void bare(int page, String when) {
    demand(leads.areOff(), page, "leads may be on " + when + ": " + leads);
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
      Matcher named = ON_OUTLET.matcher(heading.text());
      outlet = named.find() ? named.group(1) : outlet;
      test = heading.text().replaceAll("^[0-9]+\\. | \u00b7 .*$| \\([^)]*\\)( \u00b7 .*)?$", "");
      mode = "";
    } else if (heading.size() == 11 && words.isContact(heading.text())) {
      above = heading.text();
    } else if (heading.size() == 11 && words.isSetAt(heading.text())) {
      besideAbove = heading.text();
    } else if (FOR_LINES.matcher(heading.text()).find()) {
      forEachLine = List.of(); // other lines have steps of their own
      String named = FOR_LINES.matcher(heading.text()).replaceFirst("");
      mode = words.isMode(named) ? named : "";
    } else if (words.isWiring(heading.text()) && words.expected(test, outlet) != null) {
      demand(
          words.expected(test, outlet).wiring().equals(heading.text()),
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
    held.clear();
    forget();
    dials.remove("Load");
    contact = contact(line.cells().getOrDefault("Activation", above));
    above = null;
    partner.line(besideAbove, words.beside(test));
    besideAbove = null;
    forEachLine.forEach(step -> act(step, line.cells()));
    demand(due == 0, line.page(), "it has not rested after line " + line.number());
    demand(reads > 0 || !wasOn, line.page(), "it was on, and nothing was read");
    demand(read, line.page(), "nothing is read for line " + line.number());
    demand(!on, line.page(), "output stays on after line " + line.number());
    demand(hand.isEmpty(), line.page(), hand + " is held after line " + line.number());
    demand(running.isEmpty(), line.page(), "an analyzer runs on after line " + line.number());
  }

  private String contact(String named) {
    if (mode.isEmpty()) {
      return "";
    }
    return named == null
        ? words.contact(mode, delivering())
        : words.isContact(named) ? named : delivering() + ", " + named;
  }

  private void act(Step step, Map<String, String> cells) {
    if (leads.removed(step.text())) {
      quiet(step);
      leads.faults().forEach(fault -> demand(false, step.page(), fault));
      return;
    }
    leads.wired().forEach(fault -> demand(false, step.page(), fault));
    SheetWords.Said said = words.said(step.text());
    if (said == null) {
      demand(false, step.page(), "a sentence that nobody explained: " + step.text());
      return;
    }
    Map<String, String> gaps = new LinkedHashMap<>();
    said.gaps().forEach((gap, text) -> gaps.put(gap, SheetWords.onLine(text, cells)));
    effect(said.effect(), gaps, step, cells);
  }

  // ---- the bench ----

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
    // Whose it is, where there are several instruments, stands after a colon.
    String unit = effect.contains(": ") ? effect.substring(effect.indexOf(": ") + 2) : "";
    switch (effect.replaceFirst(": .*", "")) {
      case "nothing" -> {}
      case "bare" -> {
        leads.takeOff();
        off("", false);
        hand = "";
        state = "";
      }
      case "mode" -> select(gaps, step);
      case "setting" -> adjust(gaps, step);
      case "load" -> dial("Load", gaps.get("load"), step);
      case "other" -> gaps.forEach((name, value) -> dial(name, value, step));
      case "start" -> start(unit, step);
      case "on" -> {
        String key = gaps.getOrDefault("key", unit);
        hand = gaps.getOrDefault("instrument", words.analyzer());
        demand(leads.join(hand + ", " + key, contact), step.page(), "wrong key: " + step.text());
        activate(gaps.get("seconds"), step);
      }
      case "on by hand" -> {
        byHand(gaps, step);
        hand = gaps.containsKey("contact") ? BUTTON : "";
        activate(gaps.get("seconds"), step);
      }
      case "on somehow" -> activate(gaps.get("seconds"), step);
      case "still shown" ->
          demand(partner.look(gaps.get("outlet"), gaps.get("shown")), step.page(), step.text());
      case "on beside" -> {
        boolean touches = leads.touches(gaps.get("lead"), partner.contact());
        demand(on && touches && partner.activate(gaps.get("contact")), step.page(), step.text());
      }
      case "off beside" ->
          demand(partner.release(gaps.get("contact")), step.page(), "not held: " + step.text());
      case "rest" -> rest(gaps.get("seconds"), step);
      case "hold" -> {
        demand(on, step.page(), "nothing to hold: " + step.text());
        held.add(unit);
      }
      case "read" -> {
        boolean holds = held.contains(unit);
        demand(
            holds || words.showsItself() || running.contains(unit),
            step.page(),
            "it does not run: " + step.text());
        read(step, cells, holds, on || holds);
      }
      case "read of what is held" -> read(step, cells, true, wasOn);
      case "off" -> {
        String by = gaps.getOrDefault("contact", contact);
        String button = gaps.get("button");
        boolean right =
            button == null
                ? contact.endsWith(by)
                : contact.endsWith(", " + button) || leads.join(words.onAnalyzer(button), contact);
        demand(right, step.page(), "let go of another contact: " + step.text());
        demand(!partner.isOn(), step.page(), "another outlet stays on: " + step.text());
        off(unit, button != null || gaps.containsKey("contact"));
      }
      case "standby" -> on = false;
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

  private void select(Map<String, String> gaps, Step step) {
    quiet(step);
    partner.unseen();
    if (partner.is(gaps.getOrDefault("outlet", ""))) {
      partner.select(gaps.get("mode"));
      forget();
      return;
    }
    own(gaps, step);
    selected = gaps.get("mode");
    setting = "?";
  }

  private void adjust(Map<String, String> gaps, Step step) {
    quiet(step);
    partner.unseen();
    if (partner.is(gaps.getOrDefault("outlet", ""))) {
      partner.adjust(gaps.get("setting"));
      return;
    }
    demand(!selected.equals("?"), step.page(), "a setting without a mode: " + step.text());
    own(gaps, step);
    setting = gaps.get("setting");
  }

  private void own(Map<String, String> gaps, Step step) {
    String where = gaps.getOrDefault("outlet", delivering());
    demand(where.equals(delivering()), step.page(), "another outlet's: " + step.text());
  }

  /** The outlet that delivers: the one that is measured, or the one that the test drives. */
  private String delivering() {
    SheetWords.Expected expected = words.expected(test, outlet);
    return expected == null || expected.drives().isEmpty() ? outlet : expected.drives();
  }

  private void dial(String name, String value, Step step) {
    quiet(step);
    demand(running.isEmpty(), step.page(), "an analyzer runs: " + step.text());
    dials.put(name, value);
  }

  private void start(String unit, Step step) {
    demand(running.add(unit), step.page(), "it runs already: " + step.text());
    held.remove(unit);
  }

  private void activate(String seconds, Step step) {
    demand(due == 0, step.page(), "it has not rested: " + step.text());
    demand(reads > 0 || !wasOn, step.page(), "it was on, and nothing was read: " + step.text());
    demand(words.isMode(selected), step.page(), "no mode is selected: " + step.text());
    due = words.rest(selected, seconds);
    reads = 0;
    demand(!on, step.page(), "output is on already: " + step.text());
    demand(
        words.showsItself() || !running.isEmpty(), step.page(), "no analyzer runs: " + step.text());
    on = true;
    wasOn = true;
  }

  /** With the button of an accessory that touches the contact, or with one that needs no lead. */
  private void byHand(Map<String, String> gaps, Step step) {
    String button = gaps.get("contact");
    String lead = gaps.get("lead");
    boolean own = button == null || contact.endsWith(", " + button) || contact.equals(button);
    demand(own, step.page(), "another contact than " + contact + ": " + step.text());
    demand(lead == null || leads.touches(lead, contact), step.page(), "not there: " + step.text());
  }

  private void rest(String seconds, Step step) {
    quiet(step);
    demand(Double.parseDouble(seconds) >= due, step.page(), "too short a rest: " + step.text());
    due = 0;
  }

  private void read(Step step, Map<String, String> cells, boolean holds, boolean delivered) {
    SheetWords.Expected expected = words.expected(test, outlet);
    if (expected == null) {
      demand(false, step.page(), "a test that nobody explained: " + test);
      return;
    }
    String at = "line " + cells.getOrDefault("No.", "?") + ": ";
    read = true;
    reads++;
    demand(holds || !on || reads == 1, step.page(), at + "read more than once while it is on");
    demand(delivered == expected.on(), step.page(), at + "output is " + (on ? "on" : "off"));
    demand(partner.isAsWanted(), step.page(), at + "the other outlet does not deliver");
    demand(expected.on() || !on, step.page(), at + "output is on");
    demand(leads.ends().equals(wanted(expected)), step.page(), at + "wired as " + leads);
    demand(state.equals(expected.state()), step.page(), at + "inside '" + state + "'");
    if (!mode.isEmpty()) {
      demand(selected.equals(mode), step.page(), at + "the mode is " + selected);
      demand(setting.equals(cells.get("Setting")), step.page(), at + "the setting is " + setting);
    }
    cells.forEach((column, value) -> compareDial(column, value, step, at));
    words.rests().forEach((dial, rest) -> atRest(dial, rest, cells, step, at));
  }

  private void compareDial(String column, String value, Step step, String at) {
    // Nothing is connected where nothing is set: so an outlet can be left open.
    boolean open = value.equals("open") && words.isOpen(leads);
    boolean dial = (column.equals("Load") && !open) || dials.containsKey(column);
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

  private Map<String, String> wanted(SheetWords.Expected expected) {
    Map<String, String> all = new LinkedHashMap<>();
    words
        .wiring(expected.wiring(), outlet)
        .forEach(
            (lead, ends) ->
                all.put(lead, String.join(" | ", new TreeSet<>(List.of(ends.split(" \\| "))))));
    return all;
  }

  /** Output, if its key or button is let go of, and an instrument; without a name all of them. */
  private void off(String unit, boolean named) {
    boolean key = unit.isEmpty() && !hand.equals(BUTTON);
    hand = named || key || hand.equals(unit) ? "" : hand;
    on &= !hand.isEmpty();
    if (unit.isEmpty() && !named) {
      running.clear();
    } else {
      running.remove(unit);
    }
  }

  private void leave(Step step) {
    quiet(step);
    demand(!state.isEmpty(), step.page(), "no state to leave: " + step.text());
    state = "";
    forget();
    dials.clear();
  }
}
