// The maps of the live part: the chance over two variables, drawn as the figures
// draw it, in bands that end where no trial is near.
const chart = (() => {
  const space = "http://www.w3.org/2000/svg";
  const box = { width: 330, height: 262, left: 54, right: 322, top: 8, bottom: 218 };
  const levels = [-Infinity, 0.2, 0.4, 0.6, 0.8];

  function element(name, attributes, text) {
    const e = document.createElementNS(space, name);
    for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
    if (text !== undefined) e.textContent = text;
    return e;
  }

  const place = { x: i => box.left + i * (box.right - box.left), y: j => box.bottom - j * (box.bottom - box.top) };
  const tenth = x => Math.round(10 * x) / 10;
  const point = p => tenth(p.x) + " " + tenth(p.y);

  // field is what of a map does not follow the targets, worked out once so that a
  // change costs little: the places where trials are near, and the cells between
  // them, row by row in runs that end where no trial is near.
  function field(model, map) {
    const wide = map.xs.length, high = map.ys.length;
    const nodes = map.near.map((near, k) => {
      if (!near) return null;
      const i = k % wide, j = Math.floor(k / wide), mix = [...map.fixed];
      mix[map.x] = map.xs[i];
      mix[map.y] = map.ys[j];
      const z = foamfield.coordinates(model.variables, mix);
      const node = { x: place.x(i / (wide - 1)), y: place.y(j / (high - 1)), fat: map.xs[i], z: NaN, still: 1, moving: [] };
      for (const link of model.links) {
        const pass = foamfield.passing(link, z);
        if (link.rule && !link.asked) node.moving.push([link, pass]);
        else node.still *= pass();
      }
      return node;
    });
    const runs = [];
    for (let j = 0; j + 1 < high; j++) {
      let run = null;
      for (let i = 0; i + 1 < wide; i++) {
        const k = j * wide + i, corners = [nodes[k], nodes[k + 1], nodes[k + wide + 1], nodes[k + wide]];
        if (corners.includes(null)) run = null;
        else if (run) run.push(corners);
        else runs.push(run = [corners]);
      }
    }
    return { nodes: nodes.filter(Boolean), runs };
  }

  // follow sets the chances of the places for the targets.
  function follow(nodes, targets) {
    for (const n of nodes) {
      n.z = n.still;
      for (const [link, pass] of n.moving) n.z *= pass(foamfield.bound(link, targets));
    }
  }

  function crossing(a, b, level) {
    const t = (level - a.z) / (b.z - a.z);
    return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  }

  // above is the path of the part of a map whose chance is at least the level.
  function above(runs, level) {
    let path = "", from = null, to = null;
    const end = () => {
      if (from) path += "M" + point(from[0]) + "H" + tenth(to[1].x) + "V" + tenth(to[2].y) + "H" + tenth(from[0].x) + "Z";
      from = null;
    };
    for (const run of runs) {
      for (const cell of run) {
        let over = 0;
        for (const c of cell) if (c.z >= level) over++;
        if (over === 4) {
          from = from || cell;
          to = cell;
          continue;
        }
        end();
        if (over === 0) continue;
        const outline = [];
        cell.forEach((a, k) => {
          const b = cell[(k + 1) % 4];
          if (a.z >= level) outline.push(a);
          if ((a.z >= level) !== (b.z >= level)) outline.push(crossing(a, b, level));
        });
        path += "M" + outline.map(point).join("L") + "Z";
      }
      end();
    }
    return path;
  }

  // line is the path along which the chance is the level.
  function line(runs, level) {
    let path = "";
    for (const run of runs) {
      for (const cell of run) {
        const ends = [];
        for (let k = 0; k < 4; k++) {
          const a = cell[k], b = cell[(k + 1) % 4];
          if ((a.z >= level) !== (b.z >= level)) ends.push(crossing(a, b, level));
        }
        for (let k = 0; k + 1 < ends.length; k += 2) path += "M" + point(ends[k]) + "L" + point(ends[k + 1]);
      }
    }
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

  const spot = (vx, vy, map, mix) => ({ x: place.x(across(vx, map.xs, mix[map.x])), y: place.y(across(vy, map.ys, mix[map.y])) });

  // back is the value so far along an axis.
  function back(v, values, share) {
    const low = values[0], high = values.at(-1), s = Math.min(Math.max(share, 0), 1);
    return v.log ? low * (high / low) ** s : low + s * (high - low);
  }

  // stepped is the value a fortieth of an axis on, and a tenth at least, which is what a
  // box shows.
  function stepped(v, values, x, way) {
    const to = back(v, values, across(v, values, x) + way / 40);
    return Math.abs(to - x) < 0.1 ? x + way / 10 : to;
  }

  // movable lets the mark be dragged, and moved by the arrow keys.
  function movable(svg, vx, vy, map, move, now) {
    svg.setAttribute("tabindex", "0");
    const to = event => {
      const r = svg.getBoundingClientRect(), x = (event.clientX - r.left) * box.width / r.width, y = (event.clientY - r.top) * box.height / r.height;
      move([[map.x, back(vx, map.xs, (x - box.left) / (box.right - box.left))], [map.y, back(vy, map.ys, (box.bottom - y) / (box.bottom - box.top))]]);
    };
    svg.addEventListener("pointerdown", event => {
      svg.setPointerCapture(event.pointerId);
      to(event);
    });
    svg.addEventListener("pointermove", event => { if (svg.hasPointerCapture(event.pointerId)) to(event); });
    svg.addEventListener("keydown", event => {
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
      if (!way) return;
      event.preventDefault();
      const mix = now();
      move([[map.x, stepped(vx, map.xs, mix[map.x], way[0])], [map.y, stepped(vy, map.ys, mix[map.y], way[1])]]);
    });
  }

  // make draws what stays of a map and returns what redraws the rest.
  function make(model, map, svg, caption, number, move) {
    const vx = model.variables[map.x], vy = model.variables[map.y], { nodes, runs } = field(model, map);
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

    const mark = element("circle", { r: 7, class: "own" });
    if (move) {
      svg.append(mark);
      movable(svg, vx, vy, map, move, () => at);
    }
    let at = model.mix;
    return (targets, mix) => {
      at = mix;
      mark.setAttribute("transform", "translate(" + point(spot(vx, vy, map, mix)) + ")");
      follow(nodes, targets);
      bands.forEach((b, i) => b.setAttribute("d", above(runs, levels[i])));
      const d = line(runs, targets.wanted);
      halo.setAttribute("d", d);
      wanted.setAttribute("d", d);
      start.setAttribute("transform", "translate(" + point(spot(vx, vy, map, move ? model.mix : mix)) + ")");
      caption.textContent = finding(map, nodes, targets.wanted);
    };
  }

  // finding reads the workable part, or the best there is, off a map.
  function finding(map, nodes, wanted) {
    let low = Infinity, high = -Infinity, best = -1;
    for (const n of nodes) {
      if (n.z >= wanted) {
        low = Math.min(low, n.fat);
        high = Math.max(high, n.fat);
      }
      best = Math.max(best, n.z);
    }
    const held = map.held ? "With " + map.held : "";
    if (best < wanted) {
      return (held ? held + " no mix" : "No mix") + " within what was tried works " + foamfield.times(wanted) + "; the best works " +
        foamfield.against(best, wanted) + ".";
    }
    const span = low.toFixed(0) === high.toFixed(0) ? low.toFixed(0) : low.toFixed(0) + " to " + high.toFixed(0); // as the figure says it
    return (held ? held + " and the" : "With the") + " right " + map.right + ", mixes of " + span + " % fat work at least " + foamfield.times(wanted) + ".";
  }

  return { field, follow, above, line, make };
})();
