package passband.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.judge.SameWave;
import passband.quantity.Wave;
import passband.words.Language;

/**
 * The script of a page: the tables and words in the sheet's language, then the code, which {@code
 * src/build/PageParts.java} has written from the sources in {@code page}. What a sheet cannot need
 * is in neither.
 */
final class PageCode {
  /** What a sheet may do without; its place is its bit in the name of the code's file. */
  private enum Need {
    DERIVED,
    GATES,
    WAVES,
    CONDITIONS
  }

  /**
   * The script of a page.
   *
   * @param hash as a content-security policy wants it
   */
  record Script(String text, String hash) {}

  private record Key(Language language, int needs) {}

  private static final List<String> SENTENCES =
      Checklist.resource("page-words.txt").lines().toList();

  private static final Pattern SENTENCE = Pattern.compile("\\bW(\\d{1,4})\\b");

  private static final Map<Key, Script> MADE = new ConcurrentHashMap<>();

  private PageCode() {}

  /** That of the page for a list of items. */
  static Script of(ItemList list, Language language) {
    int needs = 0;
    SameWave waves = new SameWave(list);
    for (Item item : list.items()) {
      for (Need need : needs(item, waves)) {
        needs |= 1 << need.ordinal();
      }
    }
    return MADE.computeIfAbsent(new Key(language, needs), PageCode::made);
  }

  private static List<Need> needs(Item item, SameWave waves) {
    List<Need> needs = new ArrayList<>();
    if (!item.head().applies().isEmpty()
        || !item.head().when().isEmpty()
        || item.head().phase() != null) {
      needs.add(Need.CONDITIONS);
    }
    if (item instanceof Item.Tick tick && tick.stops() != null) {
      needs.add(Need.GATES);
    }
    if (item instanceof Item.Derived derived) {
      needs.add(Need.DERIVED);
      for (Wave wave : Wave.values()) {
        if (derived.calculation().parts().containsKey(wave.peak())) {
          needs.add(Need.WAVES);
        }
      }
    }
    if (item instanceof Item.Reading reading
        && (!waves.others(reading).isEmpty()
            || reading.scale().quantity().equals(ScriptItems.CREST))) {
      needs.add(Need.WAVES);
    }
    return needs;
  }

  private static Script made(Key key) {
    String code = Checklist.resource("page-" + key.needs() + ".js");
    StringBuilder constants = new StringBuilder("\"use strict\";\nconst ");
    String said = said(key.language(), code, constants);
    constants.append(tables(key.language(), code)).append(";\n");
    String script = constants + said;
    return new Script(script, Checklist.hash(script));
  }

  /**
   * The code with the sentences that it asks for: each where it is asked for or, when that is more
   * than once, under the short name that it has there.
   *
   * @param constants gets the sentences that are asked for more than once
   */
  private static String said(Language language, String code, StringBuilder constants) {
    int[] asked = new int[SENTENCES.size()];
    Matcher name = SENTENCE.matcher(code);
    while (name.find()) {
      asked[Integer.parseInt(name.group(1))]++;
    }
    String[] texts = new String[asked.length];
    for (int i = 0; i < asked.length; i++) {
      String text = ScriptTables.quoted(language.of("page." + SENTENCES.get(i)));
      texts[i] = asked[i] > 1 ? "W" + i : text;
      if (asked[i] > 1) {
        constants.append(texts[i]).append('=').append(text).append(',');
      }
    }
    return name.reset()
        .replaceAll(found -> Matcher.quoteReplacement(texts[Integer.parseInt(found.group(1))]));
  }

  private static String tables(Language language, String code) {
    List<String> tables = new ArrayList<>();
    tables.add(ScriptTables.verdicts(language));
    tables.add(ScriptTables.causes(language, code));
    tables.add(ScriptTables.units());
    tables.add(ScriptTables.fillers());
    tables.add(ScriptTables.readings());
    if (code.contains("WAVES")) {
      tables.add(ScriptTables.waves(language));
    }
    return String.join(",\n", tables);
  }
}
