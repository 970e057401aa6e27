// The verdicts of the judge on what is written: written maps an item's id to its attempts,
// { number, value, unit, undone }; a unit that is left out is the item's own.
const Verdicts = (() => {
  const { parse, plus, minus, times, over, abs, sign, compare, one, zero } = Ratio;
  const NUMBER = /^[+\-\u2212]?[0-9]{1,40}(\.[0-9]{1,40})?$/;
  const said = (verdict, causes = [], value = null) => ({ verdict, causes, value });
  const unclear = (cause) => said("unclear", [cause]);

  // Whether a unit is the item's own, however it is spelt.
  function own(item, text) {
    const unit = Units.find(text);
    const same = unit !== undefined && unit.dimension === item.dimension && compare(unit.factor, parse(item.factor)) === 0;
    return text === "" || (item.unit !== undefined && same);
  }

  function of(data, written) {
    const items = new Map(data.items.map((item) => [item.id, item]));
    const attempts = (item) =>
      (written.get(item.id) || []).filter((a) => a.undone || a.value !== "").sort((a, b) => a.number - b.number);
    const last = (item) => attempts(item).at(-1);

    function applies(item) {
      const met = (c) => {
        const choice = items.get(c.item);
        const answer = last(choice);
        return answer !== undefined && !answer.undone && trouble(choice) === null && c.is.includes(answer.value);
      };
      return (item.applies === undefined || item.applies.some(met)) && (item.when || []).every(met);
    }

    // Why the last attempt cannot be told; null where it can.
    function trouble(item) {
      const all = attempts(item);
      const { length } = all;
      if (length > 0 && all[length - 1].number !== length) {
        const { number } = all[length - 1];
        return Causes.of("attempt-missing", item, { number: String(number), written: String(number) });
      }
      return length > 1 && all.some((a) => a.undone) ? Causes.of("done-and-not-done", item, { written: "not-done" }) : null;
    }

    // What can be said before the value is looked at; null where it has to be.
    function early(item) {
      const done = attempts(item).filter((a) => !a.undone);
      if (!applies(item)) {
        return done.length === 0
          ? said("does not apply")
          : unclear(Causes.of("does-not-apply", item, { written: done[0].value }));
      }
      const why = trouble(item);
      if (why !== null) {
        return unclear(why);
      }
      return done.length === 0 ? said("not done") : null;
    }

    // A note of the attempts before the last.
    function earlier(item) {
      const all = attempts(item);
      const note = (first) => (first.unit === undefined || own(item, first.unit) ? first.value : first.value + " " + first.unit);
      return all.length < 2
        ? []
        : [Causes.of("earlier-attempt", item, { number: String(all.length), written: all[0].value, note: note(all[0]) })];
    }

    const passes = (item) => said("pass", earlier(item));

    // The value in the item's unit, or the cause why there is none.
    function number(item, attempt) {
      const text = attempt.value;
      if (!NUMBER.test(text) || attempt.unsure === true) {
        return { cause: Causes.of(text.includes(",") || attempt.unsure === true ? "decimal-comma" : "not-a-number", item, { written: text }) };
      }
      const given = attempt.unit === undefined ? item.unit : attempt.unit;
      if (given === "" && item.unit !== "1") {
        return { cause: Causes.of("no-unit", item, { written: "" }) };
      }
      const unit = Units.find(given);
      if (unit === undefined || unit.dimension !== item.dimension) {
        return { cause: Causes.of("other-unit", item, { written: given, note: item.printed }) };
      }
      const ratio = over(unit.factor, parse(item.factor));
      const decimals = (text.split(".")[1] || "").length;
      const step = over(ratio, [10n ** BigInt(decimals), 1n]);
      if (item.resolution !== undefined && compare(step, parse(item.resolution)) > 0) {
        const needed = { number: String(item.decimals), written: text, note: item.printed || null };
        return { cause: Causes.of("too-few-decimals", item, needed) };
      }
      const value = times(parse(text), ratio);
      if (sign(value) < 0 && !item.negative) {
        return { cause: Causes.of("negative", item, { written: text }) };
      }
      return impossible(item, value) ? { cause: Causes.of("crest-below-one", item, { written: text }) } : { value };
    }

    // No peak is below its RMS value.
    function impossible(item, value) {
      return item.least !== undefined && compare(value, parse(item.least)) < 0;
    }

    // The limits beyond which a value lies.
    function beyond(item, value) {
      const written = last(item).value;
      const limit = (code, number) => Causes.of(code, item, { number, unit: item.unit, written });
      const causes = [];
      if (item.low !== undefined && compare(value, parse(item.low)) < 0) {
        causes.push(limit("below-limit", item.low));
      }
      if (item.high !== undefined && compare(value, parse(item.high)) > 0) {
        causes.push(limit("above-limit", item.high));
      }
      return causes;
    }

    function reading(item) {
      const read = number(item, last(item));
      if (read.cause !== undefined) {
        return unclear(read.cause);
      }
      const written = last(item).value;
      const causes = beyond(item, read.value);
      const outside =
        (item.lower !== undefined && compare(read.value, parse(item.lower)) < 0) ||
        (item.upper !== undefined && compare(read.value, parse(item.upper)) > 0);
      const fails = causes.length > 0;
      if (fails && !outside) {
        causes.push(Causes.of("inside-tolerance", item, { written }));
      }
      const doubts = [...outOfCalibration(item), ...besides(item, read.value)];
      if (!fails && doubts.length > 0) {
        return said("unclear", [doubts[0]], read.value);
      }
      return said(fails ? "fail" : "pass", [...causes, ...doubts, ...earlier(item)], read.value);
    }

    // Squares of standard uncertainties, times three, with what their degrees of freedom bring about.
    function sum() {
      let square = zero;
      let shares = zero;
      const put = (one, freedom) => {
        square = plus(square, one);
        shares = freedom === undefined ? shares : plus(shares, over(times(one, one), parse(freedom)));
      };
      return {
        put,
        add: (moved, weight, freedom) => put(times(times(moved, moved), parse(weight)), freedom),
        merge(other) {
          square = plus(square, other.square());
          shares = plus(shares, other.shares());
        },
        square: () => square,
        shares: () => shares,
        // Whole effective degrees of freedom, by Welch and Satterthwaite; undefined for infinitely many.
        freedom() {
          if (sign(shares) === 0) {
            return undefined;
          }
          const [top, bottom] = over(times(square, square), shares);
          const whole = top / bottom;
          const most = BigInt(data.guards.length);
          return Number(whole > most ? most : whole < 1n ? 1n : whole);
        },
      };
    }

    // The square that the scatter of repeated readings brings about, times three.
    function scatter(repeats, values, slopes) {
      const n = [BigInt(repeats[0].length), 1n];
      const from = repeats.map((names) => {
        const mean = over(names.map((name) => values.get(name)).reduce(plus, zero), n);
        return names.map((name) => minus(values.get(name), mean));
      });
      let all = zero;
      repeats[0].forEach((_, i) =>
        repeats[0].forEach((__, k) => {
          const moved = repeats.map((names, q) => times(slopes.get(names[i]) || zero, from[q][k])).reduce(plus, zero);
          all = plus(all, times(moved, moved));
        }),
      );
      return over(times(all, [3n, 1n]), minus(n, one));
    }

    // The square of a derived value's guard band, times three: the greatest of no, of full, and of each error that may be
    // common to several readings the worse correlation; null where it is not known.
    function spread(item, slopes, parts, values) {
      const errors = new Map();
      const put = (key, moved, weight = "1", freedom = undefined) => {
        const error = errors.get(key) || { apart: sum(), moved: zero, weight, freedom };
        error.apart.add(moved, weight, freedom);
        error.moved = plus(error.moved, moved);
        errors.set(key, error);
      };
      const load = (shares, weight, freedom) => [shares.slice(shares.lastIndexOf("|")), "load error", weight, freedom].join("|");
      const own = slopes.get("load");
      if (own !== undefined && item.loadError !== undefined) {
        const { shares, loadWeight = "1", loadFreedom } = item;
        put(load(shares, loadWeight, loadFreedom), times(own, parse(item.loadError)), loadWeight, loadFreedom);
      }
      for (const [name, part] of parts) {
        if (part.item.budget === undefined) {
          return null;
        }
        for (const [what, relative, absolute, weight = "1", freedom = undefined] of part.item.budget) {
          const width = times(plus(times(parse(relative), abs(part.value)), parse(absolute)), parse(part.item.factor));
          const common = [part.item.unit, part.item.shares, what, weight, freedom].join("|");
          const key = what === "resolution" ? `${name}|${what}` : what === "load error" ? load(part.item.shares, weight, freedom) : common;
          put(key, times(slopes.get(name) || zero, width), weight, freedom);
        }
      }
      const [apart, together, worse] = [sum(), sum(), sum()];
      for (const error of errors.values()) {
        const joint = sum();
        joint.add(error.moved, error.weight, error.freedom);
        apart.merge(error.apart);
        together.merge(joint);
        worse.merge(compare(joint.square(), error.apart.square()) > 0 ? joint : error.apart);
      }
      if (item.repeats !== undefined) {
        const square = scatter(item.repeats, values, slopes);
        [apart, together, worse].forEach((all) => all.put(square, String(item.repeats[0].length - 1)));
      }
      // A smaller square may have so few degrees of freedom that its guard more than makes up for it.
      const guarded = [worse, apart, together].map((all) => {
        const freedom = all.freedom();
        const guard = parse(freedom === undefined ? data.guard : data.guards[freedom - 1]);
        return times(all.square(), times(guard, guard));
      });
      return guarded.reduce((most, one) => (compare(one, most) > 0 ? one : most));
    }

    function derived(item) {
      const first = early(item);
      if (first !== null && first.verdict !== "not done") {
        return first;
      }
      const parts = new Map();
      let doubt;
      for (const [name, id] of Object.entries(item.parts)) {
        const part = items.get(id);
        const read = judged(part);
        if (read.verdict === "not done") {
          return first !== null ? first : unclear(Causes.ofPart(Causes.of("part-not-read", part), item, name));
        }
        if (read.verdict === "unclear") {
          doubt = Causes.ofPart(read.causes[0], item, name);
          if (doubt.code !== "peak-below-rms") {
            return unclear(doubt);
          }
        }
        parts.set(name, { item: part, value: read.value, attempt: last(part).number });
      }
      if (new Set([...parts.values()].map((part) => part.attempt)).size > 1) {
        const note = [...parts].map(([name, part]) => words("ofAttempt", { name, n: part.attempt })).join(", ");
        return unclear(Causes.of("attempts-differ", item, { note }));
      }
      try {
        const result = calculated(item, parts);
        // Of parts that all fail, so that none of them is unclear because of it.
        const [late] = [...parts].flatMap(([name, part]) => outOfCalibration(part.item).map((cause) => Causes.ofPart(cause, item, name)));
        const why = doubt || late;
        return result.verdict === "pass" && why !== undefined ? unclear(why) : result;
      } catch (error) {
        return unclear(Causes.of("not-calculable", item, { note: error.message }));
      }
    }

    // Which peak is below which RMS value, in words; null where none is. One may come from the other through the load.
    function reversed(values) {
      const load = values.get("load");
      for (const wave of WAVES) {
        const peak = values.get(wave.peak);
        const other = load !== undefined && sign(load) > 0 ? values.get(wave.other) : undefined;
        const through = other === undefined ? undefined : (wave.times ? times : over)(other, load);
        const rms = values.has(wave.rms) ? values.get(wave.rms) : through;
        if (peak !== undefined && rms !== undefined && compare(peak, rms) < 0) {
          return words("isBelow", { peak: wave.peak, rms: values.has(wave.rms) ? wave.rms : words("through." + wave.rms) });
        }
      }
      return null;
    }

    function calculated(item, parts) {
      const values = new Map([...parts].map(([name, part]) => [name, times(part.value, parse(part.item.factor))]));
      for (const name of ["setting", "load"]) {
        if (item[name] !== undefined) {
          values.set(name, parse(item[name]));
        }
      }
      const { value: si, slopes } = Formula.at(item.formula, values);
      const factor = parse(item.factor);
      const value = over(si, factor);
      const three = spread(item, slopes, parts, values);
      const band = three === null ? zero : over(over(three, [3n, 1n]), times(factor, factor));
      const causes = [];
      const beyond = (inside) => sign(inside) < 0 || compare(times(inside, inside), band) < 0;
      const limit = (code, number) => causes.push(Causes.of(code, item, { number, unit: item.unit }));
      if (item.lower !== undefined && beyond(minus(value, parse(item.lower)))) {
        limit(compare(value, parse(item.lower)) < 0 ? "below-limit" : "guard-band", item.lower);
      }
      if (item.upper !== undefined && beyond(minus(parse(item.upper), value))) {
        limit(compare(value, parse(item.upper)) > 0 ? "above-limit" : "guard-band", item.upper);
      }
      if (causes.length > 0) {
        return said("fail", causes, value);
      }
      if (sign(value) < 0 && !item.negative) {
        return unclear(Causes.of("negative", item));
      }
      const note = reversed(values);
      if (note !== null) {
        return unclear(Causes.of("peak-below-rms", item, { note }));
      }
      if (three === null && sign(parse(data.guard)) > 0) {
        return unclear(Causes.of("uncertainty-unknown", item));
      }
      return said("pass", [], value);
    }

    function tick(item) {
      const { value } = last(item);
      return value === "yes" ? passes(item) : unclear(Causes.of("not-ticked", item, { written: value }));
    }

    function choice(item) {
      const { value } = last(item);
      if (!item.options.includes(value)) {
        return unclear(Causes.of("no-outcome", item, { written: value }));
      }
      return item.pass === undefined || item.pass === value
        ? passes(item)
        : said("fail", [Causes.of("other-outcome", item, { written: value, note: item.pass })]);
    }

    // What is judged of a blank; undefined where there is nothing, or it cannot be told.
    const blank = (item) => (early(item) === null ? last(item).value : undefined);
    const asking = (what) => data.items.filter((item) => item.asks === what && blank(item) !== undefined);
    const [date] = asking("date").map((item) => Blanks.day(blank(item)));

    // Why the blank for a due date is unclear; null where it is not.
    function calibration(due) {
      const written = blank(due);
      const until = Blanks.only(written);
      if (until === undefined) {
        return Causes.of("calibration-unchecked", due, { written });
      }
      return date === undefined || until >= date ? null : Causes.of("calibration-overdue", due, { written: until, note: date });
    }

    const dues = asking("due");

    // Why a reading cannot pass, in a list; an empty one where it can.
    function outOfCalibration(item) {
      for (const due of dues) {
        const bears = item.due === undefined ? due.id.startsWith("sheet/") : item.due.includes(due.id);
        const cause = bears ? calibration(due) : null;
        if (cause !== null && cause.code === "calibration-overdue") {
          return [Causes.of("instrument-overdue", item, { written: cause.written, note: due.id.slice(due.id.lastIndexOf("/") + 1) })];
        }
      }
      return [];
    }

    // Where a peak is below the RMS value of the same wave: why neither reading passes, in a list.
    function besides(item, value) {
      const si = (one, read) => [one.quantity, times(read, parse(one.factor))];
      const load = item.load === undefined ? [] : [["load", parse(item.load)]];
      const causes = [];
      for (const other of (item.wave || []).map((id) => items.get(id))) {
        const read = early(other) === null ? number(other, last(other)).value : undefined;
        const note = read === undefined ? null : reversed(new Map([si(item, value), si(other, read), ...load]));
        if (note !== null) {
          causes.push(Causes.of("peak-below-rms", item, { written: last(item).value, note }));
        }
      }
      return causes;
    }

    // Why a text is no answer to what a blank asks for; null where it is one.
    function unusable(item) {
      const { value } = last(item);
      switch (item.asks) {
        case "number":
          return number(item, last(item)).cause || null;
        case "date":
          return Blanks.day(value) === undefined ? Causes.of("not-a-date", item, { written: value }) : null;
        case "due":
          return calibration(item);
        case "name":
          return Blanks.filler(value) ? Causes.of("filler", item, { written: value }) : null;
        default:
          return null;
      }
    }

    function record(item) {
      const cause = unusable(item);
      if (cause !== null) {
        return unclear(cause);
      }
      const causes = item.asks === "number" ? beyond(item, number(item, last(item)).value) : [];
      return causes.length > 0 ? said("fail", [...causes, ...earlier(item)]) : passes(item);
    }

    const kinds = { reading, tick, choice, record };

    function judged(item) {
      return item.kind === "derived" ? derived(item) : early(item) || kinds[item.kind](item);
    }

    return gated(data, new Map(data.items.map((item) => [item.id, judged(item)])));
  }

  // By value, by gate without its phase, the last gate before it that applies.
  function gates(data, verdicts) {
    const stopping = new Map();
    for (const gate of data.items.filter((item) => item.stops !== undefined && verdicts.get(item.id).verdict !== "does not apply")) {
      for (const id of gate.stops) {
        stopping.set(id, (stopping.get(id) || new Map()).set(base(gate), gate));
      }
    }
    return stopping;
  }

  // The gates that a value stands behind and that have not passed.
  function closed(data, verdicts) {
    const all = [...gates(data, verdicts)].map(([id, by]) => [id, [...by.values()].filter((gate) => verdicts.get(gate.id).verdict !== "pass")]);
    return new Map(all.filter(([, shut]) => shut.length > 0));
  }

  // What gates make of the verdicts: of themselves, and of what they stop.
  function gated(data, raw) {
    const verdicts = new Map();
    const stopping = gates(data, raw);
    const because = (item, { causes, value }, verdict, code, other) =>
      said(verdict, [...causes, Causes.of(code, item, { note: other.id })], value);
    const before = [];
    for (const item of data.items) {
      let now = raw.get(item.id);
      if (item.stops !== undefined && now.verdict !== "does not apply") {
        const failed = [...deciding(data, before, verdicts).values()].find((one) => verdicts.get(one.id).verdict === "fail");
        const open = before.find((one) => ["not done", "unclear"].includes(verdicts.get(one.id).verdict));
        if (failed !== undefined) {
          now = because(item, now, "fail", "earlier-failed", failed);
        } else if (now.verdict === "pass" && open !== undefined) {
          now = because(item, now, "unclear", "earlier-open", open);
        }
      } else if (!["does not apply", "not done"].includes(now.verdict)) {
        for (const gate of (stopping.get(item.id) || new Map()).values()) {
          const { verdict } = verdicts.get(gate.id);
          if (verdict === "fail") {
            now = because(item, now, "fail", "gate-failed", gate);
          } else if (verdict !== "pass" && now.verdict === "pass") {
            now = because(item, now, "unclear", "gate-open", gate);
          }
        }
      }
      verdicts.set(item.id, now);
      before.push(item);
    }
    return verdicts;
  }

  // The identity without the phase.
  function base(item) {
    const last = item.id.lastIndexOf("/");
    const place = item.id.slice(0, Math.max(0, last));
    return item.phase !== undefined && place.endsWith("/" + item.phase)
      ? place.slice(0, -item.phase.length - 1) + item.id.slice(last)
      : item.id;
  }

  // Of each item the last phase in which it was done; its first where it was done in none.
  function deciding(data, items, verdicts) {
    const last = new Map();
    for (const item of items) {
      const before = last.get(base(item));
      const done = ["pass", "fail", "unclear"].includes(verdicts.get(item.id).verdict);
      if (before === undefined || (done && data.phases.indexOf(item.phase) > data.phases.indexOf(before.phase))) {
        last.set(base(item), item);
      }
    }
    return last;
  }

  // Pass only where every item that applies is done and what decides passes.
  function overall(data, verdicts) {
    if ([...deciding(data, data.items, verdicts).values()].some((item) => verdicts.get(item.id).verdict === "fail")) {
      return "fail";
    }
    const open = [...verdicts.values()].some((v) => v.verdict === "not done" || v.verdict === "unclear");
    return open ? "incomplete" : "pass";
  }

  return { of, own, closed, overall };
})();
