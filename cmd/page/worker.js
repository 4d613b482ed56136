// One run of the program, off the page: it is given the program, what to do and the
// files to do it with, and gives back what was said and the files that were made. The
// worker ends with the run, and its memory with it.
"use strict";

onmessage = async ({ data }) => {
	try {
		if (data.packed) {
			postMessage({ program: await unpack(data.packed) });
			return;
		}
		postMessage(await run(data));
	} catch (e) {
		postMessage({ failed: String(e?.message ?? e) });
	}
};

// unpack decodes, unzips and compiles as the bytes come.
async function unpack(text) {
	const step = 1 << 20; // characters: a multiple of 4
	let at = 0;
	const bytes = new ReadableStream({
		pull(to) {
			if (at >= text.length) {
				to.close();
				return;
			}
			const raw = atob(text.slice(at, at + step)), out = new Uint8Array(raw.length);
			for (let i = 0; i < raw.length; i++) out[i] = raw.charCodeAt(i);
			at += step;
			to.enqueue(out);
		},
	}).pipeThrough(new DecompressionStream("gzip"));
	return WebAssembly.compileStreaming(new Response(bytes, { headers: { "Content-Type": "application/wasm" } }));
}

async function run({ program, args, files }) {
	for (const [path, bytes] of files) disk.put(path, bytes);
	const before = new Set(files.map(([path]) => path));
	let line = "";
	disk.hear((fd, bytes) => {
		if (fd !== 2) return;
		line += new TextDecoder().decode(bytes);
		const lines = line.split("\n");
		line = lines.pop();
		for (const l of lines) postMessage({ says: l });
	});
	const go = new Go();
	let code = 0;
	go.argv = ["foamfield", ...args];
	go.env = { TMPDIR: "/tmp", HOME: disk.home, FOAMFIELD_STARTED: "page" };
	go.exit = (c) => { code = c; };
	await go.run(await WebAssembly.instantiate(program, go.importObject));
	const made = [...disk.files()].filter(([path]) => !before.has(path));
	return { code, said: disk.said(1), complaint: disk.said(2), made };
}
