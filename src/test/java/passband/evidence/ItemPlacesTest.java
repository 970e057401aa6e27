package passband.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import nu.validator.htmlparser.dom.HtmlDocumentBuilder;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import passband.model.Lead;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.testing.GeneratedProcedures;
import passband.testing.PdfItems;
import passband.testing.Sheets;
import passband.words.Language;

/**
 * Every item of a plan stands exactly once, as what it is and in the order of the sheet, wherever
 * items are asked for or judged.
 */
class ItemPlacesTest {
  private static final int GENERATED = 200;
  private static final int PRINTED = 20;

  private static final List<Plan> PLANS = plans(GENERATED).toList();

  private static Stream<Plan> plans(int generated) {
    return Stream.concat(
        Stream.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW),
        Stream.concat(
            Sheets.demo().stream(),
            LongStream.range(0, generated).mapToObj(GeneratedProcedures::plan)));
  }

  private interface Law {
    void holds(ItemList list, Plan plan, String where) throws Exception;
  }

  private static void forEach(int generated, Law law) throws Exception {
    int libraries = PLANS.size() - GENERATED;
    for (int i = 0; i < libraries + generated; i++) {
      Plan plan = PLANS.get(i);
      String where = plan.name().text() + (i < libraries ? "" : " of seed " + (i - libraries));
      law.holds(Evidence.of(plan).list(), plan, where);
    }
  }

  private static List<String> ids(ItemList list) {
    return list.items().stream().map(Item::id).toList();
  }

  private static String kind(Item item) {
    return item instanceof Item.Reading
        ? "reading"
        : item instanceof Item.Derived
            ? "derived"
            : item instanceof Item.Recorded
                ? "record"
                : item instanceof Item.Choice ? "choice" : "tick";
  }

  @Test
  void theGeneratedProceduresHaveEveryKindOfItemEverywhere() throws Exception {
    TreeSet<String> kinds = new TreeSet<>();
    TreeSet<String> atPoints = new TreeSet<>();
    forEach(
        GENERATED,
        (list, plan, where) -> {
          list.items().forEach(item -> kinds.add(kind(item)));
          Evidence.of(plan)
              .stages()
              .forEach(
                  stage ->
                      stage
                          .points()
                          .forEach(p -> p.steps().values().forEach(i -> atPoints.add(kind(i)))));
        });
    assertEquals("[choice, derived, reading, record, tick]", kinds.toString());
    assertEquals("[choice, record, tick]", atPoints.toString());
  }

  // ---- limits.json and the script ----

  private static void listed(JsonArray items, ItemList list, String where) {
    List<String> found = new ArrayList<>();
    for (JsonElement element : items) {
      JsonObject item = element.getAsJsonObject();
      found.add(item.get("kind").getAsString() + " " + item.get("id").getAsString());
    }
    assertEquals(list.items().stream().map(i -> kind(i) + " " + i.id()).toList(), found, where);
  }

  @Test
  void limitsJsonListsEachOnceAndReadsItBack() throws Exception {
    forEach(
        GENERATED,
        (list, plan, where) -> {
          String json = LimitsWriter.of(list);
          listed(
              JsonParser.parseString(json).getAsJsonObject().getAsJsonArray("items"), list, where);
          assertEquals(list, LimitsReader.read(json), where);
        });
  }

  // ---- the page ----

  private static Document parsed(String html) throws Exception {
    return new HtmlDocumentBuilder().parse(new InputSource(new StringReader(html)));
  }

  private static Map<String, List<Element>> fields(Document page) {
    Map<String, List<Element>> fields = new LinkedHashMap<>();
    NodeList all = page.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      Element element = (Element) all.item(i);
      if (element.hasAttribute("data-item")) {
        fields
            .computeIfAbsent(element.getAttribute("data-item"), x -> new ArrayList<>())
            .add(element);
      }
    }
    return fields;
  }

  private static String field(Element element) {
    String name = element.getTagName();
    String type = element.hasAttribute("type") ? element.getAttribute("type") : "text";
    return name.equals("input") ? type : name;
  }

  /** What the page accepts of a reading, which its script reads there. */
  private static String limits(Element field) {
    Node cell = field.getParentNode().getNextSibling();
    assertEquals("limits", ((Element) cell).getAttribute("class"));
    return cell.getFirstChild().getTextContent();
  }

  private static void stands(Item item, List<Element> fields, Language language, String where) {
    if (item instanceof Item.Choice choice) {
      assertEquals(
          choice.options(), fields.stream().map(f -> f.getAttribute("value")).toList(), where);
      fields.forEach(f -> assertEquals("radio", field(f), where));
      fields.forEach(f -> assertEquals(item.id(), f.getAttribute("name"), where));
      return;
    }
    if (item instanceof Item.Measured measured && measured.limits() != null) {
      assertEquals(ItemWords.accepted(measured, language), limits(fields.get(0)), where);
    }
    String expected =
        item instanceof Item.Derived ? "output" : item instanceof Item.Tick ? "checkbox" : "text";
    assertEquals(List.of(expected), fields.stream().map(ItemPlacesTest::field).toList(), where);
  }

  @Test
  void thePageHasAFieldForEachOnceAndItsScriptTheSameItems() throws Exception {
    forEach(
        GENERATED,
        (list, plan, where) -> {
          Document page = parsed(Checklist.of(plan));
          Map<String, List<Element>> fields = fields(page);
          assertEquals(ids(list), List.copyOf(fields.keySet()), where);
          list.items()
              .forEach(i -> stands(i, fields.get(i.id()), plan.language(), where + ": " + i.id()));
          JsonObject script =
              JsonParser.parseString(page.getElementById("items").getTextContent())
                  .getAsJsonObject();
          assertEquals(
              String.join("\n", fields.keySet()).hashCode(), script.get("order").getAsInt(), where);
          assertEquals(
              list.items().stream().map(ItemPlacesTest::kind).toList(), kinds(script), where);
        });
  }

  /** What is read or worked out has its identity at its field and nowhere else. */
  @Test
  void thePageHasEachIdentityOnce() throws Exception {
    forEach(
        PRINTED,
        (list, plan, where) -> {
          String page = Checklist.of(plan);
          for (Item item : list.items()) {
            if (item instanceof Item.Measured) {
              String id = Pattern.quote(item.id().replace("&", "&amp;"));
              assertEquals(
                  1, page.split("=\"?" + id + "[\" >]", -1).length - 1, where + ": " + item.id());
            }
          }
        });
  }

  /** In bytes, which are most of a small sheet's page. */
  private static final int MOST_OF_SCRIPT_AND_STYLE = 62_000;

  @Test
  void scriptAndStyleOfThePageStaySmall() throws Exception {
    forEach(
        0,
        (list, plan, where) -> {
          Matcher part =
              Pattern.compile("(?s)<(script|style)>(.*?)</\\1>").matcher(Checklist.of(plan));
          int bytes = 0;
          while (part.find()) {
            bytes += part.group(2).getBytes(StandardCharsets.UTF_8).length;
          }
          assertTrue(bytes > 0 && bytes <= MOST_OF_SCRIPT_AND_STYLE, where + ": " + bytes);
        });
  }

  /** Of a whole page, in bytes, where little is measured. */
  private static final int MOST_OF_A_SMALL_PAGE = 82_700;

  @Test
  void theWholePageOfASmallSheetStaysSmall() throws Exception {
    Plan small =
        Sheets.demo().stream()
            .filter(plan -> plan.name().text().equals("campion-2-energy"))
            .findFirst()
            .orElseThrow();
    int bytes = Checklist.of(small).getBytes(StandardCharsets.UTF_8).length;
    assertTrue(bytes <= MOST_OF_A_SMALL_PAGE, bytes + " bytes");
  }

  /** The kind of each item of a script, which is in one of its parts. */
  private static List<String> kinds(JsonObject script) {
    JsonArray parts = script.getAsJsonArray("parts");
    List<String> kinds = new ArrayList<>();
    for (JsonElement places : script.getAsJsonArray("items")) {
      for (JsonElement place : places.getAsJsonArray()) {
        JsonElement kind = parts.get(place.getAsInt()).getAsJsonObject().get("kind");
        if (kind != null) {
          kinds.add(kind.getAsString());
        }
      }
    }
    return kinds;
  }

  // ---- the paper ----

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", "");
  }

  /** Whether the item's sentence stands beside it, or in a table of a wiring the lead's name. */
  private static boolean says(PdfItems.Ink ink, Item item, Plan plan) {
    String sentence = item.head().title();
    if (!ink.words().isEmpty()) {
      return ink.words().contains(squeezed(sentence));
    }
    return plan.usedLeads().stream()
        .map(Lead::title)
        .anyMatch(l -> sentence.contains(l) && ink.wordsOfRow().contains(squeezed(l)));
  }

  private static void printed(Item item, List<PdfItems.Ink> inks, Plan plan, String where) {
    assertEquals(1, inks.size(), where);
    PdfItems.Ink ink = inks.get(0);
    if (item instanceof Item.Measured measured) {
      assertTrue(ink.boxes() > measured.scale().decimals(), where + ": " + ink.boxes() + " boxes");
      return;
    }
    boolean ofTable =
        item.head().place().equals(plan.language().of("place.identity"))
            || item.head().place().equals(plan.language().of("collect"));
    if (!ofTable) {
      assertTrue(says(ink, item, plan), where + ": " + ink.wordsOfRow());
    }
    if (item instanceof Item.Choice choice) {
      choice.options().forEach(o -> assertTrue(ink.words().contains(squeezed(o)), where));
      assertEquals(choice.options().size(), ink.boxes(), where);
    } else if (item instanceof Item.Tick) {
      assertEquals(1, ink.boxes(), where);
    } else if (!ofTable) {
      assertTrue(ink.words().contains("_".repeat(20)), where + ": " + ink.words());
    }
  }

  @Test
  void thePdfOfTheLibrariesAndOfTwentyGeneratedHasRoomForEachOnce() throws Exception {
    forEach(
        PRINTED,
        (list, plan, where) -> {
          Map<String, List<PdfItems.Ink>> items = PdfItems.of(ChecklistPdf.of(plan, Paper.A4));
          assertEquals(new TreeSet<>(ids(list)), items.keySet(), where);
          list.items().forEach(i -> printed(i, items.get(i.id()), plan, where + ": " + i.id()));
        });
  }
}
