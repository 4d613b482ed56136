// Ties the boxes of the live part to its grams, words and maps.
(() => {
  const own = name => document.getElementById("own-" + name);
  const model = JSON.parse(own("data").textContent);
  const form = own("form"), said = own("said"), table = own("grams"), mixLine = own("mix"), maps = own("maps");
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

  const redraw = (model.maps || []).map((map, i) => chart.make(model, map, own("map-" + i), own("finding-" + i), i));

  function say(lines) {
    if (said.textContent === lines.join("")) return; // a listener need not hear it again
    said.replaceChildren(...lines.map(text => {
      const p = document.createElement("p");
      p.textContent = text;
      return p;
    }));
  }

  // show keeps nothing on the page that belongs to other numbers than the boxes'.
  function show(visible) {
    for (const e of [table.parentElement, maps]) e.hidden = !visible;
  }

  function update() {
    const { all, sentences } = foamfield.read(inputs);
    const untouched = Object.values(inputs).every(i => i.value === i.defaultValue);
    form.closest("section").toggleAttribute("data-untouched", untouched);
    if (sentences.length > 0) {
      show(false);
      return say(sentences);
    }
    const now = { ...all, wanted: inputs.wanted.value === inputs.wanted.defaultValue ? model.wanted : all.wanted / 10 };
    let grams = null, mix = model.mix;
    if (rows.length > 0) {
      grams = foamfield.weigh(model.lines, now.batch, now.step);
      mix = foamfield.made(model, grams, now.batch);
      if (mix === null) {
        show(false);
        return say(["The emulsifier of " + foamfield.plain(now.batch) + " g cannot be weighed on a scale of " + foamfield.plain(now.step) +
          " g steps: make a larger batch, or use a finer scale."]);
      }
      const digits = foamfield.decimals(now.step);
      rows.forEach((tr, i) => { tr.cells[0].textContent = grams[i].toFixed(digits) + " g"; });
      total.textContent = grams.reduce((sum, g) => sum + g, 0).toFixed(digits) + " g";
    }
    mixLine.textContent = foamfield.mixWords(model, mix) + ".";
    show(true);
    say(foamfield.verdict(model, grams, mix, now, untouched).lines);
    for (const draw of redraw) draw(now, mix);
  }

  form.addEventListener("input", update);
  form.addEventListener("submit", event => event.preventDefault());
  form.addEventListener("reset", () => setTimeout(update)); // the boxes change after the event
  for (const e of document.querySelectorAll("[data-live]")) e.hidden = false;
  update();
})();
