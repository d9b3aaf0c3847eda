import { once } from 'node:events';
import type { Readable } from 'node:stream';
import { ZipArchive } from 'archiver';

/** One file of the zip, opened when its turn comes. `packed`: it is a zip itself and gains nothing by another round. */
export type TeamFile = { name: string; packed: boolean; open: () => Promise<Readable> | Readable };

/**
 * Everything of a team as one zip, a file at a time: none is opened before the one before it has been written, so that
 * a team of any size needs no more room than its largest file's pieces. A file that breaks, breaks the download.
 */
export function teamZip(files: AsyncIterable<TeamFile>, made: Date): Readable {
  const zip = new ZipArchive({ zlib: { level: 6 } });
  const stopped = new AbortController();
  zip.on('close', () => stopped.abort(new Error('nobody takes the download any more')));
  void write(zip, { files, made, signal: stopped.signal }).catch((error: Error) => zip.destroy(error));
  return zip;
}

type Writing = { files: AsyncIterable<TeamFile>; made: Date; signal: AbortSignal };

async function write(zip: ZipArchive, { files, made, signal }: Writing): Promise<void> {
  for await (const { name, packed, open } of files) {
    const source = await open();
    const written = once(zip, 'entry', { signal });
    source.on('error', (error) => zip.destroy(error));
    zip.append(source, { name, date: made, store: packed });
    try {
      await written;
    } catch (error) {
      source.destroy();
      throw error;
    }
  }
  await zip.finalize();
}
