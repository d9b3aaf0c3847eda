import { resolve } from 'node:path';
import { env } from '#lib/config/env.ts';
import { folderStore } from './folder-store.ts';
import { s3Store } from './s3-store.ts';
import type { FileStore } from './store-types.ts';

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
