import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { phoneWorker } from './worker.ts';

export const dynamic = 'force-dynamic';

/** The phone's worker. Another build is another text, so the phone takes up the new one; it is asked for every time. */
export async function GET(): Promise<Response> {
  const build = await buildId();
  return new Response(`(${phoneWorker.toString()})(self, ${JSON.stringify(build)});\n`, {
    headers: { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-cache' },
  });
}

async function buildId(): Promise<string> {
  try {
    return (await readFile(join(process.cwd(), '.next/BUILD_ID'), 'utf8')).trim();
  } catch {
    return 'development';
  }
}
