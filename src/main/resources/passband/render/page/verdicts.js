// The verdicts of the judge on what is written.
import { judge, said, unclear, early, last, earlier, passes, number, below, above, beyond, calibration, outOfCalibration } from "./attempts.js";
import * as Blanks from "./blanks.js";
import * as Causes from "./causes.js";
import { derived } from "./derived.js";
import { gated } from "./gates.js";
import { data } from "./items.js";
import { deciding } from "./phases.js";
import { besides } from "./waves.js";

function reading(item) {
  const read = number(item, last(item));
  if (read.cause !== undefined) {
    return unclear(read.cause);
  }
  const written = last(item).value;
  const causes = beyond(item, read.value);
  const fails = causes.length > 0;
  if (fails && !below(read.value, item.lower) && !above(read.value, item.upper)) {
    causes.push(Causes.of("inside-tolerance", item, { written }));
  }
  const doubts = [...outOfCalibration(item), ...(HAS_WAVES ? besides(item, read.value) : [])];
  if (!fails && doubts.length > 0) {
    return said("unclear", [doubts[0]], read.value);
  }
  return said(fails ? "fail" : "pass", [...causes, ...doubts, ...earlier(item)], read.value);
}

function tick(item) {
  const { value } = last(item);
  return value === "yes" ? passes(item) : unclear(Causes.of("not-ticked", item, { written: value }));
}

function choice(item) {
  const { value } = last(item);
  if (!item.options.includes(value)) {
    return unclear(Causes.of("no-outcome", item, { written: value }));
  }
  return item.pass === undefined || item.pass === value
    ? passes(item)
    : said("fail", [Causes.of("other-outcome", item, { written: value, note: item.pass })]);
}

function date(item, written) {
  const day = Blanks.day(written);
  if (day === undefined) {
    return Causes.of("not-a-date", item, { written });
  }
  return day < data.revised ? Causes.of("before-revision", item, { written, note: data.revised }) : null;
}

// Why a text is no answer to what a blank asks for; null where it is one.
function unusable(item) {
  const { value } = last(item);
  switch (item.asks) {
    case "number":
      return number(item, last(item)).cause || null;
    case "date":
      return date(item, value);
    case "due":
      return calibration(item);
    case "name":
      return Blanks.filler(value) ? Causes.of("filler", item, { written: value }) : null;
    default:
      return null;
  }
}

function record(item) {
  const cause = unusable(item);
  if (cause !== null) {
    return unclear(cause);
  }
  const causes = item.asks === "number" ? beyond(item, number(item, last(item)).value) : [];
  return causes.length > 0 ? said("fail", [...causes, ...earlier(item)]) : passes(item);
}

const kinds = { reading, tick, choice, record };

function judged(item) {
  return HAS_DERIVED && item.kind === "derived" ? derived(item, judged) : early(item) || kinds[item.kind](item);
}

// By item, of what is written now.
function of(written) {
  judge(written);
  return gated(new Map(data.items.map((item) => [item.id, judged(item)])));
}

// Pass only where every item that applies is done and what decides passes.
function overall(verdicts) {
  if (deciding(data.items, verdicts).some((item) => verdicts.get(item.id).verdict === "fail")) {
    return "fail";
  }
  const open = [...verdicts.values()].some((v) => v.verdict === "not done" || v.verdict === "unclear");
  return open ? "incomplete" : "pass";
}

export { of, overall };
