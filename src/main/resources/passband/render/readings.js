// readings.csv: what is written to it, and how it is read back.
const Csv = (() => {
  // A spreadsheet would run what begins like this as a formula; the apostrophe is taken off when it is read.
  const RISKY = /^[=+\-@\t\r']/;
  const NUMBER = /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/;
  const safe = (text) => (RISKY.test(text) && !NUMBER.test(text) ? "'" + text : text);
  const unsafe = (cell) => (cell.startsWith("'") && RISKY.test(cell.slice(1)) ? cell.slice(1) : cell);
  const quoted = (cell) => (/[",\r\n]/.test(cell) ? '"' + cell.replaceAll('"', '""') + '"' : cell);

  const text = (lines) => lines.map((cells) => cells.map(safe).map(quoted).join(",")).join("\r\n") + "\r\n";

  function parse(text) {
    const table = [];
    let row = [];
    const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|\n|\r|$)/y;
    let at = text.startsWith("\ufeff") ? 1 : 0;
    while (at < text.length) {
      cell.lastIndex = at;
      const found = cell.exec(text);
      if (!found) {
        throw new Error("this is not a CSV file");
      }
      row.push(unsafe(found[1] === undefined ? found[2] : found[1].replaceAll('""', '"')));
      at = cell.lastIndex;
      if (found[3] !== ",") {
        table.push(row);
        row = [];
      } else if (at === text.length) {
        row.push("");
      }
    }
    if (row.length > 0) {
      table.push(row);
    }
    return table;
  }
  return { text, parse };
})();
