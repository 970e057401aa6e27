package passband.edit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.library.Library;
import passband.plan.Slot;
import passband.source.SourceFile;
import passband.syntax.SharedPart;
import passband.syntax.Step;
import passband.syntax.Tree;
import passband.syntax.Word;

/** What may be written inside a text: the path of a file that is used, a placeholder. */
final class TextCompletions {
  private static final Pattern USE = Pattern.compile("^[ \\t]*use[ \\t]+\"([^\"]*)$");
  private static final Pattern PLACEHOLDER =
      Pattern.compile("(?:^|[^{])(?:\\{\\{)*\\{([\\p{L}\\p{Nd}-]*)$");

  private TextCompletions() {}

  /**
   * The proposals.
   *
   * @param files the paths of the library's files
   */
  static List<Completion> at(Analysis analysis, int offset, Collection<String> files) {
    SourceFile source = analysis.source();
    String line = source.text().substring(source.lineStart(source.lineOf(offset)), offset);
    Matcher use = USE.matcher(line);
    if (use.find()) {
      return paths(analysis, offset - use.group(1).length(), files);
    }
    Matcher placeholder = PLACEHOLDER.matcher(line);
    return placeholder.find()
        ? placeholders(analysis, offset - placeholder.group(1).length())
        : List.of();
  }

  /** The files that are not used yet, by their paths from this one. */
  private static List<Completion> paths(Analysis analysis, int from, Collection<String> files) {
    String own = analysis.source().path();
    List<String> used = new ArrayList<>();
    for (Tree.Use use : analysis.file().uses()) {
      boolean typed = use.path().span().start() <= from && from <= use.path().span().end();
      String path = typed ? null : Library.normalised(own, use.path().text());
      if (path != null) {
        used.add(path);
      }
    }
    List<Completion> found = new ArrayList<>();
    for (String file : files) {
      if (!file.equals(own) && !used.contains(file)) {
        found.add(new Completion(relative(own, file), "file", "a file of the library", from));
      }
    }
    return found;
  }

  /** A file's path from the folder of another. */
  private static String relative(String own, String file) {
    int common = 0;
    for (int slash = own.indexOf('/'); slash >= 0; slash = own.indexOf('/', slash + 1)) {
      if (file.startsWith(own.substring(0, slash + 1))) {
        common = slash + 1;
      }
    }
    long up = own.substring(common).chars().filter(c -> c == '/').count();
    return "../".repeat((int) up) + file.substring(common);
  }

  /** What a point gives, the further settings in sight, and what sections record. */
  private static List<Completion> placeholders(Analysis analysis, int from) {
    Map<String, Completion> found = new LinkedHashMap<>();
    for (Slot slot : Slot.values()) {
      if (slot != Slot.EXTRA && slot != Slot.PARTNER && slot != Slot.RECORD) {
        String name = slot.name().toLowerCase(Locale.ROOT);
        found.put(name, new Completion(name, "placeholder", "of the point", from));
      }
    }
    for (Tree.File file : analysis.visible()) {
      for (Tree.Declaration one : file.declarations()) {
        if (one instanceof Tree.Device device) {
          device.settings().forEach(s -> put(found, s.name(), "a setting", from));
        } else if (one instanceof Tree.Analyzer analyzer) {
          analyzer.settings().forEach(s -> put(found, s.name(), "a setting", from));
        } else if (one instanceof Tree.Procedure procedure) {
          records(found, procedure, from);
        } else if (one instanceof SharedPart part) {
          records(found, part.lines(), from);
        }
      }
    }
    return List.copyOf(found.values());
  }

  private static void records(Map<String, Completion> found, Tree.Procedure lines, int from) {
    for (Step step : lines.steps()) {
      if (step instanceof Step.Record recorded) {
        put(found, recorded.name(), "what is recorded", from);
      }
    }
  }

  private static void put(Map<String, Completion> found, Word name, String detail, int from) {
    found.putIfAbsent(name.text(), new Completion(name.text(), "placeholder", detail, from));
  }
}
