package passband.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** AnsiColours for a report on a terminal; what they say is in the words as well. */
final class AnsiColours {
  private static final String RED = "\u001b[1;31m";
  private static final String YELLOW = "\u001b[1;33m";
  private static final String CYAN = "\u001b[36m";
  private static final String PLAIN = "\u001b[0m";
  private static final Pattern HEAD =
      Pattern.compile("(\\S.*:\\d+:\\d+: )(error|warning|note)(: .*)");
  private static final Pattern MARKS = Pattern.compile(" +\\^+");

  private AnsiColours() {}

  /** The report with colours. */
  static String of(String report) {
    StringBuilder out = new StringBuilder();
    String colour = PLAIN;
    for (String line : report.split("\n", -1)) {
      Matcher head = HEAD.matcher(line);
      if (head.matches()) {
        colour = head.group(2).equals("error") ? RED : head.group(2).equals("note") ? CYAN : YELLOW;
        out.append(head.group(1)).append(colour).append(head.group(2)).append(PLAIN);
        out.append(head.group(3));
      } else if (MARKS.matcher(line).matches()) {
        out.append(colour).append(line).append(PLAIN);
      } else if (line.startsWith("hint: ")) {
        out.append(CYAN).append("hint").append(PLAIN).append(line.substring(4));
      } else {
        out.append(line);
      }
      out.append('\n');
    }
    out.setLength(out.length() - 1);
    return out.toString();
  }
}
