// The verdict on a value that is calculated from readings, with its uncertainty.
import { said, unclear, early, last, below, above, outOfCalibration } from "./attempts.js";
import * as Causes from "./causes.js";
import * as Formula from "./formula.js";
import { data, items } from "./items.js";
import { parse, plus, minus, times, over, abs, sign, compare, one, zero } from "./ratio.js";
import { reversed } from "./waves.js";
import { words } from "./words.js";

// A square of standard uncertainties, times three, with what its degrees of freedom bring about.
const share = (square, freedom) => [square, freedom === undefined ? zero : over(times(square, square), parse(freedom))];
const sum = (one, other) => one.map((part, i) => plus(part, other[i]));
const none = [zero, zero];

// The guard by degrees of freedom, from one on, which stands in the page as the differences of differences of whole numbers.
const { orders = 0, decimals, differences = "" } = data.guards || {};
let guards = differences.split(" ").map(BigInt);
for (let i = 0; i < orders; i++) {
  let sum = 0n;
  guards = guards.map((each) => (sum += each));
}
guards = guards.map((each) => [each, 10n ** BigInt(decimals || 0)]);

// The square of the guard band: its factor goes by whole effective degrees of freedom, by Welch and Satterthwaite.
function guarded([square, shares]) {
  let guard = parse(data.guard);
  if (sign(shares) !== 0) {
    const [top, bottom] = over(times(square, square), shares);
    const freedom = Number(top / bottom);
    guard = guards[Math.min(Math.max(freedom, 1), guards.length) - 1];
  }
  return times(square, times(guard, guard));
}

// The square that the scatter of repeated readings brings about, times three.
function scatter(repeats, values, slopes) {
  const n = [BigInt(repeats[0].length), 1n];
  const from = repeats.map((names) => {
    const mean = over(names.map((name) => values.get(name)).reduce(plus, zero), n);
    return names.map((name) => minus(values.get(name), mean));
  });
  let all = zero;
  repeats[0].forEach((_, i) =>
    repeats[0].forEach((__, k) => {
      const moved = repeats.map((names, q) => times(slopes.get(names[i]) || zero, from[q][k])).reduce(plus, zero);
      all = plus(all, times(moved, moved));
    }),
  );
  return over(times(all, [3n, 1n]), minus(n, one));
}

// The square of a derived value's guard band, times three: the greatest of no, of full, and of each error that may be
// common to several readings the worse correlation; null where it is not known.
function spread(item, slopes, parts, values) {
  const errors = new Map();
  const put = (key, moved, weight = "1", freedom = undefined) => {
    const { apart = none, all = zero } = errors.get(key) || {};
    const square = (width) => share(times(times(width, width), parse(weight)), freedom);
    errors.set(key, { apart: sum(apart, square(moved)), all: plus(all, moved), together: square(plus(all, moved)) });
  };
  const load = (shares, weight, freedom) => [shares.slice(shares.lastIndexOf("|")), "load error", weight, freedom].join("|");
  const own = slopes.get("load");
  if (own !== undefined && item.loadError !== undefined) {
    const { shares, loadWeight = "1", loadFreedom } = item;
    put(load(shares, loadWeight, loadFreedom), times(own, parse(item.loadError)), loadWeight, loadFreedom);
  }
  for (const [name, part] of parts) {
    if (part.item.budget === undefined) {
      return null;
    }
    for (const [what, relative, absolute, weight = "1", freedom = undefined] of part.item.budget) {
      const width = times(plus(times(parse(relative), abs(part.value)), parse(absolute)), part.item.factor);
      const common = [part.item.unit, part.item.shares, what, weight, freedom].join("|");
      const key = what === "resolution" ? `${name}|${what}` : what === "load error" ? load(part.item.shares, weight, freedom) : common;
      put(key, times(slopes.get(name) || zero, width), weight, freedom);
    }
  }
  const scattered = item.repeats === undefined ? none : share(scatter(item.repeats, values, slopes), String(item.repeats[0].length - 1));
  const worse = ({ apart, together }) => (compare(together[0], apart[0]) > 0 ? together : apart);
  // A smaller square may have so few degrees of freedom that its guard more than makes up for it.
  return [worse, ({ apart }) => apart, ({ together }) => together]
    .map((which) => guarded([...errors.values()].map(which).reduce(sum, scattered)))
    .reduce((most, one) => (compare(one, most) > 0 ? one : most));
}

function derived(item, judged) {
  const first = early(item);
  if (first !== null && first.verdict !== "not done") {
    return first;
  }
  const parts = new Map();
  let doubt;
  for (const [name, id] of Object.entries(item.parts)) {
    const part = items.get(id);
    const read = judged(part);
    if (read.verdict === "not done") {
      return first !== null ? first : unclear(Causes.ofPart(Causes.of("part-not-read", part), item, name));
    }
    if (read.verdict === "unclear") {
      doubt = Causes.ofPart(read.causes[0], item, name);
      if (!HAS_WAVES || doubt.code !== "peak-below-rms") {
        return unclear(doubt);
      }
    }
    parts.set(name, { item: part, value: read.value, attempt: last(part).number });
  }
  if (new Set([...parts.values()].map((part) => part.attempt)).size > 1) {
    const note = [...parts].map(([name, part]) => words(WORDS.ofAttempt, { name, n: part.attempt })).join(", ");
    return unclear(Causes.of("attempts-differ", item, { note }));
  }
  try {
    const result = calculated(item, parts);
    // Of parts that all fail, so that none of them is unclear because of it.
    const [late] = [...parts].flatMap(([name, part]) => outOfCalibration(part.item).map((cause) => Causes.ofPart(cause, item, name)));
    const why = doubt || late;
    return result.verdict === "pass" && why !== undefined ? unclear(why) : result;
  } catch (error) {
    return unclear(Causes.of("not-calculable", item, { note: error.message }));
  }
}

function calculated(item, parts) {
  const values = new Map([...parts].map(([name, part]) => [name, times(part.value, part.item.factor)]));
  for (const name of ["setting", "load"]) {
    if (item[name] !== undefined) {
      values.set(name, parse(item[name]));
    }
  }
  const { value: si, slopes } = Formula.at(item.formula, values);
  const factor = item.factor;
  const value = over(si, factor);
  const three = spread(item, slopes, parts, values);
  const band = three === null ? zero : over(over(three, [3n, 1n]), times(factor, factor));
  const causes = [];
  for (const [limit, beyond, code] of [
    [item.lower, below, "below-limit"],
    [item.upper, above, "above-limit"],
  ]) {
    const inside = limit === undefined ? undefined : minus(value, parse(limit));
    if (beyond(value, limit) || (inside !== undefined && compare(times(inside, inside), band) < 0)) {
      causes.push(Causes.of(beyond(value, limit) ? code : "guard-band", item, { number: limit, unit: item.unit }));
    }
  }
  if (causes.length > 0) {
    return said("fail", causes, value);
  }
  if (sign(value) < 0 && !item.negative) {
    return unclear(Causes.of("negative", item));
  }
  const note = HAS_WAVES ? reversed(values) : null;
  if (note !== null) {
    return unclear(Causes.of("peak-below-rms", item, { note }));
  }
  if (three === null && sign(parse(data.guard)) > 0) {
    return unclear(Causes.of("uncertainty-unknown", item));
  }
  return said("pass", [], value);
}

export { derived, guards };
