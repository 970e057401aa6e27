// The verdicts of the judge on what is written: written maps an item's id to its attempts in order,
// { value, unit, undone }; a unit that is left out is the item's own.
const Verdicts = (() => {
  const { parse, plus, minus, times, over, abs, sign, compare, zero } = Ratio;
  const NUMBER = /^[+\-\u2212]?[0-9]{1,40}(\.[0-9]{1,40})?$/;
  const said = (verdict, why = "", value = null) => ({ verdict, why, value });
  const unclear = (why) => said("unclear", why);

  function of(data, written) {
    const items = new Map(data.items.map((item) => [item.id, item]));
    const attempts = (item) => (written.get(item.id) || []).filter((a) => a.undone || a.value !== "");
    const last = (item) => attempts(item).at(-1);

    function applies(item) {
      const met = (c) => {
        const answer = last(items.get(c.item));
        return answer !== undefined && !answer.undone && c.is.includes(answer.value);
      };
      return item.applies === undefined || item.applies.some(met);
    }

    function early(item) {
      const all = attempts(item);
      const none = all.every((a) => a.undone);
      if (!applies(item)) {
        return none ? said("does not apply") : unclear("recorded although it does not apply");
      }
      if (!none && all.some((a) => a.undone)) {
        return unclear("both a value and 'not done' are recorded");
      }
      return none ? said("not done") : null;
    }

    // The value in the item's unit, or why there is none.
    function number(item, attempt) {
      const text = attempt.value;
      if (!NUMBER.test(text)) {
        return { why: text.includes(",") ? "use a decimal point, not a comma" : "'" + text + "' is not a number" };
      }
      const unit = attempt.unit === undefined ? item.unit : attempt.unit;
      const [factor, dimension] = unit === "1" || (unit === "" && item.unit === "1") ? ["1", item.dimension] : data.units[unit] || [];
      if (dimension !== item.dimension || (unit === "" && item.unit !== "1")) {
        return { why: unit === "" ? "no unit is given" : "given in " + unit + ", but the limits are in " + item.unit };
      }
      const ratio = over(parse(factor), parse(item.factor));
      const decimals = (text.split(".")[1] || "").length;
      if (compare(over(ratio, [10n ** BigInt(decimals), 1n]), parse(item.resolution)) > 0) {
        return { why: "recorded with too few decimals: the limits need " + item.decimals };
      }
      const value = times(parse(text), ratio);
      if (sign(value) < 0 && !item.negative) {
        return { why: "negative, which is impossible for this quantity (zero the instrument, or check the sign)" };
      }
      const why = impossible(item, value);
      return why === null ? { value } : { why };
    }

    // No peak is below its RMS value.
    function impossible(item, value) {
      const below = item.least !== undefined && compare(value, parse(item.least)) < 0;
      return below ? "below 1, which is impossible for a crest factor (check both readings)" : null;
    }

    function reading(item) {
      const read = number(item, last(item));
      if (read.why !== undefined) {
        return unclear(read.why);
      }
      const why = [];
      if (item.low !== undefined && compare(read.value, parse(item.low)) < 0) {
        why.push("below " + item.low);
      }
      if (item.high !== undefined && compare(read.value, parse(item.high)) > 0) {
        why.push("above " + item.high);
      }
      const outside =
        (item.lower !== undefined && compare(read.value, parse(item.lower)) < 0) ||
        (item.upper !== undefined && compare(read.value, parse(item.upper)) > 0);
      if (why.length > 0 && !outside) {
        why.push("inside the tolerance, outside the guard band");
      }
      return said(why.length > 0 ? "fail" : "pass", why.join("; "), read.value);
    }

    // The square of a derived value's standard uncertainty, times three; null where it is not known.
    function spread(item, slopes, parts) {
      const squared = (a) => times(a, a);
      const load = slopes.get("load");
      let apart = load === undefined || item.loadError === undefined ? zero : squared(times(load, parse(item.loadError)));
      let together = apart;
      const common = new Map();
      for (const [name, part] of parts) {
        if (part.item.budget === undefined) {
          return null;
        }
        for (const [what, relative, absolute] of part.item.budget) {
          const width = times(plus(times(parse(relative), abs(part.value)), parse(absolute)), parse(part.item.factor));
          const moved = times(slopes.get(name) || zero, width);
          apart = plus(apart, squared(moved));
          if (what === "resolution") {
            together = plus(together, squared(moved));
          } else {
            const key = [part.item.unit, part.item.shares, what].join("|");
            common.set(key, plus(common.get(key) || zero, moved));
          }
        }
      }
      common.forEach((moved) => (together = plus(together, squared(moved))));
      return compare(apart, together) > 0 ? apart : together;
    }

    function derived(item) {
      const first = early(item);
      if (first !== null && first.verdict !== "not done") {
        return first;
      }
      const parts = new Map();
      for (const [name, id] of Object.entries(item.parts)) {
        const part = items.get(id);
        const read = judged(part);
        if (read.verdict === "not done") {
          return first !== null ? first : unclear(name + ", from which it is calculated, has no reading");
        }
        if (read.verdict === "unclear") {
          return unclear(name + ": " + read.why);
        }
        parts.set(name, { item: part, value: read.value });
      }
      try {
        return calculated(item, parts);
      } catch (error) {
        return unclear("it cannot be calculated: " + error.message);
      }
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
      const three = spread(item, slopes, parts);
      const guard = parse(data.guard);
      const band = three === null ? zero : times(over(over(three, [3n, 1n]), times(factor, factor)), times(guard, guard));
      const why = [];
      const beyond = (inside) => sign(inside) < 0 || compare(times(inside, inside), band) < 0;
      if (item.lower !== undefined && beyond(minus(value, parse(item.lower)))) {
        why.push((compare(value, parse(item.lower)) < 0 ? "below " : "in the guard band of ") + item.lower);
      }
      if (item.upper !== undefined && beyond(minus(parse(item.upper), value))) {
        why.push((compare(value, parse(item.upper)) > 0 ? "above " : "in the guard band of ") + item.upper);
      }
      if (why.length > 0) {
        return said("fail", why.join("; "), value);
      }
      if (impossible(item, value) !== null) {
        return unclear(impossible(item, value));
      }
      if (three === null && sign(guard) > 0) {
        return unclear("the uncertainty of its parts is not known");
      }
      return said("pass", "", value);
    }

    const kinds = {
      reading,
      record: () => said("pass"),
      tick: (item) => (last(item).value === "yes" ? said("pass") : unclear("'" + last(item).value + "' is not 'yes'")),
      choice: (item) => {
        const { value } = last(item);
        if (!item.options.includes(value)) {
          return unclear("'" + value + "' is not one of the outcomes");
        }
        return item.pass === undefined || item.pass === value ? said("pass") : said("fail", "only '" + item.pass + "' passes");
      },
    };

    function judged(item) {
      return item.kind === "derived" ? derived(item) : early(item) || kinds[item.kind](item);
    }

    return new Map(data.items.map((item) => [item.id, judged(item)]));
  }

  // The identity without the phase.
  function base(item) {
    const last = item.id.lastIndexOf("/");
    const place = item.id.slice(0, Math.max(0, last));
    return item.phase !== undefined && place.endsWith("/" + item.phase)
      ? place.slice(0, -item.phase.length - 1) + item.id.slice(last)
      : item.id;
  }

  // Pass only where every item that applies is done and what decides passes.
  function overall(data, verdicts) {
    const deciding = new Map();
    for (const item of data.items) {
      const before = deciding.get(base(item));
      const done = ["pass", "fail", "unclear"].includes(verdicts.get(item.id).verdict);
      if (before === undefined || (done && data.phases.indexOf(item.phase) > data.phases.indexOf(before.phase))) {
        deciding.set(base(item), item);
      }
    }
    if ([...deciding.values()].some((item) => verdicts.get(item.id).verdict === "fail")) {
      return "fail";
    }
    const open = [...verdicts.values()].some((v) => v.verdict === "not done" || v.verdict === "unclear");
    return open ? "incomplete" : "pass";
  }

  return { of, overall };
})();
