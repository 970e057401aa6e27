// The units that a file of readings may name, as the judge knows them (UNITS): { factor, dimension }.
import * as Ratio from "./ratio.js";

const POWERS = { p: -12, n: -9, u: -6, m: -3, c: -2, k: 3, M: 6 };
const ten = (power) => (power < 0 ? [1n, 10n ** BigInt(-power)] : [10n ** BigInt(power), 1n]);

// By name: { factor, dimension }, the exponents of the base units.
const names = new Map();
for (const row of UNITS) {
  const [exponents, own, spelled, prefixes] = row.split(" ");
  const dimension = [...exponents.split(",").map(Number), ...Array(8).fill(0)].slice(0, 8);
  for (const prefix of ["", ...prefixes]) {
    const unit = { factor: Ratio.times(Ratio.parse(own), ten(POWERS[prefix] || 0)), dimension };
    for (const written of prefix === "u" ? ["u", "\u00b5", "\u03bc"] : [prefix]) {
      spelled.split(",").forEach((name) => names.set(written + name, unit));
    }
  }
}
const known = ({ factor, dimension }) => ({ factor, dimension: dimension.join() });

// Undefined where there is none; two with a stroke between are a quotient.
function find(text) {
  if (text === "" || text === "1") {
    return known({ factor: Ratio.one, dimension: Array(8).fill(0) });
  }
  const stroke = text.indexOf("/");
  const unit = names.get(text);
  if (unit !== undefined || stroke < 0) {
    return unit && known(unit);
  }
  const [above, below] = [names.get(text.slice(0, stroke)), names.get(text.slice(stroke + 1))];
  return (
    above && below && known({ factor: Ratio.over(above.factor, below.factor), dimension: above.dimension.map((n, i) => n - below.dimension[i]) })
  );
}

export { find, names };
