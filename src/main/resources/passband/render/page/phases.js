// Which phase decides.
import { data } from "./items.js";

// The identity without the phase.
function base(item) {
  const last = item.id.lastIndexOf("/");
  const place = item.id.slice(0, Math.max(0, last));
  return item.phase !== undefined && place.endsWith("/" + item.phase)
    ? place.slice(0, -item.phase.length - 1) + item.id.slice(last)
    : item.id;
}

// Of each item the last phase in which it was done; its first where it was done in none.
function deciding(items, verdicts) {
  if (!HAS_CONDITIONS) {
    return items;
  }
  const last = new Map();
  for (const item of items) {
    const before = last.get(base(item));
    const done = ["pass", "fail", "unclear"].includes(verdicts.get(item.id).verdict);
    if (before === undefined || (done && data.phases.indexOf(item.phase) > data.phases.indexOf(before.phase))) {
      last.set(base(item), item);
    }
  }
  return [...last.values()];
}

export { base, deciding };
