package passband.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * The seeded faults of procedures, made in a part that holds all lines of the procedure but its
 * revision and order: included, they are found as in the procedure itself; where nothing includes
 * the part, what is wrong on every bench is found.
 */
class FaultsInPartsTest {
  private static final Pattern HEAD = Pattern.compile("(?m)^procedure (\\S+)(.*)\\{\n");
  private static final Pattern OWN = Pattern.compile("(?m)^  (revision|order|replaces) .*\n");
  private static final int MOST = 3;

  /** Of the faults tried, so many in a hundred are told without a bench. */
  private static final int ALONE = 25;

  private static final int TRIED = 300;

  /** A procedure's text as a part. */
  private static String part(String text) {
    Matcher head = HEAD.matcher(text);
    return OWN.matcher(head.replaceFirst("part lines-of-$1 {\n")).replaceAll("");
  }

  /** What is left of the procedure when its lines are in the part. */
  private static String rest(String clean) {
    Matcher head = HEAD.matcher(clean);
    assertTrue(head.find(), clean);
    String own = OWN.matcher(clean).results().map(r -> r.group()).collect(Collectors.joining());
    String name = head.group(1);
    return "\nprocedure "
        + name
        + head.group(2)
        + "{\n"
        + own
        + "  include lines-of-"
        + name
        + "\n}\n";
  }

  /** Codes and messages; but a part may have a setup that not every procedure uses. */
  private static TreeSet<String> said(List<Diagnostic> messages) {
    TreeSet<String> said = new TreeSet<>();
    for (Diagnostic one : messages) {
      if (one.code() != Code.UNUSED_NAME || !one.message().contains("setup")) {
        said.add(one.code().id() + " " + one.message());
      }
    }
    return said;
  }

  /** The faults that can be made in a part, each with the library that has it. */
  private static List<SeededFault> inParts(Map<String, String> library) {
    List<SeededFault> faults = new ArrayList<>();
    for (SeededFault fault : SeededFault.all()) {
      String clean = library.get(fault.file());
      boolean own =
          OWN.matcher(fault.before() + "\n").find() || OWN.matcher(fault.after() + "\n").find();
      if (HEAD.matcher(clean).find() && !own && fault.timesIn(part(clean)) == 1) {
        faults.add(fault);
      }
    }
    return faults;
  }

  @Test
  void aFaultInAnIncludedPartIsFoundAsInTheProcedure() {
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    List<String> otherwise = new ArrayList<>();
    List<String> many = new ArrayList<>();
    List<SeededFault> faults = inParts(library);
    for (SeededFault fault : faults) {
      Map<String, String> files = new TreeMap<>(library);
      String clean = library.get(fault.file());
      files.put(fault.file(), fault.in(clean));
      List<Diagnostic> whole = Snippet.compile(files, fault.file(), null).diagnostics();
      files.put(fault.file(), fault.in(part(clean)) + rest(clean));
      List<Diagnostic> apart = Snippet.compile(files, fault.file(), null).diagnostics();
      if (!said(whole).equals(said(apart))) {
        otherwise.add(fault + "\n  " + said(whole) + "\n  " + said(apart));
      }
      if (apart.size() > MOST) {
        many.add(fault + "\n  " + said(apart));
      }
    }
    assertTrue(faults.size() >= TRIED, faults.size() + " faults");
    assertEquals("", String.join("\n", many));
    assertEquals("", String.join("\n", otherwise));
  }

  @Test
  void whatIsWrongOnEveryBenchIsFoundWhereNothingIncludesThePart() {
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    List<String> wrongly = new ArrayList<>();
    List<String> many = new ArrayList<>();
    int found = 0;
    List<SeededFault> faults = inParts(library);
    for (SeededFault fault : faults) {
      Map<String, String> files = new TreeMap<>(library);
      String clean = library.get(fault.file());
      files.put(fault.file(), fault.in(clean));
      Snippet whole = Snippet.compile(files, fault.file(), null);
      files.put(fault.file(), fault.in(part(clean)));
      List<Diagnostic> alone = Snippet.compile(files, fault.file(), null).diagnostics();
      found += alone.isEmpty() ? 0 : 1;
      if (!alone.isEmpty() && whole.diagnostics().stream().noneMatch(Diagnostic::isError)) {
        wrongly.add(fault + "\n  " + said(alone));
      }
      if (alone.size() > MOST) {
        many.add(fault + "\n  " + said(alone));
      }
    }
    System.out.printf("found without a bench: %d of %d%n", found, faults.size());
    assertEquals("", String.join("\n", wrongly));
    assertEquals("", String.join("\n", many));
    assertTrue(found * 100 >= ALONE * faults.size(), found + " of " + faults.size());
  }

  @Test
  void nothingIsSaidOfRightLinesThatNothingIncludes() {
    for (Map<String, String> library :
        List.of(Repository.texts(Repository.LIBRARY), Repository.texts(Repository.PROCEDURES))) {
      library.forEach(
          (path, text) -> {
            if (HEAD.matcher(text).find()) {
              Map<String, String> files = new TreeMap<>(library);
              files.put(path, part(text));
              assertEquals("", Snippet.compile(files, path, null).report(), path);
            }
          });
    }
  }
}
