package passband.detect;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;

/** Slips in writing a reading down: one row at a time. */
final class PersonEffects {
  /** A display of more values than this within its error is not gone through one by one. */
  private static final int MOST_VALUES = 4000;

  private final SheetLines lines;

  PersonEffects(SheetLines lines) {
    this.lines = lines;
  }

  /** The instances of a size; null for an effect that is none of these. */
  @Nullable List<Instance> of(Fault fault, Fault.Size size) {
    return switch (fault.effect()) {
      case "transposed" -> digits(fault, size, PersonEffects::transposed);
      case "tenfold" -> digits(fault, size, shifted(size.value() > 1));
      case "repeated" -> repeated(fault, size);
      case "nominal" -> each(fault, size, line -> exactly(line, line.nominal()));
      case "omitted" -> each(fault, size, line -> line.at(Double.NaN));
      default -> null;
    };
  }

  private List<Instance> each(Fault fault, Fault.Size size, Function<SheetLine, Observation> seen) {
    List<Instance> instances = new ArrayList<>();
    for (SheetLine line : lines.output()) {
      Instance.Change change = new Instance.Change(line, seen.apply(line));
      instances.add(new Instance(fault, size, line.limit().id(), List.of(change)));
    }
    return instances;
  }

  private List<Instance> repeated(Fault fault, Fault.Size size) {
    List<Instance> instances = new ArrayList<>();
    List<SheetLine> output = lines.output();
    for (SheetLine line : output) {
      SheetLine above = BenchEffects.before(line, output);
      if (above != null) {
        instances.add(new Instance(fault, size, line.limit().id(), List.of(repeated(line, above))));
      }
    }
    return instances;
  }

  private static Observation exactly(SheetLine line, double value) {
    return new Observation(
        value, line.at(value).window(), Observation.NO_ERROR, Observation.NO_ERROR);
  }

  /** What the row above shows, judged by the limits of this one. */
  private static Instance.Change repeated(SheetLine line, SheetLine above) {
    Observation shown = above.good();
    Window window =
        Window.of(
            line.limit().accept().lower(),
            line.limit().accept().upper(),
            above.limit().resolution());
    return new Instance.Change(line, shown.with(window));
  }

  /** Digits that became others, each set of them as likely as the next; never passes where none. */
  private List<Instance> digits(Fault fault, Fault.Size size, LongFunction<List<Long>> others) {
    List<Instance> instances = new ArrayList<>();
    for (SheetLine line : lines.output()) {
      instances.add(
          new Instance(
              fault,
              size,
              line.limit().id(),
              List.of(new Instance.Change(line, line.good())),
              (kernel, visit) ->
                  visit.isEmpty() ? Chance.NEVER : miswritten(line, others, kernel, visit)));
    }
    return instances;
  }

  private static Chance miswritten(
      SheetLine line, LongFunction<List<Long>> others, Kernel kernel, Visit visit) {
    Observation shown = line.good();
    double reach = shown.own().reach() + shown.load().reach();
    long from = shown.window().displayed(shown.truth() - reach);
    long to = shown.window().displayed(shown.truth() + reach);
    if (to - from > MOST_VALUES) {
      long middle = shown.window().displayed(shown.truth());
      from = middle;
      to = middle;
    }
    double passing = 0;
    double all = 0;
    for (long value = from; value <= to; value++) {
      double share = from == to ? 1 : shown.shows(value);
      List<Long> written = others.apply(value);
      double passes = written.isEmpty() ? share : 0;
      for (long one : written) {
        boolean kept = share > 0 && shown.window().passes(one);
        passes += kept ? passing(line, value, one, share, kernel, visit) / written.size() : 0;
      }
      passing += passes;
      all += share;
    }
    double kept = all == 0 ? 0 : passing / all;
    return kept == 0 ? Chance.SURE : Chance.ofPassing(kept, Chance.Proof.QUADRATURE);
  }

  /** That one value is displayed, and what is worked out from another one passes. */
  private static double passing(
      SheetLine line, long displayed, long written, double share, Kernel kernel, Visit visit) {
    Observation shown = line.good();
    Observation other = exactly(line, written * shown.window().step());
    List<Reckoning> values = visit.with(line, other).reckonings();
    if (values.isEmpty()) {
      return share;
    }
    Window only = shown.window().only(displayed);
    return kernel.failing(List.of(shown.with(only)), values).passing();
  }

  /** Every exchange of two neighbouring digits that differ. */
  static List<Long> transposed(long value) {
    char[] digits = Long.toString(Math.abs(value)).toCharArray();
    List<Long> others = new ArrayList<>();
    for (int i = 0; i + 1 < digits.length; i++) {
      if (digits[i] != digits[i + 1]) {
        char[] other = digits.clone();
        other[i] = digits[i + 1];
        other[i + 1] = digits[i];
        others.add(Long.parseLong(new String(other)));
      }
    }
    return others;
  }

  private static LongFunction<List<Long>> shifted(boolean up) {
    return value -> List.of(up ? value * 10 : value / 10);
  }
}
