package passband.build;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import passband.render.IndexPage;

/** {@code index.html} of an output folder: all procedures that stand in it. */
final class LibraryPage {
  static final String NAME = "index.html";

  /** A page of another maker does not begin so. */
  private static final int HEAD = 400;

  private LibraryPage() {}

  /**
   * Writes the page, unless another one stands there.
   *
   * @param aside where it is written first
   * @param gone the procedures that no source declares any more: nobody is to work by them
   * @return what is to be said of it
   */
  static List<String> write(Path out, Path aside, WrittenFiles written, Set<String> gone)
      throws IOException {
    List<IndexPage.Entry> entries = new ArrayList<>();
    for (IndexPage.Entry entry : written.abouts()) {
      boolean stands = OutputFolder.isFolder(out.resolve(entry.procedure()));
      if (stands && !gone.contains(entry.procedure())) {
        entries.add(entry);
      }
    }
    byte[] page = Output.bytes(IndexPage.of(entries));
    Path target = out.resolve(NAME);
    if (OutputFolder.exists(target)) {
      if (!isOwn(target)) {
        return List.of(
            "warning: " + target + ": Passband did not write this and does not replace it");
      }
      if (Arrays.equals(Files.readAllBytes(target), page)) {
        return List.of();
      }
    }
    Path fresh = aside.resolve(NAME);
    Files.write(fresh, page);
    Files.move(fresh, target, StandardCopyOption.REPLACE_EXISTING);
    return List.of();
  }

  private static boolean isOwn(Path page) throws IOException {
    if (!Files.isRegularFile(page, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    try (var in = Files.newInputStream(page)) {
      return new String(in.readNBytes(HEAD), StandardCharsets.UTF_8).contains(IndexPage.MARK);
    }
  }
}
