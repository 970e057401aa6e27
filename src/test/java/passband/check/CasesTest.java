package passband.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.TextReport;
import passband.testing.Examples;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * A folder for every code: each {@code fires*.pband} with what the command prints of it beside it,
 * exact spans marked, and each {@code clean*.pband} without a finding. Run with {@code
 * -Dgolden.write=true} to write the expectations anew, and read what changed.
 */
class CasesTest {
  private static final Path CASES = Repository.ROOT.resolve("src/test/resources/cases");

  static List<Path> fires() {
    return named("fires");
  }

  static List<Path> clean() {
    return named("clean");
  }

  private static List<Path> named(String start) {
    return Repository.files(CASES, ".pband").stream()
        .filter(p -> p.getFileName().toString().startsWith(start))
        .toList();
  }

  private static List<Diagnostic> found(Path file) throws IOException {
    Code code = Code.find(file.getParent().getFileName().toString());
    Snippet snippet = Examples.compile(Files.readAllBytes(file));
    return Examples.relevant(snippet, code);
  }

  @ParameterizedTest
  @MethodSource("fires")
  void firesWhereItShould(Path file) throws IOException {
    List<Diagnostic> found = found(file);
    String code = file.getParent().getFileName().toString();
    Path expected =
        file.resolveSibling(file.getFileName().toString().replace(".pband", ".expected"));
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(expected, TextReport.of(found));
    }
    assertEquals(Repository.text(expected), TextReport.of(found));
    assertTrue(found.stream().anyMatch(d -> d.code().id().equals(code)), file.toString());
  }

  @ParameterizedTest
  @MethodSource("clean")
  void isSilentWhereItShould(Path file) throws IOException {
    assertEquals("", TextReport.of(found(file)), file.toString());
  }

  @Test
  void everyCodeHasBoth() {
    List<String> codes = new ArrayList<>(Arrays.stream(Code.values()).map(Code::id).toList());
    assertEquals(
        codes.stream().sorted().toList(),
        fires().stream()
            .map(p -> p.getParent().getFileName().toString())
            .distinct()
            .sorted()
            .toList());
    assertEquals(
        codes.stream().sorted().toList(),
        clean().stream()
            .map(p -> p.getParent().getFileName().toString())
            .distinct()
            .sorted()
            .toList());
  }
}
