// The items of the sheet, put together from the parts that they have in common, and what the columns of its tables are called.
import { el, find, findAll } from "./dom.js";
import { find as unit } from "./units.js";
import { fail } from "./words.js";

const data = JSON.parse(document.getElementById("items").textContent);
const fields = new Map();
for (const field of findAll("[data-item]")) {
  fields.set(field.dataset.item, [...(fields.get(field.dataset.item) || []), field]);
}
const ids = [...fields.keys()];

// Limits at another field than their own would be worse than a page that only prints.
if ([...ids.join("\n")].reduce((sum, c) => (Math.imul(sum, 31) + c.charCodeAt(0)) | 0, 0) !== data.order) {
  find("main").before(el("p", { role: "alert" }, WORDS.damaged));
  fail(WORDS.damaged);
}

const named = (conditions) => conditions && conditions.map((one) => ({ ...one, item: ids[one.item] }));
data.items = data.items.map((places, i) => {
  const item = places.map((place) => data.parts[place]).reduce((all, part) => ({ ...all, ...part }), { id: ids[i] });
  return {
    ...item,
    ...(item.unit === undefined ? {} : { ...unit(item.unit), printed: data.units[item.unit] ?? item.unit }),
    budget: data.budgets[item.budget],
    applies: named(item.applies),
    when: named(item.when),
    due: item.due && item.due.map((place) => ids[place]),
    stops: item.stops && item.stops.map((place) => ids[place]),
    wave: item.wave && item.wave.map((before) => ids[i - before]),
    parts: item.parts && Object.fromEntries(Object.entries(item.parts).map(([name, before]) => [name, ids[i - before]])),
  };
});

// Of each line its steps by their places, where they are not worded as those of the group.
const steps = (list = []) => Object.fromEntries(list.flatMap((place, i) => (i % 2 === 0 ? [[place, data.texts[list[i + 1]]]] : [])));
data.lines = data.groups.flatMap(({ kinds, at, lines }) => lines.map((line) => ({ ...line, steps: steps(line.steps), kinds: data.texts[kinds].split(" "), at })));

// On a narrow screen a cell says of which column it is.
for (const table of findAll(".lines, .wires")) {
  const heads = [...table.tHead.rows[0].cells].map((cell) => cell.textContent);
  const label = (cells, first) => [...cells].forEach((cell, i) => (cell.dataset.label = heads[first + i]));
  for (const row of findAll("tbody > tr", table)) {
    if (table.matches(".wires")) {
      label([...row.cells].slice(3, 5), 3);
    } else {
      label(findAll("td:not([class])", row), 1);
      label(findAll(".limits", row), heads.length - 2);
    }
  }
}

const items = new Map(data.items.map((item) => [item.id, item]));

export { data, fields, items };
