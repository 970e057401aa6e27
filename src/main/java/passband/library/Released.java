package passband.library;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;
import passband.source.Span;

/**
 * The record of released revisions, {@code released.txt} beside the sources: a line for each with
 * its procedure, label, date, digest, the version of the meaning that the digest is of, who
 * approved it, when, and the digest of the line before. Lines that start with {@code #} are
 * comments.
 *
 * @param entries in the order of the file
 * @param whole whether every line could be read: else an entry that is not found may be there
 */
public record Released(List<ReleaseEntry> entries, boolean whole) {
  /** The file's name. */
  public static final String NAME = "released.txt";

  private static final String HEX = "[0-9a-f]{64}";
  private static final Pattern LINE =
      Pattern.compile(
          "(\\p{L}[\\p{L}\\p{Nd}-]*) +(?:\"([^\"]+)\" +(\\d{4}-\\d\\d-\\d\\d) +("
              + HEX
              + ")(?: +meaning +(\\d{1,6}))?|withdrawn)"
              + "(?: +approved +\"([^\"]+)\" +(\\d{4}-\\d\\d-\\d\\d) +(?:first|after +("
              + HEX
              + "(?: +and +"
              + HEX
              + ")*)))?");

  /** How the lines begin that git puts around what two branches have written. */
  private static final List<String> MARKERS = List.of("<<<<<<<", "|||||||", "=======", ">>>>>>>");

  /** Reads the record; what is no entry is said and left out, and so is a break in its chain. */
  public static Released parse(SourceFile source, Diagnostics diagnostics) {
    List<ReleaseEntry> entries = new ArrayList<>();
    boolean whole = true;
    boolean conflict = false;
    for (int i = 1; i <= source.lineCount(); i++) {
      String line = source.line(i).strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      int start = source.lineStart(i) + source.line(i).indexOf(line);
      Span span = new Span(source, start, start + line.length());
      if (isMarker(line)) {
        if (!conflict) {
          sayConflict(span, diagnostics);
        }
        conflict = true;
        continue;
      }
      ReleaseEntry entry = entry(span);
      if (entry == null) {
        whole = false;
        saySyntax(span, diagnostics);
      } else {
        entries.add(entry);
      }
    }
    if (whole && !conflict) {
      ReleaseChain.check(entries, diagnostics);
    }
    return new Released(List.copyOf(entries), whole && !conflict);
  }

  private static boolean isMarker(String line) {
    for (String marker : MARKERS) {
      if (line.startsWith(marker)) {
        return true;
      }
    }
    return false;
  }

  private static void sayConflict(Span span, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.RECORD_CONFLICT,
            span,
            "git could not merge this record: two branches have released")
        .hint(
            "remove git's marker lines and keep every entry of both branches; look at what both"
                + " branches together mean, then approve it by 'passband release'");
  }

  private static void saySyntax(Span span, Diagnostics diagnostics) {
    diagnostics
        .say(Code.RECORD_SYNTAX, span, "this is not an entry of the release record")
        .hint(
            "an entry is PROCEDURE \"REVISION\" DATE DIGEST meaning N approved \"NAME\" DATE after"
                + " DIGEST, as 'passband release' writes it");
  }

  /** The entry that a line is; null where it is none. */
  private static @Nullable ReleaseEntry entry(Span span) {
    Matcher line = LINE.matcher(span.text());
    if (!line.matches()) {
      return null;
    }
    boolean withdrawn = line.group(2) == null;
    ReleaseEntry.Approval approval = approval(line);
    if (withdrawn && approval == null) {
      return null;
    }
    return new ReleaseEntry(
        line.group(1),
        withdrawn ? "" : line.group(2),
        withdrawn ? "" : line.group(3),
        withdrawn ? "" : line.group(4),
        line.group(5) == null ? 0 : Integer.parseInt(line.group(5)),
        approval,
        span);
  }

  private static ReleaseEntry.@Nullable Approval approval(Matcher line) {
    if (line.group(6) == null) {
      return null;
    }
    String after = line.group(8);
    List<String> digests = after == null ? List.of() : List.of(after.split(" +and +"));
    return new ReleaseEntry.Approval(line.group(6), line.group(7), digests);
  }

  /**
   * The entry of a procedure's revision, of the newest meaning where it was approved again; null
   * where there is none.
   */
  public @Nullable ReleaseEntry find(String procedure, String label) {
    ReleaseEntry found = null;
    for (ReleaseEntry entry : entries) {
      if (entry.procedure().equals(procedure) && entry.label().equals(label)) {
        found = entry;
      }
    }
    return found;
  }

  /** Whether a revision was ever released with a digest that begins so. */
  public boolean holds(String procedure, String label, String digest) {
    for (ReleaseEntry entry : entries) {
      if (entry.procedure().equals(procedure)
          && entry.label().equals(label)
          && entry.digest().startsWith(digest)) {
        return true;
      }
    }
    return false;
  }

  /** The last entry of a procedure; null where there is none. */
  public @Nullable ReleaseEntry last(String procedure) {
    ReleaseEntry last = null;
    for (ReleaseEntry entry : entries) {
      last = entry.procedure().equals(procedure) ? entry : last;
    }
    return last;
  }

  /**
   * What was recorded of a procedure last before a revision of it was first recorded, or at all
   * where that has not been; null where there is nothing, or the procedure was withdrawn by then.
   */
  public @Nullable ReleaseEntry before(String procedure, String label) {
    ReleaseEntry before = null;
    for (ReleaseEntry entry : entries) {
      if (entry.procedure().equals(procedure)) {
        if (entry.label().equals(label)) {
          break;
        }
        before = entry.withdrawn() ? null : entry;
      }
    }
    return before;
  }

  /** The procedures that the record has entries of, in order of their first. */
  public Set<String> procedures() {
    Set<String> procedures = new LinkedHashSet<>();
    entries.forEach(entry -> procedures.add(entry.procedure()));
    return procedures;
  }

  /** What the next entry has to follow: one digest; two or more in a fork; none at the start. */
  public List<String> ends() {
    return ReleaseChain.ends(entries);
  }
}
