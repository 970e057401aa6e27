package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.Cell;
import passband.judge.ReadingColumn;
import passband.words.Language;

/**
 * The empty table of readings for a sheet that was filled in on paper: a line for each item in the
 * order of the sheet, with everything but the reading. Derived values have none; they are
 * calculated. A line that stays empty is not done, or does not apply.
 */
public final class ReadingsTemplate {
  private static final List<ReadingColumn> COLUMNS =
      List.of(
          ReadingColumn.PLACE,
          ReadingColumn.TITLE,
          ReadingColumn.SETTING,
          ReadingColumn.FURTHER_SETTINGS,
          ReadingColumn.LOAD,
          ReadingColumn.LIMITS,
          ReadingColumn.WRITE,
          ReadingColumn.READING,
          ReadingColumn.UNIT,
          ReadingColumn.ATTEMPT,
          ReadingColumn.KIND,
          ReadingColumn.REASON,
          ReadingColumn.BY,
          ReadingColumn.PHASE,
          ReadingColumn.POINT,
          ReadingColumn.DIGEST,
          ReadingColumn.REMARK);

  private ReadingsTemplate() {}

  /** The whole file. */
  public static String of(ItemList list) {
    Language language = Language.orEnglish(list.source().language());
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      csv.writeRecord(COLUMNS.stream().map(ReadingColumn::word).toList());
      for (Item item : list.items()) {
        Optional<Asked> asked = item.accept(new AskedFor(language));
        asked.ifPresent(one -> csv.writeRecord(line(item, one, list.source().digest(), language)));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private static List<String> line(Item item, Asked asked, String digest, Language language) {
    List<String> cells = new ArrayList<>();
    COLUMNS.forEach(column -> cells.add(Cell.written(cell(column, item, asked, digest, language))));
    return cells;
  }

  private static String cell(
      ReadingColumn column, Item item, Asked asked, String digest, Language language) {
    Item.Head head = item.head();
    return switch (column) {
      case PLACE -> head.place();
      case TITLE -> head.title();
      case WRITE -> asked.write;
      case UNIT -> asked.unit;
      case ATTEMPT -> "1";
      case KIND -> asked.kind;
      case PHASE -> head.phase() == null ? "" : head.phase();
      case POINT -> head.id();
      case DIGEST -> digest;
      default -> column.text(item, language);
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
    private final Language language;

    AskedFor(Language language) {
      this.language = language;
    }

    @Override
    public Optional<Asked> reading(Item.Reading reading) {
      int decimals = reading.scale().decimals();
      String write =
          decimals == 0
              ? language.of("write.whole")
              : decimals == 1 ? language.of("write.one") : language.of("write.decimals", decimals);
      String unit = reading.scale().unit();
      return Optional.of(new Asked("reading", write, shown(unit)));
    }

    @Override
    public Optional<Asked> derived(Item.Derived derived) {
      return Optional.empty();
    }

    @Override
    public Optional<Asked> recorded(Item.Recorded recorded) {
      String write =
          language.of(
              switch (Blank.of(recorded)) {
                case NUMBER -> "write.number";
                case DATE, DUE -> "write.date";
                case NAME, TEXT -> "write.text";
              });
      return Optional.of(new Asked("record", write, shown(recorded.unit())));
    }

    private static String shown(@Nullable String unit) {
      return unit == null || unit.equals("1") ? "" : unit;
    }

    @Override
    public Optional<Asked> choice(Item.Choice choice) {
      return Optional.of(
          new Asked(
              "choice", language.of("write.one-of", String.join(" | ", choice.options())), ""));
    }

    @Override
    public Optional<Asked> tick(Item.Tick tick) {
      return Optional.of(new Asked("tick", language.of("write.yes"), ""));
    }
  }
}
