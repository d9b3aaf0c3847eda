import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { AppError } from '#lib/errors.ts';
import { makeTestTeam, type TestTeam } from '../support/database.ts';
import { browserRequest, cookieFor, noParams, ORIGIN } from '../support/signing-in.ts';

const body = z.strictObject({
  note: z.string('note must be a text').max(20, 'note must have at most 20 letters'),
});
let cookie: string;
let team: TestTeam;
let ran: number;
beforeAll(async () => {
  team = await makeTestTeam();
  cookie = await cookieFor(team.userId);
});

const route = defineRoute(
  {
    permission: 'see-board',
    params: z.object({ id: z.uuid() }),
    query: z.strictObject({ q: z.string().optional() }),
    body,
  },
  ({ actor, body: given, params, query }) => {
    ran += 1;
    if (given.note === 'bug') throw new Error('seeded words about pain');
    if (given.note === 'gone')
      throw new AppError('conflict', 'It was changed meanwhile.', { fields: { note: 'Read it again.' } });
    return given.note === 'nothing'
      ? undefined
      : { note: given.note, team: actor.scope.teamId, id: params.id, q: query.q };
  },
);
const id = '0b0e5a7c-1111-4222-8333-444455556666';
const send = (request: Request, params: unknown = { id }) => {
  ran = 0;
  return route(request, { params: Promise.resolve(params) });
};
const json = (value: unknown, path = '/api/x') => send(browserRequest(path, { json: value, cookie }));
const raw = (text: string) =>
  send(
    new Request(`${ORIGIN}/api/x`, {
      method: 'POST',
      body: text,
      headers: { origin: ORIGIN, cookie, 'content-type': 'application/json' },
    }),
  );

describe('a defined route', () => {
  it('hands the parsed parts to the handler, from JSON and from a form', async () => {
    const expected = { note: 'hello', team: team.teamId, id };
    expect(await (await json({ note: 'hello' }, '/api/x?q=a')).json()).toEqual({ ...expected, q: 'a' });
    expect(await (await send(browserRequest('/api/x', { form: { note: 'hello' }, cookie }))).json()).toEqual(
      expected,
    );
    expect((await json({ note: 'nothing' })).status).toBe(204);
  });

  it('names the field and the fix', async () => {
    const answer = await json({ note: 'x'.repeat(21) });
    expect(answer.status).toBe(400);
    expect(await answer.json()).toEqual({
      error: {
        code: 'invalid',
        message: 'note: note must have at most 20 letters',
        fields: { note: 'note must have at most 20 letters' },
      },
    });
    expect(ran).toBe(0);
  });

  it.each([
    ['a field too many', '{"note":"a","teamId":"b"}', 400],
    ['a field that reaches into objects', '{"note":"a","__proto__":{"role":"lead"}}', 400],
    ['a key twice', '{"note":"a","note":"b"}', 400],
    ['half a pair of characters', '{"note":"\\ud800"}', 400],
    ['a null byte', '{"note":"\\u0000"}', 400],
    ['a list for a text', '{"note":["a"]}', 400],
    ['no JSON', 'note=a', 400],
    ['nothing', '', 400],
    ['ten thousand levels', `${'['.repeat(10_000)}${']'.repeat(10_000)}`, 400],
    ['more than 64 KB', JSON.stringify({ note: 'x'.repeat(70_000) }), 413],
  ])('refuses %s before the handler runs', async (_, text, status) => {
    expect((await raw(text)).status).toBe(status);
    expect(ran).toBe(0);
  });

  it('answers an address that cannot be an id like one that is not there', async () => {
    expect(
      (await send(browserRequest('/api/x', { json: { note: 'a' }, cookie }), { id: "' or 1=1" })).status,
    ).toBe(404);
    expect((await json({ note: 'a' }, '/api/x?other=1')).status).toBe(400);
  });

  it('tells a refusal of the handler by its code', async () => {
    const answer = await json({ note: 'gone' });
    expect(answer.status).toBe(409);
    expect(await answer.json()).toMatchObject({
      error: { code: 'conflict', fields: { note: 'Read it again.' } },
    });
  });

  it('tells nothing of an error of ours but an id, and goes on', async () => {
    const answer = await json({ note: 'bug' });
    const text = await answer.text();
    expect(answer.status).toBe(500);
    expect(text).toMatch(/name [0-9a-f-]{36}\./);
    expect(text).not.toMatch(/seeded|pain|Error|\.ts/);
    expect((await json({ note: 'hello' })).status).toBe(200);
  });

  it('limits one person with a time to wait, and nobody else', async () => {
    const limited = defineRoute(
      { permission: 'see-board', limit: { name: 'twice', max: 2, windowSeconds: 60 } },
      () => ({}),
    );
    const other = await cookieFor((await makeTestTeam()).userId);
    const ask = (as: string) => limited(browserRequest('/api/y', { json: {}, cookie: as }), noParams);
    expect([(await ask(cookie)).status, (await ask(cookie)).status]).toEqual([200, 200]);
    const third = await ask(cookie);
    expect(third.status).toBe(429);
    expect(Number(third.headers.get('retry-after'))).toBeGreaterThan(0);
    expect((await ask(other)).status).toBe(200);
  });
});
