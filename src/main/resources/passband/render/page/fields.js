// The items of the sheet, and what stands in their fields: [one attempt, a second one, whether it was not done, why it was
// read again or not done, and who did that].
import * as Decimal from "./decimal.js";
import { el, find, findAll } from "./dom.js";
import { data, fields, items } from "./items.js";
import { words } from "./words.js";

const blank = ["", "", false, "", ""];
const first = (id) => fields.get(id)[0];
const chosen = (id) => fields.get(id).find((radio) => radio.checked);

// By the box of a reading all that is asked of it, as in a record.
const boxes = new Map();
const second = (entry) => boxes.get(entry)[1];
const undone = (entry) => boxes.get(entry)[2];

// What a reading has on the screen only: its verdict, a box for a second attempt, and a tick that it was not done.
for (const item of data.items.filter(({ what }) => what !== undefined)) {
  const entry = first(item.id);
  const row = entry.closest("tr");
  const verdict = find(".verdict", row);
  const text = item.kind === "derived" ? WORDS.boxCalculated : item.printed === "" ? WORDS.boxPlain : WORDS.boxIn;
  const label = words(text, { line: lineOf(row), what: item.what, unit: item.printed });
  const input = (className, said, more) => el("input", { className, placeholder: said, "aria-label": label + ", " + said, ...more });
  entry.className = "entry";
  entry.setAttribute("aria-label", label);
  verdict.append(el("output", { className: "said", "aria-label": label + ", " + WORDS.result }));
  if (item.kind === "reading") {
    const again = input("again", WORDS.again, { inputMode: "decimal" });
    const tick = input("undone", WORDS.notDone, { type: "checkbox" });
    const [why, who] = [input("why", WORDS.why), input("who", WORDS.who)];
    entry.inputMode = "decimal";
    entry.parentElement.append(again);
    verdict.append(el("label", {}, tick, WORDS.notDone), why, who);
    boxes.set(entry, [entry, again, tick, why, who]);
  }
}
findAll("input:not([type])").forEach((input) => (input.autocomplete = "off"));

// The number of the line that a row is of.
function lineOf(row) {
  return find(".n", row.parentElement).textContent;
}

const isTick = (field) => field.type === "checkbox";

function written(id) {
  const [field] = fields.get(id);
  const { kind } = items.get(id);
  if (kind === "reading") {
    return boxes.get(field).map((box) => (isTick(box) ? box.checked : box.value.trim()));
  }
  const value = kind === "tick" ? (field.checked ? "yes" : "") : kind === "choice" ? (chosen(id) || { value: "" }).value : kind === "record" ? field.value.trim() : "";
  return [value, ...blank.slice(1)];
}

function put(id, values) {
  const { kind } = items.get(id);
  fields.get(id).forEach((field) => {
    if (kind === "reading") {
      boxes.get(field).forEach((box, i) => (box[isTick(box) ? "checked" : "value"] = values[i]));
    } else if (kind === "tick" || kind === "choice") {
      field.checked = values[0] === (kind === "tick" ? "yes" : field.value);
    } else if (kind === "record") {
      field.value = values[0];
    }
  });
}

const entered = () => new Map(data.items.map(({ id }) => [id, written(id)]));
const filled = () => new Map([...entered()].filter(([, [one, two, not]]) => one || two || not));
const fill = (entries) => data.items.forEach(({ id }) => put(id, entries.get(id) || blank));

// What the sheet calls an item: a line and what is read on it, or the item's own words.
function name(id) {
  const [field] = fields.get(id);
  if (field.matches(".entry")) {
    const row = field.closest("tr");
    const line = words(WORDS.line, { n: lineOf(row) });
    const which = find(".reading small", row);
    return which === null ? line : line + ", " + which.textContent;
  }
  const text = items.get(id).stops === undefined ? label(field) : find(".caution", field.closest("section")).lastChild.textContent;
  return words(WORDS.quoted, { text: text.trim().replace(/[:.]$/, "") });
}

// What the sheet accepts of a reading; empty where it accepts anything, and of all else.
function limits({ id, what, low, high }) {
  return what === undefined || (low === undefined && high === undefined) ? "" : find(".limits", first(id).closest("tr")).firstChild.textContent;
}

// What is asked for in words.
function label(field) {
  const asking = field.closest("[role=radiogroup]") || field;
  const [own] = asking.labels || [];
  return (asking.getAttribute("aria-label") || (own === undefined ? "" : own.textContent)).trim();
}

// A number may have another unit after it: "0.200 A"; without one it is in the item's own.
function parted(item, text) {
  const [, value, unit] = (item.unit !== undefined && /^(\S+)\s+([^\s\d.,+-]\S*)$/.exec(text)) || [];
  return value === undefined ? { value: text } : { value, unit };
}

// With a decimal point, as it is judged and saved.
function plain(item, text) {
  const { value, unit } = parted(item, text);
  const number = item.unit === undefined ? { value } : { value: Decimal.plain(value), unsure: Decimal.unsure(value) };
  return unit === undefined ? number : { ...number, unit };
}

// As they are saved: what is blank is left out, 'not done' comes last; why and who are of the last.
function attempts(item, [one, two, not, reason, by]) {
  const made = [
    { number: 1, ...plain(item, one), undone: false, reason: "", by: "" },
    { number: 2, ...plain(item, two), undone: false, reason: "", by: "" },
  ].filter(({ value }) => value !== "");
  const all = not ? [...made, { number: one ? (two ? 3 : 2) : 1, value: "", undone: true }] : made;
  return all.map((each, i) => (i === all.length - 1 ? { ...each, reason, by } : each));
}

// The item that a field belongs to; undefined where it belongs to none.
function itemOf(field) {
  if (field.id.startsWith("noted:")) {
    return items.get(field.id.slice("noted:".length));
  }
  const own = field.dataset.item !== undefined ? field : find("[data-item]", field.closest("tr") || field);
  return own === null ? undefined : items.get(own.dataset.item);
}

export { data, items, fields as all, blank, first, second, undone, chosen, written, entered, filled, fill, name, label, limits, parted, attempts, itemOf };
