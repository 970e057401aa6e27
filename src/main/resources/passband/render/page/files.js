// The file of readings: what is saved, and what is taken from one; what the page has no place for is refused.
import { own } from "./attempts.js";
import * as Blanks from "./blanks.js";
import * as Csv from "./csv.js";
import * as Decimal from "./decimal.js";
import { el } from "./dom.js";
import { data, items, parted, attempts } from "./fields.js";
import * as Fields from "./fields.js";
import { words, fail } from "./words.js";

const { procedure, revision, digest } = document.body.dataset;
const SERIAL = "sheet/generator-serial";
const DATE = "sheet/date";
const COLUMNS = ["point", "reading", "unit", "phase", "attempt", "kind", "reason", "by", "procedure", "revision", "digest"];

function rows() {
  const made = [];
  const same = [procedure, revision, digest];
  for (const [id, entry] of Fields.entered()) {
    const item = items.get(id);
    const own = item.unit === "1" ? "" : item.unit || "";
    for (const { number, value, unit = own, unsure = false, undone: not, reason, by } of attempts(item, entry)) {
      // Nobody may take it for a number later.
      const saved = unsure ? value + " ?" : value;
      made.push([id, saved, not ? "" : unit, item.phase || "", String(number), not ? "not-done" : item.kind, reason, by, ...same]);
    }
  }
  return made;
}

// What may stand in the name of a file anywhere.
const plain = (text) => text.replace(/[^\p{L}\p{N}.-]+/gu, "-").replace(/^[.-]+|[.-]+$/g, "");

// The day on which it was done, or else today.
function day() {
  const now = new Date();
  const local = new Date(now.getTime() - now.getTimezoneOffset() * 60000).toISOString().slice(0, 10);
  return Blanks.day(Fields.written(DATE)[0]) || local;
}

const name = (serial) => [procedure, plain(serial), day()].join("_") + ".csv";

function save(serial) {
  const link = el("a", {
    href: URL.createObjectURL(new Blob([Csv.text([COLUMNS, ...rows()])], { type: "text/csv" })),
    download: name(serial),
  });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

// What stands in the field for a value and its unit: the unit is left out where it is the item's own.
function joined(item, value, unit) {
  if (item.unit === undefined || value === "" || (unit === "" ? item.unit === "1" : own(item, unit))) {
    return value;
  }
  const text = value + " " + unit;
  const back = parted(item, text);
  if (unit === "" || back.value !== value || back.unit !== unit) {
    fail(WORDS.cannotShowUnit, { value, unit, item: Fields.name(item.id) });
  }
  return text;
}

// The item that a row is of: its phase may stand in a column of its own.
function itemOf(row) {
  for (const column of ["procedure", "revision"]) {
    const own = document.body.dataset[column];
    if (row[column] !== "" && row[column] !== own) {
      fail(WORDS.otherSource, { line: row.line, column, value: row[column], own });
    }
  }
  const last = row.point.lastIndexOf("/");
  const phased = last < 0 || row.phase === "" ? row.point : row.point.slice(0, last) + "/" + row.phase + row.point.slice(last);
  const item = items.get(row.point) || items.get(phased);
  if (item === undefined) {
    fail(WORDS.notInLimits, { id: row.point, line: row.line });
  }
  if (item.phase !== undefined && row.phase !== "" && row.phase !== item.phase) {
    fail(WORDS.otherPhase, { line: row.line, phase: row.phase, own: item.phase, item: Fields.name(item.id) });
  }
  const { says = ["", "", ""], saysInEnglish = says, accepts = [item.pass || Fields.limits(item)], acceptsInEnglish = accepts } = item;
  const english = [...saysInEnglish, ...acceptsInEnglish];
  for (const [i, own] of [...says, ...accepts].entries()) {
    const column = COMPARED_COLUMNS[i];
    if (row[column] !== "" && own !== row[column] && english[i] !== row[column]) {
      const has = own === "" ? WORDS.none : words(WORDS.quoted, { text: own });
      fail(WORDS.otherValue, { line: row.line, column, value: row[column], has, item: Fields.name(item.id) });
    }
  }
  return item;
}

function take(entries, row, semicolons) {
  const item = itemOf(row);
  const cannot = (what) => fail(WORDS.cannotShow, { line: row.line, what, item: Fields.name(item.id) });
  if (row.reading === "" && row.kind !== "not-done") {
    return;
  }
  if (row.kind !== "" && row.kind !== "not-done" && row.kind !== item.kind) {
    cannot(words(WORDS.oneOf, { kind: row.kind }));
  }
  if (/[\r\n]/.test(row.reading)) {
    cannot(WORDS.lineBreak);
  }
  const value = entries.get(item.id) || [...Fields.blank];
  entries.set(item.id, value);
  if (item.kind === "reading") {
    [value[3], value[4]] = [row.reason || value[3], row.by || value[4]];
  }
  if (row.kind === "not-done") {
    if (item.kind !== "reading") {
      cannot(words(WORDS.quoted, { text: WORDS.notDone }));
    }
    value[2] = true;
    return;
  }
  const attempt = ["", "1"].includes(row.attempt) ? 0 : row.attempt === "2" && item.kind === "reading" ? 1 : undefined;
  if (attempt === undefined || item.kind === "derived") {
    cannot(item.kind === "derived" ? WORDS.writtenDown : words(WORDS.attempt, { n: row.attempt }));
  }
  if (value[attempt] !== "") {
    fail(WORDS.recordedTwice, { line: row.line, n: attempt + 1, item: Fields.name(item.id) });
  }
  value[attempt] = joined(item, item.unit === undefined ? row.reading : Decimal.loaded(row.reading, semicolons), row.unit);
  if ((item.kind === "tick" && row.reading !== "yes") || (item.kind === "choice" && !item.options.includes(row.reading))) {
    cannot(words(WORDS.quoted, { text: row.reading }));
  }
}

// What a file holds, { serial, entries }; it has to be of this sheet and, unless serial is null, of this unit.
function read(bytes, serial) {
  const readings = Csv.read(bytes);
  if (readings.digest === null) {
    fail(WORDS.noDigest);
  }
  if (readings.digest !== digest) {
    fail(WORDS.otherDigest, { digest: readings.digest.slice(0, 12) });
  }
  const entries = new Map();
  readings.rows.forEach((row) => take(entries, row, readings.semicolons));
  const [other] = entries.get(SERIAL) || [""];
  if (other === "" || Blanks.filler(other)) {
    fail(WORDS.noUnit, { item: Fields.name(SERIAL) });
  }
  if (serial !== null && other !== serial) {
    fail(WORDS.otherUnit, { other, serial });
  }
  return { serial: other, entries };
}

export { SERIAL, save, read };
