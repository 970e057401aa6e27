// The units that a file of readings may name, as the judge knows them (UNITS): { factor, dimension }.
import * as Ratio from "./ratio.js";

const names = new Map(
  Object.entries(UNITS).flatMap(([dimension, factors]) =>
    Object.entries(factors).flatMap(([factor, names]) => names.split(" ").map((name) => [name, [factor, dimension]])),
  ),
);
const exact = (text) => {
  const [factor, dimension] = names.get(text) || [];
  return factor === undefined ? undefined : { factor: Ratio.parse(factor), dimension: dimension.split(",").map(Number) };
};
const known = ({ factor, dimension }) => ({ factor, dimension: dimension.join(",") });

// Undefined where there is none; two with a stroke between are a quotient.
function find(text) {
  if (text === "" || text === "1") {
    return known({ factor: Ratio.one, dimension: [0, 0, 0, 0, 0, 0, 0, 0] });
  }
  const stroke = text.indexOf("/");
  const unit = exact(text);
  if (unit !== undefined || stroke < 0) {
    return unit && known(unit);
  }
  const [above, below] = [exact(text.slice(0, stroke)), exact(text.slice(stroke + 1))];
  return (
    above && below && known({ factor: Ratio.over(above.factor, below.factor), dimension: above.dimension.map((n, i) => n - below.dimension[i]) })
  );
}

export { find };
