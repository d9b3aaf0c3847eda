import { isReady } from '#lib/usecases/is-ready.ts';

export const dynamic = 'force-dynamic';

/** 200 when database, migrations and queue are ready, else 503 with the names of what is not. */
export async function GET(): Promise<Response> {
  const { ready, missing } = await isReady();
  return new Response(ready ? 'ready\n' : `not ready: ${missing.join(', ')}\n`, {
    status: ready ? 200 : 503,
    headers: { 'cache-control': 'no-store' },
  });
}
