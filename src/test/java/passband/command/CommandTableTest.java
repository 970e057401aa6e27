package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.library.UsageException;
import passband.testing.Repository;

/** The table of commands and what is made from it: parsing, help, completion, README. */
class CommandTableTest {
  private static final Path README = Repository.ROOT.resolve("README.md");
  private static final Pattern OPTION = Pattern.compile("(?<![\\w-])--[a-z][a-z-]*");

  static Stream<CommandSpec> commands() {
    return CommandTable.listed().stream();
  }

  static Stream<org.junit.jupiter.params.provider.Arguments> options() {
    return commands()
        .flatMap(
            c ->
                c.allOptions().stream()
                    .map(option -> org.junit.jupiter.params.provider.Arguments.of(c, option)));
  }

  /** As many operands as a command needs. */
  private static List<String> operands(CommandSpec command) {
    List<String> operands = new ArrayList<>();
    for (Operand operand : command.operands()) {
      List<String> known = operand.values().get();
      operands.add(known.isEmpty() ? "some" : known.get(0));
    }
    return operands;
  }

  private static Arguments parsed(CommandSpec command, String... words) throws UsageException {
    List<String> all = new ArrayList<>(operands(command));
    all.addAll(List.of(words));
    return Arguments.of(command, all);
  }

  /** A value that an option takes. */
  private static String value(Option option) {
    return switch (option.kind()) {
      case ONE_OF, LIST_OF -> option.values().get(option.values().size() - 1);
      case DATE -> "2026-01-31";
      case DAYS -> "90";
      default -> "some";
    };
  }

  // ---- parsing ----

  @ParameterizedTest
  @MethodSource("options")
  void anOptionIsParsed(CommandSpec command, Option option) throws UsageException {
    String name = option.name();
    if (!option.takesValue()) {
      assertTrue(parsed(command, name).has(name));
      assertThrows(UsageException.class, () -> parsed(command, name + "=x"));
      return;
    }
    String value = value(option);
    assertEquals(value, parsed(command, name, value).value(name));
    assertEquals(value, parsed(command, name + "=" + value).value(name));
    if (option.letter() != null) {
      assertEquals(value, parsed(command, option.letter(), value).value(name));
    }
    assertEquals(option.otherwise(), parsed(command).valueOrNull(name));
    assertFalse(parsed(command).has(name));
    assertThrows(UsageException.class, () -> parsed(command, name));
    assertThrows(UsageException.class, () -> parsed(command, name, value, name, value));
  }

  @ParameterizedTest
  @MethodSource("options")
  void onlyItsValuesAreTaken(CommandSpec command, Option option) throws UsageException {
    for (String value : ShellCompletion.values(option)) {
      assertEquals(value, parsed(command, option.name(), value).value(option.name()));
    }
    List<String> wrong =
        switch (option.kind()) {
          case ONE_OF -> List.of("x", option.values().get(0) + ",", "");
          case LIST_OF -> List.of("x", "pdf,", ",", "pdf,x", "pdf pictures");
          case DATE -> List.of("today", "2026-02-30", "2026-1-1", "01/02/2026");
          case DAYS -> List.of("0", "-1", "1.5", "x", "100000", "٣");
          default -> List.of();
        };
    for (String value : wrong) {
      UsageException refused =
          assertThrows(UsageException.class, () -> parsed(command, option.name(), value), value);
      assertTrue(refused.getMessage().contains(option.name()), refused.getMessage());
    }
  }

  @ParameterizedTest
  @MethodSource("commands")
  void operandsAreCounted(CommandSpec command) throws UsageException {
    List<String> right = operands(command);
    assertEquals(right, Arguments.of(command, right).operands());
    int needed = (int) command.operands().stream().filter(Operand::required).count();
    if (needed > 0) {
      List<String> few = right.subList(0, needed - 1);
      assertThrows(UsageException.class, () -> Arguments.of(command, few), few.toString());
    }
    List<String> more = new ArrayList<>(right);
    more.add(right.isEmpty() ? "some" : right.get(right.size() - 1));
    if (command.operand(right.size()) == null) {
      assertThrows(UsageException.class, () -> Arguments.of(command, more));
    } else {
      assertEquals(more, Arguments.of(command, more).operands());
    }
  }

  @Test
  void whatFollowsTwoHyphensIsNoOption() throws UsageException {
    CommandSpec check = CommandTable.find("check");
    Arguments arguments = Arguments.of(check, List.of("--", "--as", "-"));
    assertEquals(List.of("--as", "-"), arguments.operands());
    assertFalse(arguments.has("--as"));
  }

  @Test
  void aSlipIsAnsweredWithWhatWasMeant() {
    CommandSpec build = CommandTable.find("build");
    UsageException option = assertThrows(UsageException.class, () -> parsed(build, "--papper"));
    assertEquals("'build' has no option --papper; did you mean --paper?", option.getMessage());
    CommandSpec completion = CommandTable.find("completion");
    UsageException shell =
        assertThrows(UsageException.class, () -> Arguments.of(completion, List.of("bahs")));
    assertEquals("unknown shell 'bahs'; did you mean 'bash'?", shell.getMessage());
    UsageException none =
        assertThrows(UsageException.class, () -> Arguments.of(completion, List.of()));
    assertEquals(
        "'completion' needs SHELL: bash, zsh or fish (see 'passband help completion')",
        none.getMessage());
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyCommandHasAVerb(CommandSpec command) {
    assertNotNull(new Verbs(Processes.nowhere()).verb(command.name()));
  }

  // ---- help ----

  @ParameterizedTest
  @MethodSource("options")
  void helpTellsOfAnOption(CommandSpec command, Option option) {
    String help = Help.of(command).replaceAll("\\s+", " ");
    assertTrue(help.contains(" " + option.name() + " " + option.value()), help);
    assertTrue(help.contains(option.help()), help);
    for (String value : option.values()) {
      assertTrue(help.matches(".*\\b" + value + "\\b.*"), help);
    }
    if (option.otherwise() != null) {
      assertTrue(help.contains("(default: " + option.otherwise() + ")"), help);
    }
  }

  @ParameterizedTest
  @MethodSource("commands")
  void helpNamesNoOptionThatIsNotTaken(CommandSpec command) {
    assertEquals(names(command), found(Help.of(command)));
    assertTrue(Help.of(command).startsWith("passband " + command.synopsis()));
    assertTrue(Help.of(command).lines().allMatch(line -> line.length() <= 120));
  }

  private static TreeSet<String> names(CommandSpec command) {
    TreeSet<String> names = new TreeSet<>();
    command.allOptions().forEach(option -> names.add(option.name()));
    return names;
  }

  private static TreeSet<String> found(String text) {
    TreeSet<String> found = new TreeSet<>();
    Matcher option = OPTION.matcher(text);
    while (option.find()) {
      found.add(option.group());
    }
    return found;
  }

  // ---- README ----

  /** The README's list is the table's; {@code -Dgolden.write=true} writes it. */
  @Test
  void theReadmeListsEveryCommand() throws IOException {
    String start = "all commands:\n\n";
    String readme = Repository.text(README);
    int from = readme.toLowerCase(java.util.Locale.ROOT).indexOf(start) + start.length();
    int to = readme.indexOf("\n\n", readme.indexOf("Exit status:", from)) + 1;
    assertTrue(from > start.length() && to > from, "the list is not where it was");
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(README, readme.substring(0, from) + Help.readme() + readme.substring(to));
      return;
    }
    assertEquals(Help.readme(), readme.substring(from, to));
  }

  /**
   * The prose names only options that there are, of these commands or, as listed here, of git's.
   */
  @Test
  void theDocumentsNameOnlyOptionsThatThereAre() {
    TreeSet<String> known = new TreeSet<>(List.of("--ext-diff", "--quiet"));
    commands().forEach(command -> known.addAll(names(command)));
    for (String document : List.of("README.md", "src/docs/guide.md")) {
      TreeSet<String> named = found(Repository.text(Repository.ROOT.resolve(document)));
      named.removeAll(known);
      assertEquals(new TreeSet<>(), named, document);
    }
  }
}
