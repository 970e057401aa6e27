// What is written in blanks: dates, and fillers that name nothing and nobody (FILLERS).
const leap = (year) => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

// The day that a text is, such as "2026-01-31"; undefined where it is none.
function day(text) {
  const [, year, month, date] = (/^(\d{4})-(\d\d)-(\d\d)$/.exec(text) || []).map(Number);
  const last = [31, leap(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return date >= 1 && date <= last ? text : undefined;
}

// The only day that a text names; undefined where it names none, or several.
function only(text) {
  const found = [...text.matchAll(/(?:^|\D)(\d{4}-\d\d-\d\d)(?!\d)/g)];
  return found.length === 1 ? day(found[0][1]) : undefined;
}

// A control character is no part of a name: it cannot be read off a plate, nor seen beside another one.
function filler(text) {
  const plain = text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
  return /[\p{Cc}\p{Zl}\p{Zp}]/u.test(text) || /^(x*|0*)$/.test(plain) || FILLERS.includes(plain);
}

export { day, only, filler };
