import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { POST as submit } from '#app/api/check-ins/route.ts';
import { POST as runNights } from '#app/api/nights/run/route.ts';
import type { RouteHandler } from '#lib/edge/define-route.ts';
import { browserRequest, cookieFor, noParams } from '#tests/integration/support/signing-in.ts';

// A program: the product's own routes behind a bare HTTP server, without pages, so that it starts in a second.
// GET /cookie?of=USER signs a user in. Unhandled rejections are counted and told, as a test must see them.
const ROUTES: Record<string, RouteHandler> = { '/api/check-ins': submit, '/api/nights/run': runNights };

process.on('unhandledRejection', (reason) => {
  process.stdout.write(`unhandled rejection: ${String(reason)}\n`);
});
process.on('disconnect', () => process.exit(0));

const server = createServer((request, response) => {
  void answer(request).then(
    async (given) => {
      response.writeHead(given.status, Object.fromEntries(given.headers));
      response.end(await given.text());
    },
    (error: unknown) => response.writeHead(500).end(String(error)),
  );
});
server.listen(Number(process.env.FAULT_PORT ?? 0), '127.0.0.1', () => {
  process.stdout.write(`web ready on ${(server.address() as AddressInfo).port}\n`);
});

async function answer(request: IncomingMessage): Promise<Response> {
  const url = new URL(request.url ?? '/', 'http://localhost:3000');
  if (url.pathname === '/cookie') return new Response(await cookieFor(url.searchParams.get('of') ?? ''));
  const route = ROUTES[url.pathname];
  if (!route) return new Response('no such route', { status: 404 });
  let body = '';
  for await (const chunk of request) body += chunk;
  const cookie = request.headers.cookie;
  return route(
    browserRequest(url.pathname, { method: 'POST', json: JSON.parse(body), ...(cookie && { cookie }) }),
    noParams,
  );
}
