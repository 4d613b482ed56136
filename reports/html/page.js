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
  const total = own("total");
  table.hidden = rows.length === 0;

  const redraw = model.maps.map((map, i) => chart.make(model, map, own("map-" + i), own("finding-" + i), i));

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
    let grams = null, mix = model.mix;
    if (rows.length > 0) {
      grams = foamfield.weigh(model.lines, now.batch, now.step);
      mix = foamfield.made(model, grams, now.batch);
      if (mix === null) {
        return ask(["The emulsifier of " + foamfield.plain(now.batch) + " g cannot be weighed on a scale of " + foamfield.plain(now.step) +
          " g steps: make a larger batch, or use a finer scale."]);
      }
      const digits = foamfield.decimals(now.step);
      rows.forEach((tr, i) => { tr.cells[0].textContent = weight(grams[i], digits); });
      total.textContent = weight(grams.reduce((sum, g) => sum + g, 0), digits);
    }
    mixLine.textContent = foamfield.mixWords(model, mix) + ".";
    say(asks, []);
    say(changed, others.length > 0 ? ["Changed: " + others.map(difference).join("; ") + "."] : []);
    form.closest("section").toggleAttribute("data-untouched", others.length === 0);
    say(said, foamfield.verdict(model, grams, mix, now, others.length === 0).lines);
    for (const draw of redraw) draw(now, mix);
  }

  form.addEventListener("input", update);
  form.addEventListener("submit", event => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(update)); // the boxes change after the event
  for (const e of document.querySelectorAll("[data-live]")) e.hidden = false;
  update();
})();
