import { beforeAll, describe, expect, it } from 'vitest';
import { POST as join } from '#app/api/join/route.ts';
import { actorOf } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { inviteClient } from '#lib/usecases/invite-client.ts';
import { makeEntryLink } from '#lib/usecases/make-entry-link.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { browserRequest, cookieFor, cookieOf, noParams, ORIGIN } from '../support/signing-in.ts';

let team: TestTeam;
beforeAll(async () => {
  team = await makeTestTeam();
});
const post = (token: string) => join(browserRequest('/api/join', { form: { token } }), noParams);
const link = (clientId: string, at = new Date()) =>
  withTeamPg(team.scope, (tx) => makeEntryLink(tx, { clientId, purpose: 'invitation', origin: ORIGIN, at }));
const sessionsOf = async (userId: string) =>
  (await ownerQuery('select id from session where user_id = $1', [userId])).length;

describe('an entry link', () => {
  it('signs in once, however many press at the same moment', async () => {
    const { clientId, userId } = await makeTestClient(team);
    const { token } = await link(clientId);
    const answers = await Promise.all(Array.from({ length: 50 }, () => post(token)));
    expect(answers.filter((answer) => answer.headers.get('location') === '/')).toHaveLength(1);
    expect(answers.filter((answer) => answer.headers.get('location') === '/join/closed')).toHaveLength(49);
    expect(await sessionsOf(userId)).toBe(1);
  });

  it('makes the client of that team of whoever presses', async () => {
    const { clientId } = await makeTestClient(team, { name: 'Joins', standing: 'invited' });
    const { token } = await link(clientId);
    const cookie = cookieOf((await post(token)).headers);
    const actor = await actorOf(new Headers({ cookie }));
    expect(actor).toMatchObject({
      clientId,
      role: 'client',
      memberId: null,
      name: 'Joins',
      teamName: 'Test team',
    });
    expect(actor?.scope.teamId).toBe(team.teamId);
    const [row] = await ownerQuery<{ standing: string }>('select standing from client where id = $1', [
      clientId,
    ]);
    expect(row?.standing).toBe('starting');
  });

  it('answers alike when used, out of date, replaced or never made', async () => {
    const [used, old, replaced] = [
      await makeTestClient(team),
      await makeTestClient(team),
      await makeTestClient(team),
    ];
    const usedLink = await link(used.clientId);
    await post(usedLink.token);
    const oldLink = await link(old.clientId, new Date(Date.now() - 7 * 86_400_000 - 1000));
    const replacedLink = await link(replaced.clientId);
    const newer = await link(replaced.clientId);
    const answers = await Promise.all(
      [usedLink.token, oldLink.token, replacedLink.token, 'never-made'].map(post),
    );
    const looks = answers.map((answer) => [answer.status, [...answer.headers].join(' ')]);
    expect(new Set(looks.map(String)).size).toBe(1);
    expect(answers[0]?.headers.get('location')).toBe('/join/closed');
    expect((await post(newer.token)).headers.get('location')).toBe('/');
  });

  it('still works on the last second of its seven days', async () => {
    const { clientId } = await makeTestClient(team);
    const { token } = await link(clientId, new Date(Date.now() - 7 * 86_400_000 + 5000));
    expect((await post(token)).headers.get('location')).toBe('/');
  });

  it('is stored as a hash only, and is long enough not to be guessed', async () => {
    const { clientId } = await makeTestClient(team);
    const { token } = await link(clientId);
    expect(Buffer.from(token, 'base64url').length).toBeGreaterThanOrEqual(16);
    const rows = await ownerQuery<{ row: string }>('select entry_link::text as row from entry_link');
    expect(rows.filter(({ row }) => row.includes(token))).toEqual([]);
  });

  it('is mailed to a client with an address and makes an account for one without', async () => {
    const { clientId } = await makeTestClient(team, { standing: 'invited' });
    await ownerQuery(`update client set email = 'a@b.example', user_id = null where id = $1`, [clientId]);
    const actor = await actorOf(new Headers({ cookie: await cookieFor(team.userId) }));
    if (!actor) throw new Error('the lead is signed in');
    const { url, mailedTo } = await inviteClient(actor, clientId, new Date());
    expect(mailedTo).toBe('a@b.example');
    const [mail] = await ownerQuery<{ text: string }>(
      `select body->>'text' as text from outbox where client_id = $1`,
      [clientId],
    );
    expect(mail?.text).toContain(url);
    const [user] = await ownerQuery<{ email: string }>(
      'select u.email from "user" u join client c on c.user_id = u.id where c.id = $1',
      [clientId],
    );
    expect(user?.email).toMatch(/@link-only\.invalid$/);
    expect(
      await ownerQuery(`select 1 from audit where action = 'client-invited' and client_id = $1`, [clientId]),
    ).toHaveLength(1);
  });

  it('of another team cannot be made', async () => {
    const other = await makeTestTeam('Other');
    const theirs = await makeTestClient(other);
    await expect(link(theirs.clientId)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('lets nobody in who left', async () => {
    const { clientId, userId } = await makeTestClient(team);
    const { token } = await link(clientId);
    await ownerQuery(`update client set standing = 'left' where id = $1`, [clientId]);
    expect((await post(token)).headers.get('location')).toBe('/join/closed');
    expect(await sessionsOf(userId)).toBe(0);
  });
});
