package passband.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;

/** The scripts of the sheet have no sentence of their own: each comes from the words. */
class ScriptWordsTest {
  private static final Path SCRIPTS =
      Repository.ROOT.resolve("src/main/resources/passband/render/page");

  /** What is compared, not shown: names of verdicts, and of a contribution in a budget. */
  private static final Set<String> COMPARED = Set.of("does not apply", "not done", "load error");

  private static final Pattern TEXT = Pattern.compile("\"([^\"\\\\]*)\"|`([^`]*)`");
  private static final Pattern SENTENCE = Pattern.compile("\\p{L}{2,} +\\p{L}{2,}|\\p{L} of ");
  private static final Pattern SELECTOR = Pattern.compile("[.#\\[:]|^main |^(main|header) input");
  private static final Pattern ASKED = Pattern.compile("WORDS\\.(\\w+)");
  private static final Pattern ERROR = Pattern.compile("Error\\((?!words\\(|WORDS\\.)");

  private static List<Path> scripts() throws IOException {
    try (Stream<Path> files = Files.list(SCRIPTS)) {
      List<Path> scripts = files.filter(f -> f.toString().endsWith(".js")).toList();
      assertTrue(scripts.size() > 15, scripts.toString());
      return scripts;
    }
  }

  private static List<String> lines(Path script) throws IOException {
    return Files.readAllLines(script).stream().filter(l -> !l.strip().startsWith("//")).toList();
  }

  @Test
  void noSentenceIsInAScript() throws IOException {
    List<String> found = new ArrayList<>();
    for (Path script : scripts()) {
      for (String line : lines(script)) {
        Matcher text = TEXT.matcher(line);
        while (text.find()) {
          String said = text.group(1) == null ? text.group(2) : text.group(1);
          boolean shown = SENTENCE.matcher(said).find() && !SELECTOR.matcher(said).find();
          if (shown && !COMPARED.contains(said.strip()) && !said.equals("use strict")) {
            found.add(script.getFileName() + ": " + said);
          }
        }
        if (ERROR.matcher(line).find()) {
          found.add(script.getFileName() + ": " + line.strip());
        }
      }
    }
    assertEquals(List.of(), found);
  }

  /** What a script asks for is there in every language. */
  @Test
  void everySentenceThatAScriptAsksForIsThere() throws IOException {
    Set<String> missing = new TreeSet<>();
    int asked = 0;
    for (Path script : scripts()) {
      Matcher key = ASKED.matcher(String.join("\n", lines(script)));
      while (key.find()) {
        String name = "page." + key.group(1);
        for (Language language : Language.all()) {
          boolean there = language.words().containsKey(name);
          missing.addAll(there ? List.of() : List.of(language + ": " + name));
        }
        asked++;
      }
    }
    assertEquals(Set.of(), missing);
    assertTrue(asked > 60, asked + " sentences");
  }
}
