// One line at a time: the same page, of which only one stop is shown, large; at a line beside its wiring and its steps.
const OneLine = (() => {
  const lines = Fields.data.groups.flatMap((group) => group.lines.map((line) => ({ ...line, kinds: group.kinds })));
  const wired = new Map();
  const panel = el("div", { id: "panel" });
  const position = el("p", { id: "position", role: "status" });
  const forward = button("forward", WORDS.next, () => onward());
  const backward = button("backward", WORDS.back, () => go(beside(-1)));
  const bar = el("div", { id: "stops", role: "region", "aria-label": WORDS.oneLine }, backward, position, forward);
  let stops = [];
  let at = 0;
  let step = 0;
  let on = false;
  let focus = () => {};

  const within = (elements) => [
    ...new Set(elements.flatMap((one) => [...one.querySelectorAll("[data-item]")].map((field) => field.dataset.item))),
  ];
  const stop = (shown) => ({ shown, items: within(shown), line: undefined });

  // ---- the stops of the sheet ----

  function made() {
    const list = [stop([document.querySelector("header")])];
    let lineNumber = 0;
    for (const section of document.querySelectorAll("main > section")) {
      if (!section.classList.contains("run")) {
        list.push(stop([section]));
        continue;
      }
      const parts = [...section.children];
      const tables = parts.filter((part) => part.matches("table.lines"));
      const first = parts.findIndex((part) => part.matches(".how"));
      const last = parts.indexOf(tables.at(-1));
      const head = parts.filter((part, i) => part.matches("h2, .outlet") || (i === 1 && part.matches(".note")));
      const wiring = drawingOf(section);
      add(list, head, parts.slice(0, first));
      for (const table of tables) {
        const how = table.previousElementSibling;
        const notes = parts.filter((part) => part.matches(".formula"));
        for (const row of table.tBodies) {
          const line = lines[lineNumber++];
          list.push({ ...stop([...head, panel, row, ...notes]), line, number: lineNumber, table, wiring, title: how.firstElementChild.dataset.title });
          list.at(-1).steps = stepsOf(line, [...how.querySelectorAll("li")]);
        }
      }
      add(list, head, parts.slice(last + 1));
    }
    return list;
  }

  // The steps of a line with what is its own in them.
  function stepsOf(line, items) {
    return items.map((li, i) => ({
      kind: line.kinds[i],
      text: line.steps[i] || li.textContent,
      caution: li.classList.contains("caution"),
      wait: li.dataset.wait,
    }));
  }

  // What stands before or after the lines of a run is a stop of its own where something is to be done there.
  function add(list, head, parts) {
    const rest = parts.filter((part) => !head.includes(part) && !part.matches(".formula"));
    if (rest.some((part) => part.matches(".setup, ol") || part.querySelector("[data-item]") !== null)) {
      list.push(stop([...head, ...rest]));
    }
  }

  // The wiring that a run is done on, drawn here or earlier.
  function drawingOf(section) {
    const svg = section.querySelector(".setup svg");
    const key = section.dataset.wiring;
    if (svg !== null) {
      wired.set(key, svg);
    }
    return key === undefined ? undefined : wired.get(key);
  }

  const applies = ({ items }) => items.length === 0 || items.some((id) => Shown.of(id).verdict !== "does not apply");

  function beside(way) {
    let next = at + way;
    while (next > 0 && next < stops.length - 1 && !applies(stops[next])) {
      next += way;
    }
    return Math.min(stops.length - 1, Math.max(0, next));
  }

  // ---- what is shown ----

  function show() {
    document.querySelectorAll(".off").forEach((one) => one.classList.remove("off"));
    document.querySelectorAll(".atline").forEach((one) => one.classList.remove("atline"));
    panel.remove();
    document.body.classList.toggle("one", on);
    bar.hidden = !on;
    if (!on) {
      return;
    }
    const { shown, line, table } = stops[at];
    if (line !== undefined) {
      table.before(panel);
      table.parentElement.classList.add("atline");
      draw();
    }
    hide(document.querySelector("main"), shown);
    document.querySelector("header").classList.toggle("off", !shown.includes(document.querySelector("header")));
    const n = stops.slice(0, at + 1).filter(applies).length;
    position.textContent = words("position", { n, all: stops.filter(applies).length });
    backward.disabled = at === 0;
    label();
  }

  function hide(parent, shown) {
    for (const child of parent.children) {
      if (!shown.includes(child)) {
        const around = shown.some((one) => child.contains(one));
        child.classList.toggle("off", !around);
        if (around) {
          hide(child, shown);
        }
      }
    }
  }

  function draw() {
    const here = stops[at];
    const list = el("ol", { className: "steps", "aria-label": WORDS.steps });
    here.steps.forEach((one, i) => {
      const item = el("li", { className: (one.caution ? "caution " : "") + (i < step ? "done" : i === step ? "now" : "") }, one.text);
      item.value = i + 1;
      if (i === step) {
        item.setAttribute("aria-current", "step");
      }
      list.append(item);
    });
    panel.replaceChildren(el("div", { className: "todo" }, el("h3", {}, words("line", { n: here.number }) + ": " + here.title), list));
    if (here.wiring !== undefined) {
      const copy = here.wiring.cloneNode(true);
      const name = copy.querySelector("title").textContent;
      copy.querySelectorAll("title, desc").forEach((one) => one.remove());
      copy.removeAttribute("aria-labelledby");
      copy.setAttribute("aria-label", name);
      panel.prepend(el("div", { className: "drawn" }, copy));
    }
  }

  const stepsLeft = () => stops[at].line !== undefined && step < stops[at].steps.length;

  function label() {
    forward.textContent = stepsLeft() ? WORDS.stepDone : WORDS.next;
  }

  // ---- from stop to stop ----

  function go(next) {
    at = next;
    step = 0;
    show();
    window.scrollTo(0, 0);
    const field = stops[at].line === undefined ? Order.firstOpen(stops[at].items, true) : undefined;
    focus(field || forward, "");
  }

  // The step is done, or the stop: then the next one, unless something is open here or before.
  function onward() {
    const here = stops[at];
    const before = here.items.length === 0 ? undefined : Order.before(here.items[0]);
    if (before !== undefined) {
      focus(before, words("first", { what: Order.named(before) }));
    } else if (stepsLeft()) {
      stepDone(here);
    } else {
      const open = Order.firstOpen(here.items, false);
      if (open !== undefined && here.line !== undefined && open.matches(".again")) {
        // What failed is read again by the same steps.
        step = 0;
        show();
        focus(forward, words("first", { what: Order.named(open) }));
      } else if (open !== undefined) {
        focus(open, words("first", { what: Order.named(open) }));
      } else if (beside(1) === at) {
        focus(forward, WORDS.allDone);
      } else {
        go(beside(1));
      }
    }
  }

  function stepDone(here) {
    const { kind } = here.steps[step];
    const box = Order.firstOpen(here.items.filter((id) => Fields.items.get(id).kind === "reading"), false);
    // What fails is read again only when the output is off: the steps go on.
    if (kind === "read" && box !== undefined && box.matches(".entry") && box.value === "") {
      focus(box, WORDS.writeOrNot);
      return;
    }
    if (kind === "activate" && here.line.on !== undefined) {
      Timer.start(WORDS.timerOn, here.line.on);
    }
    if (kind === "stop") {
      Timer.stop();
    }
    step++;
    const next = here.steps[step];
    if (next !== undefined && next.kind === "rest") {
      Timer.start(WORDS.timerRest, Number(next.wait));
    } else if (next !== undefined && next.wait !== undefined) {
      Timer.start(WORDS.timerWait, Number(next.wait));
    }
    draw();
    label();
    const atBox = next !== undefined && next.kind === "read" ? box : undefined;
    focus(atBox || forward, "");
  }

  function stopOf(element) {
    const item = Fields.itemOf(element);
    return item === undefined ? -1 : stops.findIndex(({ items }) => items.includes(item.id));
  }

  // The stop that a field is at is shown before the field gets the focus.
  function reveal(element) {
    const place = stopOf(element);
    if (on && place >= 0 && place !== at) {
      at = place;
      step = 0;
      show();
    }
  }

  // From a field by Enter, where the next one is elsewhere: what is written is read, so the steps up to it are done.
  function enter(to) {
    const place = to === undefined ? stops.length : stopOf(to);
    const offFirst = place === at && stepsLeft() && to.matches(".again") && to !== document.activeElement;
    if (place <= at && !offFirst) {
      return false;
    }
    if (stepsLeft()) {
      step = Math.max(
        step,
        stops[at].steps.findIndex(({ kind }) => kind === "read"),
      );
    }
    onward();
    return true;
  }

  // Beside the whole sheet; it begins at a field, or where it was.
  function toggle(field) {
    on = !on;
    at = on && field !== undefined ? Math.max(0, stopOf(field)) : at;
    step = 0;
    show();
    return on;
  }

  // The sheet from its beginning.
  function restart() {
    at = 0;
    step = 0;
    show();
  }

  const equip = (way) => {
    focus = way;
    stops = made();
  };

  return { bar, equip, restart, toggle, reveal, enter, isOn: () => on };
})();
