import { describe, expect, it } from 'vitest';
import { pageHeaders, routeHeaders } from '#lib/edge/security-headers.ts';

const serving = { https: true, development: false };

function policy(headers: Record<string, string>): Map<string, string> {
  const rules = (headers['content-security-policy'] ?? '').split('; ');
  return new Map(rules.map((rule) => [rule.split(' ')[0] ?? '', rule.split(' ').slice(1).join(' ')]));
}

describe('the headers of a page', () => {
  it('let only scripts with the nonce run, and nothing of other hosts', () => {
    const rules = policy(pageHeaders('abc', serving));
    expect(rules.get('default-src')).toBe("'self'");
    expect(rules.get('script-src')).toBe("'self' 'nonce-abc' 'strict-dynamic'");
    expect(rules.get('form-action')).toBe("'self'");
    for (const name of ['object-src', 'base-uri', 'frame-ancestors'])
      expect(rules.get(name), name).toBe("'none'");
    const all = [...rules]
      .filter(([name]) => name !== 'style-src-attr')
      .map(([, value]) => value)
      .join(' ');
    expect(all).not.toMatch(/unsafe|https?:|\*/);
  });

  it('keep browsers on https for more than a year, on https only', () => {
    expect(
      Number(pageHeaders('a', serving)['strict-transport-security']?.match(/max-age=(\d+)/)?.[1]),
    ).toBeGreaterThan(31_536_000);
    expect(pageHeaders('a', { ...serving, https: false })).not.toHaveProperty('strict-transport-security');
  });

  it('say no sniffing, no frames, and no referrer to others', () => {
    for (const headers of [pageHeaders('a', serving), routeHeaders(serving, '/api/board/acts')]) {
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'same-origin',
      });
      expect(policy(headers).get('frame-ancestors')).toBe("'none'");
    }
    expect(policy(routeHeaders(serving, '/api/board/acts')).get('default-src')).toBe("'none'");
  });

  it('lets only the answer to the plain form post a form, and to us', () => {
    expect(policy(routeHeaders(serving, '/api/check-ins/plain')).get('form-action')).toBe("'self'");
    expect(policy(routeHeaders(serving, '/api/check-ins')).get('form-action')).toBe("'none'");
  });
});
