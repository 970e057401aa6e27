package passband.syntax;

/** Goes through every part of an expression, in its order; what is done at one is a subclass's. */
abstract class EachPart implements Expression.Visitor<Void> {
  @Override
  public Void literal(Expression.Literal literal) {
    return null;
  }

  @Override
  public Void variable(Expression.Variable variable) {
    return null;
  }

  @Override
  public Void negative(Expression.Negative negative) {
    return negative.inner().accept(this);
  }

  @Override
  public Void binary(Expression.Binary binary) {
    binary.left().accept(this);
    return binary.right().accept(this);
  }

  @Override
  public Void call(Expression.Call call) {
    call.arguments().forEach(argument -> argument.accept(this));
    return null;
  }
}
