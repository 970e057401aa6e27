// What is kept on this device: unit by unit, by the digest of the sheet and the unit's serial number.
import * as Fields from "./fields.js";

const digest = document.body.dataset.digest;
const prefix = "passband:" + digest + ":";
const entriesOf = (list) =>
  new Map(
    list
      .filter(([id]) => Fields.items.has(id))
      .map(([id, [one, two, not, why = "", who = ""]]) => [id, [String(one), String(two), not === true, String(why), String(who)]]),
  );

// A unit's record, { at, unsaved, entries, before }; null where there is none. Before is what was cleared or replaced.
function read(serial) {
  const text = localStorage.getItem(prefix + serial);
  if (text === null) {
    return null;
  }
  const { at, unsaved, entries, before } = JSON.parse(text);
  return {
    at: String(at),
    unsaved: unsaved === true,
    entries: entriesOf(entries),
    before: before ? { what: String(before.what), entries: entriesOf(before.entries), undone: before.undone === true } : null,
  };
}

// Whether it could be kept.
function write(serial, { at, unsaved, entries, before }) {
  try {
    const earlier = before && { ...before, entries: [...before.entries] };
    localStorage.setItem(prefix + serial, JSON.stringify({ at, unsaved, entries: [...entries], before: earlier }));
    return true;
  } catch {
    return false;
  }
}

// The serial numbers, the last changed first.
function serials() {
  try {
    const found = Object.keys(localStorage)
      .filter((key) => key.startsWith(prefix))
      .map((key) => key.slice(prefix.length));
    const at = (serial) => {
      try {
        return read(serial).at;
      } catch {
        return "";
      }
    };
    return found.sort((a, b) => (at(a) < at(b) ? 1 : -1));
  } catch {
    return [];
  }
}

// As it is kept, so that it can be put back.
const raw = (serial) => localStorage.getItem(prefix + serial);
const putRaw = (serial, text) => localStorage.setItem(prefix + serial, text);
const remove = (serial) => localStorage.removeItem(prefix + serial);

export { read, write, serials, raw, putRaw, remove };
