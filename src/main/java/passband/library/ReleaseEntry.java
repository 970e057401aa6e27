package passband.library;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Sha256;
import passband.source.Span;

/**
 * One line of the record of releases: a revision that was approved, or that a procedure was
 * withdrawn.
 *
 * @param label the revision's; empty where the procedure was withdrawn, as are its date and digest
 * @param meaning the version of the meaning that the digest is of; 0 where the line does not say
 * @param approval null in a line of the older form, which is in no chain
 */
public record ReleaseEntry(
    String procedure,
    String label,
    String date,
    String digest,
    int meaning,
    @Nullable Approval approval,
    Span span) {

  /**
   * Who approved it, and what the record held then.
   *
   * @param on the date, YYYY-MM-DD
   * @param after the digests of the entries that this one follows, as {@link #chainDigest} has
   *     them: two or more where it brings branches together, none for the first of a record
   */
  public record Approval(String by, String on, List<String> after) {
    /** Copies the digests. */
    public Approval {
      after = List.copyOf(after);
    }
  }

  /** Whether it says that the procedure was withdrawn. */
  public boolean withdrawn() {
    return label.isEmpty();
  }

  /** As a line of the record. */
  public String line() {
    String what =
        withdrawn()
            ? procedure + " withdrawn"
            : procedure + " \"" + label + "\" " + date + " " + digest + " meaning " + meaning;
    if (approval == null) {
      return what;
    }
    String after =
        approval.after.isEmpty() ? "first" : "after " + String.join(" and ", approval.after);
    return what + " approved \"" + approval.by + "\" " + approval.on + " " + after;
  }

  /** SHA-256 of the line, in lower-case hexadecimal: what an entry that follows it holds. */
  String chainDigest() {
    return Sha256.hex(span.text().getBytes(StandardCharsets.UTF_8));
  }
}
