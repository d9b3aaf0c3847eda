import { createECDH, randomBytes } from 'node:crypto';
import { createServer, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { PushPhone } from '#lib/schemas/notice.ts';

type Pushed = { path: string; headers: IncomingHttpHeaders; body: Buffer };
export type PushService = {
  pushed: Pushed[];
  /** What it answers from now on. */
  status: number;
  phone: (name: string) => PushPhone;
  close: () => Promise<void>;
};

/** A push service on this machine that keeps what it was sent. */
export async function openPushService(): Promise<PushService> {
  const pushed: Pushed[] = [];
  const server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      pushed.push({ path: request.url ?? '', headers: request.headers, body: Buffer.concat(parts) });
      response.writeHead(service.status).end();
    });
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  const service: PushService = {
    pushed,
    status: 201,
    phone: (name) => ({
      endpoint: `http://127.0.0.1:${port}/phone/${name}`,
      keys: {
        p256dh: createECDH('prime256v1').generateKeys('base64url'),
        auth: randomBytes(16).toString('base64url'),
      },
    }),
    close: () => new Promise((closed) => server.close(() => closed())),
  };
  return service;
}
