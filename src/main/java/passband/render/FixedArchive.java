package passband.render;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.function.BiFunction;
import java.util.zip.CRC32;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A zip archive written again so that the same content is the same bytes on every machine: entries
 * have one fixed time and are stored as they are, since two builds of zlib may compress
 * differently.
 */
final class FixedArchive {
  /** Of the first month Java would add the same time once more, in the machine's time zone. */
  private static final LocalDateTime TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

  /** How long the record at the end is, without a comment. */
  private static final int END = 22;

  /** How long an entry of the directory is without its name, and what stands before its content. */
  private static final int DIRECTORY_ENTRY = 46;

  private static final int LOCAL_HEADER = 30;

  private FixedArchive() {}

  /**
   * The archive again. Its directory is read, not entry after entry as Java does from a stream: the
   * workbook's writer gives sizes after their content in 64 bits, which Java refuses.
   *
   * @param archive of compressed entries, without a comment
   * @param change gives each entry's content, by its name and what it was
   */
  static byte[] of(byte[] archive, BiFunction<String, byte[], byte[]> change) {
    ByteBuffer in = ByteBuffer.wrap(archive).order(ByteOrder.LITTLE_ENDIAN);
    ByteArrayOutputStream out = new ByteArrayOutputStream(archive.length * 4);
    try (ZipOutputStream to = new ZipOutputStream(out)) {
      int entries = in.getShort(archive.length - END + 10);
      int at = in.getInt(archive.length - END + 16);
      for (int i = 0; i < entries; i++) {
        int length = in.getShort(at + 28);
        String name = new String(archive, at + DIRECTORY_ENTRY, length, StandardCharsets.UTF_8);
        store(to, name, change.apply(name, content(in, at)));
        at += DIRECTORY_ENTRY + length + in.getShort(at + 30) + in.getShort(at + 32);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** What the entry at this place of the directory holds. */
  private static byte[] content(ByteBuffer in, int at) throws IOException {
    int header = in.getInt(at + 42);
    int from = header + LOCAL_HEADER + in.getShort(header + 26) + in.getShort(header + 28);
    ByteArrayInputStream packed = new ByteArrayInputStream(in.array(), from, in.getInt(at + 20));
    try (InflaterInputStream content = new InflaterInputStream(packed, new Inflater(true))) {
      return content.readAllBytes();
    }
  }

  private static void store(ZipOutputStream to, String name, byte[] content) throws IOException {
    CRC32 sum = new CRC32();
    sum.update(content);
    ZipEntry entry = new ZipEntry(name);
    entry.setMethod(ZipEntry.STORED);
    entry.setSize(content.length);
    entry.setCrc(sum.getValue());
    entry.setTimeLocal(TIME);
    to.putNextEntry(entry);
    to.write(content);
    to.closeEntry();
  }
}
