import { describe, expect, it } from 'vitest';
import { countRequest } from '#lib/db/rate-limits.ts';
import { limitRequest } from '#lib/edge/rate-limit.ts';

const rule = { max: 3, windowSeconds: 60 };
const at = (seconds: number) => new Date(Date.UTC(2026, 0, 5, 9, 0, seconds));

describe('countRequest', () => {
  it('allows up to the limit and says when the window is over', async () => {
    const allowed = [];
    for (const second of [0, 10, 20, 30]) allowed.push(await countRequest('a', rule, at(second)));
    expect(allowed.map((one) => one.allowed)).toEqual([true, true, true, false]);
    expect(allowed.at(-1)?.retryAfterSeconds).toBe(30);
    expect((await countRequest('a', rule, at(59))).allowed).toBe(false);
    expect((await countRequest('a', rule, at(60))).allowed).toBe(true);
  });

  it('lets no more through when all come at once', async () => {
    const all = await Promise.all(Array.from({ length: 30 }, () => countRequest('b', rule)));
    expect(all.filter((one) => one.allowed)).toHaveLength(3);
  });

  it('keeps keys apart', async () => {
    for (let i = 0; i < 4; i += 1) await countRequest('c', rule);
    expect((await countRequest('d', rule)).allowed).toBe(true);
  });
});

describe('limitRequest', () => {
  const limit = { name: 'x', max: 1, windowSeconds: 3600 };

  it('refuses one person with the time to wait, and nobody else', async () => {
    await limitRequest(limit, 'ana');
    await expect(limitRequest(limit, 'ana')).rejects.toMatchObject({
      code: 'too-many',
      message: /Try again in 60 minutes/,
    });
    await limitRequest(limit, 'ben');
  });

  it('gives everybody together more room when addresses are not known', async () => {
    for (let i = 0; i < 20; i += 1) await limitRequest(limit, null);
    await expect(limitRequest(limit, null)).rejects.toMatchObject({ code: 'too-many' });
  });
});
