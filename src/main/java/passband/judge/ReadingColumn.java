package passband.judge;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.ItemWords;
import passband.words.Language;

/**
 * Every column that a table of readings may have. Another one, or one that stands twice, is
 * refused: its name may be misspelt, and what stands in it would be lost.
 */
public enum ReadingColumn {
  POINT(Use.NEEDED, "identity of the item, as in limits.json"),
  READING(Use.NEEDED, "what was read, chosen or noted; 'yes' for a tick; blank: not done"),
  UNIT(Use.NEEDED, "unit of the reading; blank where it is a plain number or a text"),
  PHASE(Use.READ, "phase of the item, where its identity does not name it"),
  ATTEMPT(Use.READ, "1, 2, 3 and so on, the last decides; blank: 1"),
  KIND(Use.READ, "reading, derived, record, choice, tick or not-done; blank: the item's own"),
  DIGEST(Use.READ, "digest of the procedure; without it nothing passes"),
  REASON(Use.READ, "why it was read again, or was not done, for the record"),
  BY(Use.READ, "who read it, where not the one who did the rest, for the record"),
  SETTING(Use.COMPARED, "setting of the point, with its unit"),
  FURTHER_SETTINGS(Use.COMPARED, "further settings of the point, NAME=VALUE, between semicolons"),
  LOAD(Use.COMPARED, "load of the point, with its unit"),
  LIMITS(Use.COMPARED, "what is accepted, with its unit; of a choice the outcome that passes"),
  PROCEDURE(Use.SOURCE, "name of the procedure; blank: the digest tells"),
  REVISION(Use.SOURCE, "its revision, letter by letter; blank: the digest tells"),
  REMARK(Use.READ, "anything, for the record"),
  PLACE(Use.IGNORED, "heading under which the item stands on the sheet"),
  TITLE(Use.IGNORED, "what the sheet prints"),
  WRITE(Use.IGNORED, "what may be written");

  /** What is done with a column. */
  public enum Use {
    /** There is no table without it. */
    NEEDED("needed"),
    /** Read where it is there. */
    READ("read"),
    /** Where it is not blank, it has to be what the limits file has, else the row is refused. */
    COMPARED("compared with the limits file"),
    /** The same, but of the procedure. */
    SOURCE("compared with the limits file"),
    /** For people. */
    IGNORED("for people, ignored");

    private final String word;

    Use(String word) {
      this.word = word;
    }

    /** In words. */
    public String word() {
      return word;
    }
  }

  private final Use use;
  private final String purpose;

  ReadingColumn(Use use, String purpose) {
    this.use = use;
    this.purpose = purpose;
  }

  public Use use() {
    return use;
  }

  /** Whether what it holds has to be what the limits file has. */
  boolean isCompared() {
    return use == Use.COMPARED || use == Use.SOURCE;
  }

  /** What it holds, in words. */
  public String purpose() {
    return purpose;
  }

  /** Its heading, such as {@code further_settings}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The one with this heading, letter by letter; null where there is none. */
  static @Nullable ReadingColumn find(String heading) {
    return Arrays.stream(values()).filter(c -> c.word().equals(heading)).findFirst().orElse(null);
  }

  /** Those of a use, in order. */
  public static List<ReadingColumn> of(Use use) {
    return Arrays.stream(values()).filter(c -> c.use == use).toList();
  }

  /** All headings, for a message. */
  static String words() {
    return Arrays.stream(values()).map(ReadingColumn::word).collect(Collectors.joining(", "));
  }

  /** What a column that is compared holds of the procedure. */
  String text(ItemList.Source source) {
    return this == PROCEDURE ? source.procedure() : source.revision();
  }

  /**
   * What a column that is compared holds of an item in the words of any language, in the order in
   * which they are written: that of the sheet, and English, in which older tables are.
   */
  public List<String> texts(Item item, Language language) {
    String english = text(item, Language.ENGLISH);
    String own = text(item, language);
    return own.equals(english) ? List.of(own) : List.of(own, english);
  }

  /** What a column that is compared holds of an item; empty where the item has no such thing. */
  public String text(Item item, Language language) {
    if (item instanceof Item.Choice choice) {
      return this == LIMITS && choice.pass() != null ? choice.pass() : "";
    } else if (item instanceof Item.Recorded recorded) {
      return this == LIMITS ? ItemWords.accepted(recorded, language) : "";
    } else if (item instanceof Item.Measured measured) {
      return switch (this) {
        case SETTING -> language.number(ItemWords.setting(measured));
        case FURTHER_SETTINGS -> language.number(ItemWords.furtherSettings(measured));
        case LOAD -> language.number(ItemWords.load(measured));
        case LIMITS -> ItemWords.accepted(measured, language);
        default -> "";
      };
    }
    return "";
  }
}
