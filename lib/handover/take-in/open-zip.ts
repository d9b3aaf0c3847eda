import { crc32 } from 'node:zlib';
import yauzl, { type Entry, type ZipFile } from 'yauzl';
import { AppError } from '#lib/errors.ts';

/** What a pack that comes in may be at most, as a zip and unpacked; own choices. A whole pack of ten years fits, its films do not. */
export const PACK_BOUNDS = { files: 100, zipped: 40 * 1024 * 1024, bytes: 80 * 1024 * 1024 } as const;

const SYMLINK = 0o120000;
const FILE_TYPE = 0o170000;
const MADE_ON_UNIX = 3;
const ENCRYPTED = 1;
const ARCHIVES = /\.(zip|7z|rar|gz|tgz|bz2|xz|tar|jar)$/i;

/**
 * The files of a zip by their paths. Everything that the zip says of itself is looked at before anything is unpacked:
 * how many, how much, where to, what kind; what comes out longer than was said is refused as it comes out.
 */
export async function openZip(bytes: Buffer): Promise<Map<string, Buffer>> {
  const zip = await yauzl
    .fromBufferPromise(bytes, { lazyEntries: true, validateEntrySizes: true, strictFileNames: true })
    .catch((cause: unknown) => {
      throw refused('is no zip, or was cut off on its way: send it again', cause);
    });
  const entries = await entriesOf(zip);
  const files = new Map<string, Buffer>();
  for (const entry of entries) files.set(entry.fileName, await bytesOf(zip, entry));
  return files;
}

async function entriesOf(zip: ZipFile): Promise<Entry[]> {
  // Folders count as well: a zip of a million of them is no pack.
  if (zip.entryCount > PACK_BOUNDS.files * 2) throw tooMany(zip.entryCount);
  const entries = new Map<string, Entry>();
  let length = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      if (entry.fileName.endsWith('/')) continue;
      assertPlain(entry);
      if (entries.has(entry.fileName)) throw refused(`holds "${shown(entry.fileName)}" twice`);
      entries.set(entry.fileName, entry);
      length += entry.uncompressedSize;
      if (entries.size > PACK_BOUNDS.files) throw tooMany(zip.entryCount);
      if (length > PACK_BOUNDS.bytes) throw tooLong();
    }
  } catch (error) {
    if (error instanceof AppError) throw error;
    throw refused(whyOf(error), error);
  }
  return [...entries.values()];
}

/** `strictFileNames` has refused absolute paths, drives, backslashes and ".." already. */
function assertPlain(entry: Entry): void {
  const name = shown(entry.fileName);
  if (entry.generalPurposeBitFlag & ENCRYPTED)
    throw refused(`holds "${name}", which is locked by a password: send it without`);
  const mode = entry.externalFileAttributes >>> 16;
  if (entry.versionMadeBy >> 8 === MADE_ON_UNIX && (mode & FILE_TYPE) === SYMLINK)
    throw refused(`holds "${name}", a link to another place: a pack holds files only`);
  if (ARCHIVES.test(entry.fileName)) throw refused(`holds "${name}", a packed file inside a packed file`);
  if (entry.compressionMethod !== 0 && entry.compressionMethod !== 8)
    throw refused(`holds "${name}", packed in a way that is not read here`);
}

async function bytesOf(zip: ZipFile, entry: Entry): Promise<Buffer> {
  const chunks: Buffer[] = [];
  let length = 0;
  try {
    for await (const chunk of await zip.openReadStreamPromise(entry)) {
      length += (chunk as Buffer).length;
      if (length > entry.uncompressedSize) throw new Error('too many bytes');
      chunks.push(chunk as Buffer);
    }
  } catch (error) {
    throw refused(`: the file "${shown(entry.fileName)}" in it is damaged. Ask for the pack again`, error);
  }
  const bytes = Buffer.concat(chunks);
  if (crc32(bytes) !== entry.crc32)
    throw refused(`: the file "${shown(entry.fileName)}" in it is damaged. Ask for the pack again`);
  return bytes;
}

function tooMany(count: number): AppError {
  return new AppError(
    'too-large',
    `This pack holds ${count} files, at most ${PACK_BOUNDS.files} are taken. Ask for one without films and pictures.`,
    { fields: { pack: 'too many files' } },
  );
}

function tooLong(): AppError {
  return new AppError(
    'too-large',
    `This pack is longer than ${PACK_BOUNDS.bytes / 1024 / 1024} MB when it is unpacked. Ask for one without films, tables and pictures; the part that is read here is the lossless record.`,
    { fields: { pack: 'too long' } },
  );
}

function whyOf(error: unknown): string {
  const message = error instanceof Error ? error.message : '';
  if (/invalid relative path|absolute path|invalid characters/.test(message))
    return 'holds a file whose path leads out of the pack';
  return 'is damaged: its list of files cannot be read. Ask for the pack again';
}

export function refused(why: string, cause?: unknown): AppError {
  const said = why.startsWith(':') ? why : ` ${why}`;
  return new AppError('invalid', `This pack${said}. Nothing of it was kept.`, {
    fields: { pack: why.replace(/^: /, '') },
    cause,
  });
}

/** A name of a stranger's file, as it can stand in a sentence. */
export function shown(name: string): string {
  return name.replace(/[^\x20-\x7e\p{L}\p{N}]/gu, '?').slice(0, 120);
}
