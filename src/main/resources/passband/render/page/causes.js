// Why an item has its verdict: the codes of the judge, and its sentences by the same patterns.
import * as Decimal from "./decimal.js";

const NONE = { part: null, number: null, unit: null, written: null, note: null };
const of = (code, item, more = {}) => ({ code, item: item.id, ...NONE, ...more });
const ofPart = (cause, item, part) => ({ ...cause, item: item.id, part });

function text(cause) {
  const shown = (text) => (text === null ? null : Decimal.shown(text));
  const values = { ...cause, number: shown(cause.number), note: shown(cause.note), name: cause.name || cause.item.slice(cause.item.lastIndexOf("/") + 1) };
  const pattern = CAUSE_PATTERNS[cause.code];
  const words = pattern
    .replace(/\[([^\]]*\{(\w+)\}[^\]]*)\]/g, (_, inner, name) => (values[name] === null ? "" : inner))
    .replace(/\{(\w+)\}/g, (_, name) => values[name]);
  return cause.part === null || pattern.includes("{part}") ? words : cause.part + ": " + words;
}

const texts = (causes) => causes.map(text).join("; ");

export { of, ofPart, text, texts };
