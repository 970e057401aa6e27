// The page: one unit at a time is filled in, kept, judged, saved and loaded.
import { text } from "./causes.js";
import * as Csv from "./csv.js";
import { guards } from "./derived.js";
import { el, button, find } from "./dom.js";
import * as Fields from "./fields.js";
import * as Files from "./files.js";
import { closed } from "./gates.js";
import * as Kept from "./kept.js";
import * as OneLine from "./oneline.js";
import * as Order from "./order.js";
import * as Shown from "./shown.js";
import * as Start from "./start.js";
import * as Tabs from "./tabs.js";
import * as Timer from "./timer.js";
import { names } from "./units.js";
import * as Verdicts from "./verdicts.js";
import { words } from "./words.js";

const { body } = document;
const main = find("main");
const serialField = Fields.first(Files.SERIAL);
const unitName = el("h1", { id: "unit" });
const count = el("span", { id: "count", role: "status" });
const hint = el("p", { id: "hint", role: "status" });
const trouble = el("p", { id: "trouble", role: "alert", className: "trouble" });
const file = el("input", { type: "file", id: "file", tabIndex: -1, hidden: true, accept: ".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain", "aria-label": WORDS.file });
const tools = el("div", { className: "tools", role: "region", "aria-label": WORDS.readings });
const undo = button("undo", "", () => swap());
const goOnHere = button("go-on-here", WORDS.goOnHere, () => open(unit));
const view = button("view", WORDS.oneLine, () => changeView());
let unit = null;
let at = "";
let unsaved = false;
let before = null;
let keeps = true;
let field;

// ---- what is said ----

function refresh() {
  const parts = Shown.refresh();
  parts.push(keeps ? WORDS.kept : WORDS.notKept, ...(unsaved ? [WORDS.unsaved] : []));
  count.textContent = parts.join(" \u00b7 ");
  undo.hidden = before === null;
  undo.textContent = before === null ? "" : words(before.undone ? WORDS.redo : WORDS.undo, { what: before.what });
}

const tell = (text) => (hint.textContent = text);
const complain = (text) => (unit === null ? Start.tell(text) : (trouble.textContent = text));

// ---- one unit ----

const keep = () => (keeps = Kept.write(unit, { at, unsaved, entries: Fields.filled(), before }));

function put(entries) {
  Fields.fill(entries);
  serialField.value = unit;
  keep();
  refresh();
  OneLine.forget();
}

// A unit, as it is kept on this device; a new one where nothing is kept.
function open(serial, said = "") {
  let record = null;
  try {
    record = Kept.read(serial);
  } catch {
    said = words(WORDS.unreadable, { serial });
  }
  unit = serial;
  ({ at, unsaved, before } = record || { at: new Date().toISOString(), unsaved: false, before: null });
  unitName.textContent = words(WORDS.unit, { serial });
  stopHere(false);
  trouble.textContent = "";
  Timer.stop();
  Start.hide();
  Tabs.claim(serial);
  put(record === null ? new Map() : record.entries);
  OneLine.restart();
  tell(said);
  window.scrollTo(0, 0);
  (Order.firstOpen(Fields.data.items.map(({ id }) => id), true) || view).focus();
}

// Nothing is written here while another tab has the unit.
function stopHere(stopped) {
  [main, tools, find("header")].forEach((part) => (part.inert = stopped));
  save.disabled = stopped;
  goOnHere.hidden = !stopped;
}

// Back to the start: nothing of the unit stays on the page.
function leave() {
  unit = null;
  [unsaved, before] = [false, null];
  Tabs.claim(null);
  Timer.stop();
  Fields.fill(new Map());
  refresh();
  Start.show();
}

function changed() {
  at = new Date().toISOString();
  unsaved = true;
  trouble.textContent = "";
  tell("");
  keep();
  refresh();
}

// ---- what can be undone ----

function replace(what, entries) {
  at = new Date().toISOString();
  before = { what, entries: Fields.filled(), undone: false };
  put(entries);
}

// What is there now and what was there before change places.
function swap() {
  const { what, entries, undone } = before;
  before = { what, entries: Fields.filled(), undone: !undone };
  at = new Date().toISOString();
  unsaved = true;
  trouble.textContent = "";
  put(entries);
  tell("");
}

function load(bytes, name) {
  const { serial, entries } = Files.read(bytes, unit);
  if (unit === null) {
    open(serial);
  }
  unsaved = false;
  trouble.textContent = "";
  replace(WORDS.load.toLowerCase(), entries);
  tell(words(WORDS.loaded, { file: name }));
}

// ---- the keyboard ----

function go(element, why = "") {
  OneLine.reveal(element);
  const early = OneLine.early(element);
  (early === undefined ? element : document.getElementById("forward")).focus();
  tell(early || why);
}

let byTab = false;
document.addEventListener("keydown", (event) => {
  byTab = event.key === "Tab" && !event.shiftKey;
  const item = event.target.matches("main input, header input") ? Fields.itemOf(event.target) : undefined;
  if (event.key !== "Enter" || item === undefined) {
    return;
  }
  event.preventDefault();
  const { to, why } = Order.after(item.id);
  if (!OneLine.isOn() || !OneLine.enter(to)) {
    go(to || document.getElementById("save"), why);
  }
});
document.addEventListener("focusin", (event) => {
  const item = event.target.matches("main input") ? Fields.itemOf(event.target) : undefined;
  field = item === undefined ? field : event.target;
  const back = byTab && item !== undefined && event.target.matches(".entry") ? Order.before(item.id) : undefined;
  byTab = false;
  const early = OneLine.early(event.target);
  if (early !== undefined) {
    tell(early);
  }
  if (back !== undefined && back !== event.target) {
    go(back, words(WORDS.first, { what: Fields.label(back) }));
  }
});
document.addEventListener("pointerdown", () => (byTab = false));

function changeView() {
  const on = OneLine.toggle(field);
  view.textContent = on ? WORDS.wholeSheet : WORDS.oneLine;
  if (!on && field !== undefined) {
    field.focus();
  }
}

// ---- the page ----

const save = button("save", WORDS.save, () => {
  Files.save(unit);
  unsaved = false;
  keep();
  refresh();
});
const clear = button("clear", WORDS.clear, () => {
  replace(WORDS.clear.toLowerCase(), new Map());
  tell(WORDS.clearDone);
});
const choose = () => file.click();
const bar = find(".bar");
bar.append(el("div", { className: "state" }, unitName, count), save, view, goOnHere, Timer.element, hint, trouble);
tools.append(button("load", WORDS.load, choose), clear, undo, button("another", WORDS.another, leave), file);
find("header").before(tools, bar);
body.append(OneLine.bar);
OneLine.equip(go);
Timer.equip();
Start.equip(open, choose);
serialField.readOnly = true;
body.classList.add("live");

document.addEventListener("input", (event) => {
  if (unit !== null && event.target.matches("main input:not(.noted), header input")) {
    changed();
  }
});
file.onchange = async () => {
  try {
    if (file.files.length > 0) {
      load(new Uint8Array(await file.files[0].arrayBuffer()), file.files[0].name);
    }
  } catch (error) {
    complain(words(WORDS.notLoaded, { why: error.message }));
  }
  file.value = "";
};
window.addEventListener("beforeunload", (event) => {
  if (unsaved) {
    event.preventDefault();
    event.returnValue = "";
  }
});
Tabs.listen({
  taken: (serial) => {
    stopHere(true);
    unsaved = false;
    trouble.textContent = words(WORDS.elsewhere, { serial });
  },
  wasOpen: (serial) => tell(words(WORDS.wasElsewhere, { serial })),
});
new ResizeObserver(() => {
  document.documentElement.style.setProperty("--bar", bar.offsetHeight + "px");
  OneLine.follow();
}).observe(bar);
const narrow = matchMedia("(max-width: 720px)");
const cards = () => body.classList.toggle("cards", narrow.matches);
narrow.onchange = cards;
cards();
leave();

// What the console of a browser can ask the page.
Object.assign(globalThis, {
  Fields: {
    data: Fields.data,
    all: Fields.all,
    items: Fields.items,
    fill: Fields.fill,
    entered: Fields.entered,
    first: Fields.first,
    name: Fields.name,
    attempts: Fields.attempts,
    itemOf: Fields.itemOf,
  },
  Verdicts: { of: Verdicts.of, overall: Verdicts.overall, closed },
  Causes: { text },
  Units: { names },
  Derived: HAS_DERIVED ? { guards } : {},
  Csv: { read: Csv.read },
  Files: { read: Files.read },
  Shown: { of: Shown.of, refresh: Shown.refresh },
  OneLine: { reveal: OneLine.reveal },
});
