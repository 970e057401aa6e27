// The page: what is filled in, kept, judged, saved and loaded.
(() => {
  const { body } = document;
  const data = JSON.parse(document.getElementById("items").textContent);
  const digest = body.dataset.digest;
  const key = "passband:" + digest;
  const items = new Map(data.items.map((item) => [item.id, item]));
  const fields = new Map();
  for (const field of document.querySelectorAll("[data-item]")) {
    fields.set(field.dataset.item, [...(fields.get(field.dataset.item) || []), field]);
  }
  const entries = [...document.querySelectorAll("input.entry")];
  const count = document.getElementById("count");
  const trouble = document.getElementById("trouble");
  const file = document.getElementById("file");
  let unsaved = false;
  let keeps = true;

  // ---- what stands in the fields, by item ----

  const second = (entry) => entry.parentElement.querySelector(".again");
  const undone = (entry) => entry.closest("tr").querySelector(".undone");

  // One attempt, a second one, and whether it was not done.
  function written(id) {
    const item = items.get(id);
    const [field] = fields.get(id);
    switch (item.kind) {
      case "reading":
        return [field.value.trim(), second(field).value.trim(), undone(field).checked];
      case "tick":
        return [field.checked ? "yes" : "", "", false];
      case "choice":
        return [(fields.get(id).find((radio) => radio.checked) || { value: "" }).value, "", false];
      case "record":
        return [field.value.trim(), "", false];
      default:
        return ["", "", false];
    }
  }

  function put(id, [one, two, not]) {
    const item = items.get(id);
    const [field] = fields.get(id);
    switch (item.kind) {
      case "reading":
        field.value = one;
        second(field).value = two;
        undone(field).checked = not;
        break;
      case "tick":
        field.checked = one === "yes";
        break;
      case "choice":
        fields.get(id).forEach((radio) => (radio.checked = radio.value === one));
        break;
      case "record":
        field.value = one;
        break;
    }
  }

  const entered = () => new Map(data.items.map((item) => [item.id, written(item.id)]));
  const blank = ["", "", false];

  // ---- verdicts ----

  // A number may have another unit after it: "0.200 A"; without one it is in the item's own.
  function parted(item, text) {
    const [, value, unit] = (item.unit !== undefined && /^(\S+)\s+([^\s\d.,+-]\S*)$/.exec(text)) || [];
    return value === undefined ? { value: text } : { value, unit };
  }

  // As they are saved: what is blank is left out, 'not done' comes last.
  function attempts(item, [first, second, not]) {
    const made = [
      { number: 1, ...parted(item, first), undone: false },
      { number: 2, ...parted(item, second), undone: false },
    ].filter(({ value }) => value !== "");
    return not ? [...made, { number: first ? (second ? 3 : 2) : 1, value: "", undone: true }] : made;
  }

  // The readings that have to be read again, since a value that is calculated from them is.
  function again(verdicts) {
    const asked = data.items.filter((item) => {
      const { verdict, causes } = verdicts.get(item.id);
      return item.kind === "derived" && (verdict === "fail" || causes.some((cause) => cause.code === "attempts-differ"));
    });
    return new Set(asked.flatMap((item) => Object.values(item.parts)));
  }

  function show(item, { verdict, causes, value }, [first, again], repeated, closed) {
    const [field] = fields.get(item.id);
    const shut = closed.get(item.id) || [];
    if (item.kind === "reading") {
      field.disabled = shut.length > 0;
      second(field).disabled = shut.length > 0;
    }
    if (item.kind === "derived") {
      field.textContent = value === null ? "" : Ratio.fixed(value, item.decimals + 2);
    }
    const place = field.closest("tr.row, li, td, div, p") || field.parentElement;
    place.dataset.verdict = verdict;
    if (item.kind !== "reading" && item.kind !== "derived") {
      say(item.kind === "choice" ? field.closest("[role=radiogroup]") : place, Causes.texts(causes));
      return;
    }
    const row = field.closest("tr");
    row.classList.toggle("read", first !== "");
    row.classList.toggle("reread", again !== "");
    row.classList.toggle("fails", verdict === "fail" || again !== "");
    row.classList.toggle("repeat", repeated.has(item.id));
    const limited = item.low !== undefined || item.high !== undefined;
    const word = verdict === "fail" ? "FAIL" : verdict === "pass" && !limited ? "read" : verdict;
    const open = verdict === "not done" && !(item.kind === "reading" && undone(field).checked);
    const why = causes.length > 0 ? ": " + Causes.texts(causes) : "";
    const stopped = shut.length > 0 ? "stopped: the gate " + shut.map((gate) => gate.id).join(", ") + " has not passed" : "";
    row.querySelector(".said").textContent = open || verdict === "does not apply" ? stopped : word + why;
  }

  // What is not a reading has no place for it until there is something to say.
  function say(place, text) {
    let output = place.querySelector(":scope > .said");
    if (output === null && text !== "") {
      output = document.createElement("output");
      output.className = "said";
      place.append(output);
    }
    if (output !== null) {
      output.textContent = text;
    }
  }

  function refresh() {
    const now = entered();
    const verdicts = Verdicts.of(data, new Map([...now].map(([id, value]) => [id, attempts(items.get(id), value)])));
    const repeated = again(verdicts);
    const closed = Verdicts.closed(data, verdicts);
    data.items.forEach((item) => show(item, verdicts.get(item.id), now.get(item.id), repeated, closed));
    const number = (kinds, verdict) =>
      data.items.filter((item) => kinds.includes(item.kind) && verdicts.get(item.id).verdict === verdict).length;
    const readings = ["reading"];
    const all = data.items.filter((item) => item.kind === "reading" && verdicts.get(item.id).verdict !== "does not apply").length;
    const others = ["record", "tick", "choice"];
    const parts = [number(readings, "not done") + " of " + all + " readings to go"];
    for (const [kinds, verdict, text] of [
      [others, "not done", " other items open"],
      [["reading", "derived", ...others], "fail", " fail"],
      [["reading", "derived", ...others], "unclear", " unclear"],
    ]) {
      if (number(kinds, verdict) > 0) {
        parts.push(number(kinds, verdict) + text);
      }
    }
    const overdue = [...verdicts.values()].flatMap(({ causes }) => causes.filter((cause) => cause.code === "calibration-overdue"));
    parts.push(...overdue.map(Causes.text));
    const overall = Verdicts.overall(data, verdicts);
    body.dataset.overall = overall;
    parts.push("overall: " + overall);
    parts.push(keeps ? "kept in this browser" : "NOT kept after this page is closed");
    if (unsaved) {
      parts.push("not yet saved to a file");
    }
    count.textContent = parts.join(" \u00b7 ");
  }

  // ---- kept across a reload ----

  function fill(kept) {
    data.items.forEach((item) => put(item.id, kept.get(item.id) || blank));
    refresh();
  }

  function keep() {
    try {
      const kept = [...entered()].filter(([, [first, second, not]]) => first || second || not);
      localStorage.setItem(key, JSON.stringify({ kept, unsaved }));
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
        fill(new Map(was.kept.map(([id, [first, second, not]]) => [id, [String(first), String(second), not === true]])));
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
    const made = [];
    const same = [body.dataset.procedure, body.dataset.revision, digest];
    for (const [id, entry] of entered()) {
      const item = items.get(id);
      const own = item.unit === "1" ? "" : item.unit || "";
      for (const { number, value, unit = own, undone: not } of attempts(item, entry)) {
        made.push([id, value, not ? "" : unit, item.phase || "", String(number), not ? "not-done" : item.kind, ...same]);
      }
    }
    return made;
  }

  function save() {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([Csv.text([COLUMNS, ...rows()])], { type: "text/csv" }));
    link.download = "readings.csv";
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    unsaved = false;
    keep();
    refresh();
  }

  // What stands in the field for a value and its unit: the unit is left out where it is the item's own.
  function joined(item, value, unit) {
    if (item.unit === undefined || value === "" || (unit === "" ? item.unit === "1" : Verdicts.own(item, unit))) {
      return value;
    }
    const text = value + " " + unit;
    const back = parted(item, text);
    if (unit === "" || back.value !== value || back.unit !== unit) {
      throw new Error("this page cannot show '" + value + "' in '" + unit + "' of " + item.id);
    }
    return text;
  }

  // The item that a row is of: its phase may stand in a column of its own.
  function itemOf(row) {
    for (const name of ["procedure", "revision"]) {
      const own = body.dataset[name];
      if (row[name] !== "" && row[name] !== own) {
        const hint = " (if a spreadsheet changed it, clear the column: the digest tells)";
        throw new Error("line " + row.line + ": the column '" + name + "' says '" + row[name] + "', but the limits are of '" + own + "'" + hint);
      }
    }
    const last = row.point.lastIndexOf("/");
    const phased = last < 0 || row.phase === "" ? row.point : row.point.slice(0, last) + "/" + row.phase + row.point.slice(last);
    const item = items.get(row.point) || items.get(phased);
    if (item === undefined) {
      throw new Error("these points are not in the limits: " + row.point);
    }
    if (item.phase !== undefined && row.phase !== "" && row.phase !== item.phase) {
      throw new Error("line " + row.line + ": the phase is '" + row.phase + "', but the point is of '" + item.phase + "': " + row.point);
    }
    for (const name of Object.keys(READING_COLUMNS).filter((one) => READING_COLUMNS[one] === "compared" && row[one] !== "")) {
      const own = (item.said || {})[name];
      if (own !== row[name]) {
        const has = own === undefined ? "none" : "'" + own + "'";
        throw new Error("line " + row.line + ": the column '" + name + "' says '" + row[name] + "', but the point has " + has + ": " + item.id);
      }
    }
    return item;
  }

  // What the page has no place for is refused, so that nothing is lost.
  function take(kept, row) {
    const item = itemOf(row);
    const cannot = (what) => new Error("line " + row.line + ": this page cannot show " + what + " of " + item.id);
    if (row.reading === "" && row.kind !== "not-done") {
      return;
    }
    if (row.kind !== "" && row.kind !== "not-done" && row.kind !== item.kind) {
      throw cannot("a " + row.kind);
    }
    if (/[\r\n]/.test(row.reading)) {
      throw cannot("a line break");
    }
    const value = kept.get(item.id) || ["", "", false];
    kept.set(item.id, value);
    if (row.kind === "not-done") {
      if (item.kind !== "reading") {
        throw cannot("'not done'");
      }
      value[2] = true;
      return;
    }
    const attempt = ["", "1"].includes(row.attempt) ? 0 : row.attempt === "2" && item.kind === "reading" ? 1 : undefined;
    if (attempt === undefined || item.kind === "derived") {
      throw cannot(item.kind === "derived" ? "a value that was written down instead of calculated" : "attempt '" + row.attempt + "'");
    }
    if (value[attempt] !== "") {
      throw new Error("line " + row.line + ": attempt " + (attempt + 1) + " is recorded twice: " + item.id);
    }
    value[attempt] = joined(item, row.reading, row.unit);
    if ((item.kind === "tick" && row.reading !== "yes") || (item.kind === "choice" && !item.options.includes(row.reading))) {
      throw cannot("'" + row.reading + "'");
    }
  }

  function load(bytes) {
    const readings = Csv.read(bytes);
    if (readings.digest === null) {
      throw new Error("it has no digest: nothing says that it belongs to this sheet");
    }
    if (readings.digest !== digest) {
      throw new Error("it belongs to another procedure or revision (digest " + readings.digest.slice(0, 12) + ")");
    }
    const kept = new Map();
    readings.rows.forEach((row) => take(kept, row));
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
      (entries.slice(at + 1).find((entry) => !entry.disabled) || document.getElementById("save")).focus();
    }
  });
  document.getElementById("save").addEventListener("click", save);
  document.getElementById("load").addEventListener("click", () => {
    if (!unsaved || confirm("Replace the unsaved readings with those from a file?")) {
      file.click();
    }
  });
  document.getElementById("clear").addEventListener("click", () => {
    if (confirm("Clear all entries?")) {
      fill(new Map());
      unsaved = false;
      keep();
      refresh();
    }
  });
  file.addEventListener("change", async () => {
    try {
      if (file.files.length > 0) {
        load(new Uint8Array(await file.files[0].arrayBuffer()));
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
