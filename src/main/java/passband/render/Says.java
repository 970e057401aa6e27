package passband.render;

import freemarker.template.SimpleScalar;
import freemarker.template.TemplateMethodModelEx;
import freemarker.template.TemplateModel;
import java.util.List;
import passband.words.Language;

/** {@code t("KEY", VALUE, …)} in a template: words of the sheet's language. */
record Says(Language language) implements TemplateMethodModelEx {
  @Override
  public TemplateModel exec(@SuppressWarnings("rawtypes") List arguments) {
    Object[] values = new Object[arguments.size() - 1];
    for (int i = 0; i < values.length; i++) {
      values[i] = String.valueOf(arguments.get(i + 1));
    }
    return new SimpleScalar(language.of(String.valueOf(arguments.get(0)), values));
  }
}
