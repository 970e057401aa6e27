// The first element for a selector, null where there is none, and all of them.
const find = (selector, within = document) => within.querySelector(selector);
const findAll = (selector, within = document) => [...within.querySelectorAll(selector)];

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
const button = (id, text, onclick) => el("button", { type: "button", id, onclick }, text);

export { find, findAll, el, button };
