// readings.csv: what is written to it, and how it is read back, by the rules of the judge and with its messages.
import { fail } from "./words.js";

// A spreadsheet would run what begins like this as a formula; the apostrophe is taken off when it is read.
const RISKY = /^[=+\-@\t\r']/;
const NUMBER = /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/;
const safe = (text) => (RISKY.test(text) && !NUMBER.test(text) ? "'" + text : text);
const unsafe = (cell) => (cell.startsWith("'") && RISKY.test(cell.slice(1)) ? cell.slice(1) : cell);
const quoted = (cell) => (/[",\r\n]/.test(cell) ? '"' + cell.replaceAll('"', '""') + '"' : cell);
const stripped = (text) => text.replace(/^[\s\x1c-\x1f]+/, "").replace(/[\s\x1c-\x1f]+$/, "");
const blank = (cells) => cells.every((cell) => stripped(cell) === "");

const text = (lines) => lines.map((cells) => cells.map(safe).map(quoted).join(",")).join("\r\n") + "\r\n";

// Without a mark UTF-16 is known by the zero beside the first letter of the heading.
function decoded(bytes) {
  const [first, second] = bytes.length < 2 ? [1, 1] : bytes;
  const little = (first === 0xff && second === 0xfe) || (first !== 0 && second === 0);
  const big = (first === 0xfe && second === 0xff) || (first === 0 && second !== 0);
  const name = little ? "UTF-16LE" : big ? "UTF-16BE" : "UTF-8";
  try {
    return new TextDecoder(name, { fatal: true }).decode(bytes);
  } catch {
    fail(WORDS.notText, { name });
  }
}

// What stands between the columns of the heading, the first line that is not blank.
function separator(text) {
  const heading = text.split(/\r\n|\r|\n/).find((line) => stripped(line) !== "") || "";
  const count = (c) => heading.split(c).length;
  return [";", "\t"].reduce((best, c) => (count(c) > count(best) ? c : best), ",");
}

// The lines that are not blank: { line, cells }.
function records(text) {
  const made = [];
  const s = separator(text);
  const cell = new RegExp(`(?:"([^"]*(?:""[^"]*)*)"|([^"${s}\\r\\n][^${s}\\r\\n]*|))(${s}|\\r\\n|\\n|\\r|$)`, "y");
  let cells = [];
  let at = 0;
  let [line, start] = [1, 1];
  const end = () => {
    made.push({ line: start, cells });
    [cells, start] = [[], line];
  };
  while (at < text.length) {
    cell.lastIndex = at;
    const found = cell.exec(text);
    if (!found) {
      fail(WORDS.notCsv, { line: start });
    }
    cells.push(found[1] === undefined ? found[2] : found[1].replaceAll('""', '"'));
    at = cell.lastIndex;
    line += (found[0].match(/\r\n|\r|\n/g) || []).length;
    if (found[3] !== s) {
      end();
    } else if (at === text.length) {
      cells.push("");
    }
  }
  if (cells.length > 0) {
    end();
  }
  return made.filter((record) => !blank(record.cells));
}

function columns(heading) {
  const found = new Map();
  heading.forEach((cell, i) => {
    const name = stripped(unsafe(cell));
    if (name === "") {
      return;
    } else if (!READING_COLUMNS.includes(name)) {
      fail(WORDS.unknownColumn, { name, all: READING_COLUMNS.join(", ") });
    } else if (found.has(name)) {
      fail(WORDS.columnTwice, { name });
    }
    found.set(name, i);
  });
  const missing = NEEDED_COLUMNS.find((name) => !found.has(name));
  if (missing !== undefined) {
    fail(WORDS.noColumn, { name: missing });
  }
  return found;
}

// A row by the names of its columns; null for one that is of no item and has no reading.
function row(heading, named, { line, cells }) {
  if (cells.length !== heading.length) {
    fail(WORDS.cells, { line, n: cells.length, all: heading.length });
  }
  heading.forEach((name, i) => {
    if (stripped(unsafe(name)) === "" && stripped(cells[i]) !== "") {
      fail(WORDS.noHeading, { n: i + 1, line });
    }
  });
  const cell = (name) => (named.has(name) ? stripped(unsafe(cells[named.get(name)])) : "");
  const made = { line };
  READING_COLUMNS.forEach((name) => (made[name] = cell(name)));
  if (!READING_KINDS.includes(made.kind)) {
    fail(WORDS.unknownKind, { line, kind: made.kind });
  }
  if (made.point === "" && made.reading !== "") {
    fail(WORDS.noPoint, { line });
  }
  return made.point === "" ? null : made;
}

// What a file holds: { digest, rows, semicolons }; the digest is null where it has none.
function read(bytes) {
  const text = decoded(bytes);
  const semicolons = separator(text) === ";";
  const [heading, ...lines] = records(text);
  if (heading === undefined) {
    fail(WORDS.emptyFile);
  }
  const named = columns(heading.cells);
  const rows = lines.map((one) => row(heading.cells, named, one)).filter((one) => one !== null);
  const digests = new Set(rows.map((one) => one.digest));
  if (digests.delete("") && digests.size > 0) {
    fail(WORDS.someDigests);
  }
  if (digests.size > 1) {
    fail(WORDS.severalDigests, { n: digests.size });
  }
  const [digest = null] = digests;
  return { digest, rows, semicolons };
}

export { text, read };
