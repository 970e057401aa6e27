package passband.library;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * The record of released revisions, {@code released.txt} beside the sources: a line for each with
 * its procedure, label, date, digest and the version of the meaning that the digest is of. Lines
 * that start with {@code #} are comments.
 *
 * @param entries in the order of the file
 */
public record Released(List<Entry> entries) {
  /** The file's name. */
  public static final String NAME = "released.txt";

  private static final Pattern LINE =
      Pattern.compile(
          "(\\p{L}[\\p{L}\\p{Nd}-]*) +\"([^\"]+)\" +(\\d{4}-\\d\\d-\\d\\d) +([0-9a-f]{64})(?: +meaning +(\\d{1,6}))?");

  /**
   * One released revision.
   *
   * @param meaning the version of the meaning that the digest is of; 0 where the line does not say
   */
  public record Entry(
      String procedure, String label, String date, String digest, int meaning, Span span) {
    /** As a line of the record. */
    public String line() {
      return procedure + " \"" + label + "\" " + date + " " + digest + " meaning " + meaning;
    }
  }

  /** Reads the record; what is no entry is said and left out. */
  public static Released parse(SourceFile source, Diagnostics diagnostics) {
    List<Entry> entries = new ArrayList<>();
    for (int i = 1; i <= source.lineCount(); i++) {
      String line = source.line(i).strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      int start = source.lineStart(i) + source.line(i).indexOf(line);
      Span span = new Span(source, start, start + line.length());
      Matcher matcher = LINE.matcher(line);
      if (matcher.matches()) {
        add(entries, entry(matcher, span), diagnostics);
      } else {
        diagnostics
            .say(Code.RECORD_SYNTAX, span, "this is not an entry of the release record")
            .hint(
                "an entry is PROCEDURE \"REVISION\" DATE DIGEST meaning N, as 'passband release' writes it");
      }
    }
    return new Released(List.copyOf(entries));
  }

  private static Entry entry(Matcher matcher, Span span) {
    int meaning = matcher.group(5) == null ? 0 : Integer.parseInt(matcher.group(5));
    return new Entry(
        matcher.group(1), matcher.group(2), matcher.group(3), matcher.group(4), meaning, span);
  }

  private static void add(List<Entry> entries, Entry entry, Diagnostics diagnostics) {
    for (Entry first : entries) {
      boolean same =
          first.procedure().equals(entry.procedure()) && first.label().equals(entry.label());
      if (same && first.meaning() >= entry.meaning()) {
        diagnostics
            .say(
                Code.RECORD_SYNTAX,
                entry.span(),
                "revision \"%s\" of '%s' is recorded twice",
                entry.label(),
                entry.procedure())
            .note(first.span(), "first recorded here");
        return;
      }
    }
    entries.add(entry);
  }

  /**
   * The entry of a procedure's revision, of the newest meaning where it was approved again; null
   * where there is none.
   */
  public @Nullable Entry find(String procedure, String label) {
    Entry found = null;
    for (Entry entry : entries) {
      if (entry.procedure().equals(procedure) && entry.label().equals(label)) {
        found = entry;
      }
    }
    return found;
  }
}
