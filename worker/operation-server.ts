import { createServer, type ServerResponse } from 'node:http';
import { now } from '#lib/clock.ts';
import { env } from '#lib/config/env.ts';
import { hasBearer } from '#lib/edge/bearer.ts';
import { logger } from '#lib/logger.ts';
import { isReady } from '#lib/usecases/is-ready.ts';
import { operationFigures } from '#lib/usecases/operation-figures.ts';

/**
 * The worker's own small server, when PLUMBLINE_WORKER_PORT is set: whether it lives, whether it can work, its counts.
 * Without a token only this machine can reach it. The returned function closes it.
 */
export async function openOperationServer(): Promise<() => void> {
  const { PLUMBLINE_WORKER_PORT: port, PLUMBLINE_METRICS_TOKEN: token } = env();
  if (port === undefined) return () => undefined;
  const server = createServer((request, response) => {
    const allowed = token === undefined || hasBearer(request.headers.authorization, token);
    answer(request.url ?? '', allowed, response).catch((error: unknown) => {
      logger().error({ error }, 'operation request failed');
      say(response, 500, 'failed\n');
    });
  });
  await new Promise<void>((listening, fail) => {
    server.once('error', fail);
    server.listen(port, token === undefined ? '127.0.0.1' : '0.0.0.0', listening);
  });
  return () => {
    server.close();
    server.closeAllConnections();
  };
}

async function answer(path: string, allowed: boolean, response: ServerResponse): Promise<void> {
  if (path === '/livez') return say(response, 200, 'live\n');
  if (path === '/readyz') {
    const { ready, missing } = await isReady();
    return say(response, ready ? 200 : 503, ready ? 'ready\n' : `not ready: ${missing.join(', ')}\n`);
  }
  if (path !== '/metrics') return say(response, 404, 'not here\n');
  if (!allowed) return say(response, 401, 'the token is missing or wrong\n');
  const { text, contentType } = await operationFigures(now());
  return say(response, 200, text, contentType);
}

function say(
  response: ServerResponse,
  status: number,
  text: string,
  type = 'text/plain; charset=utf-8',
): void {
  response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store' }).end(text);
}
