package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Optional;
import passband.evidence.Blank;
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
        Optional<Asked> asked = item.accept(new AskedFor());
        asked.ifPresent(one -> csv.writeRecord(line(item.head(), one, list.source().digest())));
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

  /** Nothing for a derived value, which nobody writes. */
  private static final class AskedFor implements Item.Visitor<Optional<Asked>> {
    @Override
    public Optional<Asked> reading(Item.Reading reading) {
      int decimals = reading.scale().decimals();
      String write =
          decimals == 0
              ? "number, no decimals"
              : "number, " + decimals + (decimals == 1 ? " decimal" : " decimals");
      String unit = reading.scale().unit();
      return Optional.of(new Asked("reading", write, unit.equals("1") ? "" : unit));
    }

    @Override
    public Optional<Asked> derived(Item.Derived derived) {
      return Optional.empty();
    }

    @Override
    public Optional<Asked> recorded(Item.Recorded recorded) {
      String write =
          switch (Blank.of(recorded)) {
            case NUMBER -> "number";
            case DATE, DUE -> "date, YYYY-MM-DD";
            case NAME, TEXT -> "text";
          };
      String unit = recorded.unit() == null ? "" : recorded.unit();
      return Optional.of(new Asked("record", write, unit));
    }

    @Override
    public Optional<Asked> choice(Item.Choice choice) {
      return Optional.of(
          new Asked("choice", "one of: " + String.join(" | ", choice.options()), ""));
    }

    @Override
    public Optional<Asked> tick(Item.Tick tick) {
      return Optional.of(new Asked("tick", "yes", ""));
    }
  }
}
