// One line at a time: the same page, of which only one stop is shown, large; at a line beside its wiring and its steps.
import { el, button, find, findAll } from "./dom.js";
import * as Fields from "./fields.js";
import * as Order from "./order.js";
import * as Shown from "./shown.js";
import * as Timer from "./timer.js";
import { words } from "./words.js";

const { lines } = Fields.data;
const wired = new Map();
const panel = el("div", { id: "panel" });
const position = el("p", { id: "position", role: "status" });
const forward = button("forward", WORDS.next, () => onward());
const backward = button("backward", WORDS.back, () => go(beside(-1)));
const observed = button("observed", "", () => observe());
const bar = el("div", { id: "stops", role: "region", "aria-label": WORDS.oneLine }, backward, position, observed, forward);
let stops = [];
let at = 0;
let on = false;
let focus = () => {};

// What is done of a stop: how many steps, whether it is read again, which waits are over, and what was asked for and left blank.
const nothing = () => ({ step: undefined, again: false, over: new Set(), asked: new Set() });

const within = (elements) => [
  ...new Set(elements.flatMap((one) => findAll("[data-item]", one).map((field) => field.dataset.item))),
];
const stop = (shown) => ({ shown, items: within(shown), line: undefined, steps: [], done: nothing() });

// ---- the stops of the sheet ----

function made() {
  const list = [stop([find("header")])];
  let lineNumber = 0;
  for (const section of findAll("main > section")) {
    if (!section.classList.contains("run")) {
      list.push(stop([section]));
      continue;
    }
    const parts = [...section.children];
    const tables = parts.filter((part) => part.matches("table.lines"));
    const first = parts.findIndex((part) => part.matches(".how"));
    const last = parts.indexOf(tables.at(-1));
    const head = parts.filter((part, i) => part.matches("h2, .outlet") || (i === 1 && part.matches(".note")));
    const wiring = drawingOf(section);
    add(list, head, parts.slice(0, first));
    for (const table of tables) {
      const how = table.previousElementSibling;
      const notes = parts.filter((part) => part.matches(".formula"));
      for (const row of table.tBodies) {
        const line = lines[lineNumber++];
        list.push({ ...stop([...head, panel, row, ...notes]), line, number: lineNumber, table, wiring, title: how.firstElementChild.dataset.title });
        list.at(-1).steps = stepsOf(line, findAll("li", how), row);
        list.at(-1).from = find("ol", how)?.start;
      }
    }
    add(list, head, parts.slice(last + 1));
  }
  return list;
}

// The steps of a line with what is its own in them, and what is written at each: boxes, or what it asks for below the line.
function stepsOf(line, items, row) {
  const boxes = within(findAll("td.reading", row));
  const asks = within(findAll(".asks", row));
  return items.map((li, i) => ({
    kind: line.kinds[i],
    text: line.steps[i] || li.textContent,
    caution: li.classList.contains("caution"),
    wait: li.dataset.wait && Number(li.dataset.wait),
    boxes: boxes.filter((id, place) => line.at[place] === i && Fields.items.get(id).kind === "reading"),
    asks: ["confirm", "record", "choose"].includes(line.kinds[i]) ? asks.splice(0, 1) : [],
  }));
}

// What stands before or after the lines of a run is a stop of its own where something is to be done there.
function add(list, head, parts) {
  const rest = parts.filter((part) => !head.includes(part) && !part.matches(".formula"));
  if (rest.some((part) => part.matches(".setup, ol") || find("[data-item]", part) !== null)) {
    list.push(stop([...head, ...rest]));
  }
}

// The wiring that a run is done on, drawn here or earlier.
function drawingOf(section) {
  const svg = find(".setup svg", section);
  const key = section.dataset.wiring;
  if (svg !== null) {
    wired.set(key, svg);
  }
  return key === undefined ? undefined : wired.get(key);
}

const applies = ({ items }) => items.length === 0 || items.some((id) => Shown.of(id).verdict !== "does not apply");

function beside(way) {
  let next = at + way;
  while (next > 0 && next < stops.length - 1 && !applies(stops[next])) {
    next += way;
  }
  return Math.min(stops.length - 1, Math.max(0, next));
}

// ---- what is shown ----

function show() {
  findAll(".off").forEach((one) => one.classList.remove("off"));
  findAll(".atline").forEach((one) => one.classList.remove("atline"));
  panel.remove();
  unlock();
  document.body.classList.toggle("one", on);
  bar.hidden = !on;
  if (!on) {
    return;
  }
  const { shown, line, table } = stops[at];
  if (line !== undefined) {
    table.before(panel);
    table.parentElement.classList.add("atline");
    draw();
  }
  hide(find("main"), shown);
  find("header").classList.toggle("off", !shown.includes(find("header")));
  lock();
  const n = stops.slice(0, at + 1).filter(applies).length;
  position.textContent = words(WORDS.position, { n, all: stops.filter(applies).length });
  backward.disabled = at === 0;
  label();
}

function hide(parent, shown) {
  for (const child of parent.children) {
    if (!shown.includes(child)) {
      const around = shown.some((one) => child.contains(one));
      child.classList.toggle("off", !around);
      if (around) {
        hide(child, shown);
      }
    }
  }
}

function draw() {
  const here = stops[at];
  const { step } = here.done;
  const list = el("ol", { className: "steps", "aria-label": WORDS.steps });
  let next = here.from;
  here.steps.forEach((one, i) => {
    const item = el("li", { className: (one.caution ? "caution " : "") + (i < step ? "done" : i === step ? "now" : "") }, one.text);
    item.value = one.caution ? next : next++;
    if (i === step) {
      item.setAttribute("aria-current", "step");
    }
    list.append(item);
  });
  panel.replaceChildren(el("div", { className: "todo" }, el("h3", {}, words(WORDS.line, { n: here.number }) + ": " + here.title), list));
  if (here.wiring !== undefined) {
    const copy = here.wiring.cloneNode(true);
    const name = find("title", copy).textContent;
    findAll("title, desc", copy).forEach((one) => one.remove());
    findAll("g", copy).forEach((one) => one.removeAttribute("id"));
    copy.removeAttribute("aria-labelledby");
    copy.setAttribute("aria-label", name);
    panel.prepend(el("div", { className: "drawn" }, copy));
  }
}

// The step that is to be done; undefined where all are.
const now = () => stops[at].steps[stops[at].done.step];

function label() {
  const step = now();
  const waits = step === undefined ? openWait() !== undefined && stops[at].done.asked.has("wait") : isWait(step) && !isOver(step);
  forward.textContent = step === undefined ? WORDS.next : WORDS.stepDone;
  observed.hidden = !waits;
  observed.textContent = step !== undefined && step.kind === "rest" ? WORDS.restObserved : WORDS.waitObserved;
}

// ---- nothing is written before its step ----

const isWait = ({ wait }) => wait !== undefined;
const isOver = (step) => stops[at].done.over.has(step);
const written = (id) => {
  const [one, two, not] = Fields.written(id);
  return not || one !== "" || two !== "";
};

// The steps of a line that is written already are done up to there; those after it are not known to be.
function begun({ line, steps, done }) {
  if (done.step === undefined) {
    const boxes = steps.flatMap((step) => step.boxes);
    done.step = line !== undefined && boxes.length > 0 && boxes.every(written) ? steps.findLastIndex((step) => step.boxes.length > 0) + 1 : 0;
  }
}

// The fields of the line whose step has not come yet, or that are for reading again when it is not.
function locked({ steps, done }) {
  return steps.flatMap((step, i) =>
    step.boxes.flatMap((id) => {
      const entry = Fields.first(id);
      const again = Fields.second(entry);
      return [...(i > done.step && entry.value === "" ? [entry] : []), ...((i > done.step || !done.again) && again.value === "" ? [again] : [])];
    }),
  );
}

const unlock = () => findAll("main input[readonly]").forEach((field) => (field.readOnly = false));

function lock() {
  unlock();
  locked(stops[at]).forEach((field) => (field.readOnly = true));
}

const first = (what) => words(WORDS.first, { what });

// Whoever goes to a field before its step is told which step it is.
function early(field) {
  return on && field.readOnly && now() !== undefined ? first(now().text) : undefined;
}

// ---- from stop to stop ----

function go(next) {
  at = next;
  begun(stops[at]);
  show();
  window.scrollTo(0, 0);
  const field = stops[at].line === undefined ? Order.firstOpen(stops[at].items, true) : undefined;
  focus(field || forward, "");
}

// Beside the steps of a list: the first that waits and has not been timed.
const openWait = () => stops[at].shown.flatMap((part) => findAll("li[data-wait]", part)).find((li) => stops[at].line === undefined && Timer.timed(li) === false && !isOver(li));

// A blank that may stay one is asked for once: what comes next of it, or undefined.
function blankOnce(ids) {
  const { asked } = stops[at].done;
  const id = ids.find((one) => Fields.items.get(one).kind === "record" && Shown.of(one).verdict === "not done" && !asked.has(one));
  if (id === undefined) {
    return false;
  }
  asked.add(id);
  const field = Fields.first(id);
  focus(field, words(WORDS.writeOrBlank, { what: Fields.label(field), button: forward.textContent }));
  return true;
}

// The step is done, or the stop: then the next one, unless something is open here or before.
function onward() {
  const here = stops[at];
  const before = here.items.length === 0 ? undefined : Order.before(here.items[0]);
  if (before !== undefined) {
    focus(before, first(Fields.label(before)));
  } else if (now() !== undefined) {
    stepDone(here, now());
  } else {
    stopDone(here);
  }
}

function stopDone(here) {
  const open = Order.firstOpen(here.items, false);
  const wait = openWait();
  if (open !== undefined && here.line !== undefined && open.matches(".again")) {
    // What failed is read again by the same steps.
    Object.assign(here.done, nothing(), { step: 0, again: true });
    show();
    focus(forward, first(Fields.label(open)));
  } else if (open !== undefined) {
    focus(open, first(Fields.label(open)));
  } else if (wait !== undefined) {
    here.done.asked.add("wait");
    label();
    focus(find("button", wait), first(wait.firstChild.textContent));
  } else if (blankOnce(here.items)) {
    return;
  } else if (beside(1) === at) {
    focus(forward, WORDS.allDone);
  } else {
    go(beside(1));
  }
}

// What is to be written at a step; undefined where nothing is open. What fails is read again only when the output is off: the steps go on.
function openAt(here, { boxes, asks }) {
  const box = boxes.map(Fields.first).find((one) => {
    const field = here.done.again ? Fields.second(one) : one;
    return field.value === "" && [[Fields.itemOf(one).id], here.items].some((ids) => Order.firstOpen(ids, false) === field);
  });
  return box === undefined ? Order.firstOpen(asks, false) : here.done.again ? Fields.second(box) : box;
}

function stepDone(here, step) {
  const open = openAt(here, step);
  if (open !== undefined) {
    focus(open, step.boxes.length > 0 ? WORDS.writeOrNot : first(Fields.label(open)));
  } else if (isWait(step) && !isOver(step)) {
    if (!Timer.runs(step)) {
      time(step);
    }
    label();
    focus(forward, first(step.text));
  } else if (!blankOnce(step.asks)) {
    next(here, step);
  }
}

function time(step) {
  const { over } = stops[at].done;
  Timer.start(step.kind === "rest" ? WORDS.timerRest : WORDS.timerWait, step.wait, step, () => {
    over.add(step);
    if (on) {
      label();
    }
  });
}

function next(here, step) {
  if (step.kind === "activate" && here.line.on !== undefined) {
    Timer.start(WORDS.timerOn, here.line.on);
  }
  if (step.kind === "stop") {
    Timer.stop();
  }
  here.done.step++;
  const following = now();
  if (following !== undefined && isWait(following)) {
    time(following);
  }
  draw();
  lock();
  label();
  focus((following !== undefined && openAt(here, following)) || forward, "");
}

// Somebody says that the time has passed, though no timer does.
function observe() {
  const step = now();
  const { over } = stops[at].done;
  if (step === undefined) {
    for (let wait = openWait(); wait !== undefined; wait = openWait()) {
      over.add(wait);
    }
  } else {
    over.add(step);
  }
  Timer.stop();
  onward();
}

function stopOf(element) {
  const item = Fields.itemOf(element);
  return item === undefined ? -1 : stops.findIndex(({ items }) => items.includes(item.id));
}

// The stop that a field is at is shown before the field gets the focus.
function reveal(element) {
  const place = stopOf(element);
  if (on && place >= 0 && place !== at) {
    at = place;
    begun(stops[at]);
    show();
  }
}

// From a field by Enter, where the next one is elsewhere, or is read again and the output goes off first.
function enter(to) {
  const place = to === undefined ? stops.length : stopOf(to);
  const offFirst = place === at && now() !== undefined && to.matches(".again") && to !== document.activeElement;
  if (place <= at && !offFirst && !(place === at && early(to) !== undefined)) {
    return false;
  }
  onward();
  return true;
}

// Beside the whole sheet; it begins at a field, or where it was.
function toggle(field) {
  on = !on;
  at = on && field !== undefined ? Math.max(0, stopOf(field)) : at;
  begun(stops[at]);
  show();
  return on;
}

// What stands in the fields is another one: of no step is it known that it is done.
function forget() {
  Timer.forget();
  stops.forEach((one) => (one.done = nothing()));
  begun(stops[at]);
  show();
}

// The sheet from its beginning.
function restart() {
  at = 0;
  forget();
}

// On a small screen a field below the steps, or a bar that grows, would take the step that is to be done out of sight.
const follow = () => find("li.now", panel)?.scrollIntoView({ block: "nearest" });

const equip = (way) => {
  focus = (element, hint) => {
    way(element, hint);
    follow();
  };
  stops = made();
};

const isOn = () => on;

export { bar, equip, follow, restart, forget, toggle, reveal, enter, early, isOn };
