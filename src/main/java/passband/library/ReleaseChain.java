package passband.library;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.source.Sha256;

/**
 * How the entries of a record hold on to each other: each has the digest of the line before, so
 * that a line cannot be taken out, put in or changed without the next one saying so. Lines of the
 * older form, which have no such digest, stand before the first that has one and are held by it
 * together.
 *
 * <p>Git's branches can each add an entry after the same line. That is a fork until an entry
 * follows both.
 */
final class ReleaseChain {
  private static final int START = -1;

  private final List<ReleaseEntry> entries;
  private final int older;
  private final Diagnostics diagnostics;

  /** The entries by what those after them hold; the older ones together as the last of them. */
  private final Map<String, Integer> byDigest = new LinkedHashMap<>();

  /** For each entry those before it that it follows, directly or not. */
  private final List<BitSet> followed = new ArrayList<>();

  private final BitSet ends = new BitSet();
  private boolean gap;

  private ReleaseChain(List<ReleaseEntry> entries, Diagnostics diagnostics) {
    this.entries = entries;
    this.older = older(entries);
    this.diagnostics = diagnostics;
  }

  /** Says where the chain has a gap or a fork. */
  static void check(List<ReleaseEntry> entries, Diagnostics diagnostics) {
    ReleaseChain chain = new ReleaseChain(entries, diagnostics);
    chain.follow();
    chain.sayTwins();
    chain.sayForks();
  }

  /** What the next entry has to follow: one digest; two or more in a fork; none at the start. */
  static List<String> ends(List<ReleaseEntry> entries) {
    ReleaseChain chain = new ReleaseChain(entries, new Diagnostics());
    chain.follow();
    List<String> ends = new ArrayList<>();
    chain.byDigest.forEach(
        (digest, entry) -> {
          if (chain.ends.get(entry)) {
            ends.add(digest);
          }
        });
    return ends;
  }

  /** How many lines of the older form stand first. */
  private static int older(List<ReleaseEntry> entries) {
    int count = 0;
    while (count < entries.size() && entries.get(count).approval() == null) {
      count++;
    }
    return count;
  }

  private void follow() {
    for (int i = 0; i < older; i++) {
      BitSet before = new BitSet();
      before.set(0, i);
      followed.add(before);
    }
    if (older > 0) {
      byDigest.put(digestOfOlder(), older - 1);
      ends.set(older - 1);
    }
    for (int i = older; i < entries.size(); i++) {
      followed.add(before(entries.get(i)));
      byDigest.put(entries.get(i).chainDigest(), i);
      ends.set(i);
    }
  }

  private String digestOfOlder() {
    StringBuilder lines = new StringBuilder();
    entries.subList(0, older).forEach(entry -> lines.append(entry.span().text()).append('\n'));
    return Sha256.hex(lines.toString().getBytes(StandardCharsets.UTF_8));
  }

  private BitSet before(ReleaseEntry entry) {
    BitSet before = new BitSet();
    ReleaseEntry.Approval approval = entry.approval();
    if (approval == null) {
      gap = true;
      diagnostics
          .say(
              Code.RECORD_GAP,
              entry.span(),
              "this entry does not say who approved it, and stands below entries that do")
          .hint("remove it, and approve that revision by 'passband release'");
      return before;
    }
    for (String digest : approval.after()) {
      Integer parent = byDigest.get(digest);
      if (parent == null) {
        sayGap(entry);
      } else {
        ends.clear(parent);
        before.or(followed.get(parent));
        before.set(parent);
      }
    }
    return before;
  }

  private void sayGap(ReleaseEntry entry) {
    gap = true;
    diagnostics
        .say(
            Code.RECORD_GAP,
            entry.span(),
            "the entry that this one was added after is not above it: one was removed, changed or"
                + " moved")
        .hint(
            "restore the record from git (git log -p -- %s shows what was changed)", Released.NAME);
  }

  /** Several entries that none follows: each branch has one. */
  private void sayForks() {
    if (gap || ends.cardinality() < 2) {
      return;
    }
    int one = ends.nextSetBit(0);
    for (int other = ends.nextSetBit(one + 1); other >= 0; other = ends.nextSetBit(other + 1)) {
      int last = lastOfBoth(one, other);
      diagnostics
          .say(
              Code.RECORD_FORK,
              entries.get(other).span(),
              "%s was released without knowledge of %s: on two branches%s",
              named(entries.get(other)),
              named(entries.get(one)),
              last == START ? "" : ", after " + named(entries.get(last)))
          .note(entries.get(one).span(), "the other branch ends here")
          .hint(
              "look at what both branches together mean, then approve it again: 'passband release'"
                  + " adds an entry that follows both");
    }
  }

  private int lastOfBoth(int one, int other) {
    BitSet both = (BitSet) followed.get(one).clone();
    both.and(followed.get(other));
    return both.length() - 1;
  }

  private static String named(ReleaseEntry entry) {
    return entry.withdrawn()
        ? "the withdrawal of '" + entry.procedure() + "'"
        : "revision \"" + entry.label() + "\" of '" + entry.procedure() + "'";
  }

  /** The same revision with two digests of one meaning. */
  private void sayTwins() {
    for (int i = 0; i < entries.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (areTwins(entries.get(j), entries.get(i))) {
          sayTwins(j, i);
          break;
        }
      }
    }
  }

  private static boolean areTwins(ReleaseEntry one, ReleaseEntry other) {
    return !one.withdrawn()
        && one.procedure().equals(other.procedure())
        && one.label().equals(other.label())
        && one.meaning() >= other.meaning()
        && (other.approval() == null
            || one.meaning() > other.meaning()
            || !one.digest().equals(other.digest()));
  }

  private void sayTwins(int one, int other) {
    ReleaseEntry entry = entries.get(other);
    boolean apart = entry.approval() != null && !followed.get(other).get(one);
    if (apart && isReplaced(one, other)) {
      return;
    }
    if (apart) {
      diagnostics
          .say(
              Code.RECORD_FORK,
              entry.span(),
              "revision \"%s\" of '%s' was released on two branches with different meanings",
              entry.label(),
              entry.procedure())
          .note(entries.get(one).span(), "the other branch released it here")
          .hint(
              "give what both branches together mean a new revision that replaces \"%s\", and"
                  + " release that",
              entry.label());
    } else {
      diagnostics
          .say(
              Code.RECORD_SYNTAX,
              entry.span(),
              "revision \"%s\" of '%s' is recorded twice",
              entry.label(),
              entry.procedure())
          .note(entries.get(one).span(), "first recorded here");
    }
  }

  /** Whether a later revision of the procedure was approved by somebody who knew of both. */
  private boolean isReplaced(int one, int other) {
    for (int i = other + 1; i < entries.size(); i++) {
      ReleaseEntry entry = entries.get(i);
      BitSet before = followed.get(i);
      if (entry.procedure().equals(entries.get(one).procedure())
          && !entry.label().equals(entries.get(one).label())
          && before.get(one)
          && before.get(other)) {
        return true;
      }
    }
    return false;
  }
}
