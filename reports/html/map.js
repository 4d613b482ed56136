// The maps of the live part: the chance over two variables, drawn as the figures
// draw it, in bands that end where no trial is near.
const chart = (() => {
  const space = "http://www.w3.org/2000/svg";
  const box = { width: 330, height: 262, left: 40, right: 320, top: 8, bottom: 218 };
  const levels = [-Infinity, 0.2, 0.4, 0.6, 0.8];

  function element(name, attributes, text) {
    const e = document.createElementNS(space, name);
    for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
    if (text !== undefined) e.textContent = text;
    return e;
  }

  // nodes are the tested places of a map with what does not follow the targets
  // worked out once: a change then costs a few milliseconds.
  function nodes(model, map) {
    return map.ys.map((y, j) => map.xs.map((x, i) => {
      if (map.tested[j][i] !== "1") return null;
      const mix = [...map.fixed];
      mix[map.x] = x;
      mix[map.y] = y;
      let fixed = 1;
      const moving = [];
      for (const link of model.links) {
        const pass = foamfield.passing(link, model.variables, mix);
        if (link.sigma && link.sigma.length > 0) moving.push([link, pass]);
        else fixed *= pass(0);
      }
      return { fixed, moving };
    }));
  }

  // chances of the nodes for the targets; NaN where no trial is near.
  function chances(rows, targets) {
    return rows.map(row => row.map(n => n === null ? NaN
      : n.moving.reduce((p, [link, pass]) => p * pass(foamfield.bound(link, targets)), n.fixed)));
  }

  const place = { x: i => box.left + i * (box.right - box.left), y: j => box.bottom - j * (box.bottom - box.top) };

  // walk calls cell for every cell whose corners are all tested, with its corners
  // in turn, and end after every row and gap.
  function walk(z, cell, end) {
    const across = z[0].length - 1, up = z.length - 1;
    for (let j = 0; j < up; j++) {
      for (let i = 0; i < across; i++) {
        const corners = [[i, j], [i + 1, j], [i + 1, j + 1], [i, j + 1]]
          .map(([a, b]) => ({ x: place.x(a / across), y: place.y(b / up), z: z[b][a] }));
        if (corners.some(c => Number.isNaN(c.z))) end();
        else cell(corners);
      }
      end();
    }
  }

  function crossing(a, b, level) {
    const t = (level - a.z) / (b.z - a.z);
    return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  }

  const point = p => p.x.toFixed(1) + " " + p.y.toFixed(1);

  // above is the path of the part of a map whose chance is at least the level.
  function above(z, level) {
    let path = "", from = null, to = null;
    const end = () => {
      if (from) path += "M" + point(from[0]) + "H" + to[1].x.toFixed(1) + "V" + to[2].y.toFixed(1) + "H" + from[0].x.toFixed(1) + "Z";
      from = null;
    };
    walk(z, corners => {
      const over = corners.filter(c => c.z >= level).length;
      if (over === 4) {
        from = from || corners;
        to = corners;
        return;
      }
      end();
      if (over === 0) return;
      const outline = [];
      corners.forEach((a, k) => {
        const b = corners[(k + 1) % 4];
        if (a.z >= level) outline.push(a);
        if ((a.z >= level) !== (b.z >= level)) outline.push(crossing(a, b, level));
      });
      path += "M" + outline.map(point).join("L") + "Z";
    }, end);
    return path;
  }

  // line is the path along which the chance is the level.
  function line(z, level) {
    let path = "";
    walk(z, corners => {
      const ends = [];
      corners.forEach((a, k) => {
        const b = corners[(k + 1) % 4];
        if ((a.z >= level) !== (b.z >= level)) ends.push(crossing(a, b, level));
      });
      for (let k = 0; k + 1 < ends.length; k += 2) path += "M" + point(ends[k]) + "L" + point(ends[k + 1]);
    }, () => {});
    return path;
  }

  // across is how far along an axis a value lies, 0 at its low end and 1 at its high.
  function across(v, values, x) {
    const of = v.log ? Math.log : (y => y), low = of(values[0]), high = of(values.at(-1));
    return (of(x) - low) / (high - low);
  }

  // ticks are round numbers along an axis, at least room apart.
  function ticks(v, values, room) {
    const low = values[0], high = values.at(-1), out = [];
    if (v.log) {
      for (let k = Math.floor(Math.log10(low)); k <= Math.log10(high); k++) {
        for (const m of [1, 1.5, 2, 3, 4, 5, 7]) out.push(m * 10 ** k);
      }
    } else {
      const rough = (high - low) * room, unit = 10 ** Math.floor(Math.log10(rough));
      const step = [1, 2, 5, 10].map(m => m * unit).find(s => s >= rough);
      for (let k = Math.ceil(low / step); k * step <= high; k++) out.push(k * step);
    }
    let last = -1;
    return out.filter(x => {
      const at = across(v, values, x);
      if (at < -1e-9 || at > 1 + 1e-9 || at - last < room) return false;
      last = at;
      return true;
    });
  }

  const star = Array.from({ length: 10 }, (_, i) => {
    const r = i % 2 ? 4 : 8.5, a = Math.PI * (0.2 * i - 0.5);
    return point({ x: r * Math.cos(a), y: r * Math.sin(a) });
  }).join(" ");

  // make draws what stays of a map and returns what redraws the rest.
  function make(model, map, svg, caption, number) {
    const vx = model.variables[map.x], vy = model.variables[map.y], rows = nodes(model, map);
    const title = element("title", { id: "own-map-title-" + number }, "Map of the chance of working over " + map.title);
    svg.append(title);
    let hatch = "";
    const w = box.right - box.left, h = box.bottom - box.top;
    for (let d = 7; d < w + h; d += 7) {
      const x0 = Math.max(0, d - h), x1 = Math.min(w, d);
      hatch += "M" + point({ x: box.left + x0, y: box.top + d - x0 }) + "L" + point({ x: box.left + x1, y: box.top + d - x1 });
    }
    svg.append(element("path", { d: hatch, class: "hatch" }));
    const bands = levels.map((_, i) => element("path", { class: "band" + i }));
    const halo = element("path", { class: "halo" }), wanted = element("path", { class: "wanted" });
    const start = element("polygon", { points: star, class: "star" });
    svg.append(...bands, halo, wanted, start, element("rect", { x: box.left, y: box.top, width: w, height: h, class: "frame" }));
    for (const x of ticks(vx, map.xs, 0.12)) {
      const at = place.x(across(vx, map.xs, x));
      svg.append(element("text", { x: at, y: box.bottom + 15, class: "middle" }, foamfield.plain(x)),
        element("path", { d: "M" + at + " " + box.bottom + "v3", class: "frame" }));
    }
    for (const y of ticks(vy, map.ys, 0.09)) {
      const at = place.y(across(vy, map.ys, y));
      svg.append(element("text", { x: box.left - 6, y: at + 4, class: "end" }, foamfield.plain(y)),
        element("path", { d: "M" + box.left + " " + at + "h-3", class: "frame" }));
    }
    svg.append(element("text", { x: (box.left + box.right) / 2, y: box.bottom + 34, class: "middle" }, map.x_label),
      element("text", { transform: "translate(11 " + (box.top + box.bottom) / 2 + ") rotate(-90)", class: "middle" }, map.y_label));

    return (targets, mix) => {
      const z = chances(rows, targets);
      bands.forEach((b, i) => b.setAttribute("d", above(z, levels[i])));
      const d = line(z, targets.wanted);
      halo.setAttribute("d", d);
      wanted.setAttribute("d", d);
      start.setAttribute("transform", "translate(" + point({ x: place.x(across(vx, map.xs, mix[map.x])), y: place.y(across(vy, map.ys, mix[map.y])) }) + ")");
      caption.textContent = finding(map, z, targets.wanted);
    };
  }

  // finding reads the workable part, or the best there is, off a map.
  function finding(map, z, wanted) {
    let low = Infinity, high = -Infinity, best = -1;
    z.forEach(row => row.forEach((p, i) => {
      if (p >= wanted) {
        low = Math.min(low, map.xs[i]);
        high = Math.max(high, map.xs[i]);
      }
      if (p > best) best = p;
    }));
    const held = map.held ? "With " + map.held : "";
    if (best < wanted) {
      return (held ? held + " no mix" : "No mix") + " within what was tried works " + foamfield.times(wanted) + "; the best works " +
        foamfield.against(best, wanted) + ".";
    }
    const span = low.toFixed(1) === high.toFixed(1) ? low.toFixed(1) : low.toFixed(1) + " to " + high.toFixed(1);
    return (held ? held + " and the" : "With the") + " right " + map.right + ", mixes of " + span + " % fat work at least " + foamfield.times(wanted) + ".";
  }

  return { nodes, chances, above, line, ticks, make, finding };
})();
