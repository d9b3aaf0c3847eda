import { buffer } from 'node:stream/consumers';
import { fromBuffer } from 'yauzl';

/** Every file of a zip as text, by its name without folders. */
export function unzip(zip: Buffer): Promise<Map<string, string>> {
  return new Promise((done, fail) => {
    fromBuffer(zip, { lazyEntries: true }, (error, file) => {
      if (error || !file) return fail(error);
      const parts = new Map<string, string>();
      file.on('entry', (entry) => {
        file.openReadStream(entry, (problem, stream) => {
          if (problem || !stream) return fail(problem);
          buffer(stream).then((bytes) => {
            parts.set(entry.fileName.split('/').at(-1) ?? '', bytes.toString('utf8'));
            file.readEntry();
          }, fail);
        });
      });
      file.on('end', () => done(parts));
      file.on('error', fail);
      file.readEntry();
    });
  });
}
