// No peak is below the RMS value of the same wave (WAVES).
import { early, last, number } from "./attempts.js";
import * as Causes from "./causes.js";
import { items } from "./items.js";
import { parse, times, over, sign, compare } from "./ratio.js";
import { words } from "./words.js";

// Which peak is below which RMS value, in words; null where none is. One may come from the other through the load.
function reversed(values) {
  const load = values.get("load");
  for (const wave of WAVES) {
    const peak = values.get(wave.peak);
    const other = load !== undefined && sign(load) > 0 ? values.get(wave.other) : undefined;
    const through = other === undefined ? undefined : (wave.times ? times : over)(other, load);
    const rms = values.has(wave.rms) ? values.get(wave.rms) : through;
    if (peak !== undefined && rms !== undefined && compare(peak, rms) < 0) {
      return words(WORDS.isBelow, { peak: wave.peak, rms: values.has(wave.rms) ? wave.rms : wave.through });
    }
  }
  return null;
}

// Where a peak is below the RMS value of the same wave: why neither reading passes, in a list.
function besides(item, value) {
  const si = (one, read) => [one.quantity, times(read, one.factor)];
  const load = item.load === undefined ? [] : [["load", parse(item.load)]];
  const causes = [];
  for (const other of (item.wave || []).map((id) => items.get(id))) {
    const read = early(other) === null ? number(other, last(other)).value : undefined;
    const note = read === undefined ? null : reversed(new Map([si(item, value), si(other, read), ...load]));
    if (note !== null) {
      causes.push(Causes.of("peak-below-rms", item, { written: last(item).value, note }));
    }
  }
  return causes;
}

export { reversed, besides };
