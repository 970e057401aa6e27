package passband.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.detect.Fault;
import passband.diagnostic.Code;
import passband.quantity.QuantityKind;
import passband.testing.Repository;

/** Every language has the same words to say, with the same slots, and nothing else. */
class LanguagesTest {
  private static final Pattern SLOT = Pattern.compile("\\{\\w+\\}");
  private static final Path FILES = Repository.ROOT.resolve("src/main/resources/passband/words");

  static List<Language> languages() {
    return Language.all();
  }

  private static TreeSet<String> slots(String words) {
    return SLOT.matcher(words)
        .results()
        .map(r -> r.group())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @ParameterizedTest
  @MethodSource("languages")
  void hasEveryKeyWithItsSlots(Language language) {
    Map<String, String> english = Language.ENGLISH.words();
    assertEquals(List.copyOf(english.keySet()), List.copyOf(language.words().keySet()));
    language
        .words()
        .forEach(
            (key, words) -> {
              assertFalse(words.isBlank(), key);
              assertEquals(slots(english.get(key)), slots(words), key);
            });
  }

  /** A key that stands twice would hide the first. */
  @ParameterizedTest
  @MethodSource("languages")
  void hasEachKeyOnce(Language language) {
    Map<String, Integer> keys = new TreeMap<>();
    for (String line :
        Repository.text(FILES.resolve(language.code() + ".properties")).split("\n")) {
      if (!line.startsWith("#") && !line.isBlank()) {
        keys.merge(line.substring(0, line.indexOf('=')).strip(), 1, Integer::sum);
      }
    }
    keys.values().removeIf(count -> count == 1);
    assertEquals(Map.of(), keys);
    assertEquals(language, Language.named(language.code()));
  }

  @Test
  void everyFileIsALanguageAndEveryLanguageHasOne() {
    TreeSet<String> files = new TreeSet<>();
    Repository.files(FILES, ".properties").forEach(f -> files.add(f.getFileName().toString()));
    TreeSet<String> known = new TreeSet<>();
    languages().forEach(language -> known.add(language.code() + ".properties"));
    assertEquals(known, files);
  }

  /** Keys made of parts in the source: each part stands there before its dot. */
  @Test
  void noKeyIsUnused() {
    StringBuilder sources = new StringBuilder();
    for (String suffix : List.of(".java", ".ftlh", ".js")) {
      for (String folder : List.of("src/main/java", "src/main/resources")) {
        Repository.files(Repository.ROOT.resolve(folder), suffix)
            .forEach(file -> sources.append(Repository.text(file)));
      }
    }
    String all = sources.toString();
    List<String> unused = new ArrayList<>();
    for (String key : Language.ENGLISH.words().keySet()) {
      boolean made =
          key.startsWith("term.")
              || key.matches("move\\.(remove|move|connect)")
              || key.matches("step\\.(activate|use)\\.(key|key\\.of|hand|accessory)")
              || key.matches("ask\\.(serial|due)\\.of")
              || key.startsWith("page.")
              || key.startsWith("cause.")
              || key.startsWith("detect.assumed.")
              || key.startsWith("detect.note.")
              || key.startsWith("budget.")
              || key.startsWith("judge.statement.")
              || key.startsWith("record.said.")
              || key.startsWith("fault.")
              || key.startsWith("code.");
      if (!made && !all.contains('"' + key + '"')) {
        unused.add(key);
      }
    }
    assertEquals(List.of(), unused);
  }

  @Test
  void everyQuantityHasATerm() {
    for (QuantityKind quantity : QuantityKind.all()) {
      String key = "term." + quantity.printed().toLowerCase(Locale.ROOT).replace(' ', '-');
      assertTrue(Language.GERMAN.words().containsKey(key), key);
      assertEquals(quantity.printed(), Language.ENGLISH.term(quantity.printed()));
    }
  }

  /** The catalogue and the codes have their names, and no name is of what there is not. */
  @Test
  void everyFaultAndEveryCodeThatCanBeAllowedHasAName() {
    Map<String, String> wanted = new TreeMap<>();
    Fault.all().forEach(fault -> wanted.put("fault." + fault.id(), fault.name()));
    for (Code code : Code.values()) {
      if (code.allowable()) {
        wanted.put("code." + code.id(), code.title());
      }
    }
    Map<String, String> named = new TreeMap<>(Language.ENGLISH.words());
    named.keySet().removeIf(key -> !key.startsWith("fault.") && !key.startsWith("code."));
    assertEquals(wanted, named);
  }

  @Test
  void decimalMarksAreThoseOfTheLanguage() {
    assertEquals("277.9 mA", Language.ENGLISH.number("277.9 mA"));
    assertEquals("277,9 mA", Language.GERMAN.number("277.9 mA"));
    assertEquals("0,5 V", Language.FRENCH.number("0.5 V"));
    assertEquals("ca. 5 V", Language.GERMAN.number("ca. 5 V"));
  }

  @Test
  void slotsAreFilledOnce() {
    assertEquals("“{1}” of the b", Language.ENGLISH.of("button.of", "{1}", "b"));
    assertThrows(IllegalArgumentException.class, () -> Language.ENGLISH.of("no.such.key"));
  }
}
