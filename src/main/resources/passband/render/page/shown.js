// The verdicts of the judge on what stands in the fields, shown beside them and counted.
import * as Causes from "./causes.js";
import * as Decimal from "./decimal.js";
import { el, find } from "./dom.js";
import { data, items, first as fieldOf, second, undone } from "./fields.js";
import * as Fields from "./fields.js";
import { closed as closedBy } from "./gates.js";
import * as Ratio from "./ratio.js";
import * as Verdicts from "./verdicts.js";
import { words, verdictWord } from "./words.js";

const READING = ["reading"];
const OTHERS = ["record", "tick", "choice"];
const ALL = ["reading", "derived", ...OTHERS];
const noted = new Map();
let verdicts = new Map();
let closed = new Map();

const of = (id) => verdicts.get(id);
const bad = ({ verdict }) => verdict === "fail" || verdict === "unclear";
const state = (id) => JSON.stringify([of(id).verdict, ...Fields.written(id)]);

// That somebody has seen a fail that stays one; it is forgotten when the item changes.
const isNoted = (id) => noted.get(id) === state(id);

// The readings that have to be read again, since a value that is calculated from them is.
function again() {
  const asked = data.items.filter((item) => {
    const { verdict, causes } = of(item.id);
    return item.kind === "derived" && (verdict === "fail" || causes.some((cause) => cause.code === "attempts-differ"));
  });
  return new Set(asked.flatMap((item) => Object.values(item.parts)));
}

// What has to be read again besides a reading that was: all that a value is calculated from.
function besides(id) {
  const calculated = data.items.filter(({ kind, parts }) => kind === "derived" && Object.values(parts).includes(id));
  return calculated.flatMap((item) => {
    const others = [...new Set(Object.values(item.parts))].filter((other) => other !== id && Fields.written(other)[1] === "");
    const of = { what: Fields.name(item.id), others: others.map(Fields.name).join(", ") };
    return others.length > 0 ? [words(WORDS.allAgain, of)] : [];
  });
}

// A cause in the words of the sheet: what it calls the items that the judge calls by their identities.
const OF_ANOTHER = ["earlier-failed", "earlier-open", "gate-failed", "gate-open"];
const replaced = (text, name, said) => text.replace(new RegExp("(^| )" + name + "(?= |$)"), "$1" + said);
function worded(cause) {
  const { parts } = items.get(cause.item);
  const part = (name) => (parts && parts[name] ? Fields.name(parts[name]) : name);
  const dated = data.items.find(({ id, asks }) => asks === "due" && id.endsWith("/" + cause.note));
  const named = () => ({ name: Fields.name(cause.item) });
  const more = {
    "attempts-differ": () => ({ note: cause.note.replace(/(^|, )([^ ,]+)/g, (_, before, name) => before + part(name)) }),
    "instrument-overdue": () => (dated === undefined ? {} : { note: Fields.name(dated.id) }),
    "calibration-overdue": named,
    "calibration-unchecked": named,
  };
  if (HAS_WAVES) {
    more["peak-below-rms"] = () => ({
      note: WAVES.reduce((text, { peak, peakSaid, rms, rmsSaid }) => replaced(replaced(text, peak, peakSaid), rms, rmsSaid), cause.note),
    });
  }
  const own = more[cause.code];
  const other = OF_ANOTHER.includes(cause.code) ? { note: Fields.name(cause.note) } : own ? own() : {};
  return { ...cause, part: cause.part === null ? null : part(cause.part), ...other };
}
const sentences = (causes) => Causes.texts(causes.map(worded));

function placeOf(item) {
  const field = fieldOf(item.id);
  return field.closest("li, td, div, p") || field.parentElement;
}

function show(item, [one, two], repeated) {
  const { verdict, causes, value } = of(item.id);
  const field = fieldOf(item.id);
  const place = placeOf(item);
  place.dataset.verdict = verdict;
  // What does not apply is not filled in; what was, before it did not, can be taken back.
  Fields.all.get(item.id).forEach((one) => (one.disabled = verdict === "does not apply"));
  if (item.kind !== "reading" && item.kind !== "derived") {
    say(item.kind === "choice" ? field.closest("[role=radiogroup]") : place, sentences(causes));
    offer(item, item.kind === "choice" ? field.closest("[role=radiogroup]") : place);
    return;
  }
  const shut = closed.get(item.id) || [];
  if (item.kind === "reading") {
    undone(field).disabled = field.disabled;
    field.disabled ||= shut.length > 0;
    second(field).disabled = field.disabled;
  } else {
    field.textContent = value === null ? "" : Decimal.shown(Ratio.fixed(value, item.decimals + 2));
  }
  const row = field.closest("tr");
  row.classList.toggle("read", one !== "");
  row.classList.toggle("reread", two !== "");
  row.classList.toggle("fails", verdict === "fail" || two !== "");
  row.classList.toggle("repeat", repeated.has(item.id));
  const limited = item.low !== undefined || item.high !== undefined;
  const word = verdict === "fail" ? WORDS.fail : verdict === "pass" && !limited ? WORDS.read : verdictWord(verdict);
  const open = verdict === "not done" && !(item.kind === "reading" && undone(field).checked);
  const why = causes.length > 0 ? ": " + sentences(causes) : "";
  const stopped = shut.length > 0 ? words(WORDS.stopped, { gates: shut.map((gate) => Fields.name(gate.id)).join(", ") }) : "";
  const all = item.kind === "reading" && two !== "" ? besides(item.id) : [];
  find(".said", row).textContent = [open || verdict === "does not apply" ? stopped : word + why, ...all].filter((text) => text !== "").join(". ");
  offer(item, find(".verdict", row));
}

// What is not a reading has no place for it until there is something to say.
function say(place, text) {
  let output = find(":scope > .said", place);
  if (output === null && text !== "") {
    output = el("output", { className: "said" });
    place.append(output);
  }
  if (output !== null) {
    output.textContent = text;
  }
}

const notedTick = (id) => document.getElementById("noted:" + id);

// A tick by which the keyboard goes on past what cannot be mended; a gate that is not passed has none.
function offer(item, place) {
  const wanted = bad(of(item.id)) && item.stops === undefined && !(item.kind === "reading" && of(item.id).verdict === "fail" && Fields.written(item.id)[1] === "");
  let tick = notedTick(item.id);
  if (tick === null && wanted) {
    tick = el("input", { type: "checkbox", id: "noted:" + item.id, className: "noted" });
    tick.onchange = () => (tick.checked ? noted.set(item.id, state(item.id)) : noted.delete(item.id));
    place.append(el("label", { className: "noting" }, tick, WORDS.noted));
  }
  if (tick !== null) {
    tick.parentElement.hidden = !wanted;
    tick.checked = isNoted(item.id);
  }
}

const number = (kinds, verdict) => data.items.filter((item) => kinds.includes(item.kind) && of(item.id).verdict === verdict).length;

// How far it is, in short sentences.
function counts() {
  const all = data.items.filter((item) => item.kind === "reading" && of(item.id).verdict !== "does not apply").length;
  const parts = [words(WORDS.toGo, { n: number(READING, "not done"), all })];
  for (const [kinds, verdict, text] of [
    [OTHERS, "not done", WORDS.othersOpen],
    [ALL, "fail", WORDS.fails],
    [ALL, "unclear", WORDS.unclears],
  ]) {
    const n = number(kinds, verdict);
    parts.push(...(n > 0 ? [words(text, { n })] : []));
  }
  const overdue = [...verdicts.values()].flatMap(({ causes }) => causes.filter((cause) => cause.code === "calibration-overdue"));
  return [...parts, ...overdue.map((cause) => Causes.text(worded(cause))), words(WORDS.overall, { verdict: verdictWord(document.body.dataset.overall) })];
}

// How many of the readings that apply are done.
function progress(entries) {
  const judged = judge(entries);
  const ours = data.items.filter((item) => item.kind === "reading" && judged.get(item.id).verdict !== "does not apply");
  return { done: ours.filter((item) => judged.get(item.id).verdict !== "not done").length, all: ours.length };
}

const judge = (entries) => Verdicts.of(new Map([...entries].map(([id, value]) => [id, Fields.attempts(items.get(id), value)])));

function refresh() {
  const now = Fields.entered();
  verdicts = judge(now);
  closed = closedBy(verdicts);
  const repeated = again();
  data.items.forEach((item) => show(item, now.get(item.id), repeated));
  document.body.dataset.overall = Verdicts.overall(verdicts);
  return counts();
}

const shut = (id) => closed.has(id);

export { refresh, of, isNoted, notedTick, placeOf, progress, shut };
