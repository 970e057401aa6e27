"use strict";
(() => {
  const body = document.body;
  const digest = body.dataset.digest;
  const key = "passband:" + digest;
  const entries = [...document.querySelectorAll("input.entry")];
  const others = [...document.querySelectorAll("input[name]")];
  const count = document.getElementById("count");
  const trouble = document.getElementById("trouble");
  const file = document.getElementById("file");
  let unsaved = false;
  let keeps = true;

  // ---- readings: decimals are compared as whole numbers, never as floating point ----

  function decimal(text) {
    const parts = /^([+\-\u2212]?)([0-9]+)(?:\.([0-9]+))?$/.exec(text.trim());
    if (!parts) {
      return null;
    }
    const fraction = parts[3] || "";
    const digits = BigInt(parts[2] + fraction);
    return { value: parts[1] === "-" || parts[1] === "\u2212" ? -digits : digits, decimals: fraction.length };
  }

  function compare(a, b) {
    const decimals = Math.max(a.decimals, b.decimals);
    const scaled = (d) => d.value * 10n ** BigInt(decimals - d.decimals);
    const difference = scaled(a) - scaled(b);
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  function judged(text, entry) {
    const reading = decimal(text);
    const needed = Number(entry.dataset.decimals);
    if (!reading) {
      return { verdict: "unclear", why: text.includes(",") ? "write the decimal point as a point" : "not a number" };
    }
    if (reading.decimals < needed) {
      return { verdict: "unclear", why: "write " + needed + (needed === 1 ? " decimal" : " decimals") };
    }
    const { low, high } = entry.dataset;
    if (low === undefined && high === undefined) {
      return { verdict: "read", why: "" };
    }
    if (low !== undefined && compare(reading, decimal(low)) < 0) {
      return { verdict: "FAIL", why: "below " + low };
    }
    if (high !== undefined && compare(reading, decimal(high)) > 0) {
      return { verdict: "FAIL", why: "above " + high };
    }
    return { verdict: "pass", why: "" };
  }

  const again = (entry) => entry.parentElement.querySelector(".again");
  const undone = (entry) => entry.closest("tr").querySelector(".undone");

  function show(entry) {
    const row = entry.closest("tr");
    const first = entry.value.trim() === "" ? null : judged(entry.value, entry);
    const second = again(entry).value.trim() === "" ? null : judged(again(entry).value, entry);
    const failed = first !== null && first.verdict === "FAIL";
    row.classList.toggle("read", first !== null);
    row.classList.toggle("reread", second !== null);
    row.classList.toggle("fails", failed || second !== null);
    const last = failed && second !== null ? second : first;
    let said = last === null ? "" : last.verdict + (last.why ? ": " + last.why : "");
    if (failed && second !== null) {
      said += " (second reading; the first failed)";
    }
    if (last === null && undone(entry).checked) {
      said = "not done";
    }
    row.querySelector(".said").textContent = said;
    return last === null ? (undone(entry).checked ? "undone" : "open") : last.verdict;
  }

  function refresh() {
    const all = entries.map(show);
    const number = (verdict) => all.filter((v) => v === verdict).length;
    const parts = [number("open") + " of " + all.length + " readings to go"];
    for (const [verdict, text] of [["FAIL", "fail"], ["unclear", "unclear"], ["undone", "not done"]]) {
      if (number(verdict) > 0) {
        parts.push(number(verdict) + " " + text);
      }
    }
    parts.push(keeps ? "kept in this browser" : "NOT kept when this page closes");
    if (unsaved) {
      parts.push("not yet saved to a file");
    }
    count.textContent = parts.join(" \u00b7 ");
  }

  // ---- kept across a reload ----

  function collect() {
    const kept = { readings: {}, fields: {} };
    for (const entry of entries) {
      const value = [entry.value, again(entry).value, undone(entry).checked];
      if (value[0] || value[1] || value[2]) {
        kept.readings[entry.dataset.point] = value;
      }
    }
    for (const field of others) {
      if (field.type === "radio" ? field.checked : field.type === "checkbox" ? field.checked : field.value) {
        kept.fields[field.name] = field.type === "checkbox" ? "yes" : field.value;
      }
    }
    return kept;
  }

  function fill(kept) {
    for (const entry of entries) {
      const value = kept.readings[entry.dataset.point] || ["", "", false];
      entry.value = String(value[0]);
      again(entry).value = String(value[1]);
      undone(entry).checked = value[2] === true;
    }
    for (const field of others) {
      const value = Object.hasOwn(kept.fields, field.name) ? String(kept.fields[field.name]) : "";
      if (field.type === "radio") {
        field.checked = field.value === value;
      } else if (field.type === "checkbox") {
        field.checked = value === "yes";
      } else {
        field.value = value;
      }
    }
    refresh();
  }

  function keep() {
    try {
      localStorage.setItem(key, JSON.stringify({ kept: collect(), unsaved }));
      keeps = true;
    } catch {
      keeps = false;
    }
  }

  function restore() {
    try {
      const text = localStorage.getItem(key);
      if (text !== null) {
        const was = JSON.parse(text);
        unsaved = was.unsaved === true;
        fill({ readings: was.kept.readings || {}, fields: was.kept.fields || {} });
      }
    } catch {
      keeps = false;
    }
  }

  function changed() {
    unsaved = true;
    trouble.textContent = "";
    keep();
    refresh();
  }

  // ---- readings.csv ----

  const COLUMNS = ["point", "reading", "unit", "phase", "attempt", "kind", "procedure", "revision", "digest"];

  function rows() {
    const rows = [];
    const same = { procedure: body.dataset.procedure, revision: body.dataset.revision, digest };
    for (const entry of entries) {
      const { point, unit, phase } = entry.dataset;
      const add = (reading, attempt, kind) => rows.push({ point, reading, unit, phase: phase || "", attempt, kind, ...same });
      if (entry.value.trim()) {
        add(entry.value.trim(), "1", "reading");
      }
      if (again(entry).value.trim()) {
        add(again(entry).value.trim(), "2", "reading");
      }
      if (undone(entry).checked) {
        add("", "1", "not-done");
      }
    }
    for (const [name, reading] of Object.entries(collect().fields)) {
      const colon = name.indexOf(":");
      rows.push({ point: name.slice(colon + 1), reading, unit: "", phase: "", attempt: "1", kind: name.slice(0, colon), ...same });
    }
    return rows;
  }

  // A spreadsheet would run what begins like this as a formula; the apostrophe is taken off when it is read.
  const RISKY = /^[=+\-@\t\r']/;
  const NUMBER = /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/;
  const safe = (text) => (RISKY.test(text) && !NUMBER.test(text) ? "'" + text : text);
  const unsafe = (cell) => (cell.startsWith("'") && RISKY.test(cell.slice(1)) ? cell.slice(1) : cell);
  const quoted = (cell) => (/[",\r\n]/.test(cell) ? '"' + cell.replaceAll('"', '""') + '"' : cell);

  function save() {
    const lines = [COLUMNS, ...rows().map((row) => COLUMNS.map((column) => row[column]))];
    const text = lines.map((cells) => cells.map(safe).map(quoted).join(",")).join("\r\n") + "\r\n";
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "text/csv" }));
    link.download = "readings.csv";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    unsaved = false;
    keep();
    refresh();
  }

  function parsed(text) {
    const table = [];
    let row = [];
    const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|\n|\r|$)/y;
    let at = text.startsWith("\ufeff") ? 1 : 0;
    while (at < text.length) {
      cell.lastIndex = at;
      const found = cell.exec(text);
      if (!found) {
        throw new Error("it is no table of comma-separated values");
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

  function load(text) {
    const [header, ...lines] = parsed(text);
    const missing = COLUMNS.filter((column) => !(header || []).includes(column));
    if (missing.length > 0) {
      throw new Error("it has no column " + missing.join(", "));
    }
    const kept = { readings: {}, fields: {} };
    const points = new Set(entries.map((entry) => entry.dataset.point));
    const names = new Set(others.map((field) => field.name));
    for (const line of lines) {
      const row = Object.fromEntries(header.map((column, i) => [column, line[i] || ""]));
      if (row.digest !== digest) {
        throw new Error("it is of another procedure or revision (digest " + row.digest.slice(0, 12) + ")");
      }
      if (row.kind === "reading" || row.kind === "not-done") {
        if (!points.has(row.point)) {
          throw new Error("this sheet has no point " + row.point);
        }
        const value = (kept.readings[row.point] ||= ["", "", false]);
        if (row.kind === "not-done") {
          value[2] = true;
        } else {
          value[row.attempt === "2" ? 1 : 0] = row.reading;
        }
      } else if (names.has(row.kind + ":" + row.point)) {
        kept.fields[row.kind + ":" + row.point] = row.reading;
      }
    }
    fill(kept);
    unsaved = false;
    trouble.textContent = "";
    keep();
    refresh();
  }

  // ---- the page ----

  body.classList.add("live");
  document.addEventListener("input", (event) => {
    if (event.target !== file) {
      changed();
    }
  });
  document.addEventListener("keydown", (event) => {
    const at = entries.indexOf(event.target);
    if (event.key === "Enter" && at >= 0) {
      event.preventDefault();
      (entries[at + 1] || document.getElementById("save")).focus();
    }
  });
  document.getElementById("save").addEventListener("click", save);
  document.getElementById("load").addEventListener("click", () => {
    if (!unsaved || confirm("Put the file's readings in the place of those that are not saved?")) {
      file.click();
    }
  });
  document.getElementById("clear").addEventListener("click", () => {
    if (confirm("Clear everything that was filled in?")) {
      fill({ readings: {}, fields: {} });
      unsaved = false;
      keep();
      refresh();
    }
  });
  file.addEventListener("change", async () => {
    try {
      if (file.files.length > 0) {
        load(await file.files[0].text());
      }
    } catch (error) {
      trouble.textContent = "Not loaded: " + error.message + ".";
    }
    file.value = "";
  });
  window.addEventListener("beforeunload", (event) => {
    if (unsaved) {
      event.preventDefault();
      event.returnValue = "";
    }
  });
  restore();
  refresh();
})();
