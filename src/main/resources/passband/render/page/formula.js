// A formula's value with its derivatives by name: { value, slopes }.
import { plus, times, over, negate, sign, compare, sqrt, one, zero } from "./ratio.js";
import * as Ratio from "./ratio.js";
import { fail } from "./words.js";

const scaled = (a, value, factor) => ({
  value,
  slopes: new Map([...a.slopes].map(([name, slope]) => [name, times(slope, factor)])),
});
const added = (a, b, value) => {
  const slopes = new Map(a.slopes);
  b.slopes.forEach((slope, name) => slopes.set(name, plus(slopes.get(name) || zero, slope)));
  return { value, slopes };
};
const product = (a, b) => {
  const value = times(a.value, b.value);
  return added(scaled(a, value, b.value), scaled(b, value, a.value), value);
};
const whole = (a, n) => {
  let value = one;
  for (let i = 0; i < Math.abs(n); i++) {
    value = times(value, a);
  }
  return n < 0 ? over(one, value) : value;
};
const power = (a, n) => {
  if (n <= 0 && sign(a.value) === 0) {
    fail(WORDS.byZero);
  }
  return scaled(a, whole(a.value, n), times(n === 0 ? zero : whole(a.value, n - 1), [BigInt(n), 1n]));
};
const root = (a) => {
  if (sign(a.value) <= 0) {
    fail(WORDS.rootOfNone);
  }
  const value = sqrt(a.value);
  return scaled(a, value, over(one, times(value, [2n, 1n])));
};
const opposite = (a) => scaled(a, negate(a.value), negate(one));

function at([operator, ...parts], values) {
  if (operator === "number") {
    return { value: Ratio.parse(parts[0]), slopes: new Map() };
  }
  if (operator === "name") {
    if (!values.has(parts[0])) {
      fail(WORDS.noValue, { name: parts[0] });
    }
    return { value: values.get(parts[0]), slopes: new Map([[parts[0], one]]) };
  }
  const [a, b, ...more] = parts.map((part) => at(part, values));
  switch (operator) {
    case "negative":
      return opposite(a);
    case "+":
      return added(a, b, plus(a.value, b.value));
    case "-":
      return added(a, opposite(b), plus(a.value, negate(b.value)));
    case "*":
      return product(a, b);
    case "/":
      return product(a, power(b, -1));
    case "^":
      return compare(b.value, [1n, 2n]) === 0 ? root(a) : power(a, Number(b.value[0]));
    case "sqrt":
      return root(a);
    case "abs":
      return sign(a.value) < 0 ? opposite(a) : a;
    default:
      return [a, b, ...more].reduce((x, y) => (compare(y.value, x.value) === (operator === "max" ? 1 : -1) ? y : x));
  }
}

export { at };
