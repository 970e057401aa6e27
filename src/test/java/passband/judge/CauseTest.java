package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.quantity.Table;
import passband.render.JudgeReport;
import passband.render.Schemas;
import passband.testing.Records;
import passband.testing.Sheets;

/** What a program can learn from a cause: its code, its numbers, and the cell that it is of. */
class CauseTest {
  private static final ItemList LIST = Evidence.of(Sheets.YARROW).list();

  private static final int EACH = 2;

  /** Ways of writing that are wrong for one kind of item or another. */
  private static final List<String[]> SLIPS =
      List.of(
          new String[] {"0.0001,%s,,1,reading"},
          new String[] {"99999.999,%s,,1,reading"},
          new String[] {"99999.999,%s,,1,"},
          new String[] {"'1,5',%s,,1,reading".replace("'", "\"")},
          new String[] {"none,%s,,1,"},
          new String[] {"1,%s,,1,"},
          new String[] {"-99999.999,%s,,1,"},
          new String[] {"99999.999,,,1,"},
          new String[] {"99999.999,furlong,,1,"},
          new String[] {"99999.999,%s,,x,"},
          new String[] {"99999.999,%s,,1,", "99999.999,%s,,1,"},
          new String[] {"99999.999,%s,,,", "99999.999,%s,,,"},
          new String[] {"99999.999,%s,,1,", "99999.999,%s,,3,"},
          new String[] {"99999.999,%s,,1,", "0.0001,%s,,2,"},
          new String[] {"99999.999,%s,,1,", ",,,2,not-done"},
          new String[] {"1,%s,,1,tick"},
          new String[] {"1,%s,,1,choice"},
          new String[] {""});

  private static final List<Report> REPORTS = slips();

  private static List<Report> slips() {
    List<Report> reports = new ArrayList<>();
    Map<String, Integer> seen = new HashMap<>();
    for (Item item : LIST.items()) {
      if (seen.merge(sort(item), 1, Integer::sum) <= EACH) {
        for (String[] slip : SLIPS) {
          reports.add(judged(Records.of(LIST, false).with(item.id(), of(item, slip))));
        }
      }
    }
    return reports;
  }

  private static String sort(Item item) {
    return item.getClass().getSimpleName()
        + (item instanceof Item.Measured m ? m.scale().decimals() + " " + m.limits() : "")
            .replaceAll("=[^,]*", "")
        + item.head().applies().isEmpty();
  }

  private static String[] of(Item item, String[] slip) {
    String unit = item instanceof Item.Measured m ? m.scale().unit() : "";
    String[] rows = slip.clone();
    for (int i = 0; i < rows.length; i++) {
      rows[i] = rows[i].replace("%s", unit);
    }
    return rows;
  }

  private static Report judged(Records records) {
    try {
      return Judge.judge(LIST, records.readings(), null);
    } catch (BadInput e) {
      throw new AssertionError(e);
    }
  }

  private static String cell(Readings.Row row, String column) {
    return switch (column) {
      case "reading" -> row.reading();
      case "unit" -> row.unit();
      case "attempt" -> row.attempt();
      case "kind" -> row.kind();
      default -> throw new AssertionError(column);
    };
  }

  /** What is found by the word of a code is that code; no other word has one. */
  @Test
  void aCodeIsFoundByItsWordAndItsPageSaysAllOfIt() {
    for (Cause.Code code : Cause.Code.values()) {
      assertEquals(code, Cause.Code.find(code.word()));
      assertEquals(null, Cause.Code.find(code.word() + "-"));
      CauseManual.Entry entry = CauseManual.entry(code);
      String page = CauseManual.page(code);
      for (String part : List.of(code.word(), code.pattern(), entry.effect(), entry.meaning())) {
        assertTrue(!part.isBlank() && page.contains(part), page);
      }
    }
  }

  /** What stands in brackets is said only where there is something to say. */
  @Test
  void aSentenceLeavesOutWhatThereIsNot() {
    Cause few = Cause.of(Cause.Code.TOO_FEW_DECIMALS, "a/b").number(BigDecimal.ONE, null);
    assertEquals("recorded with too few decimals: 1 needed", few.text());
    assertEquals("recorded with too few decimals: 1 needed in V", few.note("V").text());
    assertEquals("current: " + few.text(), few.ofPart("a/c", "current").text());
  }

  /** Of rows that should not be there, the one with a value is shown. */
  @Test
  void whatDoesNotApplyIsShownByItsValue() {
    int looked = 0;
    for (Item item : LIST.items()) {
      if (item instanceof Item.Reading && !item.head().applies().isEmpty()) {
        Records records =
            Records.of(LIST, false).with(item.id(), ",,,1,not-done", "7,V,,2,reading");
        Cause cause =
            judged(records).judgements().stream()
                .filter(judgement -> judgement.item().id().equals(item.id()))
                .findFirst()
                .orElseThrow()
                .causes()
                .get(0);
        assertEquals(Cause.Code.DOES_NOT_APPLY, cause.code());
        assertEquals("7", cause.written());
        looked++;
      }
    }
    assertTrue(looked > 0);
  }

  @Test
  void theCellOfACauseHoldsWhatWasWritten() {
    Set<Cause.Code> seen = EnumSet.noneOf(Cause.Code.class);
    for (Report report : REPORTS) {
      for (Judgement judgement : report.judgements()) {
        assertEquals(
            judgement.verdict() == Verdict.FAIL || judgement.verdict() == Verdict.UNCLEAR,
            judgement.causes().stream().anyMatch(c -> c.code() != Cause.Code.EARLIER_ATTEMPT),
            judgement.toString());
        for (Cause cause : judgement.causes()) {
          seen.add(cause.code());
          assertEquals(judgement.item().id(), cause.item());
          Cause.Place place = cause.place();
          if (place != null) {
            Readings.Row row =
                report.readings().rows().stream()
                    .filter(r -> r.line() == place.line())
                    .findFirst()
                    .orElseThrow();
            assertEquals(cell(row, place.column()), cause.written(), cause.toString());
            if (cause.part() == null) {
              assertEquals(cause.item(), row.point());
            }
          }
        }
      }
    }
    assertTrue(
        seen.containsAll(EnumSet.range(Cause.Code.EARLIER_ATTEMPT, Cause.Code.DONE_AND_NOT_DONE)),
        seen.toString());
    assertTrue(
        seen.containsAll(
            EnumSet.of(
                Cause.Code.BELOW_LIMIT,
                Cause.Code.ABOVE_LIMIT,
                Cause.Code.DECIMAL_COMMA,
                Cause.Code.NOT_A_NUMBER,
                Cause.Code.NO_UNIT,
                Cause.Code.OTHER_UNIT,
                Cause.Code.TOO_FEW_DECIMALS,
                Cause.Code.NEGATIVE,
                Cause.Code.OTHER_THAN_CALCULATED)),
        seen.toString());
  }

  /** The limits by themselves are the numbers of the limits file. */
  @Test
  void aLimitIsANumberWithItsUnit() {
    int limits = 0;
    for (Report report : REPORTS) {
      for (Judgement judgement : report.judgements()) {
        for (Cause cause : judgement.causes()) {
          if (judgement.item() instanceof Item.Reading reading
              && cause.code() == Cause.Code.ABOVE_LIMIT) {
            assertEquals(reading.limits().acceptUpper(), cause.number());
            assertEquals(reading.scale().unit(), cause.unit());
            assertEquals("above " + cause.number().toPlainString(), cause.text());
            limits++;
          }
        }
      }
    }
    assertTrue(limits >= 4, limits + " limits");
  }

  /** As {@code judge --as json} writes it. */
  @Test
  void inJsonTheSentenceStandsBesideItsParts() {
    Item.Reading first =
        LIST.items().stream()
            .filter(i -> i instanceof Item.Reading r && r.limits() != null)
            .map(i -> (Item.Reading) i)
            .filter(r -> r.limits().acceptUpper() != null)
            .findFirst()
            .orElseThrow();
    BigDecimal limit = first.limits().acceptUpper();
    String high = limit.add(first.scale().resolution().multiply(BigDecimal.TEN)).toPlainString();
    Records records =
        Records.of(LIST, false).with(first.id(), Records.reading(high, first.scale().unit()));
    int line = records.csv().substring(0, records.csv().indexOf(first.id())).split("\n").length + 1;
    JsonObject cause = cause(JudgeReport.json(judged(records)), first.id());
    assertEquals(
        "{\"code\":\"above-limit\",\"text\":\"above %1$s\",\"item\":\"%2$s\",\"part\":null,\"number\":%1$s,"
                .formatted(limit.toPlainString(), first.id())
            + "\"unit\":\"%s\",\"written\":\"%s\",\"note\":null,\"line\":%d,\"column\":\"reading\"}"
                .formatted(first.scale().unit(), high, line),
        cause.toString());
  }

  private static JsonObject cause(String json, String id) {
    for (JsonElement item :
        JsonParser.parseString(json).getAsJsonObject().getAsJsonArray("items")) {
      if (item.getAsJsonObject().get("id").getAsString().equals(id)) {
        return item.getAsJsonObject().getAsJsonArray("causes").get(0).getAsJsonObject();
      }
    }
    throw new AssertionError(id);
  }

  /** What is said of a cause's effect is what it had, wherever it was given. */
  @Test
  void theManualKnowsWhatEachCauseDoes() {
    assertEquals(
        Arrays.stream(Cause.Code.values()).map(Cause.Code::word).toList(),
        Table.read(CauseManual.class, "causes.tsv").stream().map(row -> row[0]).toList());
    for (Report report : REPORTS) {
      for (Judgement judgement : report.judgements()) {
        for (Cause cause : judgement.causes()) {
          String effect = CauseManual.entry(cause.code()).effect();
          assertTrue(
              effect.equals("note") || effect.equals(judgement.verdict().word()),
              judgement.toString());
        }
      }
    }
  }

  /** A program that reads the schema knows every code. */
  @Test
  void theSchemaListsEveryCode() {
    List<String> listed = new ArrayList<>();
    JsonParser.parseString(Schemas.text("verdicts"))
        .getAsJsonObject()
        .getAsJsonObject("$defs")
        .getAsJsonObject("cause")
        .getAsJsonObject("properties")
        .getAsJsonObject("code")
        .getAsJsonArray("enum")
        .forEach(code -> listed.add(code.getAsString()));
    assertEquals(Arrays.stream(Cause.Code.values()).map(Cause.Code::word).toList(), listed);
  }
}
