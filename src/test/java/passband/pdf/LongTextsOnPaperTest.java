package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Explanations;
import passband.testing.GeneratedProcedures;
import passband.testing.LongTexts;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Texts of any length wherever an author writes one. */
class LongTextsOnPaperTest {
  /** What a drawing shows is refused where it is too long. */
  private static final Set<String> DRAWN =
      Set.of(
          "device",
          "analyzer",
          "outlet",
          "pole",
          "earth",
          "contact",
          "jack",
          "key",
          "lead",
          "link");

  /** What a sheet prints beside that. */
  private static final Set<String> PRINTED =
      Set.of(
          "action",
          "adjust",
          "allow",
          "caution",
          "choose",
          "confirm",
          "derive",
          "do",
          "enter",
          "leave",
          "mode",
          "procedure",
          "record",
          "revision",
          "section",
          "setup",
          "state",
          "sweep",
          "test",
          "wait");

  /** More words than a page has room for, also where they are written over its whole width. */
  private static final int PAGE = 800;

  /** As many texts are long at the same time. */
  private static final int TOGETHER = 10;

  private static final Pattern USE = Pattern.compile("(?m)^ *use +\"([^\"]+)\"");

  private static final List<String> MAINS =
      List.of("yarrow/yarrow-service.pband", "sundew/sundew-energy.pband", "3", "8");

  /** A procedure with all that it uses: of the tests' library, or generated from a seed. */
  private static Map<String, String> library(String main) {
    if (main.length() == 1) {
      String text = GeneratedProcedures.text(Long.parseLong(main));
      return Map.of("bench.pband", Explanations.bench(), main, text);
    }
    Map<String, String> used = new TreeMap<>();
    use(Repository.texts(Repository.LIBRARY), Path.of(main), used);
    return used;
  }

  private static void use(Map<String, String> library, Path file, Map<String, String> used) {
    String text = library.get(file.toString());
    if (used.put(file.toString(), text) == null) {
      USE.matcher(text)
          .results()
          .forEach(m -> use(library, file.resolveSibling(m.group(1)).normalize(), used));
    }
  }

  private static Snippet compiled(LongTexts texts, String main) {
    Map<String, String> files = new TreeMap<>(texts.files());
    Repository.texts(Repository.LIBRARY).forEach(files::putIfAbsent); // the tables
    return Snippet.compile(files, main, null);
  }

  @Test
  void textsThatNoDrawingShows() throws IOException {
    Set<String> printed = new TreeSet<>();
    for (String main : MAINS) {
      Map<String, String> library = library(main);
      int count = new LongTexts(library, (text, place) -> 0).places().size();
      for (int from = 0; from < count; from += TOGETHER) {
        printed.addAll(printed(library, main, from));
      }
    }
    assertTrue(printed.containsAll(PRINTED), printed.toString());
  }

  /** At which places there is a long text on the paper, if so many from one on are long. */
  private static Set<String> printed(Map<String, String> library, String main, int from)
      throws IOException {
    LongTexts texts = longFrom(library, from, from + TOGETHER);
    Paper paper = from / TOGETHER % 2 == 0 ? Paper.LETTER : Paper.A4;
    Snippet snippet = compiled(texts, main);
    assertTrue(PaperLaw.holds(snippet, paper, false, main + ", texts from " + from));
    Set<String> shown = PaperLaw.words(snippet.plans().get(0)).keySet();
    Set<String> places = new TreeSet<>();
    for (int i = from; i < Math.min(from + TOGETHER, texts.places().size()); i++) {
      if (shown.contains(texts.firsts().get(i)) && !DRAWN.contains(texts.places().get(i))) {
        places.add(texts.places().get(i));
      }
    }
    return places;
  }

  /** Every other text is one word. */
  private static LongTexts longFrom(Map<String, String> library, int from, int end) {
    return new LongTexts(
        library,
        (text, place) -> {
          boolean isLong = text >= from && text < end && !DRAWN.contains(place);
          return isLong ? (text % 2 == 0 ? -PAGE : PAGE) : 1;
        });
  }

  /** All texts long at once. */
  @Test
  void whatGoesOverPagesIsTaggedAsOne() throws Exception {
    Snippet snippet = compiled(longFrom(library("3"), 0, Integer.MAX_VALUE), "3");
    PdfUa.assertTagged(ChecklistPdf.of(snippet.plans().get(0), Paper.A4));
  }

  /** Names in drawings: short enough they are printed, else refused. */
  @Test
  void namesThatADrawingShows() throws IOException {
    Set<String> printed = new TreeSet<>();
    Set<String> refused = new TreeSet<>();
    for (String main : MAINS.subList(0, 3)) {
      Map<String, String> library = library(main);
      List<String> places = new LongTexts(library, (text, place) -> 0).places();
      for (int i = 0; i < places.size(); i++) {
        for (int words : DRAWN.contains(places.get(i)) ? new int[] {5, -30, PAGE} : new int[0]) {
          (named(library, main, i, words) ? printed : refused).add(places.get(i));
        }
      }
    }
    assertTrue(printed.containsAll(DRAWN), printed.toString());
    assertTrue(refused.containsAll(Set.of("device", "outlet", "pole", "lead")), refused.toString());
  }

  private static boolean named(Map<String, String> library, String main, int drawn, int words)
      throws IOException {
    LongTexts texts = new LongTexts(library, (text, place) -> text == drawn ? words : 1);
    Paper paper = drawn % 2 == 0 ? Paper.LETTER : Paper.A4;
    return PaperLaw.holds(compiled(texts, main), paper, true, main + ", text " + drawn);
  }
}
