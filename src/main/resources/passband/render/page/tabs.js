// Which tab has a unit open: the last one that opened it; the one before is told, and answers.
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

export { claim, listen };
