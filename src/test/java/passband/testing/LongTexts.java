package passband.testing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A library in which every text of its author has words of its own at its end, one or many: {@code
 * q}, five hexadecimal digits, {@code z}.
 */
public final class LongTexts {
  /** Such a word, whatever stands around it. */
  public static final Pattern WORD = Pattern.compile("(?i)q[0-9a-f]{5}z");

  private static final Pattern TEXT = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
  private static final Pattern FILE = Pattern.compile("^ *(use|table +from|#).*");

  private final Map<String, String> files = new TreeMap<>();
  private final Words words;
  private final List<String> places = new ArrayList<>();
  private final List<String> firsts = new ArrayList<>();
  private int serial;

  /** How many words a text has; as one word where that is below zero. */
  public interface Words {
    int of(int text, String place);
  }

  /** The library with so many words in its texts. */
  public LongTexts(Map<String, String> library, Words words) {
    this.words = words;
    new TreeMap<>(library)
        .forEach(
            (name, text) ->
                files.put(
                    name,
                    name.endsWith(".pband")
                        ? text.lines().map(this::line).collect(Collectors.joining("\n", "", "\n"))
                        : text));
  }

  /** The library's files by name. */
  public Map<String, String> files() {
    return files;
  }

  /** For each text, in order, the word that leads its line. */
  public List<String> places() {
    return places;
  }

  /** For each text, in order, the first word that it got. */
  public List<String> firsts() {
    return firsts;
  }

  /** A text that is on a line twice, as an outcome that passes, stays the same text. */
  private String line(String line) {
    if (FILE.matcher(line).matches()) {
      return line;
    }
    String first = line.strip().split(" ")[0];
    Map<String, String> longer = new HashMap<>();
    return TEXT.matcher(line)
        .replaceAll(
            match ->
                Matcher.quoteReplacement(
                    longer.computeIfAbsent(match.group(1), text -> longer(text, first))));
  }

  private String longer(String text, String first) {
    int count = words.of(places.size(), first);
    places.add(first);
    firsts.add("q%05xz".formatted(serial));
    List<String> added =
        IntStream.range(0, Math.abs(count)).mapToObj(i -> "q%05xz".formatted(serial++)).toList();
    return "\"" + text + " " + String.join(count < 0 ? "" : " ", added) + "\"";
  }
}
