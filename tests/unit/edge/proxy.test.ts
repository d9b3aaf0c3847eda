import { NextRequest } from 'next/server.js';
import { describe, expect, it } from 'vitest';
import { proxy } from '../../../proxy.ts';

const ask = (path: string, headers: Record<string, string> = {}) =>
  proxy(new NextRequest(`http://localhost:3000${path}`, { headers }));
const policy = (response: Response) => response.headers.get('content-security-policy') ?? '';
const nonce = (text: string) => /'nonce-([^']+)'/.exec(text)?.[1];
/** Next passes changed request headers on under this name. */
const passedOn = (response: Response, name: string) => response.headers.get(`x-middleware-request-${name}`);

describe('proxy', () => {
  it('gives every page a nonce of its own, the same to the browser and to the page', () => {
    const [one, two] = [ask('/clients'), ask('/clients')];
    expect(Buffer.from(nonce(policy(one)) ?? '', 'base64').length).toBeGreaterThanOrEqual(16);
    expect(nonce(policy(one))).not.toBe(nonce(policy(two)));
    expect(passedOn(one, 'content-security-policy')).toBe(policy(one));
  });

  it('lets no request bring its own nonce', () => {
    const sent = { 'content-security-policy': "script-src 'nonce-mine'", 'x-nonce': 'mine' };
    const response = ask('/clients', sent);
    expect(passedOn(response, 'content-security-policy')).not.toContain('nonce-mine');
    expect(passedOn(response, 'x-nonce')).toBe(nonce(policy(response)));
    expect(passedOn(ask('/api/clients', sent), 'x-nonce')).toBeNull();
  });

  it('lets nothing run in the answer of a route', () => {
    expect(policy(ask('/api/clients'))).toMatch(/^default-src 'none'/);
    expect(policy(ask('/apidocs'))).toMatch(/^default-src 'self'/);
  });
});
