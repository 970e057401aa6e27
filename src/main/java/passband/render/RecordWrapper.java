package passband.render;

import freemarker.template.ObjectWrapper;
import freemarker.template.SimpleCollection;
import freemarker.template.SimpleNumber;
import freemarker.template.SimpleScalar;
import freemarker.template.TemplateBooleanModel;
import freemarker.template.TemplateCollectionModel;
import freemarker.template.TemplateHashModel;
import freemarker.template.TemplateHashModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import freemarker.template.TemplateSequenceModel;
import java.lang.reflect.Field;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * What templates see of the values given to them: texts, numbers, truth values, lists, maps and the
 * components of records; of anything else its text. FreeMarker's own wrapper looks at every method
 * of every class first, which takes a good part of a build of one sheet.
 */
final class RecordWrapper implements ObjectWrapper {
  private final Map<Class<?>, Map<String, Field>> components = new ConcurrentHashMap<>();

  @Override
  public @Nullable TemplateModel wrap(@Nullable Object value) {
    if (value == null || value instanceof TemplateModel) {
      return (TemplateModel) value;
    }
    if (value instanceof String text) {
      return new SimpleScalar(text);
    }
    if (value instanceof List<?> list) {
      return new Items(list);
    }
    if (value instanceof Record record) {
      return new Components(record);
    }
    if (value instanceof Number number) {
      return new SimpleNumber(number);
    }
    if (value instanceof Boolean truth) {
      return truth ? TemplateBooleanModel.TRUE : TemplateBooleanModel.FALSE;
    }
    if (value instanceof Map<?, ?> map) {
      return new Entries(map);
    }
    return new SimpleScalar(value.toString());
  }

  private final class Items implements TemplateSequenceModel {
    private final List<?> list;

    Items(List<?> list) {
      this.list = list;
    }

    @Override
    public @Nullable TemplateModel get(int index) {
      return index >= 0 && index < list.size() ? wrap(list.get(index)) : null;
    }

    @Override
    public int size() {
      return list.size();
    }
  }

  private final class Entries implements TemplateHashModelEx {
    private final Map<?, ?> map;

    Entries(Map<?, ?> map) {
      this.map = map;
    }

    @Override
    public @Nullable TemplateModel get(String key) {
      return wrap(map.get(key));
    }

    @Override
    public boolean isEmpty() {
      return map.isEmpty();
    }

    @Override
    public int size() {
      return map.size();
    }

    @Override
    public TemplateCollectionModel keys() {
      return new SimpleCollection(map.keySet(), RecordWrapper.this);
    }

    @Override
    public TemplateCollectionModel values() {
      return new SimpleCollection(map.values(), RecordWrapper.this);
    }
  }

  private final class Components implements TemplateHashModel {
    private final Record record;

    Components(Record record) {
      this.record = record;
    }

    @Override
    public @Nullable TemplateModel get(String name) throws TemplateModelException {
      Field field = fields(record.getClass()).get(name);
      if (field == null) {
        throw new TemplateModelException(record.getClass().getName() + " has no " + name);
      }
      try {
        return wrap(field.get(record));
      } catch (IllegalAccessException e) {
        throw new TemplateModelException(e);
      }
    }

    @Override
    public boolean isEmpty() {
      return false;
    }
  }

  /** The fields behind the components of a record, by name. */
  private Map<String, Field> fields(Class<?> record) {
    Map<String, Field> fields = components.get(record);
    if (fields == null) {
      fields = new HashMap<>();
      for (Field field : record.getDeclaredFields()) {
        field.setAccessible(true);
        fields.put(field.getName(), field);
      }
      components.put(record, fields);
    }
    return fields;
  }
}
