import { createHash, randomUUID } from 'node:crypto';
import { close, createReadStream, createWriteStream, open, unlink } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Readable, Transform, type Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';

export type Spooled<Result> = {
  result: Result;
  bytes: number;
  sha256: string;
  read: () => Readable;
  drop: () => Promise<void>;
};

/**
 * Lets `write` write into a file that has no name any more, so that nothing is left behind however this ends, and hands it
 * out once it is whole: a slow download holds no transaction, and a failure is an answer, never half a file.
 */
export async function spool<Result>(write: (out: Writable) => Promise<Result>): Promise<Spooled<Result>> {
  const path = join(tmpdir(), `plumbline-${randomUUID()}`);
  const fd = await promisify(open)(path, 'wx+', 0o600);
  const drop = () => promisify(close)(fd);
  try {
    await promisify(unlink)(path);
    const sum = createHash('sha256');
    let bytes = 0;
    const counted = new Transform({
      transform(chunk: Buffer, _encoding, done) {
        sum.update(chunk);
        bytes += chunk.length;
        done(null, chunk);
      },
    });
    const kept = pipeline(counted, createWriteStream('', { fd, autoClose: false }));
    kept.catch(() => undefined); // told by the writer as well
    const result = await write(counted);
    await kept;
    const read = () => createReadStream('', { fd, start: 0 });
    return { result, bytes, sha256: sum.digest('hex'), read, drop };
  } catch (error) {
    await drop();
    throw error;
  }
}
