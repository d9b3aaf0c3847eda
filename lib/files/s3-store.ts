import { AwsClient } from 'aws4fetch';
import { assertKey, assertStem } from './file-key.ts';
import type { Chunks, FileStore } from './store-types.ts';

/** An S3-compatible bucket: `endpoint` is the address of the service, `bucket` is asked for in the path. */
export type Bucket = {
  readonly endpoint: string;
  readonly bucket: string;
  readonly region: string;
  readonly key: string;
  readonly secret: string;
};

/** Parts of one upload; every one but the last has at least 5 MiB, says the protocol. */
const PART_BYTES = 8 * 1024 * 1024;
const PATIENCE_MS = 60_000;

type Ask = { method: string; path: string; body?: Uint8Array; headers?: Record<string, string> };
type Send = (ask: Ask) => Promise<Response>;

/** Files in a bucket, whole or not at all: what is long goes up in parts, and is there when they are joined. */
export function s3Store(bucket: Bucket): FileStore {
  const send = sender(bucket);
  const put = async (key: string, body: Uint8Array) => void (await send({ method: 'PUT', path: key, body }));
  const remove = async (key: string) => void (await send({ method: 'DELETE', path: key }));
  return {
    write: async (key, bytes) => {
      assertKey(key);
      await put(key, bytes);
    },
    writeFrom: async (key, chunks) => {
      assertKey(key);
      const parts = partsOf(chunks);
      const first = await parts.next();
      if (first.done) {
        await put(key, new Uint8Array());
        return 0;
      }
      if (first.value.byteLength === PART_BYTES) return writeInParts(send, key, first.value, parts);
      await put(key, first.value);
      return first.value.byteLength;
    },
    read: async (key) => {
      assertKey(key);
      const response = await send({ method: 'GET', path: key });
      if (response.status === 404) return undefined;
      return new Uint8Array(await response.arrayBuffer());
    },
    open: async (key, range) => {
      assertKey(key);
      const headers = range ? { range: `bytes=${range.first}-${range.last}` } : {};
      const response = await send({ method: 'GET', path: key, headers });
      return response.status === 404 ? undefined : (response.body ?? new Response('').body ?? undefined);
    },
    remove: async (key) => {
      assertKey(key);
      await remove(key);
    },
    removeAll: async (stem, ending = '') => {
      assertStem(stem);
      const query = `?list-type=2&prefix=${encodeURIComponent(`${stem}.`)}`;
      const listed = await (await send({ method: 'GET', path: query })).text();
      for (const [, key = ''] of listed.matchAll(/<Key>([^<]+)<\/Key>/g)) {
        assertKey(key);
        if (key.endsWith(ending)) await remove(key);
      }
    },
  };
}

/** Signed, with an end to waiting for an answer. An answer that is no success is an error without the key's name. */
function sender({ endpoint, bucket, region, key, secret }: Bucket): Send {
  const aws = new AwsClient({
    accessKeyId: key,
    secretAccessKey: secret,
    region,
    service: 's3',
    retries: 2,
  });
  const base = `${endpoint.replace(/\/+$/, '')}/${bucket}`;
  return async ({ method, path, body, headers = {} }) => {
    const waiting = new AbortController();
    // Only until it answers: a film is read for as long as whoever watches it takes.
    const timer = setTimeout(() => waiting.abort(), PATIENCE_MS);
    const response = await aws
      .fetch(`${base}/${path}`, {
        method,
        headers: body ? { ...headers, 'content-length': String(body.byteLength) } : headers,
        ...(body && { body: body as BodyInit }),
        signal: waiting.signal,
        redirect: 'error',
      })
      .finally(() => clearTimeout(timer));
    const isMissing = response.status === 404 && MAY_BE_MISSING.includes(method);
    if (response.ok || isMissing) return response;
    await response.body?.cancel();
    throw new Error(`the bucket answered ${response.status} to ${method}`);
  };
}

/** "No such file" is an answer to these; to a write it says that there is no such bucket. */
const MAY_BE_MISSING = ['GET', 'DELETE'];

/** Chunks gathered into parts of one size; the last is shorter, and may be all there is. */
async function* partsOf(chunks: Chunks): AsyncGenerator<Uint8Array> {
  let gathered: Uint8Array[] = [];
  let bytes = 0;
  for await (const chunk of chunks) {
    let rest = chunk;
    while (bytes + rest.byteLength >= PART_BYTES) {
      const fits = PART_BYTES - bytes;
      gathered.push(rest.subarray(0, fits));
      yield Buffer.concat(gathered, PART_BYTES);
      [gathered, bytes, rest] = [[], 0, rest.subarray(fits)];
    }
    if (rest.byteLength > 0) gathered.push(rest);
    bytes += rest.byteLength;
  }
  if (bytes > 0) yield Buffer.concat(gathered, bytes);
}

async function writeInParts(
  send: Send,
  key: string,
  first: Uint8Array,
  rest: AsyncGenerator<Uint8Array>,
): Promise<number> {
  const begun = await (await send({ method: 'POST', path: `${key}?uploads=` })).text();
  const id = encodeURIComponent(/<UploadId>([^<]+)<\/UploadId>/.exec(begun)?.[1] ?? '');
  if (id === '') throw new Error('the bucket began no upload');
  try {
    const tags: string[] = [];
    let written = 0;
    const up = async (body: Uint8Array) => {
      const path = `${key}?partNumber=${tags.length + 1}&uploadId=${id}`;
      const response = await send({ method: 'PUT', path, body });
      tags.push(response.headers.get('etag') ?? '');
      written += body.byteLength;
    };
    await up(first);
    for await (const part of rest) await up(part);
    await join(send, `${key}?uploadId=${id}`, tags);
    return written;
  } catch (error) {
    await send({ method: 'DELETE', path: `${key}?uploadId=${id}` }).catch(() => undefined);
    throw error;
  }
}

/** The service may answer 200 and say inside that it failed. */
async function join(send: Send, path: string, tags: readonly string[]): Promise<void> {
  const parts = tags.map((tag, at) => `<Part><PartNumber>${at + 1}</PartNumber><ETag>${tag}</ETag></Part>`);
  const body = Buffer.from(`<CompleteMultipartUpload>${parts.join('')}</CompleteMultipartUpload>`);
  const answer = await (await send({ method: 'POST', path, body })).text();
  if (!answer.includes('CompleteMultipartUploadResult')) throw new Error('the bucket joined no parts');
}
