// What a gate stops: the readings after it, until the items before it pass.
import { said } from "./attempts.js";
import * as Causes from "./causes.js";
import { data } from "./items.js";
import { base, deciding } from "./phases.js";

// By value, by gate without its phase, the last gate before it that applies.
function gates(verdicts) {
  const stopping = new Map();
  for (const gate of data.items.filter((item) => item.stops !== undefined && verdicts.get(item.id).verdict !== "does not apply")) {
    for (const id of gate.stops) {
      stopping.set(id, (stopping.get(id) || new Map()).set(base(gate), gate));
    }
  }
  return stopping;
}

// The gates that a value stands behind and that have not passed.
function closed(verdicts) {
  if (!HAS_GATES) {
    return new Map();
  }
  const all = [...gates(verdicts)].map(([id, by]) => [id, [...by.values()].filter((gate) => verdicts.get(gate.id).verdict !== "pass")]);
  return new Map(all.filter(([, shut]) => shut.length > 0));
}

// What gates make of the verdicts: of themselves, and of what they stop.
function gated(raw) {
  if (!HAS_GATES) {
    return raw;
  }
  const verdicts = new Map();
  const stopping = gates(raw);
  const because = (item, { causes, value }, verdict, code, other) =>
    said(verdict, [...causes, Causes.of(code, item, { note: other.id })], value);
  const before = [];
  for (const item of data.items) {
    let now = raw.get(item.id);
    if (item.stops !== undefined && now.verdict !== "does not apply") {
      const failed = deciding(before, verdicts).find((one) => verdicts.get(one.id).verdict === "fail");
      const open = before.find((one) => ["not done", "unclear"].includes(verdicts.get(one.id).verdict));
      if (failed !== undefined) {
        now = because(item, now, "fail", "earlier-failed", failed);
      } else if (now.verdict === "pass" && open !== undefined) {
        now = because(item, now, "unclear", "earlier-open", open);
      }
    } else if (!["does not apply", "not done"].includes(now.verdict)) {
      for (const gate of (stopping.get(item.id) || new Map()).values()) {
        const { verdict } = verdicts.get(gate.id);
        if (verdict === "fail") {
          now = because(item, now, "fail", "gate-failed", gate);
        } else if (verdict !== "pass" && now.verdict === "pass") {
          now = because(item, now, "unclear", "gate-open", gate);
        }
      }
    }
    verdicts.set(item.id, now);
    before.push(item);
  }
  return verdicts;
}

export { closed, gated };
