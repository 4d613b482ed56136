// The disk that the program sees in a browser: files in memory, and nothing else. It
// answers the calls that Go makes of a file system, with the codes it knows.
"use strict";

const disk = (() => {
	const home = "/kitchen";
	let inodes = 0;
	const folder = () => ({ inode: ++inodes, names: new Map() });
	const root = folder();
	const handles = new Map();
	let nextHandle = 3;
	const heard = { 1: [], 2: [] };
	let hearing = () => {};

	const failure = (code) => Object.assign(new Error(code), { code });
	const parts = (path) => {
		const out = [];
		for (const part of (path.startsWith("/") ? path : home + "/" + path).split("/")) {
			if (part === "..") out.pop();
			else if (part !== "" && part !== ".") out.push(part);
		}
		return out;
	};
	const walk = (names) => {
		let node = root;
		for (const name of names) {
			if (!node.names) throw failure("ENOTDIR");
			node = node.names.get(name);
			if (!node) throw failure("ENOENT");
		}
		return node;
	};
	const find = (path) => walk(parts(path));
	const parent = (path) => {
		const names = parts(path), name = names.pop();
		if (name === undefined) throw failure("EEXIST");
		const node = walk(names);
		if (!node.names) throw failure("ENOTDIR");
		return [node, name];
	};
	const handle = (fd) => {
		const h = handles.get(fd);
		if (!h) throw failure("EBADF");
		return h;
	};
	const grow = (node, size) => {
		if (size > node.room.length) {
			const room = new Uint8Array(Math.max(size, 2 * node.room.length, 4096));
			room.set(node.room.subarray(0, node.size));
			node.room = room;
		}
		if (size > node.size) node.room.fill(0, node.size, size);
		node.size = size;
	};
	const stat = (node) => ({
		dev: 1, ino: node.inode, nlink: 1, uid: 0, gid: 0, rdev: 0, blksize: 4096, blocks: 0,
		size: node.names ? 0 : node.size, mode: node.names ? 0o40777 : 0o100666,
		atimeMs: 0, mtimeMs: 0, ctimeMs: 0, isDirectory: () => Boolean(node.names),
	});
	const constants = { O_RDONLY: 0, O_WRONLY: 1, O_RDWR: 2, O_CREAT: 64, O_EXCL: 128, O_TRUNC: 512, O_APPEND: 1024, O_DIRECTORY: 65536 };

	const calls = {
		open(path, flags) {
			let node;
			try {
				node = find(path);
			} catch (e) {
				if (e.code !== "ENOENT" || !(flags & constants.O_CREAT)) throw e;
				const [above, name] = parent(path);
				node = { inode: ++inodes, room: new Uint8Array(0), size: 0 };
				above.names.set(name, node);
				flags &= ~constants.O_EXCL;
			}
			if (flags & constants.O_CREAT && flags & constants.O_EXCL) throw failure("EEXIST");
			if (node.names && flags & (constants.O_WRONLY | constants.O_RDWR)) throw failure("EISDIR");
			if (!node.names && flags & constants.O_DIRECTORY) throw failure("ENOTDIR");
			if (flags & constants.O_TRUNC) node.size = 0;
			handles.set(nextHandle, { node, at: 0 });
			return nextHandle++;
		},
		close(fd) { handle(fd); handles.delete(fd); },
		read(fd, into, offset, length, position) {
			if (fd === 0) return 0;
			const h = handle(fd);
			if (h.node.names) throw failure("EISDIR");
			const from = position ?? h.at;
			const n = Math.max(0, Math.min(length, h.node.size - from));
			into.set(h.node.room.subarray(from, from + n), offset);
			if (position === null || position === undefined) h.at += n;
			return n;
		},
		write(fd, from, offset, length, position) {
			const bytes = from.subarray(offset, offset + length);
			if (heard[fd]) {
				heard[fd].push(bytes.slice());
				hearing(fd, bytes);
				return length;
			}
			const h = handle(fd), to = position ?? h.at;
			grow(h.node, Math.max(h.node.size, to + length));
			h.node.room.set(bytes, to);
			if (position === null || position === undefined) h.at = to + length;
			return length;
		},
		fstat(fd) { return stat(fd < 3 ? { inode: 0, size: 0 } : handle(fd).node); },
		stat(path) { return stat(find(path)); },
		lstat(path) { return stat(find(path)); },
		mkdir(path) {
			const [above, name] = parent(path);
			if (above.names.has(name)) throw failure("EEXIST");
			above.names.set(name, folder());
		},
		readdir(path) {
			const node = find(path);
			if (!node.names) throw failure("ENOTDIR");
			return [...node.names.keys()].sort();
		},
		rename(from, to) {
			const node = find(from), [above, name] = parent(to), [was, old] = parent(from);
			const there = above.names.get(name);
			if (there?.names && there.names.size) throw failure("ENOTEMPTY");
			was.names.delete(old);
			above.names.set(name, node);
		},
		link(from, to) {
			const node = find(from), [above, name] = parent(to);
			if (above.names.has(name)) throw failure("EEXIST");
			above.names.set(name, node);
		},
		unlink(path) {
			const [above, name] = parent(path), node = find(path);
			if (node.names) throw failure("EISDIR");
			above.names.delete(name);
		},
		rmdir(path) {
			const [above, name] = parent(path), node = find(path);
			if (!node.names) throw failure("ENOTDIR");
			if (node.names.size) throw failure("ENOTEMPTY");
			above.names.delete(name);
		},
		ftruncate(fd, length) { grow(handle(fd).node, length); },
		truncate(path, length) { grow(find(path), length); },
		readlink() { throw failure("EINVAL"); },
		symlink() { throw failure("ENOSYS"); },
	};
	for (const name of ["chmod", "fchmod", "chown", "fchown", "lchown", "fsync", "utimes"]) calls[name] = () => {};

	globalThis.fs = { constants };
	for (const [name, call] of Object.entries(calls)) {
		fs[name] = (...args) => {
			const done = args.pop();
			let value;
			try {
				value = call(...args);
			} catch (e) {
				if (!e.code) throw e;
				done(e);
				return;
			}
			done(null, value);
		};
	}
	fs.writeSync = (fd, bytes) => calls.write(fd, bytes, 0, bytes.length, null); // what a crash prints
	globalThis.process = { pid: 1, ppid: 0, getuid: () => 0, getgid: () => 0, geteuid: () => 0, getegid: () => 0, getgroups: () => [], umask: () => 0, cwd: () => home, chdir() { throw failure("ENOSYS"); } };
	globalThis.path = { resolve: (...all) => "/" + parts(all.join("/")).join("/") };

	calls.mkdir("/tmp");
	calls.mkdir(home);

	return {
		home,
		hear(f) { hearing = f; },
		said: (fd) => new TextDecoder().decode(joined(heard[fd])),
		put(path, bytes) {
			const names = parts(path);
			names.pop();
			let node = root;
			for (const name of names) {
				if (!node.names.has(name)) node.names.set(name, folder());
				node = node.names.get(name);
			}
			parent(path)[0].names.set(parts(path).pop(), { inode: ++inodes, room: bytes, size: bytes.length });
		},
		// files are all there are below the home, by their path within it.
		files() {
			const out = new Map();
			const list = (node, at) => {
				for (const [name, child] of node.names) {
					if (child.names) list(child, at + name + "/");
					else out.set(at + name, child.room.slice(0, child.size));
				}
			};
			list(find(home), "");
			return out;
		},
	};

	function joined(pieces) {
		const all = new Uint8Array(pieces.reduce((n, p) => n + p.length, 0));
		let at = 0;
		for (const p of pieces) {
			all.set(p, at);
			at += p.length;
		}
		return all;
	}
})();
