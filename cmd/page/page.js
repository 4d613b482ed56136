// The page: takes spreadsheets, has the program read them, asks what only the kitchen
// can answer, and shows the report. It works nothing out: every number and every
// sentence about a log is the program's. Texts of a log are only ever set as text.
"use strict";

const $ = (id) => document.getElementById(id);

// h makes an element; what it holds is elements and texts.
function h(name, about = {}, ...holds) {
	const e = document.createElement(name);
	for (const [key, value] of Object.entries(about)) {
		if (key in e) e[key] = value;
		else e.setAttribute(key, value);
	}
	e.append(...holds.flat().filter((x) => x !== null && x !== undefined && x !== ""));
	return e;
}

const fill = (e, ...holds) => e.replaceChildren(...holds.flat().filter((x) => x !== null && x !== undefined && x !== ""));
const show = (e, visible = true) => { e.hidden = !visible; };
const count = (n, word) => n + " " + word + (n === 1 ? "" : "s");

// What else the program does: each command of it that is not of the three steps. A new
// command is one entry here: its name, what it is called on the page and what it is
// about; what is dropped on it ("files", "folder" or nothing), its boxes, and what it is
// typed as. What it prints is shown, what it writes can be saved, and the page that it
// opens with, if any, is laid out below. One that the program does not know is not shown.
const tasks = [
	{
		command: "sheet", title: "A blank log to type into",
		says: "A workbook with lists to choose from, checks of what is typed, and the kitchen’s own sheets.",
		typed: () => ["sheet", "foam-log.xlsx"],
	},
	{
		command: "plan", title: "A week of trials, before any log",
		says: "Mixes all over what you want to know, in grams of your ingredients, as a log to fill in.",
		boxes: [{ name: "of", label: "What you use", wide: true, value: "clarified butter, cider, GMS, sucrose ester 15" }, { name: "trials", label: "Trials" }, { name: "days", label: "Days" }, { name: "batch", label: "Batch", unit: "g" }],
		typed: (box) => ["plan", "plan.xlsx", ...flags(box, "of", "trials", "days", "batch")],
	},
	{
		command: "blend", title: "Emulsifiers to HLB and grams", button: "Work it out",
		says: "What a mix comes to: percents, blend HLB, what the scale does to them. Or name emulsifiers and the HLB you want, and leave the mix empty.",
		boxes: [{ name: "mix", label: "Mix", wide: true, value: "butter 120, cider 174, GMS 4.2, sucrose ester 15: 1.8" }, { name: "of", label: "Emulsifiers at hand", wide: true }, { name: "emulsifier", label: "Emulsifier", unit: "%" }, { name: "hlb", label: "HLB" }, { name: "batch", label: "Batch", unit: "g" }],
		typed: (box) => ["blend", ...flags(box, "of", "emulsifier", "hlb", "batch"), ...(box.mix ? ["--", box.mix] : [])],
	},
	{
		command: "trend", title: "Many weeks compared", drop: "files", opens: "out/report.html",
		says: "Is the kitchen steady, what changed it, and does the best mix move? Choose the logs of all weeks together.",
		typed: (box, given) => ["trend", "--out", "out", "--", ...given],
	},
	{
		command: "grade", title: "A class checked", drop: "folder", opens: "out/class.html",
		says: "A folder with a file a student: each mistake at its cell, and what is only a question. Points come off only by your own criteria.",
		boxes: [{ name: "criteria", label: "Your criteria, if you have them", file: true }],
		typed: (box, given) => ["grade", "--out", "out", ...flags(box, "criteria"), "--", ...given],
	},
];

// flags are those boxes that were filled in, as the program takes them.
const flags = (box, ...names) => names.flatMap((name) => box[name] ? ["--" + name, box[name]] : []);

// What a kitchen may ask for, and the flag that says so to the program.
const asks = [
	{ flag: "hold", label: "Holds at least", unit: "min" },
	{ flag: "drained", label: "Drains at most", unit: "%" },
	{ flag: "drained-at", label: "Drained is read at", unit: "min" },
	{ flag: "chance", label: "Sure enough", unit: "%" },
	{ flag: "batch", label: "Batch", unit: "g" },
	{ flag: "scale-step", label: "The scale shows", unit: "g" },
];

// ---- the program

const workerURL = URL.createObjectURL(new Blob([$("worker").textContent], { type: "text/javascript" }));
let running = []; // the workers at work

// start has one worker do one thing; it may be stopped.
function start(message, hear = () => {}) {
	return new Promise((done, failed) => {
		const worker = new Worker(workerURL);
		const end = (f, value) => {
			worker.terminate();
			running = running.filter((r) => r.worker !== worker);
			f(value);
		};
		worker.onmessage = ({ data }) => {
			if ("says" in data) hear(data.says);
			else if ("failed" in data) end(failed, new Error(data.failed));
			else end(done, data);
		};
		worker.onerror = (e) => { e.preventDefault(); end(failed, new Error(e.message || "the worker did not start")); };
		running.push({ worker, stop: () => end(failed, new Stopped()) });
		worker.postMessage(message);
	});
}

class Stopped extends Error {}

const stopAll = () => running.filter((r) => !r.keeps).forEach((r) => r.stop());

let program; // a promise of the compiled program

function load() {
	const packed = $("packed");
	program = start({ packed: packed.textContent }).then((d) => {
		document.documentElement.dataset.ready = "yes";
		return d.program;
	});
	running.at(-1).keeps = true;
	program.then(warm).catch(() => {}); // a failure is told where the program is waited for
	packed.remove();
}

// warm has the browser make ready the program's code while its reader looks for the
// log: it translates what a run comes across, and keeps that for the next. The first
// work to be done stops it.
async function warm(program) {
	const asks = start({ program, args: ["help"], files: [] });
	running.at(-1).keeps = true;
	offer((await asks).said);
	if (turn === 0) await start({ program, args: ["report", "--out", "out", "--write", "html", "week.xlsx"], files: [["week.xlsx", demo()]] });
	document.documentElement.dataset.warm = "yes";
}

const demo = () => Uint8Array.from(atob($("demo").textContent), (c) => c.charCodeAt(0));

// Refused is what the program says of a call that it does not carry out.
class Refused extends Error {}

async function call(args, files, hear) {
	const answer = await start({ program: await program, args, files }, hear);
	if (answer.code !== 0) {
		const said = answer.complaint.trim().split("\n").filter((l) => l.startsWith("foamfield: ") && !l.endsWith(" ...")).map((l) => l.slice(11));
		if (!said.length) throw new Error("the program stopped: " + answer.complaint.trim().split("\n")[0]);
		throw new Refused(sentence(said[0]));
	}
	return answer;
}

// inWords is a flag as the page calls it.
const inWords = (typed, flag) => { const a = asks.find((x) => x.flag === flag); return a ? "“" + a.label + "”" : typed; };

// sentence makes one of what the program says, which may begin with a file's name.
const sentence = (s) => ((/^[a-z]+[ ,]/.test(s) ? s.charAt(0).toUpperCase() + s.slice(1) : s) + (/[.?!…]$/.test(s) ? "" : ".")).replace(/--([a-z-]+)/g, inWords);

// ---- what the page knows

const kitchenFile = "answers/kitchen.xlsx";
const state = { files: new Map(), answers: [], kitchen: null, read: null, dishes: [], dish: "" };
const kept = "foamfield-answers"; // where answers are kept in this browser

function remember(answers) {
	try {
		if (answers) localStorage.setItem(kept, JSON.stringify(answers));
		else localStorage.removeItem(kept);
	} catch {
		// a browser that keeps nothing for a file
	}
	showRemembered();
}

function remembered() {
	try {
		const list = JSON.parse(localStorage.getItem(kept) ?? "[]");
		return Array.isArray(list) ? list.filter((a) => typeof a?.sheet === "string" && Array.isArray(a.row)) : [];
	} catch {
		return [];
	}
}

// ---- steps of the work

let stood = 0; // where the page stood when the log was understood
let turn = 0; // counts what was begun, so that what was given up says nothing more

// work does something that takes a while, with what it says of itself above it.
async function work(first, doing) {
	const mine = ++turn;
	stopAll();
	show($("trouble"), false);
	show($("working"));
	document.body.setAttribute("aria-busy", "true");
	const began = performance.now();
	let stage = first;
	const tick = () => {
		const s = Math.floor((performance.now() - began) / 1000);
		$("state").firstChild.data = stage + " …";
		$("state").lastChild.textContent = s >= 2 ? " " + s + " s" : "";
	};
	fill($("state"), document.createTextNode(""), h("span", { ariaHidden: "true" }));
	const clock = setInterval(tick, 500);
	const now = (text) => { if (mine === turn) { stage = text; tick(); } };
	tick();
	try {
		await doing(now, () => mine === turn);
		if (mine === turn) show($("working"), false);
	} catch (e) {
		if (mine !== turn) return;
		show($("working"), false);
		if (!(e instanceof Stopped)) complain(e);
	} finally {
		clearInterval(clock);
		if (mine === turn) document.body.removeAttribute("aria-busy");
	}
}

function complain(e) {
	const lines = e instanceof Refused ? [h("p", {}, e.message)] : [
		h("p", {}, "This did not come to an end: " + e.message + "."),
		h("p", {}, "That is the program’s fault or this device’s, not your log’s. Try again, close other pages first, or leave out half of the log to find the row that does it."),
	];
	fill($("trouble"), lines);
	show($("trouble"));
	$("trouble").scrollIntoView({ block: "nearest" });
}

// steps of the program in words of the page
const stages = [[/^reading/, "Reading the log"], [/^fitting/, "Working out what holds, drains and clogs"], [/^drawing/, "Drawing and laying out"], [/^writing/, "Nearly done"]];
const hearStages = (now) => (said) => {
	const s = said.replace(/^foamfield: /, "");
	const known = stages.find(([pattern]) => pattern.test(s));
	if (known) now(known[1]);
};

const logs = () => [...state.files];
const top_ = (path) => path.split("/")[0];
const named = () => [...new Set([...state.files.keys()].map(top_))]; // folders by their name: what is read in them is the program's to choose
const withKitchen = () => state.kitchen ? [["--kitchen", kitchenFile], [[kitchenFile, state.kitchen]]] : [[], []];

// understand has the log read, and goes on to the report if nothing stands in its way.
function understand() {
	if (!state.files.size) return;
	return work("Getting ready", async (now, current) => {
		clearReport();
		if (state.answers.length) {
			now("Writing down the answers");
			state.kitchen = await kitchenOf(state.answers);
			if (!current()) return;
		} else {
			state.kitchen = null;
		}
		const [flags, more] = withKitchen();
		const answer = await call(["check", "--json", ...flags, "--", ...named()], [...logs(), ...more], hearStages(now));
		if (!current()) return;
		state.read = JSON.parse(answer.said);
		showUnderstood(state.read);
		stood = scrollY;
		if (state.read.blocked) {
			$("understood").scrollIntoView({ block: "start" });
			return;
		}
		await report(now, current);
	});
}

const quoted = (cell) => '"' + cell.replaceAll('"', '""') + '"';

async function kitchenOf(answers) {
	const lines = answers.map((a) => [a.sheet, ...a.row].map(quoted).join(",")).join("\n");
	const made = await call(["sheet", "kitchen.xlsx", "--answers", "answers.csv"], [["answers.csv", new TextEncoder().encode(lines)]]);
	return made.made.find(([path]) => path === "kitchen.xlsx")[1];
}

// wanted are the flags of what was typed under "What you call a success".
const wanted = () => asks.flatMap(({ flag, unit }) => {
	const typed = $("ask-" + flag).value.trim();
	return typed === "" ? [] : ["--" + flag, flag === "chance" ? typed.replace(/\s*%$/, "") + unit : typed];
});

// report makes what is read at once, then what can be saved. Each is a run of its own,
// one after the other: two at a time would take twice the memory and keep the reader
// waiting longer.
async function report(now, current) {
	const [flags, more] = withKitchen();
	const make = (what, hear) => call(["report", "--out", "out", "--write", what, ...flags, ...wanted(), "--", ...named()], [...logs(), ...more], hear);
	const first = await make("html", hearStages(now));
	if (!current()) return;
	const made = new Map(first.made);
	state.dishes = [...new Set([...made.keys()].map(top_))].filter((folder) => made.has(folder + "/report.html")); // a log of several dishes has a report of each
	state.dish = state.dishes[0];
	for (const d of document.querySelectorAll("#account details.whole")) d.open = false; // the report is what counts now
	showReport(made, false);
	now("The report is below; the files to save are being made");
	for (const [path, bytes] of (await make("pdf,xlsx,figures")).made) made.set(path, bytes);
	if (!current()) return;
	showReport(made, true);
}

// ---- the log

async function take(files) {
	for (const [name, file] of files) {
		try {
			state.files.set(name, new Uint8Array(await file.arrayBuffer()));
		} catch {
			complain(new Refused("The file “" + name + "” cannot be read: close it if another program has it open, and choose it again."));
			return;
		}
	}
	showChosen();
	return understand();
}

function showChosen() {
	const names = named();
	show($("chosen"), names.length > 0);
	const keys = document.activeElement === $("example");
	show($("again"), names.length > 0);
	show($("example"), names.length === 0);
	if (keys) $("again").focus(); // what had the keys is gone
	fill($("chosen"), names.map((name) => h("li", {}, h("span", {}, state.files.has(name) ? name : name + ", a folder"), h("button", {
		type: "button", ariaLabel: "Remove " + name, onclick: () => {
			for (const path of [...state.files.keys()]) if (top_(path) === name) state.files.delete(path);
			showChosen();
			if (state.files.size) understand();
			else startOver();
			$("files").focus();
		},
	}, "Remove"))));
}

function startOver() {
	turn++;
	stopAll();
	state.files.clear();
	state.read = null;
	showChosen();
	clearReport();
	for (const id of ["working", "trouble", "understood"]) show($(id), false);
	document.body.removeAttribute("aria-busy");
}

// dropped lists the files of a drop, those of folders by their path. Browsers have two
// ways to look into a folder, and some hand none to a page that was opened from a disk.
async function dropped(items) {
	const given = [...items].filter((i) => i.kind === "file").map((i) => ({ file: i.getAsFile(), entry: i.webkitGetAsEntry?.(), handle: i.getAsFileSystemHandle?.() }));
	const found = [];
	for (const { file, entry, handle } of given) {
		if (!entry?.isDirectory) {
			if (file) found.push([file.name, file]);
			continue;
		}
		try {
			await (handle ? inHandle(await handle, entry.name + "/", found) : inEntry(entry, entry.name + "/", found));
		} catch {
			throw new Refused("This browser hands no folder to a page: open the folder “" + entry.name + "” and drop the files in it.");
		}
	}
	return found.filter(([name]) => !/(^|\/)(\.|~\$)/.test(name));
}

async function inHandle(folder, at, found) {
	for await (const one of folder.values()) {
		if (one.kind === "directory") await inHandle(one, at + one.name + "/", found);
		else found.push([at + one.name, await one.getFile()]);
	}
}

async function inEntry(folder, at, found) {
	const reader = folder.createReader();
	for (let some; (some = await new Promise((ok, no) => reader.readEntries(ok, no))).length;) {
		for (const one of some) {
			if (one.isDirectory) await inEntry(one, at + one.name + "/", found);
			else found.push([at + one.name, await new Promise((ok, no) => one.file(ok, no))]);
		}
	}
}

// ---- what was understood

const cellAt = (at) => /^(.*?)(?:, )?cell ([A-Z]+)(\d+)$/.exec(at);

function showUnderstood(u) {
	const holds = [];
	const n = u.rows;
	const set = n.trials - n.used;
	holds.push(h("p", {}, h("strong", {}, count(n.trials, "trial") + " read, " + n.used + " used" + (set ? ", " + set + " set aside." : "."))));
	if (u.not_read.length) holds.push(h("h3", {}, "Not read"), list(u.not_read.map((f) => [f.file, f.reason, f.do])));
	holds.push(questions(u));
	const asked = new Set(u.questions.map((q) => q.at));
	const grade = (severity) => u.problems.filter((p) => p.severity === severity && !asked.has(p.at)).map((p) => [p.at + (p.count > 1 ? " and " + (p.count - 1) + " more" : ""), p.read, p.do]);
	holds.push(found("To fix in the log", grade("must_fix"), true), found("Please look", grade("please_look"), true));
	if (n.set_aside.length) holds.push(found("Set aside", n.set_aside.map((s) => [s.at, s.reason, ""]), false));
	holds.push(columns(u), ingredients(u), found("Good to know", grade("for_information"), false));
	if (logs().length === 1 && state.files.has(named()[0]) && u.problems.length) holds.push(markedCopy());
	const keys = $("account").contains(document.activeElement);
	fill($("account"), holds);
	show($("understood"));
	if (keys || document.activeElement === document.body) $("understood-head").focus({ preventScroll: true });
}

const list = (rows) => h("ul", { className: "found" }, rows.map(([at, read, todo]) => h("li", {}, h("b", {}, at), read ? sentence(read) : "", todo ? h("span", {}, " " + sentence(todo)) : "")));

const most = 8; // cells shown before a list is folded

function found(title, rows, open) {
	if (!rows.length) return null;
	return h("details", { open: open && rows.length <= most }, h("summary", {}, title + " (" + rows.length + ")"), list(rows));
}

// doubtful are the columns that a question or a problem to mend is about.
function doubtful(u) {
	const in_ = new Map();
	const note = (at, word) => {
		const m = cellAt(at);
		if (m && !in_.has(m[1] + " " + m[2])) in_.set(m[1] + " " + m[2], word);
	};
	for (const q of u.questions) note(q.at, "asked above");
	for (const p of u.problems) if (p.severity !== "for_information") note(p.at, p.severity === "must_fix" ? "to fix, above" : "please look, above");
	return in_;
}

function columns(u) {
	const doubt = doubtful(u), tables = new Map();
	for (const c of u.columns) {
		const m = cellAt(c.at), where = m ? m[1] + ", row " + m[3] : c.at;
		if (!tables.has(where)) tables.set(where, []);
		tables.get(where).push([m ? m[2] : "", c, m && doubt.get(m[1] + " " + m[2])]);
	}
	const as = (c) => !c.read_as ? "not used" : c.unit && c.unit !== c.read_as ? c.read_as + ", " + c.unit : c.read_as;
	const one = ([where, rows]) => h("table", {}, h("caption", {}, where),
		h("thead", {}, h("tr", {}, h("th", { scope: "col" }, h("span", { className: "unseen" }, "column")), ["your header", "understood as"].map((t) => h("th", { scope: "col" }, t)))),
		h("tbody", {}, rows.map(([letter, c, word]) => h("tr", {}, h("th", { scope: "row" }, letter), h("td", {}, c.header || "–"),
			h("td", { className: c.read_as ? "" : "not" }, as(c), word ? h("small", {}, word) : "")))));
	const all = [...tables].map(one);
	if (!all.length) return null;
	return h("details", { className: "whole", open: all.length <= 2 }, h("summary", {}, "Column by column (" + u.columns.length + ")"), all);
}

function ingredients(u) {
	if (!u.ingredients.length) return null;
	const value = (i) => [i.known, i.kind, i.hlb !== null ? "HLB " + i.hlb : "", i.fat_percent !== null && i.kind !== "water part" ? i.fat_percent + " % fat" : ""].filter(Boolean).join(", ");
	return h("details", { className: "whole", open: u.ingredients.length <= 12 }, h("summary", {}, "Ingredients (" + u.ingredients.length + ")"),
		h("table", {}, h("thead", {}, h("tr", {}, ["in your log", "taken as"].map((t) => h("th", { scope: "col" }, t)))),
			h("tbody", {}, u.ingredients.map((i) => h("tr", {}, h("td", {}, i.name), h("td", {}, value(i)))))));
}

const open_ = "…"; // stands in the row of a cure for the answer

// questions is a form: one to be answered each, by choosing where there is a choice.
function questions(u) {
	const holds = [];
	const answerable = [];
	u.questions.forEach((q, i) => {
		if (!q.cure.sheet) {
			holds.push(h("fieldset", {}, h("legend", {}, q.asked), h("p", { className: "at" }, q.at), h("p", {}, sentence(q.do))));
			return;
		}
		answerable.push(q);
		const name = "q" + i;
		const choose = q.choices.map((c) => h("label", {}, h("input", { type: "radio", name, value: c }), c));
		const box = h("input", { type: "text", id: name + "-own", name: name + "-own", autocomplete: "off", inputMode: q.choices.length ? "text" : "decimal", oninput: (e) => { if (e.target.value) for (const r of e.target.form.elements[name] ?? []) r.checked = false; } });
		holds.push(h("fieldset", {}, h("legend", {}, q.asked), h("p", { className: "at" }, q.at),
			choose.length ? h("div", { className: "choices" }, choose) : null,
			h("div", { className: "own" }, h("label", { htmlFor: box.id }, choose.length ? "or type it:" : "Answer:"), box)));
	});
	if (!holds.length && !state.answers.length) return null;
	const form = h("form", { autocomplete: "off" }, u.questions.length ? h("h3", {}, u.blocked ? "To be settled before a start is named" : "To be settled") : null, holds);
	const keep = h("input", { type: "checkbox", id: "keep", checked: remembered().length > 0, onchange: () => { if (!keep.checked) remember(null); else if (state.answers.length) remember(state.answers); } });
	form.append(h("p", { className: "choices" }, h("label", {}, keep, "Remember my answers in this browser")));
	if (answerable.length) form.append(h("p", {}, h("button", { className: "first" }, "Use these answers")));
	if (u.blocked) {
		form.append(h("p", {}, h("button", { type: "button", onclick: () => work("Working it out", report) }, "Go on without answering")),
			h("p", { className: "quiet" }, "The report then shows what was seen, and names no start."));
	}
	if (state.kitchen) {
		form.append(h("p", {}, save("kitchen.xlsx", state.kitchen, "Save your answers as a kitchen workbook")),
			h("p", { className: "quiet" }, count(state.answers.length, "answer") + " so far. Drop that workbook with the log next time, on this device or another."));
	}
	form.onsubmit = (e) => { e.preventDefault(); answer(u, form, keep.checked); };
	return form;
}

function answer(u, form, keep) {
	const given = [];
	u.questions.forEach((q, i) => {
		const own = form.elements["q" + i + "-own"]?.value.trim();
		const said = own || form.elements["q" + i]?.value;
		if (said) given.push({ sheet: q.cure.sheet, row: q.cure.row.map((cell) => cell.replace(open_, () => said)) });
	});
	if (!given.length) {
		complain(new Refused("No answer was chosen yet: choose one, or go on without answering."));
		return;
	}
	state.answers = state.answers.concat(given);
	if (keep) remember(state.answers);
	understand();
}

function markedCopy() {
	const name = named()[0];
	const place = h("p", {});
	place.append(h("button", { type: "button", onclick: () => work("Marking the cells in a copy", async (now, current) => {
		const [flags, more] = withKitchen();
		const copy = "marked-copy.xlsx";
		const answer = await call(["check", "--marked-copy", copy, ...flags, "--", name], [...logs(), ...more]);
		if (!current()) return;
		const base = name.replace(/\.[^.]*$/, "");
		fill(place, save(base + "-marked.xlsx", answer.made.find(([path]) => path === copy)[1], "Save the marked copy"));
	}) }, "Make a copy of the log with these cells marked"));
	return place;
}

// ---- the report

const types = { html: "text/html", pdf: "application/pdf", json: "application/json", svg: "image/svg+xml", png: "image/png", csv: "text/csv", xlsx: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" };
let addresses = [];

function address(name, bytes) {
	const url = URL.createObjectURL(new Blob([bytes], { type: types[name.split(".").pop()] ?? "application/octet-stream" }));
	addresses.push(url);
	return url;
}

const save = (name, bytes, words) => h("a", { className: "save", href: address(name, bytes), download: name }, words);

const saves = [
	["report.html", "Report, to read anywhere"], ["report.pdf", "Report, to print"], ["report.xlsx", "Workbook"], ["next-trials.xlsx", "Next trials, to fill in"],
];
const numbers = [["results.json", "Every number"], ["results-keys.csv", "What the numbers are"], ["results.schema.json", "Their schema"]];

function showReport(made, whole) {
	const inside = state.dish + "/";
	const item = ([path, words]) => made.has(inside + path) ? h("li", {}, save(path, made.get(inside + path), words)) : null;
	const figures = [...made.keys()].filter((p) => p.startsWith(inside + "figures/")).map((p) => p.slice(inside.length)).map((p) => [p, p.slice(8)]);
	const paper = $("paper");
	const other = (e) => {
		state.dish = e.target.value;
		show(paper, false);
		showReport(made, whole);
	};
	fill($("saves"), state.dishes.length < 2 ? null : h("p", {}, h("label", { htmlFor: "dish" }, "The log is of several dishes, and each has a report of its own. Shown: "),
		h("select", { id: "dish", onchange: other }, state.dishes.map((folder) => h("option", { value: folder, selected: folder === state.dish }, folder.slice(4).replaceAll("-", " "))))),
		h("h3", {}, "To save"), h("ul", { className: "saves" }, saves.map(item)),
		whole ? null : h("p", { className: "quiet" }, "The files to print and to type in are still being made."),
		h("details", {}, h("summary", {}, figures.length ? "Numbers and pictures" : "Numbers"), h("ul", { className: "saves" }, numbers.map(item)), h("ul", { className: "saves" }, figures.map(item))),
		h("p", {}, h("button", { type: "button", onclick: () => paper.contentWindow.print() }, "Print the report")));
	const first = paper.hidden;
	if (first) layOut(new TextDecoder().decode(made.get(inside + "report.html")));
	show($("report"));
	if (first && scrollY === stood) $("report").scrollIntoView(); // unless the reader went elsewhere meanwhile
}

// layOut shows a page of the program's in the frame, as long as it is: there is one
// thing to scroll.
function layOut(page) {
	const paper = $("paper");
	paper.onload = () => {
		const inside = paper.contentDocument;
		if (!inside?.body) return;
		const fit = () => { paper.style.height = Math.ceil(inside.documentElement.getBoundingClientRect().height) + 8 + "px"; };
		new ResizeObserver(fit).observe(inside.documentElement);
		fit();
		takesDrops(paper.contentWindow);
	};
	paper.srcdoc = page;
	show(paper);
}

function clearReport() {
	show($("report"), false);
	const paper = $("paper");
	show(paper, false);
	paper.removeAttribute("srcdoc");
	for (const url of addresses) URL.revokeObjectURL(url);
	addresses = [];
}

// ---- what else it does

function task(t) {
	const boxes = (t.boxes ?? []).map((b) => ({ ...b, input: h("input", { id: t.command + "-" + b.name, type: b.file ? "file" : "text", value: b.value ?? "", autocomplete: "off" }) }));
	const given = h("input", { type: "file", multiple: true, id: t.command + "-files" });
	if (t.drop === "folder") given.webkitdirectory = true;
	const chosen = h("span", {});
	given.onchange = () => fill(chosen, " " + count(given.files.length, "file"));
	const came = h("div", {});
	const go = () => work(t.title, async (now, current) => {
		const files = [], typed = {};
		const add = async (path, file) => files.push([path, new Uint8Array(await file.arrayBuffer())]);
		for (const f of given.files) await add(f.webkitRelativePath || f.name, f);
		const named = [...new Set(files.map(([path]) => top_(path)))];
		for (const b of boxes) {
			typed[b.name] = b.input.value.trim();
			if (!b.file || !b.input.files.length) continue;
			typed[b.name] = "given/" + b.input.files[0].name;
			await add(typed[b.name], b.input.files[0]);
		}
		const answer = await call(t.typed(typed, named), files, hearStages(now));
		if (!current()) return;
		const page = answer.made.find(([path]) => path === t.opens);
		if (page) {
			clearReport();
			layOut(new TextDecoder().decode(page[1]));
		}
		fill(came, answer.said ? h("pre", { tabIndex: 0 }, answer.said) : "", h("ul", { className: "saves" }, answer.made.map(([path, bytes]) => h("li", {}, save(path.split("/").pop(), bytes, "Save " + path.replace(/^out\//, ""))))));
	});
	return h("div", { className: "task", id: "task-" + t.command, hidden: true }, h("h3", {}, t.title), h("p", {}, t.says),
		boxes.length ? h("div", { className: "boxes" }, boxes.map((b) => h("p", { className: b.wide || b.file ? "wide" : "" }, h("label", { htmlFor: b.input.id }, b.label), b.input, h("span", {}, b.unit ?? "")))) : null,
		t.drop ? h("p", {}, h("label", { className: "button" }, given, t.drop === "folder" ? "Choose a folder" : "Choose spreadsheets"), chosen) : null,
		h("p", {}, h("button", { type: "button", onclick: go }, t.button ?? "Make it")), came);
}

// offer shows what the program says that it does.
function offer(help) {
	show($("more"));
	for (const t of tasks) show($("task-" + t.command), help.includes("\n  foamfield " + t.command + " "));
}

// ---- the page

function showRemembered() {
	const n = remembered().length;
	show($("remembered"), n > 0);
	$("remembered").firstElementChild.textContent = count(n, "answer") + " remembered in this browser " + (n === 1 ? "is" : "are") + " used.";
}

// takesDrops has a window take what is dropped on it, the report's too.
function takesDrops(window) {
	window.addEventListener("dragover", (e) => { e.preventDefault(); document.body.classList.add("over"); });
	window.addEventListener("dragleave", (e) => { if (!e.relatedTarget) document.body.classList.remove("over"); });
	window.addEventListener("drop", async (e) => {
		e.preventDefault();
		document.body.classList.remove("over");
		try {
			const files = await dropped(e.dataTransfer.items);
			if (files.length) await take(files);
		} catch (problem) {
			complain(problem);
		}
	});
}

function setUp() {
	fill(document.querySelector("#success .boxes"), asks.map((a) => h("p", {}, h("label", { htmlFor: "ask-" + a.flag }, a.label),
		h("input", { id: "ask-" + a.flag, type: "text", inputMode: "decimal", autocomplete: "off", onchange: () => { if (state.read) understand(); } }), h("span", {}, a.unit))));
	fill($("others"), tasks.map(task));
	state.answers = remembered();
	showRemembered();
	$("forget").onclick = () => { remember(null); state.answers = []; if (state.files.size) understand(); };
	$("files").onchange = (e) => {
		const files = [...e.target.files].map((f) => [f.name, f]);
		e.target.value = ""; // so that the same file may be chosen again once it was mended
		take(files);
	};
	$("example").onclick = () => take([["week.xlsx", new Blob([demo()])]]);
	$("again").onclick = () => { startOver(); $("files").focus(); };
	$("cancel").onclick = () => { turn++; stopAll(); show($("working"), false); document.body.removeAttribute("aria-busy"); $("files").focus(); };
	takesDrops(window);
	addEventListener("keydown", (e) => { // the report breaks its own pages well only when it is printed itself
		if ((e.ctrlKey || e.metaKey) && e.key === "p" && !$("paper").hidden) {
			e.preventDefault();
			$("paper").contentWindow.print();
		}
	});
	document.documentElement.dataset.page = "ready";
	if (!globalThis.DecompressionStream || !globalThis.WebAssembly?.compileStreaming) {
		complain(new Refused("This browser is too old for the page: bring it up to date, or open the page in another."));
		return;
	}
	setTimeout(load); // after the page is there
}

setUp();
