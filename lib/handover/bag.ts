import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { Readable, type Writable } from 'node:stream';
import { finished } from 'node:stream/promises';
import { ZipArchive } from 'archiver';

/** One file of a bag, made piece by piece when its turn comes. `path` is inside `data/`, with slashes. */
export type Pieces = Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>;
export type BagFile = {
  path: string;
  /** Undefined: it is there no more, and is left out. */
  pieces: () => Pieces | Promise<Pieces | undefined>;
};
export type BagInfo = { made: Date; facts: readonly (readonly [name: string, value: string])[] };
export type BagWritten = { files: number; bytes: number; manifestSha256: string };

/**
 * A zip laid out as BagIt 1.0 (RFC 8493), written into `out` while it is made: no file is held whole. The manifests come
 * last, when every sum is known. Rejects, with `out` destroyed, when a file breaks or nobody takes the bytes any more.
 */
export async function writeBag(files: readonly BagFile[], info: BagInfo, out: Writable): Promise<BagWritten> {
  const zip = new ZipArchive({ zlib: { level: 6 } });
  const broken = new AbortController();
  const fail = (error: Error) => {
    broken.abort(error);
    zip.abort();
    out.destroy(error);
  };
  zip.on('error', fail);
  const taken = finished(out);
  taken.catch(fail);
  zip.pipe(out);
  const manifest: string[] = [];
  let bytes = 0;
  try {
    for (const { path, pieces } of files) {
      const opened = await pieces();
      if (opened === undefined) continue;
      const sum = createHash('sha256');
      const source = Readable.from(
        counted(opened, (piece) => {
          sum.update(piece);
          bytes += piece.length;
        }),
      );
      const written = once(zip, 'entry', { signal: broken.signal });
      source.on('error', fail);
      zip.append(source, { name: `data/${path}`, date: info.made });
      await written;
      manifest.push(`${sum.digest('hex')}  data/${escaped(path)}`);
    }
    const tags = tagFiles({ manifest, bytes, info });
    for (const [name, text] of tags) zip.append(text, { name, date: info.made });
    await zip.finalize();
    await taken;
    return { files: manifest.length, bytes, manifestSha256: sha256(tags[2]?.[1] ?? '') };
  } catch (error) {
    throw broken.signal.aborted ? broken.signal.reason : error;
  }
}

async function* counted(pieces: Pieces, count: (piece: Buffer) => void): AsyncGenerator<Buffer> {
  for await (const piece of pieces) {
    const bytes = Buffer.from(piece);
    if (bytes.length === 0) continue;
    count(bytes);
    yield bytes;
  }
}

function tagFiles({
  manifest,
  bytes,
  info,
}: {
  manifest: string[];
  bytes: number;
  info: BagInfo;
}): [string, string][] {
  const facts = [
    ...info.facts,
    ['Bagging-Date', info.made.toISOString().slice(0, 10)],
    ['Payload-Oxum', `${bytes}.${manifest.length}`],
  ] as const;
  const tags: [string, string][] = [
    ['bagit.txt', 'BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n'],
    ['bag-info.txt', facts.map(([name, value]) => `${name}: ${oneLine(value)}\n`).join('')],
    ['manifest-sha256.txt', manifest.map((line) => `${line}\n`).join('')],
  ];
  const sums = tags.map(([name, text]) => `${sha256(text)}  ${name}\n`).join('');
  return [...tags, ['tagmanifest-sha256.txt', sums]];
}

/** A value of bag-info.txt ends with its line. */
function oneLine(value: string): string {
  return value.replace(/\s+/gu, ' ').trim();
}

/** RFC 8493 2.1.3: only these three signs are written by their codes. */
function escaped(path: string): string {
  return path.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
