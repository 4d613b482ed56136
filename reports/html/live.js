// The part of the page that answers to its reader: grams of the report's start for
// another batch or scale, and its chance and the maps for other targets. It only
// evaluates what the report believes; nothing is fitted or searched here, and
// nothing is fetched.
"use strict";
const foamfield = (() => {
  // Numbers.

  // exactly is the standard normal distribution: its series near the middle, its
  // continued fraction in the tails (Abramowitz & Stegun 26.2.11 and 26.2.14).
  function exactly(z) {
    const x = Math.abs(z);
    if (x < 3) {
      let term = x, sum = x;
      for (let n = 3; term > 1e-17 * sum; n += 2) sum += term *= x * x / n;
      return 0.5 + Math.sign(z) * density(x) * sum;
    }
    let f = x;
    for (let n = 40; n > 0; n--) f = x + n / f;
    return z < 0 ? density(x) / f : 1 - density(x) / f;
  }
  const density = x => Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI);

  // below is the same from a table, to 1e-9: the maps ask for it some forty thousand
  // times a change. Between two places it is the cubic with their values and slopes.
  const reach = 8, places = 64; // to a unit
  const values = Float64Array.from({ length: 2 * reach * places + 1 }, (_, i) => exactly(i / places - reach));
  const slopes = values.map((_, i) => density(i / places - reach) / places);
  function below(z) {
    if (z <= -reach) return 0;
    if (z >= reach) return 1;
    const at = (z + reach) * places, i = Math.floor(at), t = at - i;
    const rise = values[i + 1] - values[i], from = slopes[i], to = slopes[i + 1];
    return values[i] + t * (from + t * (3 * rise - 2 * from - to + t * (from + to - 2 * rise)));
  }

  // Nine nodes of Gauss and Hermite (Abramowitz & Stegun 25.4.46, table 25.10): half
  // of them, since the rule is symmetric.
  const nodes = [[0, 0.7202352156060510], [0.7235510187528376, 0.4326515590025558], [1.468553289216668, 0.08847452739437657],
    [2.266580584531843, 0.004943624275536947], [3.190993201781528, 3.960697726326438e-5]];
  const logistic = x => 1 / (1 + Math.exp(-x));

  // yes is the chance of a yes when the logit is normal but for its skewness.
  function yes(mean, sd, skew) {
    const at = x => logistic(mean + sd * (x + skew / 6 * (x * x - 1)) / Math.sqrt(1 + skew * skew / 18));
    let p = 0;
    for (const [x, w] of nodes) p += w * (x === 0 ? at(0) : at(Math.SQRT2 * x) + at(-Math.SQRT2 * x));
    return p / Math.sqrt(Math.PI);
  }

  // leaned is the standard normal that lies where z does in a skewed distribution
  // (Fisher and Cornish 1960, Technometrics 2:209).
  const leaned = (z, skew) => z - skew / 6 * (z * z - 1) + skew * skew / 144 * z * (7 * z * z - 1);
  const skewness = (third, sd) => Math.max(-1.2, Math.min(third / sd ** 3, 1.2));

  // unpack makes the numbers of the page ready to work with. It carries them short:
  // what is believed of an outcome as whole counts of a decimal place, a covariance as
  // the rows of its lower triangle, a map's axis as its ends, and where trials are near
  // as lengths of runs, far and near in turn.
  function unpack(page) {
    const rows = (leanings, unit) => (leanings ?? []).map(row => row.map(n => n * unit));
    const links = page.links.map(l => {
      const [fine, finer] = l.decimals.map(d => 10 ** -d);
      return {
        outcome: l.outcome,
        asked: l.asked, // of a result that no box moves
        failing: l.failing, fail: l.fail,
        terms: l.terms,
        triangle: l.triangle && l.triangle.map(n => n * finer), // of a number
        leanings: rows(l.leanings, fine),
        edges: l.edges && l.edges.map(e => ({ // of the logit of a yes, for each steepness
          weight: e.weight, mean: e.mean.map(n => n * fine), triangle: e.triangle.map(n => n * finer),
          leanings: rows(e.leanings, fine) })),
        rule: l.scatter && l.scatter.map(counts => { // of ln of what is measured, for each size of scatter
          const [weight, logSD, spread, ...mean] = counts.map(n => n * fine);
          return { weight, variance: Math.exp(2 * logSD) + l.day_sd ** 2, spread, mean };
        }),
      };
    });
    const maps = page.maps.map(m => {
      const along = (v, [low, high], n) => Array.from({ length: n }, (_, i) => v.log
        ? low * (high / low) ** (i / (n - 1)) : low + (high - low) * i / (n - 1));
      const near = m.tested.flatMap((length, i) => Array(length).fill(i % 2 === 1));
      return { ...m, near, xs: along(page.variables[m.x], m.xs, m.size[0]), ys: along(page.variables[m.y], m.ys, m.size[1]) };
    });
    return { ...page, links, maps };
  }

  function dot(a, b) {
    let sum = 0;
    for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
    return sum;
  }

  // coordinates are a mix as the terms take it; features are the terms there.
  const coordinates = (variables, mix) => variables.map((v, i) => ((v.log ? Math.log(mix[i]) : mix[i]) - v.centre) / v.scale);
  function features(terms, z) {
    const f = [];
    for (const term of terms) {
      let product = 1;
      for (const i of term) product *= z[i];
      f.push(product);
    }
    return f;
  }

  // spread is the variance of a line at its features.
  function spread(triangle, f) {
    let sum = 0, k = 0;
    for (let i = 0; i < f.length; i++) {
      let row = 0;
      for (let j = 0; j < i; j++) row += triangle[k++] * f[j];
      sum += f[i] * (2 * row + f[i] * triangle[k++]);
    }
    return Math.max(0, sum);
  }

  // third is the third central moment of a line at its features.
  const third = (leanings, f) => leanings.reduce((sum, row) => sum + dot(row, f) ** 3, 0);

  // passing is the chance of one outcome's passing at some coordinates as a function of
  // ln of its target, where it has one that moves.
  function passing(link, z) {
    const f = features(link.terms, z);
    if (link.edges) {
      const p = link.edges.reduce((sum, e) => {
        const sd = Math.sqrt(spread(e.triangle, f));
        return sum + e.weight * yes(dot(f, e.mean), sd, skewness(third(e.leanings, f), sd));
      }, 0);
      const pass = link.outcome === "broke" ? 1 - p : p;
      return () => pass;
    }
    const v = spread(link.triangle, f), cubes = third(link.leanings, f);
    const rule = link.rule.map(r => {
      const sd = Math.sqrt(r.variance + r.spread * v);
      return { weight: r.weight, at: dot(f, r.mean) / sd, per: 1 / sd, skew: skewness(cubes, sd) };
    });
    const atLeast = bound => {
      let p = 0;
      for (const r of rule) p += r.weight * below(-leaned(bound * r.per - r.at, r.skew));
      return p;
    };
    if (link.asked) {
      const { low, high } = link.asked, pass = (low === null ? 1 : atLeast(low)) - (high === null ? 0 : atLeast(high));
      return () => pass;
    }
    return link.outcome === "drained_percent" ? bound => 1 - atLeast(bound) : atLeast;
  }

  // bound is ln of the target that an outcome has to meet.
  const bound = (link, targets) => Math.log(link.outcome === "drained_percent" ? targets.drained : targets.hold);

  // chances are the chances of passing each outcome; chance is that of passing all.
  function chances(model, mix, targets) {
    const z = coordinates(model.variables, mix);
    return model.links.map(link => passing(link, z)(bound(link, targets)));
  }
  const chance = (model, mix, targets) => chances(model, mix, targets).reduce((p, pass) => p * pass, 1);

  // weigh scales a formula to a batch in whole steps of a scale: everything to the
  // nearest step but for the water part (or the fat where there is too little water,
  // or else everything), which takes up the difference, largest remainders first. A
  // little dust is added to each ingredient so that 15.5 steps of it are never taken
  // for less.
  function weigh(lines, batch, step) {
    const dust = 1e-9, all = lines.reduce((sum, l) => sum + l.grams, 0), total = Math.round(batch / step);
    for (const part of ["water", "fat", null]) {
      const exact = lines.map(l => l.grams / all * batch / step);
      const steps = exact.map(x => Math.floor(x + 0.5 + dust));
      const pool = lines.map((l, i) => i).filter(i => part === null || lines[i].part === part);
      const quota = pool.reduce((sum, i) => sum + exact[i], 0);
      const rest = total - steps.reduce((sum, n, i) => pool.includes(i) ? sum : sum + n, 0);
      if (part !== null && (quota < lines.length || rest < 0)) continue;
      for (const i of pool) exact[i] *= rest / quota;
      for (const i of pool) steps[i] = Math.floor(exact[i] + dust);
      let left = rest - pool.reduce((sum, i) => sum + steps[i], 0);
      const order = pool.map(i => [exact[i] - steps[i], i]).sort((a, b) => b[0] - a[0] || a[1] - b[1]);
      for (let k = 0; left > 0; k++, left--) steps[order[k % order.length][1]]++;
      const inverse = Math.round(1 / step);
      return steps.map(n => Math.abs(inverse * step - 1) < 1e-12 ? n / inverse : n * step);
    }
  }

  // made is the mix that grams make, null if the emulsifier is lost in rounding.
  function made(model, grams, batch, lines = model.lines) {
    const sum = of => lines.reduce((total, l, i) => total + grams[i] * of(l), 0);
    const all = sum(() => 1), emulsifier = sum(l => l.emulsifier ? 1 : 0), blended = sum(l => l.hlb === null ? 0 : 1);
    if (emulsifier === 0 && lines.some(l => l.emulsifier)) return null;
    if (blended === 0 && lines.some(l => l.hlb !== null)) return null;
    const now = {
      fat_percent: sum(l => l.fat_percent) / all,
      emulsifier_percent: 100 * emulsifier / all,
      emulsifier_grams: emulsifier / batch * model.batch,
      blend_hlb: sum(l => l.hlb === null ? 0 : l.hlb) / blended,
    };
    return model.variables.map((v, i) => v.name in now ? now[v.name] : model.mix[i]);
  }

  // Another mix in the start's ingredients, as the report's own formulas are worked out:
  // fats keep their proportions, as do waters, the emulsifiers below the HLB wanted and those
  // from it up; everything else keeps its percent of the mix.

  const sum = (items, of) => items.reduce((total, i) => total + of(i), 0);

  // blended joins two groups of [place, weight, value] to a mean; null if it lies outside.
  function blended(low, high, target) {
    const weightLow = sum(low, i => i[1]), weightHigh = sum(high, i => i[1]), same = 1e-9;
    if (weightLow === 0 && weightHigh === 0) return null;
    let meanLow = sum(low, i => i[1] * i[2]) / weightLow, meanHigh = sum(high, i => i[1] * i[2]) / weightHigh, share;
    if (weightLow === 0) { meanLow = meanHigh; share = 1; } else if (weightHigh === 0) { meanHigh = meanLow; share = 0; } else if (Math.abs(meanLow - meanHigh) > same) {
      share = (target - meanLow) / (meanHigh - meanLow);
    } else share = weightHigh / (weightLow + weightHigh);
    if (Math.abs(meanLow - meanHigh) <= same && Math.abs(target - meanLow) > 2 * same || share < -same || share > 1 + same) return null;
    share = Math.min(Math.max(share, 0), 1);
    return [...low.map(i => [i[0], (1 - share) * i[1] / weightLow]), ...high.map(i => [i[0], share * i[1] / weightHigh])];
  }

  // split is blended with the items below the target against the others.
  function split(items, target) {
    const same = 1e-9, at = items.filter(i => Math.abs(i[2] - target) <= same);
    const below = items.filter(i => i[2] < target - same), above = items.filter(i => i[2] > target + same);
    if (below.length > 0) return blended(below, [...at, ...above], target);
    return blended(at, above, target);
  }

  // mixed is each line's share of a mix of so much fat and emulsifier, at an HLB where one
  // is given; a sentence where the ingredients do not reach it.
  function mixed(lines, fat, emulsifier, hlb) {
    const all = sum(lines, l => l.grams), shares = lines.map(() => 0), weighed = sum(lines, l => l.emulsifier ? l.grams : 0);
    if (!(weighed > 0)) return "These ingredients have no emulsifier.";
    lines.forEach((l, i) => { if (l.emulsifier) shares[i] = emulsifier / 100 * l.grams / weighed; });
    const pool = lines.map((l, i) => [i, l.grams, l.hlb]).filter(i => i[2] !== null && i[1] > 0);
    if (hlb !== null && pool.length > 0) {
      const found = split(pool, hlb);
      if (!found) return "An HLB of " + plain(hlb) + " is out of these emulsifiers' reach.";
      const non = sum(pool, i => i[1]);
      for (const [i, share] of found) shares[i] = emulsifier / 100 * non / weighed * share;
    }
    let room = 1 - emulsifier / 100, need = fat / 100;
    const fats = [], waters = [];
    lines.forEach((l, i) => {
      if (l.emulsifier) need -= shares[i] * l.fat_percent / 100;
      else if (l.part === "fat") fats.push([i, l.grams, l.fat_percent / 100]);
      else if (l.part === "water") waters.push([i, l.grams, l.fat_percent / 100]);
      else {
        shares[i] = l.grams / all;
        room -= shares[i];
        need -= shares[i] * l.fat_percent / 100;
      }
    });
    const found = blended(waters, fats, need / room) || split([...waters, ...fats], need / room);
    if (!found || !(room > 0)) return plain(fat) + " % fat is out of these ingredients' reach.";
    for (const [i, share] of found) shares[i] = room * share;
    return shares;
  }

  // ofMix is the places of fat, emulsifier and HLB among the variables, -1 for none.
  const ofMix = model => ["fat_percent", "emulsifier_percent", "blend_hlb"].map(name => model.variables.findIndex(v => v.name === name));

  // asked is another mix in grams, and the mix that these grams make; a sentence where there is none.
  function asked(model, fat, emulsifier, hlb, batch, step) {
    const own = model.lines.map(l => l.blended && hlb !== null ? { ...l, hlb } : l);
    const shares = mixed(own, fat, emulsifier, ofMix(model)[2] < 0 ? null : hlb);
    if (typeof shares === "string") return shares;
    const lines = own.map((l, i) => ({ ...l, grams: shares[i] }));
    const grams = weigh(lines, batch, step), mix = made(model, grams, batch, lines);
    return mix === null ? "The emulsifier cannot be weighed on this scale: make a larger batch, or use a finer scale." : { grams, mix };
  }

  // near says whether a mix lies where mixes were tried.
  function near(model, mix) {
    const own = model.own;
    for (let i = 0; i < mix.length; i++) {
      const slack = 1e-9 * Math.max(1, Math.abs(mix[i]));
      if (mix[i] < own.low[i] - slack || mix[i] > own.high[i] + slack) return false;
    }
    return spread(own.triangle, features(own.terms, coordinates(model.variables, mix))) <= own.most * (1 + 1e-9);
  }

  // bestAt is the best mix of a fat percent, between those that the report worked out.
  function bestAt(model, fat) {
    const [at] = ofMix(model), best = model.own.best;
    if (best.length === 0 || fat < best[0][at] || fat > best.at(-1)[at]) return null;
    let k = best.findIndex(m => m[at] >= fat);
    if (k <= 0) return best[0];
    const share = (fat - best[k - 1][at]) / (best[k][at] - best[k - 1][at]);
    return best[k].map((x, i) => best[k - 1][i] + share * (x - best[k - 1][i]));
  }

  // agrees says whether the report's own chance and grams come out: whatever this
  // script does not know of, it then shows nothing rather than something wrong.
  function agrees(model) {
    if (!(Math.abs(chance(model, model.mix, model) - model.chance) < 1e-6)) return false;
    return model.lines === null || weigh(model.lines, model.batch, model.step).every((g, i) => Math.abs(g - model.lines[i].grams) < 1e-6);
  }

  // Words, as in the rest of the report.

  const share = p => Math.min(99, Math.max(1, Math.round(100 * p))) + " in 100";

  function words(p) {
    if (!(p >= 0 && p <= 1)) return "not known";
    if (p > 0.99) return "nearly always";
    return p < 0.01 ? "fewer than 1 in 100" : "about " + share(p);
  }

  // against words a chance beside the wanted one, which it must not seem to reach.
  const against = (p, wanted) => p < wanted && words(p) === words(wanted) && p >= 0.01 && p <= 0.99
    ? "a little under " + share(p) : words(p);

  // works is how often a mix works, as a sentence without its stop.
  function works(p, wanted) {
    const said = against(p, wanted), counted = said.replace(/ in 100$/, "");
    if (counted !== said) return "Of 100 such foams " + counted + (/ 1$/.test(counted) ? " works" : " work");
    return p > 0.99 ? "Such foams nearly always work" : "How often such foams work is " + said;
  }

  const often = n => ["", "once", "twice"][n] || n + " times";

  function times(p) {
    for (const of of [10, 20, 100, 1000]) if (Math.abs(p * of - Math.round(p * of)) < 1e-6) return often(Math.round(p * of)) + " in " + of;
    return words(p);
  }

  // decimals that show steps of a scale.
  function decimals(step) {
    for (let d = 0; d < 4; d++) {
      const scaled = step * 10 ** d;
      if (scaled >= 1 - 1e-9 && Math.abs(scaled - Math.round(scaled)) < 1e-6) return d;
    }
    return 3;
  }

  const plain = x => String(Number(x.toPrecision(6)));
  const listed = items => items.length < 2 ? items.join("") : items.slice(0, -1).join(", ") + " and " + items.at(-1);
  const sayings = {
    fat_percent: x => x.toFixed(1) + " % fat",
    emulsifier_percent: x => x.toFixed(1) + " % emulsifier",
    emulsifier_grams: x => x.toFixed(1) + " g emulsifier",
    blend_hlb: x => "HLB " + x.toFixed(1),
  };
  const mixWords = (model, mix) => model.variables.map((v, i) => v.name in sayings ? sayings[v.name](mix[i]) : "").filter(Boolean).join(", ");

  // Boxes. Each must hold a number in its range, or a sentence says what to type.

  const boxes = {
    batch: { name: "batch", unit: "g", fits: x => x > 0 && x <= 1e6, range: "more than 0 g" },
    step: { name: "scale step", unit: "g", fits: (x, all) => x > 0 && !(all.batch > 0 && x > all.batch), range: "more than 0 g and at most the batch" },
    hold: { name: "hold", unit: "minutes", fits: x => x > 0, range: "more than 0 minutes" },
    drained: { name: "drained limit", unit: "%", fits: x => x > 0 && x <= 100, range: "more than 0 and at most 100 %" },
    fat: { name: "fat", unit: "%", fits: x => x >= 0 && x < 100, range: "0 or more and less than 100 %" },
    emulsifier: { name: "emulsifier", unit: "%", fits: x => x > 0 && x < 50, range: "more than 0 and less than 50 %" },
    hlb: { name: "HLB", unit: "", fits: x => x > 0 && x <= 20, range: "more than 0 and at most 20" },
    wanted: { name: "sure enough", unit: "times in 10", fits: x => x > 0 && x < 10, range: "more than 0 and less than 10 times in 10" },
  };

  // read is the numbers of the boxes, with a sentence for each that is no use.
  function read(inputs) {
    const all = {}, sentences = [];
    for (const [key, input] of Object.entries(inputs)) all[key] = input.value.trim() === "" ? NaN : Number(input.value);
    for (const [key, input] of Object.entries(inputs)) {
      const box = boxes[key], ok = box.fits(all[key], all);
      input.setAttribute("aria-invalid", String(!ok));
      if (!ok) sentences.push("For the " + box.name + " type " + box.range + ", for example " + input.defaultValue + ".");
    }
    return { all, sentences };
  }

  // fails counts the first failures of 100 such foams: those worth naming, and as many
  // more as make up most of them, the commonest first.
  const atLeastOne = 0.005;
  function fails(model, passes) {
    let reached = 1, said = 0;
    const first = passes.map((pass, i) => {
      const share = reached * (1 - pass);
      reached *= pass;
      return { share, one: model.links[i].failing, several: model.links[i].fail };
    }).sort((a, b) => b.share - a.share);
    const all = first.reduce((sum, f) => sum + f.share, 0), ways = [];
    for (const f of first) {
      if (!(f.share >= atLeastOne || all >= 0.01 && f.share > 0 && said < 0.9 * all)) continue;
      said += f.share;
      const n = f.share < atLeastOne ? "fewer than 1" : share(f.share).replace(" in 100", "");
      ways.push(n + " " + (n === "1" || f.share < atLeastOne ? f.one : f.several));
    }
    return ways.length === 0 ? "" : "Of 100 such foams " + (ways[0].startsWith("fewer") ? "" : "about ") + listed(ways) + ".";
  }

  // verdict is what there is to say of a mix in grams for these numbers: lines, the
  // first of them the one that matters.
  const clogsTooOften = 0.05;
  function verdict(model, grams, mix, now, untouched) {
    const lines = [], passes = chances(model, mix, now), p = passes.reduce((product, pass) => product * pass, 1);
    const guess = now.hold !== undefined && model.watched !== null && now.hold > model.watched;
    let said = works(p, now.wanted);
    if (untouched && model.few_as) said += ", " + model.few_as;
    if (model.left_out) said += ", with " + model.left_out + " left out";
    else if (guess) said += ", if foams hold on as they did in the " + plain(model.watched) + " minutes watched";
    lines.push(said + ".");
    if (!model.left_out && !guess) lines.push("That is " + (p < now.wanted ? "not sure enough" : "sure enough") + ": you ask for " + times(now.wanted) + ".");
    lines.push(fails(model, passes));
    const clogs = model.links.findIndex(l => l.outcome === "came_out");
    if (clogs >= 0 && 1 - passes[clogs] > clogsTooOften) lines.push("At these grams it clogs too often to start from: use a finer scale.");
    if (grams && model.largest_fill && now.batch > model.largest_fill) {
      lines.push("The largest batch in the log was " + plain(model.largest_fill) + " g: split this one over " +
        Math.ceil(now.batch / model.largest_fill - 1e-9) + " canisters, each to its own marking.");
    }
    return { p, lines: lines.filter(Boolean) };
  }

  return { below, unpack, chances, chance, coordinates, passing, bound, weigh, made, asked, near, bestAt, ofMix, words, against, times, decimals, plain, mixWords, verdict, read, agrees };
})();
