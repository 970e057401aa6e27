package passband.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.LimitsWriter;
import passband.judge.Verdict;
import passband.pdf.ChecklistPdf;
import passband.pdf.Paper;
import passband.pdf.ReviewPdf;
import passband.plan.Plan;
import passband.record.KeptFile;
import passband.record.VisitRecord;
import passband.render.Checklist;
import passband.render.JudgePage;
import passband.render.RecordPage;
import passband.testing.Records;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Nothing that the program writes on a sheet is in another language than the sheet. */
class WholeSheetTest {
  private static final String SHEET = "quecke-2/quecke-2-ausgang.pband";

  /** A procedure whose author wrote nothing in English, with two phases, a state and a sweep. */
  private static Plan plan(String language) {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.PROCEDURES));
    files.computeIfPresent(
        SHEET,
        (name, text) ->
            text.replace("HF-Generator", "HF-Ger\u00e4t")
                .replaceFirst("(?m)^  language +de$", "  language " + language)
                .replaceFirst("decision +guarded", "decision risk 2 %\n  phases vorher, nachher")
                .replaceFirst(
                    "(?m)^  section nachher",
                    """
                      adjust abgleich "Abgleich" affects leistung {
                        do "Nach dem Servicehandbuch abgleichen."
                      }

                      gate sperre "Erst weiter, wenn alles bestanden ist."
                    $0"""));
    return Snippet.compile(files, SHEET, null).plan();
  }

  /** The English words that have others in the language, as they may stand on a sheet. */
  private static List<String> english(Language language) {
    List<String> english = new ArrayList<>();
    Language.ENGLISH
        .words()
        .forEach(
            (key, words) -> {
              String longest = "";
              for (String part : words.split("\\{\\w+\\}|[\\[\\]]")) {
                longest = part.strip().length() > longest.length() ? part.strip() : longest;
              }
              boolean same = language.words().get(key).contains(longest);
              if (longest.length() >= 5 && !same) {
                english.add(longest);
              }
            });
    assertTrue(english.size() > 150, english.toString());
    return english;
  }

  private static List<String> found(List<String> english, String text) {
    return english.stream()
        .filter(
            w ->
                Pattern.compile("(?<!\\p{L})" + Pattern.quote(w) + "(?!\\p{L})")
                    .matcher(text)
                    .find())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void nothingOnPaperIsEnglish(String code) throws IOException {
    Plan plan = plan(code);
    try (PDDocument document = Loader.loadPDF(ChecklistPdf.of(plan, Paper.A4))) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      assertEquals(List.of(), found(english(plan.language()), text));
      assertTrue(text.contains(plan.language().of("fail")), text);
    }
  }

  /** The reviewer's file too: charts, what was allowed, what is caught. */
  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void nothingForTheReviewerIsEnglish(String code) throws IOException {
    Plan plan = plan(code);
    try (PDDocument document = Loader.loadPDF(ReviewPdf.of(plan, Paper.A4))) {
      String text = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
      // Placeholders are the language's own words.
      String said = text.replaceAll("\\{\\w+\\}", " ");
      assertEquals(List.of(), found(english(plan.language()), said));
      for (String key :
          List.of("reviewer", "reviewer.charts", "chart.accepted", "detect.matrix", "fault.P05")) {
        assertTrue(text.contains(plan.language().of(key)), key + ": " + text);
      }
      assertFalse(Pattern.compile("\\d\\.\\d").matcher(text).find(), text);
    }
  }

  /** The sentences of the script included: all that stands in quotes in its code. */
  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void nothingOnThePageIsEnglish(String code) {
    Plan plan = plan(code);
    String html = Checklist.of(plan);
    String page = html.substring(html.indexOf("<body"), html.indexOf("<script"));
    String texts = page.replaceAll("<[^>]*?((?:aria-label|data-label)=\"[^\"]*\")?[^>]*>", " $1 ");
    assertEquals(List.of(), found(english(plan.language()), texts));
    assertTrue(html.contains("<html lang=\"" + code + "\">"));
    String script = html.substring(html.lastIndexOf("<script>"));
    String kept = plan.language().of("page.alreadyKept");
    assertTrue(script.contains(kept.substring(kept.indexOf('}') + 1)), script);
    List<String> sentences = new ArrayList<>();
    Matcher quoted = Pattern.compile("\"((?:[^\"\\\\\n]|\\\\.)*)\"").matcher(script);
    while (quoted.find()) {
      String said = quoted.group(1);
      boolean key =
          said.equals(Item.Contribution.LOAD)
              || Stream.of(Verdict.values()).anyMatch(v -> v.word().equals(said));
      if (said.contains(" ") && !key) {
        sentences.add(said.replaceAll("\\{\\w+\\}", " "));
      }
    }
    assertTrue(sentences.size() > 50, sentences::toString);
    // Single words are also names of keys, classes and columns.
    List<String> several =
        english(plan.language()).stream().filter(words -> words.contains(" ")).toList();
    assertEquals(List.of(), found(several, String.join("\n", sentences)));
  }

  /**
   * The report of the judge and that of a record: of a good visit and of one with every trouble.
   */
  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void nothingThatIsJudgedIsEnglish(String code) throws Exception {
    Plan plan = plan(code);
    ItemList list = Evidence.of(plan).list();
    String reading =
        list.items().stream()
            .filter(item -> item instanceof Item.Reading)
            .map(Item::id)
            .findFirst()
            .orElseThrow();
    Records good = Records.of(list, true);
    for (Records records :
        List.of(good, good.with(reading, "99999.9,,,1,reading"), good.without(reading))) {
      byte[] csv = records.csv().getBytes(StandardCharsets.UTF_8);
      byte[] limits = LimitsWriter.of(list).getBytes(StandardCharsets.UTF_8);
      VisitRecord record =
          VisitRecord.of(
              "1", null, Map.of(), KeptFile.of("l.json", limits), KeptFile.of("r.csv", csv));
      for (String html :
          List.of(JudgePage.of(record.report()), RecordPage.of(record, "ab", List.of()))) {
        String text =
            html.replaceAll("(?s)<style.*?</style>", "")
                .replaceAll("<[^>]*>", " ")
                .replaceAll("\\s+", " ");
        assertEquals(List.of(), found(english(plan.language()), text), text);
        assertTrue(html.contains("<html lang=\"" + code + "\">"));
        assertTrue(text.contains(plan.language().of("judge.uncertainty.which")), text);
      }
    }
  }
}
