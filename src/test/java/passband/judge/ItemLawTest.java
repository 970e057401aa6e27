package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import passband.evidence.BadInput;
import passband.evidence.Blank;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.testing.GeneratedProcedures;
import passband.testing.Records;
import passband.testing.Sheets;

/**
 * Nothing that applies may be missing, wrong or unclear in a record that passes: of the demo
 * library and of generated procedures, each without and with its adjustments.
 */
class ItemLawTest {
  private static final int GENERATED = 200;
  private static final int SOME = 20;

  static Stream<Arguments> lists() {
    return Sheets.demo().stream()
        .map(plan -> Evidence.of(plan).list())
        .flatMap(list -> Stream.of(Arguments.of(list, false), Arguments.of(list, true)));
  }

  private interface Law {
    void holds(ItemList list, boolean adjusted) throws BadInput;
  }

  private static void ofGenerated(int seeds, Law law) throws BadInput {
    for (int seed = 0; seed < seeds; seed++) {
      ItemList list = Evidence.of(GeneratedProcedures.plan(seed)).list();
      boolean adjusts = list.items().stream().anyMatch(i -> !i.head().applies().isEmpty());
      try {
        law.holds(list, false);
        if (adjusts) {
          law.holds(list, true);
        }
      } catch (AssertionError e) {
        throw new AssertionError("seed " + seed + ": " + e.getMessage(), e);
      }
    }
  }

  /** Nothing says that such a record was taken by this sheet. */
  @ParameterizedTest
  @MethodSource("lists")
  void aCompleteGoodRecordWithoutADigestDoesNotPass(ItemList list, boolean adjusted)
      throws BadInput {
    Readings readings = Records.of(list, adjusted).readings();
    assertEquals(Verdict.PASS, Judge.judge(list, readings, null).overall());
    Readings unsigned = new Readings(null, readings.rows());
    assertEquals(Verdict.INCOMPLETE, Judge.judge(list, unsigned, null).overall());
  }

  @Test
  void completeGoodRecordsOfTwoHundredGeneratedPass() throws BadInput {
    ofGenerated(GENERATED, this::aCompleteGoodRecordPasses);
  }

  @Test
  void twoHundredGeneratedDoNotPassWithoutAnyItem() throws BadInput {
    ofGenerated(GENERATED, this::withoutAnyItemItDoesNotPass);
  }

  @Test
  void twentyGeneratedDoNotPassWithAnItemNotDone() throws BadInput {
    ofGenerated(SOME, this::anItemThatSaysNotDoneDoesNotPass);
  }

  @Test
  void twentyGeneratedDoNotPassWithOneWrongItem() throws BadInput {
    ofGenerated(SOME, this::oneWrongItemDoesNotPass);
  }

  @Test
  void twentyGeneratedDoNotPassWithWhatDoesNotApply() throws BadInput {
    ofGenerated(SOME, this::whatDoesNotApplyIsUnclearWhenWritten);
  }

  private static Verdict overall(ItemList list, Records records) throws BadInput {
    return Judge.judge(list, records.readings(), null).overall();
  }

  @ParameterizedTest
  @MethodSource("lists")
  void aCompleteGoodRecordPasses(ItemList list, boolean adjusted) throws BadInput {
    Report report = Judge.judge(list, Records.of(list, adjusted).readings(), null);
    report
        .judgements()
        .forEach(
            j ->
                assertTrue(
                    j.verdict() == Verdict.PASS || j.verdict() == Verdict.NOT_APPLICABLE,
                    j.toString()));
    assertEquals(Verdict.PASS, report.overall());
    assertEquals(
        List.of(Cause.Code.NOT_RELEASED), report.warnings().stream().map(Cause::code).toList());
  }

  @ParameterizedTest
  @MethodSource("lists")
  void withoutAnyItemItDoesNotPass(ItemList list, boolean adjusted) throws BadInput {
    for (Item item : list.items()) {
      Records records = Records.of(list, adjusted);
      if (records.ids().contains(item.id()) && !(item instanceof Item.Derived)) {
        assertEquals(Verdict.INCOMPLETE, overall(list, records.without(item.id())), item.id());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("lists")
  void anItemThatSaysNotDoneDoesNotPass(ItemList list, boolean adjusted) throws BadInput {
    for (String id : Records.of(list, adjusted).ids()) {
      Records records = Records.of(list, adjusted);
      Verdict verdict = overall(list, records.with(id, ",,,1,not-done"));
      boolean derived =
          list.items().stream().anyMatch(i -> i.id().equals(id) && i instanceof Item.Derived);
      assertEquals(derived ? Verdict.PASS : Verdict.INCOMPLETE, verdict, id);
    }
  }

  /** Another outcome, an unticked box, a reading outside: each alone. */
  @ParameterizedTest
  @MethodSource("lists")
  void oneWrongItemDoesNotPass(ItemList list, boolean adjusted) throws BadInput {
    for (Item item : list.items()) {
      Records records = Records.of(list, adjusted);
      if (!records.ids().contains(item.id()) || readAgain(list, item, records)) {
        continue;
      }
      String wrong = wrong(item);
      if (wrong != null) {
        assertNotEquals(Verdict.PASS, overall(list, records.with(item.id(), wrong)), item.id());
      }
    }
  }

  /** Whether the record has the item again in a later phase, which then decides. */
  private static boolean readAgain(ItemList list, Item item, Records records) {
    return item.head().phase() != null
        && list.items().stream()
            .anyMatch(
                i ->
                    base(i).equals(base(item))
                        && list.phases().indexOf(i.head().phase())
                            > list.phases().indexOf(item.head().phase())
                        && records.ids().contains(i.id()));
  }

  private static String base(Item item) {
    return Judgement.of(item, List.of(), Verdict.PASS, List.of()).base();
  }

  /** Null where anything will do. */
  private static String wrong(Item item) {
    return item.accept(
        new Item.Visitor<String>() {
          @Override
          public String reading(Item.Reading reading) {
            Item.Limits limits = reading.limits();
            String value =
                limits == null
                    ? "-1"
                    : limits.acceptUpper() == null
                        ? limits
                            .acceptLower()
                            .subtract(reading.scale().resolution())
                            .toPlainString()
                        : limits.acceptUpper().add(reading.scale().resolution()).toPlainString();
            return Records.reading(value, reading.scale().unit());
          }

          @Override
          public String derived(Item.Derived derived) {
            return Records.reading("99", derived.scale().unit());
          }

          @Override
          public String recorded(Item.Recorded recorded) {
            Item.Accepts accepts = recorded.accepts();
            if (accepts == null) {
              return Blank.of(recorded) == Blank.TEXT ? null : "?,,,1,record";
            }
            BigDecimal outside =
                accepts.upper() == null
                    ? accepts.lower().subtract(accepts.step())
                    : accepts.upper().add(accepts.step());
            return outside.toPlainString() + "," + recorded.unit() + ",,1,record";
          }

          @Override
          public String choice(Item.Choice choice) {
            return choice.options().stream()
                .filter(o -> choice.pass() != null && !o.equals(choice.pass()))
                .findFirst()
                .map(o -> o + ",,,1,choice")
                .orElse("nothing of it,,,1,choice");
          }

          @Override
          public String tick(Item.Tick tick) {
            return "no,,,1,tick";
          }
        });
  }

  @ParameterizedTest
  @MethodSource("lists")
  void anotherOutcomeThanTheOneThatPassesFails(ItemList list, boolean adjusted) throws BadInput {
    for (Item item : list.items()) {
      Records records = Records.of(list, adjusted);
      if (item instanceof Item.Choice choice
          && choice.pass() != null
          && records.ids().contains(item.id())) {
        Verdict expected = readAgain(list, item, records) ? Verdict.PASS : Verdict.FAIL;
        assertEquals(expected, overall(list, records.with(item.id(), wrong(item))), item.id());
      }
    }
  }

  /** A derived value that was written down must agree with what its parts give. */
  @ParameterizedTest
  @MethodSource("lists")
  void aDerivedValueIsAControlOfTheTranscription(ItemList list, boolean adjusted) throws BadInput {
    Report good = Judge.judge(list, Records.of(list, adjusted).readings(), null);
    for (Judgement judgement : good.judgements()) {
      if (judgement.item() instanceof Item.Derived derived && judgement.value() != null) {
        Item.Scale scale = derived.scale();
        BigDecimal near = judgement.value().setScale(scale.decimals(), RoundingMode.HALF_EVEN);
        BigDecimal far = near.add(scale.resolution().multiply(BigDecimal.valueOf(2)));
        for (String kind : List.of("reading", "derived", "")) {
          Records records = Records.of(list, adjusted);
          String rest = "," + scale.unit() + ",,1," + kind;
          assertEquals(Verdict.PASS, overall(list, records.with(derived.id(), near + rest)), kind);
          assertEquals(
              Verdict.INCOMPLETE, overall(list, records.with(derived.id(), far + rest)), kind);
        }
      }
    }
  }

  /** What is written for items of a branch that was not taken is never passed over. */
  @ParameterizedTest
  @MethodSource("lists")
  void whatDoesNotApplyIsUnclearWhenWritten(ItemList list, boolean adjusted) throws BadInput {
    for (Item item : list.items()) {
      Records without = Records.of(list, false);
      if (!without.ids().contains(item.id()) && item instanceof Item.Tick) {
        assertEquals(
            Verdict.INCOMPLETE, overall(list, without.with(item.id(), "yes,,,1,tick")), item.id());
      }
    }
  }
}
