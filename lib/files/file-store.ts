import { resolve } from 'node:path';
import { env } from '#lib/config/env.ts';
import { folderStore } from './folder-store.ts';
import { s3Store } from './s3-store.ts';

export type Chunks = AsyncIterable<Uint8Array>;
/** First and last byte, both counted, as HTTP does. */
export type ByteRange = { readonly first: number; readonly last: number };

/** Where pictures and films lie outside the database. Another place needs these and nothing else. */
export type FileStore = {
  write: (key: string, bytes: Uint8Array) => Promise<void>;
  /** As it comes, never all of it in memory; nothing is there until all of it is. Returns how many bytes. */
  writeFrom: (key: string, chunks: Chunks) => Promise<number>;
  /** Undefined: no such file. */
  read: (key: string) => Promise<Uint8Array | undefined>;
  /** As it is read, never all of it in memory. Undefined: no such file. */
  open: (key: string, range?: ByteRange) => Promise<ReadableStream<Uint8Array> | undefined>;
  remove: (key: string) => Promise<void>;
  /** Everything of one thing: every key that begins with `team id/thing id.`; or only what ends in `ending`. */
  removeAll: (stem: string, ending?: string) => Promise<void>;
};

/** The store that the environment names: a bucket where PLUMBLINE_S3_BUCKET is set, else the folder PLUMBLINE_FILES. */
export function fileStore(): FileStore {
  const { s3, PLUMBLINE_FILES } = withBucket(env());
  return s3 ? s3Store(s3) : folderStore(resolve(PLUMBLINE_FILES));
}

function withBucket(all: ReturnType<typeof env>) {
  const {
    PLUMBLINE_S3_ENDPOINT: endpoint,
    PLUMBLINE_S3_BUCKET: bucket,
    PLUMBLINE_S3_REGION: region,
    PLUMBLINE_S3_KEY: key,
    PLUMBLINE_S3_SECRET: secret,
  } = all;
  const s3 = endpoint && bucket && key && secret ? { endpoint, bucket, region, key, secret } : undefined;
  return { s3, PLUMBLINE_FILES: all.PLUMBLINE_FILES };
}
