package passband.render;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Expression;

/**
 * A formula for the script, operator first: {@code ["/", ["name", "peak-voltage"], ["number",
 * "3/2"]]}, numbers in SI.
 */
final class ScriptFormula implements Expression.Visitor<Void> {
  private final JsonWriter json;

  ScriptFormula(JsonWriter json) {
    this.json = json;
  }

  private Void node(String name, List<Expression> arguments) {
    try {
      json.beginArray().value(name);
      arguments.forEach(argument -> argument.accept(this));
      json.endArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return null;
  }

  private Void leaf(String name, String value) {
    try {
      json.beginArray().value(name).value(value).endArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return null;
  }

  @Override
  public Void literal(Expression.Literal literal) {
    Unit unit =
        literal.amount().unit() == null ? Unit.ONE : Units.find(literal.amount().unit().text());
    Rational number = literal.amount().number();
    if (unit == null || number == null) {
      throw new IllegalStateException("a formula that was not compiled");
    }
    return leaf("number", number.times(unit.factor()).toString());
  }

  @Override
  public Void variable(Expression.Variable variable) {
    return leaf("name", variable.name().text());
  }

  @Override
  public Void negative(Expression.Negative negative) {
    return node("negative", List.of(negative.inner()));
  }

  @Override
  public Void binary(Expression.Binary binary) {
    return node(binary.operator().sign(), List.of(binary.left(), binary.right()));
  }

  @Override
  public Void call(Expression.Call call) {
    return node(call.function().text(), call.arguments());
  }
}
