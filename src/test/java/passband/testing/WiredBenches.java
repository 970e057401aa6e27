package passband.testing;

import java.util.Random;
import passband.plan.Plan;

/**
 * Benches with long and short names, many leads that cross or not, links at both sides, one
 * instrument or two.
 */
public final class WiredBenches {
  private WiredBenches() {}

  private static String words(Random random, int most) {
    String[] some = {
      "left",
      "pin",
      "return",
      "electrode",
      "contact",
      "switch",
      "yellow-ringed",
      "A",
      "W",
      "accessory",
      "interconnection",
      "\u00b5\u03a9",
      "no.",
      "centre",
      "WWWWWWWWWWWWWWWWWWWWW"
    };
    StringBuilder text = new StringBuilder();
    int count = 1 + random.nextInt(most);
    for (int i = 0; i < count; i++) {
      text.append(i == 0 ? "" : " ").append(some[random.nextInt(some.length)]);
    }
    return text.append(' ').append(random.nextInt(900)).toString();
  }

  /** The procedure of such a bench. */
  public static Plan plan(Random random) {
    boolean two = random.nextInt(3) == 0;
    int contacts = 1 + random.nextInt(5);
    StringBuilder device = new StringBuilder();
    StringBuilder analyzer = new StringBuilder();
    StringBuilder leads = new StringBuilder();
    StringBuilder wires = new StringBuilder();
    for (int i = 0; i < contacts; i++) {
      device.append("    contact c" + i + " \"" + words(random, 3) + " c" + i + "\"\n");
      analyzer.append("  key k" + i + " \"" + words(random, 3) + " k" + i + "\"\n");
      leads.append("  lead l" + i + " \"" + words(random, 4) + " l" + i + "\", rated 5 kV\n");
      wires.append("    connect l" + i + " from outlet.c" + i + " to analyzer.k");
      wires.append((i * 3 + 1) % contacts == i ? i : contacts - 1 - i).append('\n');
    }
    String text =
        """
        device gen "%s" {
          outlet bip "%s" {
            pole left  "%s l"
            pole right "%s r"
        %s  }
          outlet back "%s" {
            pole a "%s a"
            pole b "%s b"
          }
          mode thin "Thin" on bip through back {
            setting power 1 W to 40 W step 1 W
            load 100 ohm
            activate by c0
          }
          action select "Press {mode}."
          action adjust "Turn to {setting}."
        }
        analyzer meter "%s" {
          jack high "%s h"
          jack low  "%s l"
          jack ref  "%s r"
        %s  settle 3 s
          load from high to low {
            values 100 ohm
            power 400 W continuous
          }
          measure current {
            range 1 mA to 2 A
            resolution 1 mA
          }
          action set-load "Set {load}."
          action start "Start."
          action read "Read."
          action stop "Stop."
        }
        analyzer second "%s" {
          jack a "%s second a"
          jack b "%s second b"
          settle 3 s
          load from a to b {
            values 100 ohm
            power 400 W continuous
          }
          measure frequency from a to b {
            range 1 Hz to 2 MHz
            resolution 1 Hz
          }
          action set-load "Set {load}."
          action start "Start."
          action read "Read."
          action stop "Stop."
        }
        leads set "Set" {
          lead one "%s one", rated 5 kV, colour red
          lead two "%s two", rated 5 kV, colour white
          link bar "%s bar", rated 5 kV, colour green
          link jumper "%s jumper", rated 5 kV
          lead three "%s three", rated 5 kV
          lead four "%s four", rated 5 kV
        %s}
        procedure p "P" {
          revision "A" on 2026-01-31
          device gen
        %s
          leads set
          caution burn "Burns."
          setup s "S" {
            connect one from outlet.left to analyzer.high
            connect two from device.back.a to analyzer.low
            link bar from device.back.a to device.back.b
            link jumper from analyzer.low to analyzer.ref
        %s  }
          test t "T" {
            outlet bip
            setup s
            %s
            accept current from 100 mA to 900 mA
            table {
              mode | setting/W | load/ohm
              thin | 20 | 100
            }
          }
        }
        """
            .formatted(
                words(random, 4),
                words(random, 2),
                words(random, 3),
                words(random, 3),
                device,
                words(random, 2),
                words(random, 3),
                words(random, 3),
                words(random, 4),
                words(random, 2),
                words(random, 2),
                words(random, 2),
                analyzer,
                words(random, 3),
                words(random, 2),
                words(random, 2),
                words(random, 4),
                words(random, 4),
                words(random, 4),
                words(random, 4),
                words(random, 3),
                words(random, 3),
                leads,
                two ? "  analyzer rf meter\n  analyzer box second" : "  analyzer meter",
                wires + (two ? others(random) : ""),
                two ? "with rf" : "");
    Snippet snippet = Snippet.compile(two ? text.replace(" analyzer.", " rf.") : text);
    return snippet.plans().get(0);
  }

  /** Leads to the second instrument, which cross others or not. */
  private static String others(Random random) {
    String[] ends = {"outlet.left", "outlet.right", "device.back.a", "device.back.b"};
    int first = random.nextInt(4);
    String second = ends[(first + 1 + random.nextInt(3)) % 4];
    return "    connect three from "
        + ends[first]
        + " to box.a\n"
        + "    connect four from "
        + second
        + " to box.b\n";
  }
}
