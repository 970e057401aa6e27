// What is written of an item, and why it cannot be told, before it is judged.
import * as Blanks from "./blanks.js";
import * as Causes from "./causes.js";
import { data, items } from "./items.js";
import { parse, times, over, sign, compare } from "./ratio.js";
import * as Units from "./units.js";

const NUMBER = /^[+\-\u2212]?[0-9]{1,40}(\.[0-9]{1,40})?$/;
// What is judged: an item's id to its attempts, { number, value, unit, undone }; a unit that is left out is the item's own.
let written = new Map();
// The day of the readings, and the blanks for due dates that are filled in.
let date;
let dues = [];

const said = (verdict, causes = [], value = null) => ({ verdict, causes, value });
const unclear = (cause) => said("unclear", [cause]);

// Whether a unit is the item's own, however it is spelt.
function own(item, text) {
  const unit = Units.find(text);
  const same = unit !== undefined && unit.dimension === item.dimension && compare(unit.factor, item.factor) === 0;
  return text === "" || (item.unit !== undefined && same);
}

const attempts = (item) =>
  (written.get(item.id) || []).filter((a) => a.undone || a.value !== "").sort((a, b) => a.number - b.number);
const last = (item) => attempts(item).at(-1);

function applies(item) {
  const met = (c) => {
    const choice = items.get(c.item);
    const answer = last(choice);
    return answer !== undefined && !answer.undone && trouble(choice) === null && c.is.includes(answer.value);
  };
  return (item.applies === undefined || item.applies.some(met)) && (item.when || []).every(met);
}

// Why the last attempt cannot be told; null where it can.
function trouble(item) {
  const all = attempts(item);
  const { length } = all;
  if (length > 0 && all[length - 1].number !== length) {
    const { number } = all[length - 1];
    return Causes.of("attempt-missing", item, { number: String(number), written: String(number) });
  }
  return length > 1 && all.some((a) => a.undone) ? Causes.of("done-and-not-done", item, { written: "not-done" }) : null;
}

// What can be said before the value is looked at; null where it has to be.
function early(item) {
  const done = attempts(item).filter((a) => !a.undone);
  if (HAS_CONDITIONS && !applies(item)) {
    return done.length === 0
      ? said("does not apply")
      : unclear(Causes.of("does-not-apply", item, { written: done[0].value }));
  }
  const why = trouble(item);
  return why !== null ? unclear(why) : done.length === 0 ? said("not done") : null;
}

// A note of the attempts before the last.
function earlier(item) {
  const all = attempts(item);
  const note = (first) => (first.unit === undefined || own(item, first.unit) ? first.value : first.value + " " + first.unit);
  return all.length < 2
    ? []
    : [Causes.of("earlier-attempt", item, { number: String(all.length), written: all[0].value, note: note(all[0]) })];
}

const passes = (item) => said("pass", earlier(item));

// The value in the item's unit, or the cause why there is none.
function number(item, attempt) {
  const text = attempt.value;
  if (!NUMBER.test(text) || attempt.unsure === true) {
    return { cause: Causes.of(text.includes(",") || attempt.unsure === true ? "decimal-comma" : "not-a-number", item, { written: text }) };
  }
  const given = attempt.unit === undefined ? item.unit : attempt.unit;
  if (given === "" && item.unit !== "1") {
    return { cause: Causes.of("no-unit", item, { written: "" }) };
  }
  const unit = Units.find(given);
  if (unit === undefined || unit.dimension !== item.dimension) {
    return { cause: Causes.of("other-unit", item, { written: given, note: item.printed }) };
  }
  const ratio = over(unit.factor, item.factor);
  const decimals = (text.split(".")[1] || "").length;
  const step = over(ratio, [10n ** BigInt(decimals), 1n]);
  if (item.resolution !== undefined && compare(step, parse(item.resolution)) > 0) {
    const needed = { number: String(item.decimals), written: text, note: item.printed || null };
    return { cause: Causes.of("too-few-decimals", item, needed) };
  }
  const value = times(parse(text), ratio);
  if (sign(value) < 0 && !item.negative) {
    return { cause: Causes.of("negative", item, { written: text }) };
  }
  // No peak is below its RMS value.
  return HAS_WAVES && below(value, item.least) ? { cause: Causes.of("crest-below-one", item, { written: text }) } : { value };
}

// Whether a value is beyond a limit; where there is none, it is not.
const below = (value, limit) => limit !== undefined && compare(value, parse(limit)) < 0;
const above = (value, limit) => limit !== undefined && compare(value, parse(limit)) > 0;

// The limits beyond which a value lies.
function beyond(item, value) {
  const { low, high, unit } = item;
  const written = last(item).value;
  return [
    ...(below(value, low) ? [Causes.of("below-limit", item, { number: low, unit, written })] : []),
    ...(above(value, high) ? [Causes.of("above-limit", item, { number: high, unit, written })] : []),
  ];
}

// What is judged of a blank; undefined where there is nothing, or it cannot be told.
const blank = (item) => (early(item) === null ? last(item).value : undefined);
const asking = (what) => data.items.filter((item) => item.asks === what && blank(item) !== undefined);

// Why the blank for a due date is unclear; null where it is not.
function calibration(due) {
  const written = blank(due);
  const until = Blanks.only(written);
  if (until === undefined) {
    return Causes.of("calibration-unchecked", due, { written });
  }
  return date === undefined || until >= date ? null : Causes.of("calibration-overdue", due, { written: until, note: date });
}

// Why a reading cannot pass, in a list; an empty one where it can.
function outOfCalibration(item) {
  for (const due of dues) {
    const bears = item.due === undefined ? due.id.startsWith("sheet/") : item.due.includes(due.id);
    const cause = bears ? calibration(due) : null;
    if (cause !== null && cause.code === "calibration-overdue") {
      return [Causes.of("instrument-overdue", item, { written: cause.written, note: due.id.slice(due.id.lastIndexOf("/") + 1) })];
    }
  }
  return [];
}

// From now on this is what is written.
function judge(entries) {
  written = entries;
  [date] = asking("date").map((item) => Blanks.day(blank(item)));
  dues = asking("due");
}

export { judge, said, unclear, own, early, last, earlier, passes, number, below, above, beyond, calibration, outOfCalibration };
