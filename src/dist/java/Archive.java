import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;

/** Folders and archives whose bytes depend on nothing but what is in them. */
final class Archive {
  private Archive() {}

  /** The regular files under a folder, by their paths with {@code /}, sorted. */
  static TreeMap<String, Path> files(Path folder) throws IOException {
    TreeMap<String, Path> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      all.filter(Files::isRegularFile)
          .forEach(f -> files.put(folder.relativize(f).toString().replace('\\', '/'), f));
    }
    return files;
  }

  /** Copies a folder with what is executable in it. */
  static void copy(Path from, Path to) throws IOException {
    for (Map.Entry<String, Path> file : files(from).entrySet()) {
      Path target = to.resolve(file.getKey());
      Files.createDirectories(target.getParent());
      Files.copy(file.getValue(), target);
    }
  }

  static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted((a, b) -> b.compareTo(a)).toList()) {
        Files.delete(one);
      }
    }
  }

  /**
   * Packs a folder; Unix systems see which files are programs.
   *
   * @param within the folder that everything lies in inside the archive, with a slash at its end,
   *     or empty
   * @param time what stands as every file's time, in milliseconds
   */
  static void zip(Path folder, String within, Path archive, long time) throws IOException {
    try (ZipArchiveOutputStream out = new ZipArchiveOutputStream(archive)) {
      for (Map.Entry<String, Path> file : files(folder).entrySet()) {
        boolean program = Files.isExecutable(file.getValue());
        entry(out, within + file.getKey(), program, Files.readAllBytes(file.getValue()), time);
      }
    }
  }

  private static void entry(
      ZipArchiveOutputStream out, String name, boolean program, byte[] bytes, long time)
      throws IOException {
    ZipArchiveEntry entry = new ZipArchiveEntry(name);
    entry.setTime(time);
    entry.setUnixMode(program ? 0100755 : 0100644);
    out.putArchiveEntry(entry);
    try (InputStream in = new ByteArrayInputStream(bytes)) {
      in.transferTo(out);
    }
    out.closeArchiveEntry();
  }

  /** A jar of one class that starts another jar beside it. */
  static void startJar(Path classFile, String other, Path jar, long time) throws IOException {
    String main = classFile.getFileName().toString().replace(".class", "");
    String manifest =
        "Manifest-Version: 1.0\r\nMain-Class: " + main + "\r\nClass-Path: " + other + "\r\n\r\n";
    try (ZipArchiveOutputStream out = new ZipArchiveOutputStream(jar)) {
      entry(out, "META-INF/MANIFEST.MF", false, manifest.getBytes(), time);
      entry(out, main + ".class", false, Files.readAllBytes(classFile), time);
    }
  }

  /** The lines that {@code sha256sum -c} and {@code md5sum -c} read. */
  static String sums(String algorithm, Path folder, List<String> names) {
    StringBuilder text = new StringBuilder();
    for (String name : names) {
      try {
        byte[] digest =
            MessageDigest.getInstance(algorithm).digest(Files.readAllBytes(folder.resolve(name)));
        text.append(HexFormat.of().formatHex(digest)).append("  ").append(name).append('\n');
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalArgumentException(algorithm, e);
      }
    }
    return text.toString();
  }
}
