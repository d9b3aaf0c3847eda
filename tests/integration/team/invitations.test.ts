import { beforeEach, describe, expect, it } from 'vitest';
import { POST as join } from '#app/api/join/team/route.ts';
import { actorOf } from '#lib/auth/actor.ts';
import { signInByPassword } from '#lib/auth/sign-in.ts';
import { inviteMember, renewMemberInvitation, withdrawInvitation } from '#lib/usecases/team/invite-member.ts';
import { loadTeam } from '#lib/usecases/team/load-team.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { browserRequest, cookieOf, noParams } from '../support/signing-in.ts';
import { leadOf, type MemberActor } from './arrange.ts';

const PASSWORD = 'a-rope-and-a-plumb-line';
let team: TestTeam;
let lead: MemberActor;
let email: string;
let count = 0;
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  count += 1;
  email = `sol-${count}@new.example`;
});

const tokenOf = ({ url }: { url: string }) => url.split('/').at(-1) ?? '';
const invite = (at = new Date()) => inviteMember(lead, { email, role: 'assistant' }, at);
const post = (token: string, over: Record<string, string> = {}) =>
  join(
    browserRequest('/api/join/team', {
      json: { token, name: 'Sol Ahlgren', password: PASSWORD, zone: 'Europe/Oslo', ...over },
    }),
    noParams,
  );

describe('an invitation', () => {
  it('makes the member of that role, who signs in with the password from then on', async () => {
    const joined = await post(tokenOf(await invite()));
    expect(joined.headers.get('location')).toBe('/');
    const actor = await actorOf(new Headers({ cookie: cookieOf(joined.headers) }));
    expect(actor).toMatchObject({ role: 'assistant', name: 'Sol Ahlgren', teamName: 'Low Wall' });
    const again = await signInByPassword(
      { email, password: PASSWORD },
      { request: browserRequest('/sign-in'), address: null },
    );
    expect((await actorOf(new Headers({ cookie: cookieOf(again) })))?.memberId).toBe(actor?.memberId);
    const loaded = await loadTeam(lead, new Date());
    expect(loaded.invitations).toEqual([]);
    expect(loaded.members.map(({ name, role, zone }) => [name, role, zone])).toContainEqual([
      'Sol Ahlgren',
      'assistant',
      'Europe/Oslo',
    ]);
  });

  it('works once, however many press at the same moment', async () => {
    const token = tokenOf(await invite());
    const answers = await Promise.all(Array.from({ length: 8 }, () => post(token)));
    expect(answers.filter((answer) => answer.headers.get('location') === '/')).toHaveLength(1);
    expect(answers.filter((answer) => answer.status === 404)).toHaveLength(7);
    expect(await ownerQuery('select 1 from "user" where email = $1', [email])).toHaveLength(1);
  });

  it('answers alike when used, out of date, withdrawn, replaced or never made', async () => {
    const late = tokenOf(await invite(new Date(Date.now() - 7 * 86_400_000 - 1000)));
    const first = await loadTeam(lead, new Date());
    const invitationId = first.invitations[0]?.id ?? '';
    const renewed = await renewMemberInvitation(lead, invitationId, new Date());
    const newest = await renewMemberInvitation(lead, invitationId, new Date());
    await withdrawInvitation(lead, { invitationId, withdrawn: true }, new Date());
    const texts = await Promise.all(
      [late, tokenOf(renewed), tokenOf(newest), 'never-made'].map(async (token) =>
        (await post(token)).text(),
      ),
    );
    expect(new Set(texts).size).toBe(1);
    await withdrawInvitation(lead, { invitationId, withdrawn: false }, new Date());
    expect((await post(tokenOf(newest))).headers.get('location')).toBe('/');
  });

  it('is not used up by a refused name or password', async () => {
    const token = tokenOf(await invite());
    const short = await post(token, { password: 'short', name: ' ' });
    expect(short.status).toBe(400);
    expect((await short.json()).error.fields).toEqual({
      name: 'write your name',
      password: 'is shorter than 12 characters: take a longer one',
    });
    expect((await post(token)).headers.get('location')).toBe('/');
  });

  it('is mailed with the link and stored as a hash only', async () => {
    const made = await invite();
    const [sent] = await ownerQuery<{ to: string; text: string }>(
      `select body->>'to' as to, body->>'text' as text from outbox where team_id = $1`,
      [team.teamId],
    );
    expect(sent?.to).toBe(email);
    expect(sent?.text).toContain(made.url);
    const rows = await ownerQuery<{ row: string }>(
      'select member_invitation::text as row from member_invitation',
    );
    expect(rows.filter(({ row }) => row.includes(tokenOf(made)))).toEqual([]);
  });

  it('is refused for who signs in already or is asked already', async () => {
    await invite();
    await expect(invite()).rejects.toThrow('is asked in already');
    const [member] = await ownerQuery<{ email: string }>('select email from member where id = $1', [
      team.memberId,
    ]);
    await expect(
      inviteMember(lead, { email: member?.email ?? '', role: 'coach' }, new Date()),
    ).rejects.toThrow('signs in with this e-mail address already');
  });
});
