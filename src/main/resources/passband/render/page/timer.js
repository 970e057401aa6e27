// One timer at a time: it stays in sight on both views, and says when its time is over.
import { el, findAll } from "./dom.js";
import { words } from "./words.js";

const shown = el("span", { id: "left", role: "timer" });
const over = el("span", { id: "over", role: "status" });
let end = 0;
let ticking;
let now = { what: "", seconds: 0, of: undefined, then: () => {} };
const run = new Set();

function tick() {
  const left = Math.max(0, Math.ceil((end - performance.now()) / 1000));
  shown.textContent = left === 0 ? "" : words(WORDS.timerLeft, { what: now.what, left });
  if (left === 0) {
    clearInterval(ticking);
    ticking = undefined;
    over.textContent = words(WORDS.timerOver, now);
    now.then();
    beep();
  }
}

// Whoever looks at the analyzer hears it; where there is no sound, the words have to do.
function beep() {
  try {
    const audio = new AudioContext();
    const tone = new OscillatorNode(audio, { frequency: 880 });
    tone.connect(new GainNode(audio, { gain: 0.2 })).connect(audio.destination);
    tone.onended = () => audio.close();
    tone.start();
    tone.stop(audio.currentTime + 0.4);
  } catch {
    // No sound on this device.
  }
}

// Of what it is the time, and what happens when it is over.
function start(what, seconds, of, then = () => {}) {
  now = { what, seconds, of, then };
  end = performance.now() + seconds * 1000;
  over.textContent = "";
  clearInterval(ticking);
  ticking = setInterval(tick, 200);
  tick();
}

function stop() {
  clearInterval(ticking);
  ticking = undefined;
  shown.textContent = "";
  over.textContent = "";
}

// Beside each step that waits, what times it.
function equip() {
  for (const step of findAll("li[data-wait]")) {
    step.append(" ", waiting(step, Number(step.dataset.wait)));
  }
}

function waiting(step, seconds) {
  const onclick = () => start(WORDS.timerWait, seconds, step, () => run.add(step));
  return el("button", { type: "button", className: "wait", onclick }, words(WORDS.startTimer, { seconds }));
}

const forget = () => run.clear();
const runs = (what) => ticking !== undefined && now.of === what;

const element = el("p", { className: "timer" }, shown, over);
const timed = (step) => run.has(step);

export { element, start, stop, equip, forget, runs, timed };
