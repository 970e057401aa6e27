package passband.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.bench.Moment;
import passband.bench.Walk;
import passband.diagnostic.Diagnostics;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.plan.Slot;
import passband.testing.GeneratedProcedures;
import passband.testing.Sheets;
import passband.testing.Snippet;

/**
 * What a printed step presses, holds, starts or switches on, a later one lets go of, stops or
 * switches off, before leads are moved and before the sheet ends: on the compiler's own bench and
 * for whoever reads the pages, whatever instruments there are and whatever their profiles say.
 */
class LetGoLawTest {
  private static final Set<String> QUIET =
      Set.of("connect", "remove", "enter", "leave", "select", "adjust", "rest", "gate");

  private static final String SOURCE =
      """
      device oak "Oak" {
        outlet only "Only" {
          pole    left  "left pin"
          pole    right "right pin"
          contact wired "wired contact"
          contact bare  "TRY button" by hand
        }
        outlet foot "Foot socket" {
          contact pedal  "pedal"
          contact second "second pedal"
        }
        mode hum "Hum" on only {
          setting power 10 W to 20 W step 10 W
          load    100 ohm
          peak-voltage at most 200 V
          duty    10 s on, 10 s off
          ACTIVATE
        }
        measure power {
          range      0.5 W to 100 W
          resolution 0.1 W
          error      1 %
        }
        action select  "Press {mode}."
        action adjust  "Turn to {setting}."
        action standby "Touch STANDBY." as stop
      }
      analyzer elm "Elm" {
        jack high "HIGH" floating
        jack low  "LOW"
        key  k    "KEY"
        settle 3 s
        load from high to low {
          values 100 ohm
          error  0.5 %
          power  100 W continuous
        }
        measure current {
          range      10 mA to 2 A
          resolution 0.1 mA
          error      0.1 %
        }
        METER
      }
      analyzer box "Box" {
        key go "GO"
        BOX
      }
      leads oak-leads {
        lead red   "red lead",   rated 2 kV
        lead black "black lead", rated 2 kV
        lead grey  "grey lead",  rated 2 kV
        accessory step "footswitch"
      }
      procedure oak-output "Oak" {
        revision "A" on 2026-11-02
        device   oak
        analyzer rf elm
        analyzer keys box
        leads    oak-leads
        caution burn      "High-frequency output burns."
        caution authority "The maker's service manual comes first."
        setup all "All" {
          connect red   from outlet.left  to rf.high
          connect black from outlet.right to rf.low
          connect grey  from outlet.wired to WIRED
          connect step  at device.foot.pedal, device.foot.second
        }
        test hum-output "Hum" {
          outlet only
          setup  all
          accept power within 20 % of setting, READ
          table {
            mode | setting/W | load/ohm COLUMN
            hum  | 10, 20    | 100      CELL
          }
          BLOCK
        }
      }
      """;

  /** What the sentences mean, in the form of {@code tussock-4-output.tsv}. */
  private static final String SENTENCES =
      """
      do	The output is off, and no lead is connected to the generator or the analyzer.	bare
      do	Press {mode}.	mode
      do	Turn to {setting}.	setting
      do	Elm: Set the load to {load}.	load
      do	Elm: Start the measurement.	start: Elm
      do	Elm: Press RUN.	start: Elm
      do	Box: Press ARM and keep it pressed.	start: Box
      do	{seconds} s on: Activate the output with the key “{key}” of the {instrument}.	on
      do	{seconds} s on: Hold down {key}.	on
      do	{seconds} s on: Activate the output by hand with the “{contact}”.	on by hand
      do	{seconds} s on: Activate the output with the “{contact}” of the {lead}.	on by hand
      do	{seconds} s on: Activate the output.	on somehow
      do	Elm: Press KEEP.	hold: Elm
      do	Elm: Write it down.	read: Elm
      do	Elm: Read and write down the current.	read: Elm
      do	Read and write down the power that the generator itself shows.	read: Elm
      do	Touch STANDBY.	standby
      do	Stop the output.	standby
      do	Elm: Press END.	off: Elm
      do	Elm: Stop the output and the measurement.	off: Elm
      do	Box: Press OFF.	off: Box
      do	Box: Stop the output and the measurement.	off: Box
      do	Elm: Let go of “{contact}” of the {lead} and press END.	off: Elm
      do	Elm: Let go of “{button}” and press END.	off: Elm
      do	Let go of the “{contact}” of the {lead}. Elm: Press END.	off: Elm
      do	Let go of the “{contact}” of the {lead}. Elm: Stop the output and the measurement.	off: Elm
      do	Let go of the “{contact}” of the {lead}. Box: Stop the output and the measurement.	off: Box
      do	Let go of the “{contact}” of the {lead}.	off
      do	Let go of the “{button}”. Elm: Press END.	off: Elm
      do	Let go of the “{button}”. Elm: Stop the output and the measurement.	off: Elm
      do	Let go of the “{button}”. Box: Stop the output and the measurement.	off: Box
      do	Let go of the “{button}”.	off
      do	{seconds} s: leave the output off.	rest
      """;

  private static final String WIRING =
      "wiring\tAll\tred lead = {outlet}, left pin | Elm, HIGH; black lead = {outlet}, right pin |"
          + " Elm, LOW; grey lead = {outlet}, wired contact | %s, %s; footswitch = Foot socket, pedal |"
          + " Foot socket, second pedal";

  private static final int PAGES = 80;

  private static final String READ = "action read \"Write it down.\"\n";
  private static final String START = "action start \"Press RUN.\"\n";
  private static final String ARM = "action start \"Press ARM and keep it pressed.\"\n";
  private static final String HOLD = "action hold \"Press KEEP.\"\n";
  private static final String STOP = "action stop \"Press END.\"\n";
  private static final String NAMING = "action stop \"Let go of {held} and press END.\"\n";
  private static final String OFF = "action stop \"Press OFF.\"\n";
  private static final String KEY = "action activate \"Hold down {key}.\"\n";

  private static final List<String> CONTACTS = List.of("wired", "bare", "foot.pedal", "");
  private static final List<String> METERS =
      List.of("", START + READ + STOP, START + READ + HOLD + NAMING);
  private static final List<String> BOXES = List.of("", ARM, ARM + OFF, KEY, OFF);
  private static final List<String> STOPS =
      List.of("", "perform device.standby", "perform rf.stop", "perform keys.stop");

  /** One bench and procedure. */
  private record Variant(String source, String said) {}

  private static List<Variant> variants() {
    List<Variant> all = new ArrayList<>();
    for (String contact : CONTACTS) {
      for (String wired : List.of("keys.go", "rf.k")) {
        for (String meter : METERS) {
          for (String box : BOXES) {
            for (String read : List.of("read as current by rf", "read by device")) {
              STOPS.forEach(stop -> all.add(variant(contact, wired, meter, box, read, stop)));
            }
          }
        }
      }
    }
    return all;
  }

  private static Variant variant(String... of) {
    String by = "activate by wired, bare, foot.pedal";
    boolean unknown = of[0].isEmpty();
    String source =
        SOURCE
            .replace("ACTIVATE", unknown ? "activate unknown because \"Nobody knows.\"" : by)
            .replace("COLUMN", unknown ? "" : "| activation")
            .replace("CELL", unknown ? "" : "| " + of[0])
            .replace("WIRED", of[1])
            .replace("METER", of[2])
            .replace("BOX", of[3])
            .replace("READ", of[4])
            .replace("BLOCK", of[5].isEmpty() ? "" : "each replacing stop {\n" + of[5] + "\n}");
    return new Variant(source, String.join("; ", of));
  }

  /** The plan; null for a source that is refused, such as one whose stop stops no output. */
  private static Plan plan(Variant variant) {
    Snippet snippet = Snippet.compile(variant.source());
    boolean refused = snippet.diagnostics().stream().anyMatch(d -> !d.code().allowable());
    return refused || snippet.plans().size() != 1 ? null : snippet.plans().get(0);
  }

  private static boolean isQuiet(Moment moment) {
    return moment.before().held() == null
        && moment.before().running() == null
        && (moment.kind().equals("ready") || moment.before().isOff());
  }

  /** The first moment at which something is held, runs or is on that should not be. */
  private static List<String> left(Plan plan) {
    List<Moment> moments = Walk.of(plan, new Diagnostics());
    List<String> left = new ArrayList<>();
    boolean known = false;
    for (Moment moment : moments) {
      if (known && QUIET.contains(moment.kind()) && !isQuiet(moment)) {
        left.add(moment.toString());
      }
      known |= moment.kind().equals("ready");
    }
    return left;
  }

  @Test
  void nothingIsLeftOnAnyBench() {
    List<String> wrong = new ArrayList<>();
    int compiled = 0;
    for (Variant variant : variants()) {
      Plan plan = plan(variant);
      if (plan != null) {
        left(plan).forEach(one -> wrong.add(variant.said() + "\n" + one));
        compiled++;
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(compiled > 400, compiled + " compiled");
  }

  @Test
  void nothingIsLeftInTheLibraryOrInGeneratedProcedures() {
    Stream<Plan> generated = LongStream.range(0, 300).mapToObj(GeneratedProcedures::plan);
    List<Plan> plans = Stream.concat(Sheets.demo().stream(), generated).toList();
    List<String> wrong = new ArrayList<>();
    plans.forEach(plan -> wrong.addAll(left(plan)));
    assertEquals(List.of(), wrong);
  }

  /** The compiler's own bench shows it where a step that stops is taken out. */
  @Test
  void aStopTakenOutIsSeen() {
    List<String> missed = new ArrayList<>();
    int taken = 0;
    for (Variant variant : variants()) {
      Plan plan = plan(variant);
      for (PlanMutations.Mutation one : taken(plan)) {
        if (left(one.plan().get()).isEmpty()) {
          missed.add(variant.said() + "\n" + one.what());
        }
        taken++;
      }
    }
    assertEquals(List.of(), missed);
    assertTrue(taken > 800, taken + " taken out");
  }

  /** Where a text names what is let go of, it says so once more than is needed. */
  private static List<PlanMutations.Mutation> taken(Plan plan) {
    boolean twice =
        plan == null
            || plan.points().stream()
                .flatMap(point -> point.steps().stream())
                .anyMatch(step -> step.words() != null && step.words().has(Slot.HELD));
    return twice ? List.of() : PlanMutations.ofStops(plan);
  }

  /** Whoever reads the pages finds nothing left, and misses a step that is taken out. */
  @Test
  void thePagesSayIt() {
    List<Variant> variants = new ArrayList<>(variants());
    Collections.shuffle(variants, new Random(20261128));
    List<String> wrong = new ArrayList<>();
    int read = 0;
    for (Variant variant : variants) {
      Plan plan = read == PAGES ? null : plan(variant);
      if (plan != null) {
        SheetWords words = SheetWords.of(words(variant));
        objections(plan, words).forEach(one -> wrong.add(variant.said() + "\n" + one));
        for (PlanMutations.Mutation one : taken(plan)) {
          if (objections(one.plan().get(), words).isEmpty()) {
            wrong.add(variant.said() + "\nnot missed: " + one.what());
          }
        }
        read++;
      }
    }
    assertEquals(List.of(), wrong);
    assertEquals(PAGES, read);
  }

  private static List<String> objections(Plan plan, SheetWords words) {
    return SecondBench.work(PrintedSheet.marks(ChecklistPdf.of(plan, Paper.A4)), words)
        .objections();
  }

  private static List<String> words(Variant variant) {
    List<String> words = new ArrayList<>(SENTENCES.lines().toList());
    String keys = variant.source().contains("to rf.k") ? "Elm" : "Box";
    String key = variant.source().contains("to rf.k") ? "KEY" : "GO";
    String contact =
        variant.said().startsWith("wired")
            ? "Only, wired contact"
            : variant.said().startsWith("bare") ? "Only, TRY button" : "Foot socket, pedal";
    words.add("analyzer\t" + keys);
    words.add("contact\tFoot socket, pedal");
    if (variant.said().contains("read by device")) {
      words.add("itself");
    }
    words.add("instrument\tElm");
    words.add("instrument\tBox");
    words.add("test\tHum\tAll\ton");
    words.add("key\tHum\t" + contact);
    words.add(WIRING.formatted(keys, key));
    return words;
  }
}
