// Ties the boxes of the live part to its grams, words and maps.
(() => {
  const own = name => document.getElementById("own-" + name);
  const model = foamfield.unpack(JSON.parse(own("data").textContent));
  if (!foamfield.agrees(model)) return;
  const form = own("form"), asks = own("asks"), said = own("said"), changed = own("changed"), table = own("grams"), mixLine = own("mix");
  const inputs = Object.fromEntries([...form.elements].filter(e => e.name).map(e => [e.name, e]));

  function row(tag, cells) {
    const tr = document.createElement("tr");
    for (const [name, text, attributes] of cells) {
      const cell = document.createElement(name);
      cell.textContent = text;
      for (const [key, value] of Object.entries(attributes)) cell.setAttribute(key, value);
      tr.append(cell);
    }
    table.tBodies[0].append(tr);
    return tr;
  }

  const rows = model.lines === null ? [] : model.lines.map(l => row("tr", [["td", "", { class: "grams" }], ["th", l.name, { scope: "row" }]]));
  const total = own("total"), title = table.caption.textContent;
  table.hidden = rows.length === 0;

  // Another mix than the start's: its boxes, and the mark that moves on the maps.
  const places = model.own ? foamfield.ofMix(model) : [-1, -1, -1];
  // inside is a number with one decimal, as a mix is said, that was still tried; with
  // more where none was.
  function inside(x, i) {
    const low = model.own.low[i], high = model.own.high[i];
    for (const n of [10, 100]) {
      const least = Math.ceil(n * low - 1e-9), most = Math.floor(n * high + 1e-9);
      if (least <= most) return Math.min(Math.max(Math.round(n * x), least), most) / n;
    }
    return x;
  }
  const boxOf = i => inputs[["fat", "emulsifier", "hlb"][places.indexOf(i)]];
  function move(values) { // of variables, by their places
    for (const [i, x] of values) {
      const box = boxOf(i);
      if (box) box.value = String(inside(x, i));
    }
    update();
  }
  const surest = own("surest");
  if (surest) {
    surest.addEventListener("click", () => {
      const best = foamfield.bestAt(model, Number(inputs.fat.value));
      if (best === null) return ask(["The report has no best mix at this fat: type one from " + inside(model.own.low[places[0]], places[0]) + " to " + inside(model.own.high[places[0]], places[0]) + " %."]);
      move(best.map((x, i) => [i, x]).filter(([i]) => i !== places[0]));
    });
  }

  const redraw = model.maps.map((map, i) => chart.make(model, map, own("map-" + i), own("finding-" + i), i, model.own ? move : null));

  function say(place, lines) {
    if (place.textContent === lines.join("")) return; // a listener need not hear it again
    place.replaceChildren(...lines.map(text => {
      const p = document.createElement("p");
      p.textContent = text;
      return p;
    }));
  }

  // ask says what to type instead; the numbers stay those of before.
  function ask(sentences) {
    say(asks, [...sentences, "Until then the numbers below stay as they were."]);
  }

  // difference is a box beside the report's own number, on paper too.
  const difference = i => i.labels[0].textContent.toLowerCase() + " " + i.value + " " + own(i.name + "-unit").textContent +
    " (" + i.defaultValue + " in the report)";

  const weight = (g, digits) => g.toFixed(digits) + " g" +
    (model.batch_ounces ? " (" + (g * model.batch_ounces / model.batch).toFixed(Math.max(2, digits + 1)) + " oz)" : "");

  function update() {
    const { all, sentences } = foamfield.read(inputs);
    if (sentences.length > 0) return ask(sentences);
    const others = Object.values(inputs).filter(i => Number(i.value) !== Number(i.defaultValue));
    const now = { ...all, wanted: others.includes(inputs.wanted) ? all.wanted / 10 : model.wanted };
    const another = ["fat", "emulsifier", "hlb"].some(name => others.includes(inputs[name]));
    let grams = null, mix = model.mix;
    if (another) {
      const found = foamfield.asked(model, all.fat, all.emulsifier, all.hlb === undefined ? null : all.hlb, now.batch, now.step);
      if (typeof found === "string") return ask([found]);
      ({ grams, mix } = found);
    } else if (rows.length > 0) {
      grams = foamfield.weigh(model.lines, now.batch, now.step);
      mix = foamfield.made(model, grams, now.batch);
      if (mix === null) {
        return ask(["The emulsifier of " + foamfield.plain(now.batch) + " g cannot be weighed on a scale of " + foamfield.plain(now.step) +
          " g steps: make a larger batch, or use a finer scale."]);
      }
    }
    if (grams !== null) {
      const digits = foamfield.decimals(now.step);
      rows.forEach((tr, i) => { tr.cells[0].textContent = weight(grams[i], digits); });
      total.textContent = weight(grams.reduce((sum, g) => sum + g, 0), digits);
    }
    mixLine.textContent = foamfield.mixWords(model, mix) + ".";
    say(asks, []);
    say(changed, others.length > 0 ? ["Changed: " + others.map(difference).join("; ") + "."] : []);
    form.closest("section").toggleAttribute("data-untouched", others.length === 0);
    const lines = another && !foamfield.near(model, mix) ? ["No trial is near this mix, so nothing is said of it."]
      : foamfield.verdict(model, grams, mix, now, others.length === 0).lines;
    table.caption.textContent = another ? "Your mix" : title;
    say(said, lines);
    for (const draw of redraw) draw(now, mix);
  }

  form.addEventListener("input", update);
  form.addEventListener("submit", event => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(update)); // the boxes change after the event
  for (const e of document.querySelectorAll("[data-live]")) e.hidden = false;
  update();
})();
