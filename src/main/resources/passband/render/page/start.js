// The screen before the sheet: a new unit, or one that is kept on this device.
import * as Blanks from "./blanks.js";
import { el, button, find } from "./dom.js";
import * as Kept from "./kept.js";
import * as Shown from "./shown.js";
import { words } from "./words.js";

const trouble = el("p", { id: "start-trouble", role: "alert", className: "trouble" });
const serial = el("input", { id: "serial", autocomplete: "off", "aria-describedby": "start-trouble" });
const units = el("ul", { id: "units", className: "units" });
const undo = button("undo-remove", "", () => {});
let open = () => {};
const screen = el("div", { id: "start", role: "main" });

function equip(openUnit, loadFile) {
  open = openUnit;
  const form = el(
    "form",
    { id: "new-unit" },
    el("h3", {}, WORDS.newUnit),
    el("label", { htmlFor: "serial" }, WORDS.serial),
    serial,
    el("button", { id: "begin" }, WORDS.start),
    trouble,
  );
  form.onsubmit = (event) => {
    event.preventDefault();
    begin(serial.value.trim());
  };
  screen.append(el("h1", {}, document.title), el("h2", {}, WORDS.whichUnit), form, units, el("p", {}, undo, button("load-first", WORDS.fromFile, loadFile)));
  find("main").before(screen);
}

function begin(typed) {
  trouble.textContent =
    typed === ""
      ? WORDS.noSerial
      : Blanks.filler(typed)
        ? words(WORDS.fillerSerial, { serial: typed })
        : kept(typed) !== undefined
          ? words(WORDS.alreadyKept, { serial: kept(typed) })
          : "";
  if (trouble.textContent === "") {
    open(typed);
  } else {
    serial.focus();
  }
}

// The unit of that number, however its letters and spaces are written.
const bare = (text) => text.toUpperCase().replace(/[\s-]+/g, "");
const kept = (typed) => Kept.serials().find((one) => bare(one) === bare(typed));

// The time of day on this device.
function local(at) {
  const time = new Date(at);
  return new Date(time.getTime() - time.getTimezoneOffset() * 60000).toISOString().slice(0, 16).replace("T", " ");
}

function about(one) {
  try {
    const { at, unsaved, entries } = Kept.read(one);
    const when = words(WORDS.lastChanged, { at: local(at) });
    return [words(WORDS.progress, Shown.progress(entries)), when, ...(unsaved ? [WORDS.unsavedUnit] : [])].join(" \u00b7 ");
  } catch {
    return words(WORDS.unreadable, { serial: one });
  }
}

function line(one) {
  const act = (name, text, action) => {
    const label = text + (name === "go-on" ? "" : ": " + one);
    return el("button", { type: "button", className: name, "aria-label": label, onclick: action }, text);
  };
  return el(
    "li",
    {},
    act("go-on", words(WORDS.goOn, { serial: one }), () => open(one)),
    el("span", {}, about(one)),
    act("correct", WORDS.correct, () => correct(one)),
    act("remove", WORDS.remove, () => remove(one)),
  );
}

// The readings go on under the right number.
function correct(one) {
  const right = (prompt(words(WORDS.correctTo, { serial: one }), one) || "").trim();
  if (right === "" || right === one) {
    return;
  }
  const other = kept(right);
  if (Blanks.filler(right) || (other !== undefined && other !== one)) {
    trouble.textContent = Blanks.filler(right) ? words(WORDS.fillerSerial, { serial: right }) : words(WORDS.alreadyKept, { serial: other });
    return;
  }
  Kept.putRaw(right, Kept.raw(one));
  Kept.remove(one);
  show();
}

function remove(one) {
  const text = Kept.raw(one);
  Kept.remove(one);
  show();
  trouble.textContent = words(WORDS.removed, { serial: one });
  undo.hidden = false;
  undo.textContent = words(WORDS.undoRemove, { serial: one });
  undo.onclick = () => {
    Kept.putRaw(one, text);
    show();
  };
  undo.focus();
}

function show() {
  trouble.textContent = "";
  undo.hidden = true;
  serial.value = "";
  const all = Kept.serials();
  units.replaceChildren(...all.map(line));
  if (all.length > 0) {
    units.prepend(el("li", { className: "title" }, el("h3", {}, WORDS.onDevice)));
  }
  document.body.classList.add("starting");
  (find(".go-on", units) || serial).focus();
}

const hide = () => document.body.classList.remove("starting");
const tell = (text) => (trouble.textContent = text);

export { equip, show, hide, tell };
