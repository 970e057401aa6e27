// The items of the sheet, and what stands in their fields: [one attempt, a second one, whether it was not done, why it was
// read again or not done, and who did that].
const Fields = (() => {
  const { data, fields } = Items;
  const items = new Map(data.items.map((item) => [item.id, item]));
  const blank = ["", "", false, "", ""];
  const first = (id) => fields.get(id)[0];
  const second = (entry) => entry.parentElement.querySelector(".again");
  const undone = (entry) => entry.closest("tr").querySelector(".undone");
  const noted = (entry, what) => entry.closest("tr").querySelector("." + what);
  const chosen = (id) => fields.get(id).find((radio) => radio.checked);

  // What a box is for.
  function labelled(item, entry) {
    const key = item.kind === "derived" ? "boxCalculated" : item.printed === "" ? "boxPlain" : "boxIn";
    const label = words(key, { line: entry.closest("tbody").querySelector(".n").textContent, what: item.what, unit: item.printed });
    entry.setAttribute("aria-label", label);
    return label;
  }

  // What a reading has on the screen only: its verdict, a box for a second attempt, and a tick that it was not done.
  for (const item of data.items.filter(({ what }) => what !== undefined)) {
    const entry = first(item.id);
    const label = labelled(item, entry);
    entry.closest("tr").querySelector(".verdict").append(el("output", { className: "said", "aria-label": label + ", " + WORDS.result }));
    if (item.kind === "derived") {
      continue;
    }
    entry.parentElement.append(
      el("input", { type: "text", className: "again", inputMode: "decimal", placeholder: WORDS.again, "aria-label": label + ", " + WORDS.again }),
    );
    const tick = el("input", { type: "checkbox", className: "undone", "aria-label": label + ", " + WORDS.notDone });
    const verdict = entry.closest("tr").querySelector(".verdict");
    verdict.append(el("label", {}, tick, WORDS.notDone));
    for (const what of ["why", "who"]) {
      verdict.append(el("input", { type: "text", className: what, placeholder: WORDS[what], "aria-label": label + ", " + WORDS[what] }));
    }
    entry.inputMode = "decimal";
  }
  document.querySelectorAll("input[type=text]").forEach((input) => (input.autocomplete = "off"));

  function written(id) {
    const [field] = fields.get(id);
    switch (items.get(id).kind) {
      case "reading":
        return [field.value.trim(), second(field).value.trim(), undone(field).checked, noted(field, "why").value.trim(), noted(field, "who").value.trim()];
      case "tick":
        return [field.checked ? "yes" : "", "", false, "", ""];
      case "choice":
        return [(chosen(id) || { value: "" }).value, "", false, "", ""];
      case "record":
        return [field.value.trim(), "", false, "", ""];
      default:
        return blank;
    }
  }

  function put(id, [one, two, not, why, who]) {
    const [field] = fields.get(id);
    switch (items.get(id).kind) {
      case "reading":
        field.value = one;
        second(field).value = two;
        undone(field).checked = not;
        noted(field, "why").value = why;
        noted(field, "who").value = who;
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

  const entered = () => new Map(data.items.map(({ id }) => [id, written(id)]));
  const filled = () => new Map([...entered()].filter(([, [one, two, not]]) => one || two || not));
  const fill = (entries) => data.items.forEach(({ id }) => put(id, entries.get(id) || blank));

  // What the sheet calls an item: a line and what is read on it, or the item's own words.
  function name(id) {
    const [field] = fields.get(id);
    const row = field.closest("tbody.point tr");
    if (field.matches(".entry") && row !== null) {
      const which = row.querySelector("small");
      const line = words("line", { n: row.parentElement.querySelector(".n").textContent });
      return row.querySelector(".reading small") === null ? line : line + ", " + which.textContent;
    }
    if (items.get(id).stops !== undefined) {
      return words("quoted", { text: field.closest("section").querySelector("h2").textContent });
    }
    const named = field.closest("[role=radiogroup]") || field;
    const label = named.getAttribute("aria-label") || field.labels[0].textContent;
    return words("quoted", { text: label.trim().replace(/[:.]$/, "") });
  }

  // A number may have another unit after it: "0.200 A"; without one it is in the item's own.
  function parted(item, text) {
    const [, value, unit] = (item.unit !== undefined && /^(\S+)\s+([^\s\d.,+-]\S*)$/.exec(text)) || [];
    return value === undefined ? { value: text } : { value, unit };
  }

  // With a decimal point, as it is judged and saved.
  function plain(item, text) {
    const { value, unit } = parted(item, text);
    const number = item.unit === undefined ? { value } : { value: Decimal.plain(value), unsure: Decimal.unsure(value) };
    return unit === undefined ? number : { ...number, unit };
  }

  // As they are saved: what is blank is left out, 'not done' comes last; why and who are of the last.
  function attempts(item, [one, two, not, reason, by]) {
    const made = [
      { number: 1, ...plain(item, one), undone: false, reason: "", by: "" },
      { number: 2, ...plain(item, two), undone: false, reason: "", by: "" },
    ].filter(({ value }) => value !== "");
    const all = not ? [...made, { number: one ? (two ? 3 : 2) : 1, value: "", undone: true }] : made;
    return all.map((each, i) => (i === all.length - 1 ? { ...each, reason, by } : each));
  }

  // The item that a field belongs to; undefined where it belongs to none.
  function itemOf(field) {
    if (field.id.startsWith("noted:")) {
      return items.get(field.id.slice("noted:".length));
    }
    const own = field.dataset.item !== undefined ? field : (field.closest("tr") || field).querySelector("[data-item]");
    return own === null ? undefined : items.get(own.dataset.item);
  }

  return { data, items, all: fields, blank, first, second, undone, chosen, written, entered, filled, fill, name, parted, attempts, itemOf };
})();
