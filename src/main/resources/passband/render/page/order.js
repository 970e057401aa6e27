// In which order the sheet is filled in by the keyboard, and what the keyboard does not pass.
import { data, items, first as fieldOf, second, label } from "./fields.js";
import * as Fields from "./fields.js";
import * as Shown from "./shown.js";
import { words } from "./words.js";

const at = new Map(data.items.map((item, i) => [item.id, i]));

// What is so because of another item, which stands before it and is asked for itself.
const ELSEWHERE = ["instrument-overdue", "gate-open", "gate-failed"];

const field = (item) => (item.kind === "choice" && Fields.chosen(item.id)) || fieldOf(item.id);
const reread = (id) => [second(fieldOf(id))].find((box) => box.value === "" && !box.disabled);

// Where the keyboard has to go because of an item; undefined where it may pass it.
function blocking(item) {
  const { verdict, causes } = Shown.of(item.id);
  if (verdict === "pass" || verdict === "does not apply" || Shown.shut(item.id)) {
    return undefined;
  }
  if (verdict === "not done") {
    return ["tick", "choice"].includes(item.kind) ? field(item) : undefined;
  }
  if (item.stops !== undefined) {
    const { note } = causes.find((cause) => cause.code.startsWith("earlier-") && cause.note !== null) || { note: item.id };
    return items.has(note) && items.get(note).kind !== "derived" ? field(items.get(note)) : field(item);
  }
  if (Shown.isNoted(item.id) || causes.every((cause) => ELSEWHERE.includes(cause.code))) {
    return undefined;
  }
  const noted = Shown.notedTick(item.id);
  switch (item.kind) {
    case "reading":
      return verdict === "fail" ? reread(item.id) || noted : second(fieldOf(item.id)).value === "" ? field(item) : second(fieldOf(item.id));
    case "derived":
      if (causes.some((cause) => cause.part !== null)) {
        return undefined;
      }
      return Object.values(item.parts).map(reread).find((box) => box !== undefined) || noted;
    default:
      return field(item);
  }
}

// The first that may not be passed, of the items in a range.
function blocked(from, to) {
  return data.items
    .slice(from, to)
    .map(blocking)
    .find((one) => one !== undefined);
}

const blank = (item) =>
  Shown.of(item.id).verdict === "not done" && !(item.kind === "reading" && Fields.undone(fieldOf(item.id)).checked);
const open = (item) => (blank(item) && item.kind !== "derived" && !Shown.shut(item.id) ? field(item) : blocking(item));

// What may not be passed before an item.
const before = (id) => blocked(0, at.get(id));

// From an item: { to, why }, where the keyboard goes on, and what to say of it; to is undefined at the end.
function after(id) {
  const back = blocked(0, at.get(id) + 1);
  if (back !== undefined) {
    return { to: back, why: words(WORDS.first, { what: label(back) }) };
  }
  const item = items.get(id);
  if (item.kind === "reading" && blank(item)) {
    return { to: fieldOf(id), why: WORDS.writeOrNot };
  }
  const to = data.items
    .slice(at.get(id) + 1)
    .map(open)
    .find((one) => one !== undefined);
  return { to, why: "" };
}

// Of some items the first that is open, with what is only to be written down or without.
function firstOpen(ids, records) {
  return ids
    .map((id) => items.get(id))
    .filter((item) => records || item.kind !== "record")
    .map(open)
    .find((one) => one !== undefined);
}

export { before, after, firstOpen };
