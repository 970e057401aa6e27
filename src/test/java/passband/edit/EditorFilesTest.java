package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.parse.Keywords;
import passband.parse.Marks;
import passband.source.SourceFile;
import passband.testing.Repository;

/** The files for editors, held against the language's own reading of the demo library. */
class EditorFilesTest {
  private static final JsonObject GRAMMAR =
      JsonParser.parseString(EditorFiles.text("textmate")).getAsJsonObject();

  /** What a TextMate grammar makes of a stretch of a line. */
  private record Scope(int start, int end, String name) {}

  /**
   * The stretches of a line: at each place the pattern that matches first, of several the first.
   */
  private static List<Scope> scopes(String line) {
    List<Scope> scopes = new ArrayList<>();
    int at = 0;
    while (at < line.length()) {
      Matcher best = null;
      JsonObject by = null;
      for (JsonElement one : GRAMMAR.getAsJsonArray("patterns")) {
        JsonObject pattern = one.getAsJsonObject();
        Matcher match = Pattern.compile(begin(pattern)).matcher(line);
        if (match.find(at) && (best == null || match.start() < best.start())) {
          best = match;
          by = pattern;
        }
      }
      if (best == null) {
        break;
      }
      at = add(scopes, line, best, by);
    }
    return scopes;
  }

  private static String begin(JsonObject pattern) {
    return pattern.get(pattern.has("match") ? "match" : "begin").getAsString();
  }

  private static int add(List<Scope> scopes, String line, Matcher match, JsonObject pattern) {
    if (pattern.has("begin")) {
      int end = match.end();
      while (end < line.length() && line.charAt(end) != '"') {
        end += line.charAt(end) == '\\' ? 2 : 1;
      }
      end = Math.min(line.length(), end + 1);
      scopes.add(new Scope(match.start(), end, pattern.get("name").getAsString()));
      return end;
    }
    if (pattern.has("captures")) {
      for (int i = 1; i <= match.groupCount(); i++) {
        if (match.group(i) != null) {
          String name =
              pattern.getAsJsonObject("captures").getAsJsonObject("" + i).get("name").getAsString();
          scopes.add(new Scope(match.start(i), match.end(i), name));
        }
      }
    } else {
      scopes.add(new Scope(match.start(), match.end(), pattern.get("name").getAsString()));
    }
    return match.end();
  }

  static List<Path> sources() {
    return Repository.files(Repository.PROCEDURES, ".pband");
  }

  @ParameterizedTest
  @MethodSource("sources")
  void theGrammarColoursWhatTheLanguageReads(Path file) {
    SourceFile source = new SourceFile("x", Repository.text(file));
    int compared = 0;
    for (Marks.Mark mark : Marks.of(source)) {
      String wanted =
          switch (mark.kind()) {
            case KEYWORD -> "keyword.control.passband";
            case TEXT -> "string.quoted.double.passband";
            case COMMENT -> "comment.line.number-sign.passband";
            case NUMBER ->
                mark.span().text().matches("\\d{4}-.*")
                    ? "constant.other.date.passband"
                    : "constant.numeric.passband";
            default -> null;
          };
      if (wanted == null) {
        continue;
      }
      int line = mark.span().line();
      int start = mark.span().start() - source.lineStart(line);
      Scope found =
          scopes(source.line(line)).stream()
              .filter(s -> s.start == start)
              .findFirst()
              .orElse(new Scope(0, 0, "nothing"));
      assertEquals(wanted, found.name, mark.span() + " " + mark.span().text());
      assertEquals(mark.span().text().length(), found.end - found.start, mark.span().toString());
      compared++;
    }
    assertTrue(compared > 5);
  }

  @Test
  void unitsAndNamesLikeWordsAreToldApart() {
    assertEquals(
        List.of("constant.numeric.passband", "keyword.other.unit.passband"),
        scopes("2.5 kV").stream().map(Scope::name).toList());
    assertEquals(List.of(), scopes("cut-key test-1 lead2"));
  }

  /** Every word of the language is explained where it leads a line, and no other. */
  @Test
  void everyLineIsExplained() {
    Set<String> leads =
        LanguageLine.all().stream()
            .map(LanguageLine::word)
            .collect(Collectors.toCollection(TreeSet::new));
    assertTrue(Keywords.all().containsAll(leads), leads.toString());
    for (LanguageLine line : LanguageLine.all()) {
      assertTrue(
          line.form().startsWith(line.word()) && line.purpose().endsWith("."), line.toString());
    }
  }
}
