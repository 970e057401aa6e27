package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.library.ReleaseEntry;
import passband.library.Released;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.plan.Release;
import passband.source.Span;
import passband.syntax.Heading;
import passband.syntax.Word;

/**
 * A procedure against the record of releases beside it.
 *
 * <p>{@code revision-reused}, an error: the record holds this revision with another digest. {@code
 * release-not-comparable}, a warning: it holds a digest of another version of the meaning. {@code
 * release-unapproved}, a warning: it does not say who approved it. {@code replaced-digest}, an
 * error: the revision that this one replaces was released with another digest than is said here.
 * {@code replaced-unrecorded}, a warning: the record does not hold it, so that nothing vouches for
 * the digest. {@code revision-gap}, a warning: it does not replace the one released before it.
 *
 * <p>With any of them the procedure is not released.
 */
public final class Releases {
  /** Another instrument makes another meaning, which nobody has approved. */
  public static final Release RETARGETED =
      new Release("it is compiled for another instrument than its own");

  /** So many characters of a digest are enough to name it. */
  private static final int ENOUGH = 12;

  private static final String AGAIN =
      "compare it with what was signed, then approve it again by 'passband release'";

  private final Plan plan;
  private final Heading.Revision revision;
  private final Released record;
  private final Diagnostics diagnostics;

  private Releases(Plan plan, Heading.Revision revision, Released record, Diagnostics diagnostics) {
    this.plan = plan;
    this.revision = revision;
    this.record = record;
    this.diagnostics = diagnostics;
  }

  /**
   * Compares a procedure with the record beside its source.
   *
   * @param record null where there is none
   */
  public static Release check(Plan plan, @Nullable Released record, Diagnostics diagnostics) {
    Heading.Revision revision = plan.tree().revision();
    if (revision == null) {
      return Release.UNKNOWN;
    }
    if (record == null) {
      return new Release("there is no " + Released.NAME + " beside its source");
    }
    return new Releases(plan, revision, record, diagnostics).release();
  }

  private Release release() {
    ReleaseEntry own = record.find(procedure(), revision.label().text());
    Release entry = own == null ? unrecorded() : entry(own);
    String gap = followed();
    return gap == null ? entry : new Release(gap);
  }

  private String procedure() {
    return plan.name().text();
  }

  private Release unrecorded() {
    ReleaseEntry last = record.last(procedure());
    String recorded =
        last == null
            ? ""
            : last.withdrawn()
                ? "; it was withdrawn"
                : "; the last one is \"" + last.label() + "\"";
    return new Release(
        Released.NAME
            + " has no entry for revision \""
            + revision.label().text()
            + "\""
            + recorded);
  }

  private Release entry(ReleaseEntry own) {
    Span label = revision.label().span();
    if (!own.digest().equals(plan.digest()) && own.meaning() != Meaning.VERSION) {
      diagnostics
          .say(
              Code.RELEASE_NOT_COMPARABLE,
              label,
              "the release of revision \"%s\" cannot be compared: its digest is of another version of"
                  + " the meaning, so that this counts as not released",
              own.label())
          .note(own.span(), "it is recorded here")
          .hint(AGAIN);
      return new Release("its entry is of another version of the meaning");
    }
    if (!own.digest().equals(plan.digest())) {
      diagnostics
          .say(
              Code.REVISION_REUSED,
              label,
              "revision \"%s\" was released with another meaning; the digest is now %s",
              own.label(),
              plan.digest().substring(0, ENOUGH))
          .note(own.span(), "it is recorded here")
          .hint("give the changed procedure a new revision");
      return new Release("its revision was released with another meaning");
    }
    if (own.approval() == null) {
      diagnostics
          .say(
              Code.RELEASE_UNAPPROVED,
              label,
              "the record does not say who approved revision \"%s\", so that this counts as not"
                  + " released",
              own.label())
          .note(own.span(), "it is recorded here, in the form of an older Passband")
          .hint(AGAIN);
      return new Release("its entry does not say who approved it");
    }
    return latest(own);
  }

  /** An old revision's sheet is not to be worked by when a newer one was released. */
  private Release latest(ReleaseEntry own) {
    ReleaseEntry last = record.last(procedure());
    if (last != null && last.withdrawn()) {
      return new Release("it was withdrawn");
    }
    return last == null || last.label().equals(own.label())
        ? Release.RELEASED
        : new Release("revision \"" + last.label() + "\" was released after it");
  }

  /** Why this does not follow what was released before it; null where it does. */
  private @Nullable String followed() {
    Word replaces = revision.replaces();
    Word digest = revision.replacesDigest();
    ReleaseEntry before = record.before(procedure(), revision.label().text());
    ReleaseEntry entry = replaces == null ? null : record.find(procedure(), replaces.text());
    boolean unknown = replaces != null && entry == null;
    if (before != null
        && !unknown
        && (replaces == null || !replaces.text().equals(before.label()))) {
      sayGap(before, replaces);
      return "it does not replace revision \"" + before.label() + "\", released before it";
    }
    if (replaces == null || digest == null) {
      return null;
    }
    if (entry == null) {
      if (record.whole()) {
        diagnostics
            .say(
                Code.REPLACED_UNRECORDED,
                replaces.span(),
                "the release record has no revision \"%s\" of this procedure",
                replaces.text())
            .hint("release that revision with 'passband release' from its own sources");
      }
      return "it replaces revision \"" + replaces.text() + "\", which is not in the record";
    }
    boolean same =
        digest.text().length() >= ENOUGH
            && record.holds(procedure(), replaces.text(), digest.text());
    if (!same) {
      sayDigest(entry, digest);
    }
    return same ? null : "it replaces another digest than the released one";
  }

  private void sayGap(ReleaseEntry before, @Nullable Word replaces) {
    String right =
        "replaces \""
            + before.label()
            + "\" on "
            + before.date()
            + " digest \""
            + enough(before)
            + "\"";
    Span date = revision.date().span();
    DiagnosticBuilder said =
        replaces == null
            ? diagnostics.say(
                Code.REVISION_GAP,
                revision.label().span(),
                "this revision does not say that it replaces \"%s\", the one released before it",
                before.label())
            : diagnostics.say(
                Code.REVISION_GAP,
                replaces.span(),
                "\"%s\" is not the revision released before this one: that is \"%s\"",
                replaces.text(),
                before.label());
    said.note(before.span(), "it is recorded here").hint("write after the date: %s", right);
    said.fix(
        replaces == null
            ? Fix.insert("write '" + right + "'", date.atEnd(), " " + right)
            : Fix.replace(new Span(date.file(), date.end(), revision.span().end()), " " + right));
  }

  private void sayDigest(ReleaseEntry entry, Word written) {
    String right = "\"" + enough(entry) + "\"";
    Span span = written.span();
    DiagnosticBuilder said =
        written.text().length() < ENOUGH
            ? diagnostics.say(
                Code.REPLACED_DIGEST, span, "a digest needs at least %d characters", ENOUGH)
            : diagnostics.say(
                Code.REPLACED_DIGEST,
                span,
                "revision \"%s\" was released with another digest",
                entry.label());
    said.note(entry.span(), "it is recorded here")
        .hint("write %s", right)
        .fix(Fix.replace(span, right));
  }

  private static String enough(ReleaseEntry entry) {
    return entry.digest().substring(0, ENOUGH);
  }
}
