package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Cell;

/**
 * The empty table of readings for a sheet that was filled in on paper: a line for each item in the
 * order of the sheet, with everything but the reading. Derived values have none; they are
 * calculated. A line that stays empty is not done, or does not apply.
 */
public final class ReadingsTemplate {
  private static final String[] HEADING = {
    "place", "title", "write", "reading", "unit", "attempt", "kind", "phase", "point", "digest"
  };

  private ReadingsTemplate() {}

  /** The whole file. */
  public static String of(ItemList list) {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      csv.writeRecord(HEADING);
      for (Item item : list.items()) {
        Asked asked = item.accept(new AskedFor());
        if (asked != null) {
          csv.writeRecord(line(item.head(), asked, list.source().digest()));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static String[] line(Item.Head head, Asked asked, String digest) {
    String phase = head.phase() == null ? "" : head.phase();
    return new String[] {
      Cell.written(head.place()),
      Cell.written(head.title()),
      Cell.written(asked.write),
      "",
      asked.unit,
      "1",
      asked.kind,
      Cell.written(phase),
      Cell.written(head.id()),
      digest
    };
  }

  /**
   * What a line asks for.
   *
   * @param write what may be written, in words
   * @param unit a UCUM code; empty where there is none
   */
  private record Asked(String kind, String write, String unit) {}

  /** Null for what is not asked for. */
  private static final class AskedFor implements Item.Visitor<@Nullable Asked> {
    @Override
    public Asked reading(Item.Reading reading) {
      int decimals = reading.scale().decimals();
      String write =
          decimals == 0
              ? "number, no decimals"
              : "number, " + decimals + (decimals == 1 ? " decimal" : " decimals");
      String unit = reading.scale().unit();
      return new Asked("reading", write, unit.equals("1") ? "" : unit);
    }

    @Override
    public @Nullable Asked derived(Item.Derived derived) {
      return null;
    }

    @Override
    public Asked recorded(Item.Recorded recorded) {
      return new Asked("record", "text", recorded.unit() == null ? "" : recorded.unit());
    }

    @Override
    public Asked choice(Item.Choice choice) {
      return new Asked("choice", "one of: " + String.join(" | ", choice.options()), "");
    }

    @Override
    public Asked tick(Item.Tick tick) {
      return new Asked("tick", "yes", "");
    }
  }
}
