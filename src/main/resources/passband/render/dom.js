// An element with its properties (or attributes, where it has no such property) and children.
const el = (tag, properties = {}, ...children) => {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(properties)) {
    if (name in made) {
      made[name] = value;
    } else {
      made.setAttribute(name, value);
    }
  }
  made.append(...children);
  return made;
};
const button = (id, text, action) => {
  const made = el("button", { type: "button", id }, text);
  made.addEventListener("click", action);
  return made;
};
