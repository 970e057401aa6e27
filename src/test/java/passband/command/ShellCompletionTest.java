package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What real shells complete with the scripts that are printed for them. */
class ShellCompletionTest {
  @TempDir Path work;

  @BeforeEach
  void files() throws IOException {
    Files.createFile(work.resolve("heath one.pband"));
    Files.createDirectory(work.resolve("library"));
  }

  /** What the shell proposes after the words; the last is what is typed of the next one. */
  private TreeSet<String> proposed(String shell, String... words) throws Exception {
    return switch (shell) {
      case "fish" -> fish(words);
      case "zsh" -> {
        TreeSet<String> all = bashLike("zsh", "emulate ksh\n", words);
        all.removeIf(word -> !word.startsWith(words[words.length - 1])); // zsh itself does this
        yield all;
      }
      default -> bashLike("bash", "", words);
    };
  }

  private TreeSet<String> bashLike(String shell, String before, String... words) throws Exception {
    StringBuilder line = new StringBuilder("COMP_WORDS=(passband");
    for (String word : words) {
      line.append(" '").append(word).append('\'');
    }
    String load = shell.equals("zsh") ? "autoload -U compinit && compinit -u -D\n" : "";
    return said(
        shell,
        load
            + ShellCompletion.of(shell)
            + before
            + line
            + ")\nCOMP_CWORD="
            + words.length
            + "\n_passband\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n");
  }

  private TreeSet<String> fish(String... words) throws Exception {
    String line = "passband " + String.join(" ", words);
    return said(
        "fish",
        ShellCompletion.of("fish") + "complete -C '" + line + "' | string split -f1 \\t\nexit 0\n");
  }

  private TreeSet<String> said(String shell, String script) throws Exception {
    Path file = Files.writeString(work.resolve(".script"), script);
    ProcessBuilder builder =
        new ProcessBuilder(shell, file.toString())
            .directory(work.toFile())
            .redirectErrorStream(true);
    builder.environment().put("HOME", work.toString());
    Process process = builder.start();
    process.getOutputStream().close();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    TreeSet<String> words = new TreeSet<>(said.lines().toList());
    words.remove("");
    return words;
  }

  @ParameterizedTest
  @ValueSource(strings = {"bash", "zsh", "fish"})
  void commandsOptionsAndTheirValues(String shell) throws Exception {
    assertEquals(new TreeSet<>(List.of("build")), proposed(shell, "bu"));
    assertEquals(new TreeSet<>(List.of("--depfile")), proposed(shell, "build", "--dep"));
    assertEquals(new TreeSet<>(List.of("a4", "letter")), proposed(shell, "build", "--paper", ""));
    assertEquals(new TreeSet<>(List.of("sarif")), proposed(shell, "check", "x", "--as", "s"));
    assertEquals(
        new TreeSet<>(List.of("pdf", "pictures", "pdf,pictures,xlsx")),
        proposed(shell, "build", "--without", "p"));
    assertEquals(
        new TreeSet<>(List.of("lead-used-twice", "lead-underrated", "lead-unrated")),
        proposed(shell, "explain", "lead-u"));
    assertEquals(
        new TreeSet<>(List.of("detect", "diagnostics", "diff")), proposed(shell, "schema", "d"));
    assertEquals(new TreeSet<>(), proposed(shell, "check", "--analyzer", ""));
    assertEquals(new TreeSet<>(), proposed(shell, "version", ""));
  }

  @ParameterizedTest
  @ValueSource(strings = {"bash", "zsh"})
  void filesAndFolders(String shell) throws Exception {
    assertEquals(new TreeSet<>(List.of("heath one.pband")), proposed(shell, "check", "h"));
    assertEquals(new TreeSet<>(List.of("library")), proposed(shell, "check", "--root", ""));
    assertEquals(new TreeSet<>(List.of("library")), proposed(shell, "build", "-o", "l"));
    assertEquals(new TreeSet<>(List.of("markdown")), proposed(shell, "diff", "--as", "=", "m"));
  }

  @Test
  void filesAndFoldersInFish() throws Exception {
    assertEquals(new TreeSet<>(List.of("heath one.pband")), fish("check", "h"));
    assertEquals(new TreeSet<>(List.of("library/")), fish("check", "--root", ""));
    assertTrue(fish("build", "-o", "l").contains("library/"));
    assertEquals(new TreeSet<>(List.of("--as=markdown")), fish("diff", "--as=m"));
  }

  /** Of every option of every command all the values, and no more. */
  @Test
  void everyOptionIsCompleted() throws Exception {
    for (CommandSpec command : CommandTable.listed()) {
      TreeSet<String> names = new TreeSet<>();
      for (Option option : command.allOptions()) {
        names.add(option.name());
        if (!option.values().isEmpty()) {
          TreeSet<String> values = new TreeSet<>(ShellCompletion.values(option));
          for (String shell : ShellCompletion.SHELLS) {
            assertEquals(values, proposed(shell, command.name(), option.name(), ""), shell);
          }
        }
      }
      assertEquals(names, proposed("bash", command.name(), "--"));
      assertEquals(names, proposed("fish", command.name(), "--"));
    }
  }
}
