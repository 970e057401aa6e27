// What is kept on this device: unit by unit, by the digest of the sheet and the unit's serial number.
const Kept = (() => {
  const digest = document.body.dataset.digest;
  const prefix = "passband:" + digest + ":";
  const entriesOf = (list) =>
    new Map(
      list
        .filter(([id]) => Fields.items.has(id))
        .map(([id, [one, two, not, why = "", who = ""]]) => [id, [String(one), String(two), not === true, String(why), String(who)]]),
    );

  // A unit's record, { at, unsaved, entries, before }; null where there is none. Before is what was cleared or replaced.
  function read(serial) {
    const text = localStorage.getItem(prefix + serial);
    if (text === null) {
      return null;
    }
    const { at, unsaved, entries, before } = JSON.parse(text);
    return {
      at: String(at),
      unsaved: unsaved === true,
      entries: entriesOf(entries),
      before: before ? { what: String(before.what), entries: entriesOf(before.entries), undone: before.undone === true } : null,
    };
  }

  // Whether it could be kept.
  function write(serial, { at, unsaved, entries, before }) {
    try {
      const earlier = before && { ...before, entries: [...before.entries] };
      localStorage.setItem(prefix + serial, JSON.stringify({ at, unsaved, entries: [...entries], before: earlier }));
      return true;
    } catch {
      return false;
    }
  }

  // The serial numbers, the last changed first.
  function serials() {
    try {
      const found = Object.keys(localStorage)
        .filter((key) => key.startsWith(prefix))
        .map((key) => key.slice(prefix.length));
      const at = (serial) => {
        try {
          return read(serial).at;
        } catch {
          return "";
        }
      };
      return found.sort((a, b) => (at(a) < at(b) ? 1 : -1));
    } catch {
      return [];
    }
  }

  // As it is kept, so that it can be put back.
  const raw = (serial) => localStorage.getItem(prefix + serial);
  const putRaw = (serial, text) => localStorage.setItem(prefix + serial, text);
  const remove = (serial) => localStorage.removeItem(prefix + serial);

  return { read, write, serials, raw, putRaw, remove };
})();

// Which tab has a unit open: the last one that opened it; the one before is told, and answers.
const Tabs = (() => {
  const own = Date.now().toString(36) + Math.random().toString(36).slice(2);
  const key = (what, serial) => ["passband", what, document.body.dataset.digest, serial].join("-");
  let unit = null;

  function put(what, value) {
    try {
      localStorage.setItem(key(what, unit), value);
    } catch {
      // Where nothing can be kept, no other tab can be told, and none shares what is kept.
    }
  }

  // From now on this tab has the unit; null for none.
  function claim(serial) {
    unit = serial;
    if (unit !== null) {
      put("open", own + " " + Date.now());
    }
  }

  function listen({ taken, wasOpen }) {
    window.addEventListener("storage", (event) => {
      if (unit === null || event.newValue === null || event.newValue.startsWith(own)) {
        return;
      }
      if (event.key === key("open", unit)) {
        put("stopped", own + " " + Date.now());
        taken(unit);
      } else if (event.key === key("stopped", unit)) {
        wasOpen(unit);
      }
    });
  }

  return { claim, listen };
})();
