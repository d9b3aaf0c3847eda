import { now } from '#lib/clock.ts';
import { env } from '#lib/config/env.ts';
import { hasBearer } from '#lib/edge/bearer.ts';
import { operationFigures } from '#lib/usecases/operation-figures.ts';

export const dynamic = 'force-dynamic';

/** Counts for a Prometheus that knows PLUMBLINE_METRICS_TOKEN; without that setting there is nothing here. */
export async function GET(request: Request): Promise<Response> {
  const token = env().PLUMBLINE_METRICS_TOKEN;
  if (token === undefined) return new Response('not here\n', { status: 404 });
  if (!hasBearer(request.headers.get('authorization'), token))
    return new Response('the token is missing or wrong\n', {
      status: 401,
      headers: { 'www-authenticate': 'Bearer' },
    });
  const { text, contentType } = await operationFigures(now());
  return new Response(text, { headers: { 'content-type': contentType, 'cache-control': 'no-store' } });
}
