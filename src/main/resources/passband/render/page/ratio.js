// Exact numbers: a ratio is [numerator, denominator], whole numbers, the denominator above zero.
import { fail } from "./words.js";

const gcd = (a, b) => {
  while (b !== 0n) {
    [a, b] = [b, a % b];
  }
  return a < 0n ? -a : a;
};
const make = (n, d) => {
  if (d === 0n) {
    fail(WORDS.byZero);
  }
  const g = gcd(n, d) || 1n;
  return d < 0n ? [-n / g, -d / g] : [n / g, d / g];
};
// "12.50", "3/8" or "-7"
const parse = (text) => {
  const [whole, over] = text.split("/");
  if (over !== undefined) {
    return make(BigInt(whole), BigInt(over));
  }
  const [, sign, digits, fraction = ""] = /^([+\-\u2212]?)([0-9]+)(?:\.([0-9]+))?$/.exec(text);
  const n = BigInt(digits + fraction);
  return make(sign === "-" || sign === "\u2212" ? -n : n, 10n ** BigInt(fraction.length));
};
const plus = (a, b) => make(a[0] * b[1] + b[0] * a[1], a[1] * b[1]);
const times = (a, b) => make(a[0] * b[0], a[1] * b[1]);
const over = (a, b) => make(a[0] * b[1], a[1] * b[0]);
const negate = (a) => [-a[0], a[1]];
const minus = (a, b) => plus(a, negate(b));
const sign = (a) => (a[0] > 0n ? 1 : a[0] < 0n ? -1 : 0);
const compare = (a, b) => sign(minus(a, b));
const abs = (a) => (a[0] < 0n ? negate(a) : a);
const whole = (n) => {
  let root = BigInt(Math.floor(Math.sqrt(Number(n))));
  for (let next = (root + n / (root || 1n)) / 2n; next !== root && next !== root + 1n; next = (root + n / root) / 2n) {
    root = next;
  }
  return root;
};
// Exact where the root is a ratio, else to 40 digits after the point.
const sqrt = (a) => {
  const scale = 10n ** 40n;
  const [n, d] = [whole(a[0]), whole(a[1])];
  return n * n === a[0] && d * d === a[1] ? make(n, d) : make(whole((a[0] * scale * scale) / a[1]), scale);
};
// Rounded half up to so many decimals.
const fixed = (a, decimals) => {
  const scale = 10n ** BigInt(decimals);
  const n = (2n * abs(a)[0] * scale + a[1]) / (2n * a[1]);
  const digits = n.toString().padStart(decimals + 1, "0");
  const text = decimals === 0 ? digits : digits.slice(0, -decimals) + "." + digits.slice(-decimals);
  return (a[0] < 0n && n !== 0n ? "-" : "") + text;
};

const zero = [0n, 1n];
const one = [1n, 1n];

export { parse, plus, minus, times, over, negate, abs, sign, compare, sqrt, fixed, zero, one };
