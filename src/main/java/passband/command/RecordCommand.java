package passband.command;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Seal;
import passband.judge.Verdict;
import passband.library.UsageException;
import passband.record.KeptFile;
import passband.record.VisitRecord;
import passband.render.RecordJson;
import passband.render.RecordPage;

/** {@code passband record}: what is kept of a visit. */
final class RecordCommand implements Verb {
  private final Invocation invocation;
  private final RecordedFiles files;

  RecordCommand(Invocation invocation) {
    this.invocation = invocation;
    this.files = new RecordedFiles(invocation.workingDirectory());
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String limits = arguments.operands().get(0);
    String readings = arguments.operands().get(1);
    KeptFile limitsPart = KeptFile.of(limits, files.bytes(limits));
    KeptFile readingsPart = KeptFile.of(readings, files.bytes(readings));
    Map<String, String> particulars = particulars(arguments);
    try {
      VisitRecord record =
          VisitRecord.of(
              Version.text(),
              arguments.valueOrNull("--date"),
              particulars,
              limitsPart,
              readingsPart);
      String json = RecordJson.of(record);
      boolean page = arguments.value("--as").equals("html");
      invocation.out().print(page ? RecordPage.of(record, Seal.of(json), List.of()) : json);
      return record.report().overall() == Verdict.PASS ? ExitStatus.FINE : ExitStatus.FAULTS;
    } catch (BadInput e) {
      throw new UsageException(String.valueOf(e.getMessage()));
    }
  }

  /** Of the file, then of the options, which win. */
  private Map<String, String> particulars(Arguments arguments) throws UsageException, IOException {
    Map<String, String> said = new LinkedHashMap<>();
    String path = arguments.valueOrNull("--particulars");
    if (path != null) {
      said.putAll(read(path));
    }
    put(said, "number", arguments.valueOrNull("--number"));
    put(said, "issued", arguments.valueOrNull("--issued"));
    return said;
  }

  private Map<String, String> read(String path) throws UsageException, IOException {
    Properties properties = new Properties();
    try {
      properties.load(new StringReader(new String(files.bytes(path), StandardCharsets.UTF_8)));
    } catch (IllegalArgumentException e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
    Map<String, String> read = new TreeMap<>();
    properties.stringPropertyNames().forEach(key -> read.put(key, properties.getProperty(key)));
    return read;
  }

  private static void put(Map<String, String> said, String key, @Nullable String text) {
    if (text != null) {
      said.put(key, text);
    }
  }
}
