import { createHash } from 'node:crypto';
import { openZip, refused, shown } from './open-zip.ts';

export type ReadBag = {
  /** Files by their path inside `data/`. */
  files: ReadonlyMap<string, Buffer>;
  /** The first value of each name of bag-info.txt. */
  info: ReadonlyMap<string, string>;
  /** Of manifest-sha256.txt: the same bytes, the same pack. */
  manifestSha256: string;
};

const TAGS = ['bagit.txt', 'bag-info.txt', 'manifest-sha256.txt', 'tagmanifest-sha256.txt'] as const;
const SUM = /^([0-9a-f]{64}) [ *](.+)$/i;

/** A pack (BagIt 1.0, RFC 8493), every file held against its sum. One byte that changed is found and its file named. */
export async function readBag(bytes: Buffer): Promise<ReadBag> {
  const all = await openZip(bytes);
  for (const tag of TAGS) {
    if (!all.has(tag)) throw refused(`is not a handover pack: it has no ${tag}`);
  }
  const text = (name: string) => utf8(all.get(name) ?? Buffer.alloc(0), name);
  if (!/^BagIt-Version: 1\.0\s*$/m.test(text('bagit.txt')))
    throw refused('is laid out in a version that is not read here: bagit.txt must say "BagIt-Version: 1.0"');
  assertSums(all, text('tagmanifest-sha256.txt'), 'tagmanifest-sha256.txt');
  const manifest = text('manifest-sha256.txt');
  const named = assertSums(all, manifest, 'manifest-sha256.txt');
  const unnamed = [...all.keys()].find((path) => !named.has(path) && !TAGS.some((tag) => tag === path));
  if (unnamed !== undefined)
    throw refused(`holds "${shown(unnamed)}", which manifest-sha256.txt does not name`);
  const data = [...all].flatMap(([path, file]): [string, Buffer][] =>
    path.startsWith('data/') ? [[path.slice('data/'.length), file]] : [],
  );
  return { files: new Map(data), info: infoOf(text('bag-info.txt')), manifestSha256: sha256(manifest) };
}

/** Paths of a manifest, each there and unchanged. */
function assertSums(all: ReadonlyMap<string, Buffer>, manifest: string, of: string): Set<string> {
  const named = new Set<string>();
  for (const line of manifest.split('\n').filter((one) => one !== '')) {
    const [, sum = '', path = ''] = SUM.exec(line.trimEnd()) ?? [];
    if (path === '') throw refused(`: a line of ${of} cannot be read. Ask for the pack again`);
    const plain = path.replace(/%0D/gi, '\r').replace(/%0A/gi, '\n').replace(/%25/g, '%');
    const file = all.get(plain);
    if (!file) throw refused(`is not whole: "${shown(plain)}" is missing. Ask for it again`);
    if (sha256(file) !== sum.toLowerCase())
      throw refused(
        `: the file "${shown(plain)}" is not as it was made (its SHA-256 differs). Ask for the pack again`,
      );
    named.add(plain);
  }
  return named;
}

function infoOf(text: string): Map<string, string> {
  const info = new Map<string, string>();
  for (const line of text.split('\n')) {
    const at = line.indexOf(':');
    const name = line.slice(0, at).trim();
    if (at > 0 && !info.has(name)) info.set(name, line.slice(at + 1).trim());
  }
  return info;
}

/** The text of a file in UTF-8; refuses any other. */
export function utf8(bytes: Uint8Array, name: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (cause) {
    throw refused(`: the file "${shown(name)}" is not UTF-8 text`, cause);
  }
}

function sha256(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}
