package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.library.Released;
import passband.plan.Plan;
import passband.syntax.Tree;

/**
 * {@code revision-reused}, an error: the record of releases holds this revision with another
 * digest. {@code replaced-digest}, an error: the revision that this one replaces was released with
 * another digest than is said here. {@code replaced-unrecorded}, a warning: the record does not
 * hold it, so that nothing vouches for the digest.
 */
public final class Releases {
  /** So many characters of a digest are enough to name it. */
  private static final int ENOUGH = 12;

  private Releases() {}

  /** Holds a procedure against the record beside its source. */
  public static void check(Plan plan, Released released, Diagnostics diagnostics) {
    Tree.Revision revision = plan.tree().revision();
    if (revision == null) {
      return;
    }
    Released.Entry own = released.find(plan.name().text(), plan.revision().label());
    if (own != null && !own.digest().equals(plan.digest())) {
      diagnostics.add(
          Diagnostic.of(
                  Code.REVISION_REUSED,
                  revision.label().span(),
                  "revision \""
                      + own.label()
                      + "\" was released with another meaning; this one's digest is "
                      + plan.digest().substring(0, ENOUGH))
              .note(own.span(), "the record has it here")
              .hint("give the new meaning a revision of its own"));
    }
    if (revision.replaces() != null) {
      replaced(plan, revision, released, diagnostics);
    }
  }

  private static void replaced(
      Plan plan, Tree.Revision revision, Released released, Diagnostics diagnostics) {
    String label = revision.replaces().text();
    Released.Entry entry = released.find(plan.name().text(), label);
    String digest = revision.replacesDigest().text();
    if (entry == null) {
      diagnostics.add(
          Diagnostic.of(
                  Code.REPLACED_UNRECORDED,
                  revision.replaces().span(),
                  "the record of releases has no revision \"" + label + "\" of this procedure")
              .hint("release it with 'passband release' from the sources it was made of"));
    } else if (digest.length() < ENOUGH || !entry.digest().startsWith(digest)) {
      diagnostics.add(
          Diagnostic.of(
                  Code.REPLACED_DIGEST,
                  revision.replacesDigest().span(),
                  digest.length() < ENOUGH
                      ? "a digest is given by " + ENOUGH + " characters or more"
                      : "revision \"" + label + "\" was released with another digest")
              .note(entry.span(), "the record has it here")
              .hint("write \"" + entry.digest().substring(0, ENOUGH) + "\""));
    }
  }
}
