package passband.testing;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import passband.plan.Plan;

/**
 * Procedures made at random on the manual's bench, the same for the same seed: sections, tests on
 * one and two outlets, several accepted quantities, derived values, sweeps, other settings, a
 * state, phases, an adjustment, and every kind of step wherever a step may stand.
 */
public final class GeneratedProcedures {
  /** Names that other items have as well: quantities, leads, the sheet's own records. */
  private static final List<String> NAMES =
      List.of(
          "current",
          "trip",
          "voltage",
          "date",
          "result",
          "enter",
          "leave",
          "lead-red",
          "adjusted",
          "connect-red",
          "confirm-1",
          "confirm-2",
          "done-by",
          "peak-voltage",
          "crest-factor");

  private static final String SETUPS =
      """
        setup bipolar "Bipolar" {
          connect red   from outlet.left   to analyzer.high
          connect black from outlet.right  to analyzer.low
          connect grey  from outlet.switch to analyzer.key
        }
        setup mono "Mono" {
          connect red   from outlet.active     to analyzer.high
          connect plate from device.back.plate to analyzer.low
          connect grey  from outlet.cut        to analyzer.key
        }
      """;

  private static final Map<Long, Plan> PLANS = new ConcurrentHashMap<>();

  private final Random random;
  private final StringBuilder text = new StringBuilder();
  private final List<String> names = new ArrayList<>(NAMES);
  private final List<String> tests = new ArrayList<>();
  private final Random more;
  private int serial;

  private GeneratedProcedures(long seed) {
    random = new Random(seed);
    more = new Random(~seed);
    Collections.shuffle(names, random);
  }

  /** The procedure of a seed. */
  public static Plan plan(long seed) {
    return PLANS.computeIfAbsent(seed, GeneratedProcedures::compiled);
  }

  private static Plan compiled(long seed) {
    String text = text(seed);
    Snippet snippet = Examples.compile(text.getBytes(StandardCharsets.UTF_8));
    if (snippet.plans().size() != 1) {
      throw new AssertionError("seed " + seed + "\n" + snippet.report() + "\n" + text);
    }
    return snippet.plan();
  }

  /** Its source. */
  public static String text(long seed) {
    return new GeneratedProcedures(seed).made();
  }

  private boolean maybe(int of) {
    return random.nextInt(of) == 0;
  }

  private String one(String... of) {
    return of[random.nextInt(of.length)];
  }

  private String made() {
    text.append("use \"bench.pband\"\nprocedure made \"Made\" {\n");
    text.append("revision \"A\" on 2026-01-31\ndevice gen\nanalyzer meter\nleads set\n");
    text.append("caution burn \"Output burns.\"\n");
    text.append(one("", "decision guarded\n", "decision simple\n", "decision risk 2 %\n"));
    text.append(one("", "order by outlet\n", "order by test\n"));
    boolean adjust = maybe(2);
    text.append(
        adjust
            ? "phases as-found, as-left\n"
            : one("", "phases first, second\n", "phases a, b, c\n"));
    text.append(SETUPS);
    boolean asks = more.nextBoolean();
    if (asks) {
      text.append(
          "section asked \"Asked\" {\nchoose fitted \"The option is\" from \"yes\", \"no\"");
      text.append(", \"unknown\"\nrecord cell \"The cell\" in V at least 2.7 V\n}\n");
    }
    sections("before");
    if (asks && more.nextBoolean()) {
      text.append("section fit \"Fit\" {\n" + when() + "confirm \"It fits.\"\n}\n");
    }
    int count = 1 + random.nextInt(3);
    for (int i = 0; i < count; i++) {
      if (more.nextInt(3) == 0 && (asks || i > 0)) {
        text.append("gate gate" + i + " \"All of it has passed.\"\n");
      }
      test(asks && more.nextInt(3) == 0 ? when() : "");
    }
    if (adjust) {
      adjust("trim \"Trim\"", maybe(2) ? String.join(", ", tests) : tests.get(0));
    }
    if (adjust && maybe(2)) {
      adjust("gain \"Gain\"", tests.get(tests.size() - 1));
    }
    sections("after");
    return text.append("}\n").toString();
  }

  private String when() {
    return "when fitted is " + (more.nextBoolean() ? "\"yes\"" : "\"no\", \"unknown\"") + "\n";
  }

  private void adjust(String named, String affected) {
    text.append("adjust " + named + " affects " + affected + " {\n");
    steps(4);
    text.append("}\n");
  }

  private void sections(String when) {
    int count = random.nextInt(3);
    for (int i = 0; i < count; i++) {
      text.append("section " + when + i + " \"Section " + when + " " + i + "\" {\n");
      steps(5);
      text.append("}\n");
    }
  }

  // ---- tests ----

  private void test(String condition) {
    String name = "t" + tests.size();
    tests.add(name);
    text.append("test " + name + " \"Test " + name + "\" {\n" + condition);
    switch (random.nextInt(5)) {
      case 0 -> sweep();
      case 1 -> hew();
      case 2 -> tack();
      default -> thin();
    }
    for (String when : List.of("before", "each", "after")) {
      if (maybe(2)) {
        text.append(when + " {\n");
        steps(4);
        text.append("}\n");
      }
    }
    text.append("}\n");
  }

  private void sweep() {
    text.append("outlet bip\nsetup bipolar\n");
    text.append(
        "output off\nsweep load up from 10 ohm to 500 ohm step 10 ohm until \"it sounds\" as trip\n");
    text.append("accept trip " + one("from 50 ohm to 300 ohm", "at most 300 ohm") + "\n");
  }

  private void thin() {
    text.append("outlet bip\nsetup bipolar\n");
    inside();
    text.append("accept power from output, read as current\n");
    if (maybe(2)) {
      text.append("accept peak-voltage at most 250 V\n");
    }
    if (maybe(3)) {
      text.append(
          "derive crest-factor \"Crest factor\" = peak-voltage / voltage, resolution 0.1\n");
      text.append("accept crest-factor " + one("at most 2.1", "from 1.1 to 2.9") + "\n");
    }
    table("thin", numbers(40), "100", one("", "ramp"));
  }

  private void hew() {
    text.append("outlet " + one("one", "two", "one, two") + "\nsetup mono\n");
    inside();
    text.append("accept power from output, read as current\n");
    table("hew", numbers(100), "400", one("", "ramp"));
  }

  private void tack() {
    text.append("outlet bip\nsetup bipolar\naccept peak-voltage at most 200 V\n");
    text.append("table {\nmode | setting | load/ohm\ntack | 1, 3, 4.5 | 50\n}\n");
  }

  private void inside() {
    text.append(maybe(4) ? "inside device.service\n" : "");
  }

  private String numbers(int most) {
    TreeSet<Integer> numbers = new TreeSet<>();
    int count = 1 + random.nextInt(3);
    while (numbers.size() < count) {
      numbers.add(2 + random.nextInt(most - 1));
    }
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  private void table(String mode, String settings, String load, String extra) {
    String values = extra.isEmpty() ? "" : "slow, fast | ";
    text.append("table {\nmode | setting/W | " + (extra.isEmpty() ? "" : extra + " | "));
    text.append("load/ohm\n" + mode + " | " + settings + " | " + values + load + "\n}\n");
  }

  // ---- steps ----

  private void steps(int most) {
    int count = 1 + random.nextInt(most);
    for (int i = 0; i < count; i++) {
      int number = serial++;
      String says = " \"Step " + number + ", <b> & “so”\"";
      switch (random.nextInt(8)) {
        case 0 -> text.append("do" + says);
        case 1 -> text.append("wait 3 s" + says);
        case 2 -> text.append("caution care" + number + says);
        case 3 -> text.append("confirm " + name() + says);
        case 4 -> text.append("record " + name() + says + one("", " in V", " in %"));
        case 5 -> text.append("choose " + name() + says + " from \"x\", \"y\" pass \"y\"");
        case 6 -> text.append("choose " + name() + says + " from \"one\", \"two\", \"three\"");
        default -> text.append("confirm" + says);
      }
      text.append('\n');
    }
  }

  private String name() {
    return names.isEmpty() ? "name" + serial : names.remove(names.size() - 1);
  }
}
