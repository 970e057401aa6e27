package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.library.Released;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.source.Span;
import passband.syntax.Heading;
import passband.syntax.Word;

/**
 * {@code revision-reused}, an error: the release record holds this revision with another digest.
 * {@code release-not-comparable}, a warning: it holds a digest of another version of the meaning.
 * {@code replaced-digest}, an error: the revision that this one replaces was released with another
 * digest than is said here. {@code replaced-unrecorded}, a warning: the record does not hold it, so
 * that nothing vouches for the digest.
 */
public final class Releases {
  /** So many characters of a digest are enough to name it. */
  private static final int ENOUGH = 12;

  private Releases() {}

  /** Compares a procedure with the record beside its source. */
  public static void check(Plan plan, Released released, Diagnostics diagnostics) {
    Heading.Revision revision = plan.tree().revision();
    if (revision == null) {
      return;
    }
    Released.Entry own = released.find(plan.name().text(), plan.revision().label());
    if (own != null && !own.digest().equals(plan.digest()) && own.meaning() != Meaning.VERSION) {
      diagnostics
          .say(
              Code.RELEASE_NOT_COMPARABLE,
              revision.label().span(),
              "the release of revision \"%s\" cannot be compared: its digest is of another version of"
                  + " the meaning, so that this counts as not released",
              own.label())
          .note(own.span(), "it is recorded here")
          .hint("compare it with what was signed, then approve it again by 'passband release'");
    } else if (own != null && !own.digest().equals(plan.digest())) {
      diagnostics
          .say(
              Code.REVISION_REUSED,
              revision.label().span(),
              "revision \"%s\" was released with another meaning; the digest is now %s",
              own.label(),
              plan.digest().substring(0, ENOUGH))
          .note(own.span(), "it is recorded here")
          .hint("give the changed procedure a new revision");
    }
    if (revision.replaces() != null && revision.replacesDigest() != null) {
      replaced(plan, revision.replaces(), revision.replacesDigest(), released, diagnostics);
    }
  }

  /** Whether the record holds this revision of a procedure with what it means. */
  public static boolean holds(Plan plan, Released released) {
    Released.Entry entry = released.find(plan.name().text(), plan.revision().label());
    return entry != null && entry.digest().equals(plan.digest());
  }

  private static void replaced(
      Plan plan, Word replaces, Word written, Released released, Diagnostics diagnostics) {
    String label = replaces.text();
    Released.Entry entry = released.find(plan.name().text(), label);
    String digest = written.text();
    if (entry == null) {
      diagnostics
          .say(
              Code.REPLACED_UNRECORDED,
              replaces.span(),
              "the release record has no revision \"%s\" of this procedure",
              label)
          .hint("release that revision with 'passband release' from its own sources");
    } else if (digest.length() < ENOUGH || !entry.digest().startsWith(digest)) {
      String right = "\"" + entry.digest().substring(0, ENOUGH) + "\"";
      Span span = written.span();
      DiagnosticBuilder said =
          digest.length() < ENOUGH
              ? diagnostics.say(
                  Code.REPLACED_DIGEST, span, "a digest needs at least %d characters", ENOUGH)
              : diagnostics.say(
                  Code.REPLACED_DIGEST,
                  span,
                  "revision \"%s\" was released with another digest",
                  label);
      said.note(entry.span(), "it is recorded here")
          .hint("write %s", right)
          .fix(Fix.replace(span, right));
    }
  }
}
