import { fromBuffer } from 'yauzl';

/** The names in a zip, with their folders, in order. */
export function namesInZip(zip: Buffer): Promise<string[]> {
  return new Promise((done, fail) => {
    fromBuffer(zip, { lazyEntries: true }, (error, file) => {
      if (error || !file) return fail(error);
      const names: string[] = [];
      file.on('entry', (entry) => {
        names.push(entry.fileName);
        file.readEntry();
      });
      file.on('end', () => done(names));
      file.on('error', fail);
      file.readEntry();
    });
  });
}
