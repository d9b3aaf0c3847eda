import { beforeAll, describe, expect, it } from 'vitest';
import { POST as signIn } from '#app/api/auth/sign-in/email/route.ts';
import { POST as mailLink } from '#app/api/sign-in-link/route.ts';
import { POST as signOut } from '#app/api/sign-out/route.ts';
import { actorOf } from '#lib/auth/actor.ts';
import { addMember } from '#lib/usecases/add-member.ts';
import { makeTeam } from '#lib/usecases/make-team.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor, cookieOf, noParams } from '../support/signing-in.ts';

const password = 'a long wall of chalk';
const lead = { name: 'Lead', email: 'Lead@Team.example', password, zone: 'Europe/Lisbon' };
let made: Awaited<ReturnType<typeof makeTeam>>;
beforeAll(async () => {
  made = await makeTeam({ name: 'Made', lead });
});

const forget = () => ownerQuery('delete from rate_limit');
const tryIn = (email: string, given: string, headers: Record<string, string> = {}) =>
  signIn(browserRequest('/api/auth/sign-in/email', { json: { email, password: given }, headers }), noParams);
const actorWith = (cookie: string) => actorOf(new Headers({ cookie }));

describe('a coach', () => {
  it('signs in with e-mail and password, whatever the letters’ case, and is who the team says', async () => {
    await forget();
    const answer = await tryIn('LEAD@team.example', password);
    expect(answer.status).toBe(200);
    expect(await answer.json()).toEqual({ signedIn: true });
    const [cookie = ''] = answer.headers.getSetCookie();
    expect(cookie).toMatch(/^plumbline=.*; Path=\/; HttpOnly; SameSite=Lax$/);
    expect(await actorWith(cookieOf(answer.headers))).toMatchObject({
      role: 'lead',
      memberId: made.memberId,
      clientId: null,
      teamName: 'Made',
    });
  });

  it('gets the same answer for a wrong password and an unknown address', async () => {
    await forget();
    const wrong = await tryIn(lead.email, 'not the password');
    const unknown = await tryIn('nobody@team.example', 'not the password');
    expect([wrong.status, await wrong.json()]).toEqual([unknown.status, await unknown.json()]);
    expect(wrong.status).toBe(401);
    expect(wrong.headers.getSetCookie()).toEqual([]);
  });

  it('is held after five tries at one account, also in parallel and from invented addresses', async () => {
    await forget();
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, i) =>
        tryIn(lead.email, `guess ${i}`, { 'x-forwarded-for': `10.0.0.${i}` }),
      ),
    );
    expect(answers.filter((answer) => answer.status === 401)).toHaveLength(5);
    const held = answers.filter((answer) => answer.status === 429);
    expect(held).toHaveLength(15);
    expect(Number(held[0]?.headers.get('retry-after'))).toBeGreaterThan(0);
    expect((await tryIn(lead.email, password)).status).toBe(429);
    await forget();
    expect((await tryIn(lead.email, password)).status).toBe(200);
  });

  it('can be added by the lead, once per address', async () => {
    const actor = await actorWith(await cookieFor(made.userId));
    if (!actor) throw new Error('the lead is signed in');
    const person = { name: 'New', email: 'new@team.example', password, zone: 'UTC', role: 'coach' as const };
    const added = await addMember(actor, person, new Date());
    expect(await actorWith(await cookieFor(added.userId))).toMatchObject({
      role: 'coach',
      memberId: added.memberId,
    });
    await expect(addMember(actor, person, new Date())).rejects.toMatchObject({ code: 'conflict' });
  });
});

describe('a session', () => {
  it('ends on sign-out and cannot be played again', async () => {
    const cookie = await cookieFor(made.userId);
    expect(await actorWith(cookie)).not.toBeNull();
    const answer = await signOut(browserRequest('/api/sign-out', { method: 'POST', cookie }), noParams);
    expect([answer.status, answer.headers.get('location')]).toEqual([303, '/sign-in']);
    expect(answer.headers.getSetCookie().join()).toContain('Max-Age=0');
    expect(await actorWith(cookie)).toBeNull();
  });

  it('is over for a member after twelve idle hours and after fourteen days, for a client later', async () => {
    const team = await makeTestTeam();
    const { userId } = await makeTestClient(team);
    const [coach, client] = [await cookieFor(team.userId), await cookieFor(userId)];
    const age = (column: string, by: string) =>
      ownerQuery(`update session set ${column} = now() - interval '${by}'`);
    await age('updated_at', '13 hours');
    expect(await actorWith(coach)).toBeNull();
    expect(await actorWith(client)).toMatchObject({ role: 'client' });
    await age('updated_at', '1 hour');
    expect(await actorWith(coach)).toMatchObject({ role: 'lead' });
    await age('created_at', '15 days');
    expect(await actorWith(coach)).toBeNull();
    await age('updated_at', '91 days');
    expect(await actorWith(client)).toBeNull();
  });

  it('of a member who left is nobody’s at once', async () => {
    const team = await makeTestTeam();
    const cookie = await cookieFor(team.userId);
    expect(await actorWith(cookie)).not.toBeNull();
    await ownerQuery('update member set left_at = now() where id = $1', [team.memberId]);
    expect(await actorWith(cookie)).toBeNull();
  });

  it('is not made from a cookie that somebody wrote', async () => {
    const [name = ''] = (await cookieFor(made.userId)).split('=');
    expect(await actorWith(`${name}=abc.def`)).toBeNull();
  });

  it('leaves one line in the audit', async () => {
    const team = await makeTestTeam();
    await cookieFor(team.userId);
    expect(
      await ownerQuery(`select 1 from audit where team_id = $1 and action = 'signed-in'`, [team.teamId]),
    ).toHaveLength(1);
  });
});

describe('asking for a link by mail', () => {
  const ask = (email: string) => mailLink(browserRequest('/api/sign-in-link', { form: { email } }), noParams);

  it('answers alike for known and unknown addresses, and mails the known one', async () => {
    const team = await makeTestTeam();
    const { clientId } = await makeTestClient(team);
    await ownerQuery(`update client set email = 'Known@client.example' where id = $1`, [clientId]);
    const [known, unknown] = [await ask('known@client.example'), await ask('unknown@client.example')];
    expect([known.status, [...known.headers].join()]).toEqual([unknown.status, [...unknown.headers].join()]);
    await expect
      .poll(
        async () =>
          (await ownerQuery(`select 1 from outbox where kind = 'mail' and client_id = $1`, [clientId]))
            .length,
      )
      .toBe(1);
  });

  it('is refused the fourth time within a quarter of an hour', async () => {
    const answers = [];
    for (let i = 0; i < 4; i += 1) answers.push((await ask('often@client.example')).status);
    expect(answers).toEqual([303, 303, 303, 429]);
  });
});
