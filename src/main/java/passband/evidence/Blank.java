package passband.evidence;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a blank asks for, by its unit and the words of its name: a name is the last part of an
 * identity, its words stand between hyphens.
 */
public enum Blank {
  /** Any text. */
  TEXT,
  /** A number in a unit. */
  NUMBER,
  /** The day of the readings; only the sheet's own is. */
  DATE,
  /** The day on which an instrument's calibration is due: what has the word 'due'. */
  DUE,
  /** Which one it was, or who: what has the word 'serial', and the sheet's own 'done by'. */
  NAME;

  /**
   * What people write where they have no answer, without anything but letters and digits. From
   * memory, no source.
   */
  private static final Set<String> FILLERS =
      Set.of(
          "na",
          "nil",
          "no",
          "none",
          "nosn",
          "noserial",
          "noserialnumber",
          "notapplicable",
          "notavailable",
          "notknown",
          "notreadable",
          "notrecorded",
          "null",
          "sn",
          "serial",
          "serialnumber",
          "tba",
          "tbc",
          "tbd",
          "todo",
          "ok",
          "unknown",
          "unreadable",
          "illegible",
          "yes",
          "missing");

  /** Control characters, and the ends of lines and paragraphs. */
  private static final Pattern UNSEEN = Pattern.compile("[\\p{Cc}\\p{Zl}\\p{Zp}]");

  /** What a blank asks for. */
  public static Blank of(Item.Recorded blank) {
    String id = blank.id();
    List<String> words = List.of(id.substring(id.lastIndexOf('/') + 1).split("-"));
    if (blank.unit() != null) {
      return NUMBER;
    } else if (id.equals("sheet/date")) {
      return DATE;
    } else if (words.contains("due")) {
      return DUE;
    }
    return words.contains("serial") || id.equals("sheet/done-by") ? NAME : TEXT;
  }

  /** As the script of the sheet has it, such as {@code due}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What people write where they have no answer, in alphabetical order. */
  public static List<String> fillers() {
    return FILLERS.stream().sorted().toList();
  }

  /**
   * Whether a text says nothing of which one it was, or who: no letter and no digit, nothing but
   * the letter x or the digit 0, one of the {@link #fillers}, or with a control character or the
   * end of a line in it, which cannot be read off a plate.
   */
  public static boolean isFiller(String text) {
    String plain = text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    return UNSEEN.matcher(text).find() || plain.matches("x*|0*") || FILLERS.contains(plain);
  }
}
