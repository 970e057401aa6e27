package passband.build;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import passband.library.Paths;
import passband.library.UsageException;
import passband.render.IndexPage;

/**
 * The folder that a build writes to. Everything is written aside first and moved into place when
 * all of it is there, a procedure's folder at a time, so that what stands in a folder is whole: the
 * old or the new. One build writes at a time.
 *
 * <p>Nothing is replaced or removed that no build wrote: see {@link WrittenFiles}.
 */
public final class Output implements AutoCloseable {
  /** What the last build wrote, and from what; held locked while a build goes on. */
  private static final String RECORD = ".built";

  private static final String ASIDE = ".new-build";
  private static final String BEFORE = ".old-build";

  private final Path out;
  private final FileChannel record;
  private final byte[] recorded;
  private final WrittenFiles before;
  private final WrittenFiles written;
  private final Path aside;
  private final boolean fresh;
  private final TreeMap<String, Set<String>> staged = new TreeMap<>();
  private boolean committed;

  private Output(Path out, FileChannel record, boolean fresh) throws UsageException, IOException {
    this.out = out;
    this.record = record;
    this.fresh = fresh;
    this.recorded = bytes(record);
    refuseForeign();
    this.before = WrittenFiles.of(recorded);
    this.written = WrittenFiles.of(recorded);
    tidy();
    // Nothing of this name is left, and no one else is at work here: the folder is locked.
    this.aside = Files.createDirectory(out.resolve(ASIDE));
  }

  /**
   * Opens a folder, which is made where there is none. Waits while another program's build is
   * writing to it.
   *
   * @param waits told before it waits
   */
  public static Output open(Path out, Runnable waits) throws UsageException, IOException {
    boolean told = false;
    while (true) {
      boolean fresh = !OutputFolder.exists(out);
      Files.createDirectories(out);
      OutputFolder.refuseSources(out);
      Path path = out.resolve(RECORD);
      if (Files.isSymbolicLink(path)) {
        throw new UsageException(path + ": this is a link, which no build follows; remove it");
      }
      FileChannel record =
          FileChannel.open(
              path, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
      try {
        boolean locked = isLocked(record, out);
        if (locked && Files.exists(path)) {
          return new Output(out, record, fresh);
        }
        if (!locked) {
          if (!told) {
            waits.run();
            told = true;
          }
          record.lock();
        }
        // A build that wrote nothing has taken its record away: this one may be of no use.
        record.close();
      } catch (UsageException | IOException | RuntimeException e) {
        record.close();
        throw e;
      }
    }
  }

  private static boolean isLocked(FileChannel record, Path out) throws UsageException, IOException {
    try {
      return record.tryLock() != null;
    } catch (OverlappingFileLockException e) { // this program's own: it would wait for itself
      throw new UsageException("another build is writing to " + out);
    }
  }

  /** What stands where a build keeps its own must be a build's. */
  private void refuseForeign() throws UsageException, IOException {
    if (recorded.length > 0) {
      String head = new String(recorded, 0, Math.min(recorded.length, 15), StandardCharsets.UTF_8);
      if (!head.equals(BuildRecord.TITLE)) {
        throw new UsageException(
            out.resolve(RECORD)
                + ": this is no record of a build; move it away, or name another --out");
      }
      return;
    }
    for (String own : List.of(ASIDE, BEFORE)) {
      if (OutputFolder.exists(out.resolve(own))) {
        throw new UsageException(
            out.resolve(own) + ": no build made this; move it away, or name another --out");
      }
    }
    record.write(ByteBuffer.wrap(bytes(BuildRecord.TITLE + "\n")));
  }

  /** Puts back or takes away what a build left that was killed. */
  private void tidy() throws IOException {
    Path old = out.resolve(BEFORE);
    if (OutputFolder.exists(old)) {
      for (Path folder : OutputFolder.in(old)) {
        takeBack(folder);
      }
      OutputFolder.delete(old);
    }
    OutputFolder.delete(out.resolve(ASIDE));
  }

  private void takeBack(Path old) throws IOException {
    String procedure = OutputFolder.name(old);
    if (OutputFolder.exists(out.resolve(procedure))) {
      new FolderSwap(out, before).keep(old, procedure);
    } else {
      Files.move(old, out.resolve(procedure));
    }
  }

  /** The folder of a procedure. */
  public Path folder(String procedure) {
    return out.resolve(procedure);
  }

  /** What the last build left written about itself; empty when there is nothing. */
  public byte[] record() {
    return recorded;
  }

  private static byte[] bytes(FileChannel record) throws IOException {
    byte[] bytes = new byte[(int) record.size()];
    record.position(0);
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining() && record.read(buffer) >= 0) {}
    return bytes;
  }

  /** Files that stand as an earlier build wrote them: each one's look by its path. */
  void stand(Map<String, String> files) {
    files.forEach(written::add);
  }

  /**
   * Writes the files of a procedure aside; paths may have folders in them.
   *
   * @param about what the library's page says of the procedure
   * @param source the file that the procedure is in
   * @return how each file looks from outside, by its path below this folder
   */
  public Map<String, String> stage(IndexPage.Entry about, Path source, Map<String, byte[]> files)
      throws IOException {
    String procedure = about.procedure();
    Map<String, String> looks = new TreeMap<>();
    synchronized (staged) {
      if (staged.putIfAbsent(procedure, looks.keySet()) != null) {
        return looks; // two procedures of one name: an error, and nothing is moved into place
      }
    }
    Path fresh = aside.resolve(procedure);
    Files.createDirectory(fresh);
    TreeSet<Path> made = new TreeSet<>(List.of(fresh));
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path path = Paths.resolve(fresh, file.getKey());
      if (made.add(Paths.folder(path))) {
        Files.createDirectories(Paths.folder(path));
      }
      write(path, file.getValue());
      looks.put(procedure + "/" + file.getKey(), look(path));
    }
    written.forget(procedure);
    written.made(procedure, Paths.from(out.toAbsolutePath().normalize(), source));
    looks.forEach(written::add);
    written.about(about);
    return looks;
  }

  /** A full disk says nothing of the file that it has no room for. */
  private void write(Path path, byte[] bytes) throws IOException {
    try {
      Files.write(path, bytes);
    } catch (FileSystemException e) {
      throw e; // it names the file
    } catch (IOException e) {
      throw new IOException(out + ": " + e.getMessage() + "; nothing was written", e);
    }
  }

  /** A file's size and the time of its last change; {@code -} where there is none. */
  static String look(Path file) throws IOException {
    try {
      BasicFileAttributes seen =
          Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      return seen.size() + "@" + seen.lastModifiedTime().to(TimeUnit.NANOSECONDS);
    } catch (NoSuchFileException e) {
      return "-";
    }
  }

  /**
   * Moves what was written into place, and writes about it into the record.
   *
   * @param built the names of all procedures of this build
   * @return a line on the output of each procedure that is gone from the sources
   */
  public List<String> commit(byte[] about, Set<String> built, GoneOutput gone)
      throws UsageException, IOException {
    FolderSwap swap = new FolderSwap(out, before);
    for (Map.Entry<String, Set<String>> procedure : staged.entrySet()) {
      swap.check(procedure.getKey(), procedure.getValue());
    }
    // Should this be stopped halfway, the next build knows its files by these lines.
    record.position(record.size());
    write(bytes("\n" + written.text()));
    Path old = Files.createDirectory(out.resolve(BEFORE));
    for (String procedure : staged.keySet()) {
      swap.replace(procedure, aside.resolve(procedure), old);
    }
    Files.delete(old);
    List<String> said = new ArrayList<>(gone.said(out, written, built));
    said.addAll(LibraryPage.write(out, aside, written, gone.gone(out, written, built)));
    record.position(0);
    write(about);
    write(bytes(written.text()));
    record.truncate(record.position());
    committed = true;
    return said;
  }

  private void write(byte[] bytes) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining()) {
      record.write(buffer);
    }
  }

  @Override
  public void close() throws IOException {
    try {
      OutputFolder.delete(aside);
    } finally {
      if (fresh && !committed) {
        Files.deleteIfExists(out.resolve(RECORD));
        if (OutputFolder.in(out).isEmpty()) {
          Files.delete(out);
        }
      }
      record.close();
    }
  }

  /** Text as the bytes of a file. */
  public static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
