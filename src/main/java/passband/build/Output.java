package passband.build;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import passband.library.Paths;
import passband.library.UsageException;

/**
 * The folder that a build writes to. Everything is written aside first and moved into place when
 * all of it is there, a procedure's folder at a time, so that what stands in a folder is whole: the
 * old or the new. One build writes at a time.
 */
public final class Output implements AutoCloseable {
  /** What the last build wrote, and from what; held locked while a build goes on. */
  private static final String RECORD = ".built";

  private static final String ASIDE = ".new-";
  private static final String BEFORE = ".old-";

  private final Path out;
  private final FileChannel record;
  private final Path aside;
  private final boolean fresh;
  private final TreeSet<String> staged = new TreeSet<>();
  private boolean committed;

  private Output(Path out, FileChannel record, boolean fresh) throws IOException {
    this.out = out;
    this.record = record;
    this.fresh = fresh;
    tidy();
    // Nothing of this name is left, and no one else is at work here: the folder is locked.
    this.aside = Files.createDirectory(out.resolve(ASIDE + "build"));
  }

  /** Opens a folder, which is made where there is none. */
  public static Output open(Path out) throws UsageException, IOException {
    boolean fresh = !exists(out);
    Files.createDirectories(out);
    FileChannel record =
        FileChannel.open(
            out.resolve(RECORD),
            StandardOpenOption.CREATE,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE);
    try {
      if (lock(record) == null) {
        throw new UsageException("another build is writing to " + out);
      }
      return new Output(out, record, fresh);
    } catch (UsageException | IOException | RuntimeException e) {
      record.close();
      throw e;
    }
  }

  private static @Nullable FileLock lock(FileChannel record) throws IOException {
    try {
      return record.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    }
  }

  /** Puts back or takes away what a build left that was killed. */
  private void tidy() throws IOException {
    for (Path folder : in(out)) {
      if (name(folder).startsWith(BEFORE)) {
        for (Path old : in(folder)) {
          if (!exists(out.resolve(name(old)))) {
            Files.move(old, out.resolve(name(old)));
          }
        }
        delete(folder);
      } else if (name(folder).startsWith(ASIDE)) {
        delete(folder);
      }
    }
  }

  private static List<Path> in(Path folder) throws IOException {
    List<Path> all = new ArrayList<>();
    try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
      stream.forEach(all::add);
    }
    return all;
  }

  private static String name(Path path) {
    return path.getFileName().toString();
  }

  private static boolean exists(Path path) {
    return Files.exists(path, LinkOption.NOFOLLOW_LINKS);
  }

  /** The folder of a procedure. */
  public Path folder(String procedure) {
    return out.resolve(procedure);
  }

  /** What the last build left written about itself; empty when there is nothing. */
  public byte[] record() throws IOException {
    byte[] bytes = new byte[(int) record.size()];
    record.position(0);
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    while (buffer.hasRemaining() && record.read(buffer) >= 0) {}
    return bytes;
  }

  /**
   * Writes the files of a procedure aside; paths may have folders in them.
   *
   * @return how each file looks from outside, by its path below this folder
   */
  public Map<String, String> stage(String procedure, Map<String, byte[]> files) throws IOException {
    Map<String, String> looks = new TreeMap<>();
    synchronized (staged) {
      if (!staged.add(procedure)) {
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
      Files.write(path, file.getValue());
      looks.put(procedure + "/" + file.getKey(), look(path));
    }
    return looks;
  }

  /** A file's size and the time of its last change; {@code -} where there is none. */
  static String look(Path file) throws IOException {
    try {
      BasicFileAttributes seen = Files.readAttributes(file, BasicFileAttributes.class);
      return seen.size() + "@" + seen.lastModifiedTime().to(TimeUnit.NANOSECONDS);
    } catch (NoSuchFileException e) {
      return "-";
    }
  }

  /** Moves what was written into place, and writes about it into the record. */
  public void commit(byte[] about) throws IOException {
    Path before = Files.createDirectory(out.resolve(BEFORE + "build"));
    try {
      for (String procedure : staged) {
        replace(procedure, before);
      }
    } finally {
      delete(before);
    }
    record.truncate(0);
    record.position(0);
    ByteBuffer buffer = ByteBuffer.wrap(about);
    while (buffer.hasRemaining()) {
      record.write(buffer);
    }
    committed = true;
  }

  private void replace(String procedure, Path before) throws IOException {
    Path target = out.resolve(procedure);
    Path fresh = aside.resolve(procedure);
    if (!exists(target)) {
      Files.move(fresh, target);
      return;
    }
    Path old = before.resolve(procedure);
    Files.move(target, old);
    try {
      Files.move(fresh, target);
    } catch (IOException e) {
      Files.move(old, target);
      throw e;
    }
  }

  @Override
  public void close() throws IOException {
    try {
      delete(aside);
    } finally {
      record.close();
      if (fresh && !committed) {
        delete(out);
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      for (Path path : in(folder)) {
        delete(path);
      }
    }
    Files.deleteIfExists(folder);
  }

  /** Text as the bytes of a file. */
  public static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
