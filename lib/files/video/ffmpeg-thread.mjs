// One run of ffmpeg, as WebAssembly in a thread of its own: it sees one file, writes one, and has no network, no
// folder and no more memory than it is given. The thread can be ended at any moment.
import { closeSync, openSync, readFileSync, readSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { parentPort, workerData } from 'node:worker_threads';

const { program, args, input, output, maxMemoryBytes, maxLogLines } = workerData;
const require = createRequire(import.meta.url);

// What the core asks of a browser's worker: it takes nothing else for one.
globalThis.self = globalThis;
globalThis.location = { href: 'file:///core/' };
globalThis.importScripts = () => undefined;
// The file is read in pieces, as it is asked for: the part of a Blob that the core's file system uses.
globalThis.FileReaderSync = class {
  readAsArrayBuffer({ file, from, to }) {
    const piece = new Uint8Array(to - from);
    const read = readSync(file, piece, 0, piece.byteLength, from);
    return piece.buffer.slice(0, read);
  }
};
const grow = WebAssembly.Memory.prototype.grow;
WebAssembly.Memory.prototype.grow = function growWithin(pages) {
  if (this.buffer.byteLength + pages * 65_536 > maxMemoryBytes) throw new RangeError('no more memory');
  return grow.call(this, pages);
};

const create = require('@ffmpeg/core');
const ffmpeg = await create({ wasmBinary: readFileSync(require.resolve('@ffmpeg/core/wasm')) });
const out = [];
const log = [];
ffmpeg.setLogger(({ type, message }) => {
  const lines = type === 'stdout' ? out : log;
  if (lines.length < maxLogLines) lines.push(message);
});
let opened;
if (input) {
  opened = openSync(input, 'r');
  const { size } = statSync(input);
  const slice = (from, end) => {
    const to = Math.min(end, size);
    return { file: opened, from, to, size: Math.max(0, to - from) };
  };
  const data = { size, slice };
  ffmpeg.FS.mkdir('/in');
  ffmpeg.FS.mount(ffmpeg.FS.filesystems.WORKERFS, { blobs: [{ name: 'film', data }] }, '/in');
}
const ended = program === 'probe' ? ffmpeg.ffprobe(...args) : ffmpeg.exec(...args);
let bytes = 0;
if (output && ffmpeg.FS.analyzePath('/out').exists) {
  const written = ffmpeg.FS.readFile('/out');
  writeFileSync(output, written, { mode: 0o600 });
  bytes = written.byteLength;
}
if (opened !== undefined) closeSync(opened);
parentPort.postMessage({ ended, out: out.join('\n'), log: log.join('\n'), bytes });
