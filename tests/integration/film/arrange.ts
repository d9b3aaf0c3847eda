import { randomUUID } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Readable } from 'node:stream';
import { DELETE, HEAD, PATCH } from '#app/api/clips/[clipId]/route.ts';
import { POST } from '#app/api/clips/route.ts';
import type { RouteHandler } from '#lib/edge/define-route.ts';
import { ORIGIN } from '../support/signing-in.ts';

const TUS = { 'tus-resumable': '1.0.0' };

/** What a phone says of a clip, as the protocol writes it. */
function metadata(about: Record<string, string>): string {
  return Object.entries(about)
    .map(([name, value]) => `${name} ${Buffer.from(value).toString('base64')}`)
    .join(',');
}

/** The requests of an upload, as the handlers get them. */
export function uploader(cookie: string) {
  const ask = (handler: RouteHandler, { method, clipId, headers, body }: Ask): Promise<Response> => {
    const path = clipId === undefined ? '/api/clips' : `/api/clips/${clipId}`;
    const request = new Request(`${ORIGIN}${path}`, {
      method,
      headers: { host: 'localhost:3000', origin: ORIGIN, cookie, ...TUS, ...headers },
      ...(body && { body, duplex: 'half' }),
    } as RequestInit);
    return handler(request, { params: Promise.resolve({ clipId }) });
  };
  return {
    begin: (about: Record<string, string>, length: number | string) =>
      ask(POST, {
        method: 'POST',
        headers: { 'upload-length': String(length), 'upload-metadata': metadata(about) },
      }),
    send: (clipId: string, offset: number, body: Uint8Array | ReadableStream<Uint8Array>, headers = {}) =>
      ask(PATCH, {
        method: 'PATCH',
        clipId,
        headers: {
          'upload-offset': String(offset),
          'content-type': 'application/offset+octet-stream',
          ...headers,
        },
        body: body as BodyInit,
      }),
    where: (clipId: string) => ask(HEAD, { method: 'HEAD', clipId }),
    drop: (clipId: string) => ask(DELETE, { method: 'DELETE', clipId }),
  };
}
type Ask = { method: string; clipId?: string; headers?: Record<string, string>; body?: BodyInit };

/** A real HTTP server before the handlers, for a client of the protocol that is not ours. */
export async function openServer(): Promise<{ address: string; close: () => Promise<void> }> {
  const server = createServer((incoming, outgoing) => {
    void (async () => {
      const clipId = /^\/api\/clips\/([^/]+)$/.exec(incoming.url ?? '')?.[1];
      const handlers: Record<string, RouteHandler> = clipId ? { HEAD, PATCH, DELETE } : { POST };
      const handler = handlers[incoming.method ?? ''];
      if (!handler) {
        outgoing.writeHead(405).end();
        return;
      }
      const hasBody = incoming.method === 'PATCH';
      const request = new Request(`${ORIGIN}${incoming.url}`, {
        method: incoming.method,
        headers: { ...(incoming.headers as Record<string, string>), origin: ORIGIN },
        ...(hasBody && { body: Readable.toWeb(incoming), duplex: 'half' }),
      } as RequestInit);
      const answer = await handler(request, { params: Promise.resolve({ clipId }) });
      outgoing.writeHead(answer.status, Object.fromEntries(answer.headers));
      outgoing.end(Buffer.from(await answer.arrayBuffer()));
    })().catch(() => outgoing.destroy());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () => new Promise((done) => server.close(() => done())),
  };
}

export const newId = () => randomUUID();
