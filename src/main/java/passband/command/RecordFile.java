package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.check.Releases;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.library.Decoder;
import passband.library.ReleaseEntry;
import passband.library.Released;
import passband.library.UsageException;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.source.SourceFile;

/** A record of releases on a disk to which entries are added. */
final class RecordFile {
  private static final String HEAD =
      "# Released revisions, each with the digest of the entry before it: written by 'passband release',"
          + " enforced by 'passband check'.\n";

  private final Path file;
  private final String was;
  private String now;
  private Released released;
  private final boolean forked;
  private final boolean broken;
  private final List<String> said = new ArrayList<>();

  RecordFile(Path file) throws IOException, UsageException {
    this.file = file;
    this.was = Files.exists(file) ? Files.readString(file) : HEAD;
    this.now = was;
    Diagnostics found = new Diagnostics();
    this.released = read(now, found);
    found.removeIf(one -> one.code() == Code.RECORD_FORK);
    this.broken = found.hasErrors();
    this.forked = released.ends().size() > 1;
  }

  private Released read(String text, Diagnostics found) throws UsageException {
    SourceFile source = Decoder.decode(Released.NAME, text.getBytes(StandardCharsets.UTF_8), found);
    if (source == null) {
      throw new UsageException(file + " is not valid UTF-8");
    }
    return Released.parse(source, found);
  }

  /** Whether it has errors other than a fork: then nothing is added to it. */
  boolean broken() {
    return broken;
  }

  Released released() {
    return released;
  }

  /** What is to be told of the entries. */
  List<String> said() {
    return said;
  }

  /**
   * Adds what a procedure means now, unless the record holds it already; in a fork it is approved
   * again, which brings the branches together.
   *
   * @return what is against it; null where nothing is
   */
  @Nullable String release(Plan plan, ReleaseEntry.Approval approval) throws UsageException {
    if (plan.release().isReleased() && !forked) {
      ReleaseEntry own = released.find(plan.name().text(), plan.revision().label());
      said.add("already released: " + (own == null ? plan.name().text() : own.line()));
      return null;
    }
    ReleaseEntry entry =
        new ReleaseEntry(
            plan.name().text(),
            plan.revision().label(),
            plan.revision().date(),
            plan.digest(),
            Meaning.VERSION,
            approval,
            plan.name().span());
    Released before = released;
    String text = now;
    add(entry);
    String missing = Releases.check(plan, released, new Diagnostics()).missing();
    if (missing != null) {
      released = before;
      now = text;
      said.remove(said.size() - 1);
    }
    return missing;
  }

  /** Adds an entry after the last. */
  void add(ReleaseEntry entry) throws UsageException {
    ReleaseEntry.Approval given = Objects.requireNonNull(entry.approval());
    ReleaseEntry chained =
        new ReleaseEntry(
            entry.procedure(),
            entry.label(),
            entry.date(),
            entry.digest(),
            entry.meaning(),
            new ReleaseEntry.Approval(given.by(), given.on(), released.ends()),
            entry.span());
    String end = now.isEmpty() || now.endsWith("\n") ? "" : "\n";
    now = now + end + chained.line() + "\n";
    released = read(now, new Diagnostics());
    said.add((entry.withdrawn() ? "withdrawn: " : "released: ") + chained.line());
  }

  /** Writes the record where something was added. */
  void write() throws IOException {
    if (!now.equals(was)) {
      WholeFile.write(file, now.getBytes(StandardCharsets.UTF_8));
    }
  }
}
