package passband.command;

import com.github.difflib.DiffUtils;
import com.github.difflib.UnifiedDiffUtils;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The lines in which two versions of a file differ, where their meaning cannot be compared. */
final class TextDiff {
  private static final int AROUND = 3;

  private TextDiff() {}

  /** As {@code diff -u} writes it; null for a version that is not there. */
  static String of(String oldPath, byte @Nullable [] was, String newPath, byte @Nullable [] now) {
    List<String> old = lines(was);
    List<String> lines =
        UnifiedDiffUtils.generateUnifiedDiff(
            was == null ? "/dev/null" : "a/" + oldPath,
            now == null ? "/dev/null" : "b/" + newPath,
            old,
            DiffUtils.diff(old, lines(now)),
            AROUND);
    return lines.isEmpty() ? "" : String.join("\n", lines) + "\n";
  }

  private static List<String> lines(byte @Nullable [] bytes) {
    return bytes == null ? List.of() : new String(bytes, StandardCharsets.UTF_8).lines().toList();
  }
}
