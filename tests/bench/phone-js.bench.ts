import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { z } from 'zod';
import type { Bench } from './harness.ts';

const BUILT = join(import.meta.dirname, '../../.next');
const KB = 1_024;

const buildManifest = z.object({ rootMainFiles: z.array(z.string()) });
const clientManifest = z.record(
  z.string(),
  z.object({ entryJSFiles: z.record(z.string(), z.array(z.string())) }),
);

/** What a phone loads for the check-in, over what it loads for a page of the same framework that holds no script of ours. */
export const phoneJsBench: Bench = {
  name: 'phone-js',
  what: 'JavaScript of the check-in page over a bare page, gzip; reads the last build',
  missing: () =>
    existsSync(join(BUILT, 'BUILD_ID')) ? null : 'build first: run `npm start` once, or `npx next build`',
  run: () => {
    const root = buildManifest.parse(JSON.parse(readFileSync(join(BUILT, 'build-manifest.json'), 'utf8')));
    const bare = sizeOf(new Set(root.rootMainFiles));
    const page = sizeOf(new Set([...root.rootMainFiles, ...entryFiles('app/(client)/check-in/page')]));
    return Promise.resolve([
      {
        name: 'phone-js',
        value: (page - bare) / KB,
        unit: 'KB over a bare page, gzip',
        reference: bare / KB,
        ratio: page / bare,
        better: 'lower',
        must: '40 KB',
        aim: '15 KB',
        sizes: `check-in ${(page / KB).toFixed(1)} KB, bare page ${(bare / KB).toFixed(1)} KB`,
      },
    ]);
  },
};

/** Script files of a page and the layouts around it, as the build lists them. */
function entryFiles(page: string): string[] {
  const shared = globalThis as { __RSC_MANIFEST?: unknown };
  shared.__RSC_MANIFEST = {};
  createRequire(import.meta.url)(join(BUILT, `server/${page}_client-reference-manifest.js`));
  const [manifest] = Object.values(clientManifest.parse(shared.__RSC_MANIFEST));
  return Object.values(manifest?.entryJSFiles ?? {}).flat();
}

function sizeOf(files: ReadonlySet<string>): number {
  let bytes = 0;
  for (const file of files) bytes += gzipSync(readFileSync(join(BUILT, file))).length;
  return bytes;
}
