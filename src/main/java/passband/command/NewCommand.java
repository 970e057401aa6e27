package passband.command;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.library.UsageException;

/** {@code passband new}: a small library to change into one's own. */
final class NewCommand implements Verb {
  static final List<String> SOURCES = List.of("generator.pband", "bench.pband", "output.pband");
  private static final String MARK = "passband.library";

  private final Invocation invocation;

  NewCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String folder = arguments.operands().isEmpty() ? "." : arguments.operands().get(0);
    Map<String, String> files = new LinkedHashMap<>();
    for (String name : SOURCES) {
      files.put(name, text(name));
    }
    files.put(MARK, "");
    NewFiles.write(invocation.workingDirectory().resolve(folder), folder, files);
    for (String name : files.keySet()) {
      invocation.out().println(NewFiles.shown(folder, name));
    }
    return ExitStatus.FINE;
  }

  private static String text(String name) throws IOException {
    try (InputStream in = NewCommand.class.getResourceAsStream("/passband/new/" + name)) {
      if (in == null) {
        throw new IllegalStateException("there is no resource " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
