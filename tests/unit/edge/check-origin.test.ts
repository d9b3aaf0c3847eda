import { describe, expect, it } from 'vitest';
import { assertOwnOrigin } from '#lib/edge/check-origin.ts';

const ask = (method: string, origin: string | undefined, host = 'plumb.example') =>
  new Request('https://plumb.example/api/x', {
    method,
    headers: { host, ...(origin === undefined ? {} : { origin }) },
  });
const real = { origin: 'https://plumb.example', production: true };
const local = { origin: 'http://localhost:3000', production: false };

describe('assertOwnOrigin', () => {
  it('accepts our own pages and every read', () => {
    expect(() => assertOwnOrigin(ask('POST', 'https://plumb.example'), real)).not.toThrow();
    expect(() => assertOwnOrigin(ask('GET', 'https://elsewhere.example'), real)).not.toThrow();
  });

  it.each([
    'https://elsewhere.example',
    'http://plumb.example',
    'https://plumb.example:8443',
    'https://plumb.example.elsewhere.example',
    'null',
    '',
    undefined,
  ])('refuses a change from %s', (origin) => {
    expect(() => assertOwnOrigin(ask('POST', origin), real)).toThrow(/did not come from a page/);
    expect(() => assertOwnOrigin(ask('DELETE', origin), real)).toThrow();
  });

  it('accepts the address that was asked for in development only', () => {
    const request = () => ask('POST', 'http://127.0.0.1:4000', '127.0.0.1:4000');
    expect(() => assertOwnOrigin(request(), local)).not.toThrow();
    expect(() => assertOwnOrigin(request(), { ...local, production: true })).toThrow();
    expect(() => assertOwnOrigin(ask('POST', 'null', 'null'), local)).toThrow();
  });
});
