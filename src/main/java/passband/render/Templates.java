package passband.render;

import freemarker.core.HTMLOutputFormat;
import freemarker.log.Logger;
import freemarker.template.Configuration;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import freemarker.template.TemplateExceptionHandler;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;

/**
 * The FreeMarker templates beside this class; every value is escaped, and no locale or time zone
 * has a say.
 */
final class Templates {
  private static final Configuration CONFIGURATION = configuration();

  private Templates() {}

  /** FreeMarker would look for logging libraries, and write to those that it finds. */
  private static void keepQuiet() {
    try {
      Logger.selectLoggerLibrary(Logger.LIBRARY_NONE);
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException("no library is needed for no logging", e);
    }
  }

  private static Configuration configuration() {
    keepQuiet();
    Configuration configuration = new Configuration(Configuration.VERSION_2_3_34);
    configuration.setObjectWrapper(new RecordWrapper());
    configuration.setClassForTemplateLoading(Templates.class, "/passband/render");
    configuration.setDefaultEncoding("UTF-8");
    configuration.setLocale(Locale.ROOT);
    configuration.setTimeZone(TimeZone.getTimeZone("UTC"));
    configuration.setOutputFormat(HTMLOutputFormat.INSTANCE);
    configuration.setNumberFormat("computer");
    configuration.setTemplateExceptionHandler(TemplateExceptionHandler.RETHROW_HANDLER);
    configuration.setLogTemplateExceptions(false);
    configuration.setTemplateUpdateDelayMilliseconds(Long.MAX_VALUE);
    return configuration;
  }

  /** Sets FreeMarker up and reads the sheet's template. */
  static void ready() {
    template("checklist.ftlh");
  }

  private static Template template(String name) {
    try {
      return CONFIGURATION.getTemplate(name);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A template filled in; {@code sheet} is what the template calls its model. */
  static String filled(String name, Map<String, Object> model) {
    try {
      StringWriter out = new StringWriter(1 << 15);
      template(name).process(model, out);
      return out.toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (TemplateException e) {
      throw new IllegalStateException("the template " + name + " does not fit its model", e);
    }
  }
}
