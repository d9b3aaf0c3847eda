import { beforeAll, describe, expect, it } from 'vitest';
import { auditFilter } from '#lib/schemas/rights.ts';
import { loadAudit } from '#lib/usecases/rights/load-audit.ts';
import { loadOwnData } from '#lib/usecases/rights/load-own-data.ts';
import { noteRead } from '#lib/usecases/rights/note-read.ts';
import { withdrawConsent } from '#lib/usecases/rights/withdraw-consent.ts';
import { changeRole } from '#lib/usecases/team/change-role.ts';
import { auditWords, auditWordsForClient } from '#lib/views/rights/audit-words.ts';
import { anotherPhone, aPhone, NOW, type Phone } from '../check-in/arrange.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';
import { addMemberTo, leadOf, type MemberActor } from '../team/arrange.ts';

let phone: Phone;
let lead: MemberActor;
let coach: MemberActor;
const filter = (of: Record<string, string> = {}) => auditFilter.parse(of);
const reads = async (clientId: string) =>
  (
    await ownerQuery<{ n: number }>(
      `select count(*)::int as n from audit where client_id = $1 and action = 'record-read'`,
      [clientId],
    )
  )[0]?.n;

beforeAll(async () => {
  phone = await aPhone('Anahit');
  lead = leadOf(phone.team);
  coach = await addMemberTo(phone.team, 'coach', 'Tove Lind');
});

describe('readings of a record', () => {
  it('are noted once an hour for each person and client, however many at once', async () => {
    const { clientId } = phone;
    await Promise.all(Array.from({ length: 8 }, () => noteRead(coach, clientId, 'client-page', NOW)));
    await noteRead(coach, clientId, 'plan', NOW);
    expect(await reads(clientId)).toBe(1);
    await noteRead(lead, clientId, 'reason', NOW);
    expect(await reads(clientId)).toBe(2);
    await noteRead(phone.actor, clientId, 'client-page', NOW); // one's own is no reading
    expect(await reads(clientId)).toBe(2);
  });

  it('count again in the next hour', async () => {
    const { clientId } = await anotherPhone(phone.team, 'Ruth');
    await ownerQuery(
      `insert into audit (team_id, at, actor_user_id, actor_role, action, client_id, fields)
       values ($1, $4::timestamptz - interval '1 hour', $2, 'coach', 'record-read', $3, '{plan}')`,
      [phone.team.teamId, coach.userId, clientId, NOW],
    );
    await noteRead(coach, clientId, 'plan', NOW);
    expect(await reads(clientId)).toBe(2);
  });

  it('of somebody of another team leave no line, and break nothing', async () => {
    const theirs = await anotherPhone(await makeTestTeam('Theirs'), 'Theirs');
    await noteRead(coach, theirs.clientId, 'plan', NOW);
    expect(await reads(theirs.clientId)).toBe(0);
  });
});

describe('the record of acts', () => {
  it('says to the lead in plain words who did what to whom, narrowed by what, client and person', async () => {
    await changeRole(lead, { memberId: coach.memberId, role: 'assistant' }, NOW);
    await withdrawConsent(phone.actor, NOW);
    const said = async (of: Record<string, string>) =>
      (await loadAudit(lead, filter(of), NOW)).lines.map((line) => `${line.by} ${auditWords(line)}`);
    expect(await said({ kind: 'roles' })).toEqual([
      `${'Lead of Team of Anahit'} changed the role of Tove Lind`,
    ]);
    expect(await said({ kind: 'consents' })).toEqual(['Anahit took consent back']);
    expect(await said({ kind: 'reads', who: coach.memberId, client: phone.clientId })).toEqual([
      'Tove Lind looked at the page of Anahit',
    ]);
    expect(await said({ kind: 'nonsense', client: 'nobody' })).not.toEqual([]); // as if nothing had been chosen
  });

  it('shows a client the lines of their own record, and none of anybody else', async () => {
    const other = await anotherPhone(phone.team, 'Zofia');
    await noteRead(coach, other.clientId, 'gaps', NOW);
    const own = (await loadOwnData(phone.actor)).lines.map(
      (line) => `${line.by} ${auditWordsForClient(line)}`,
    );
    expect(own).toContain('Tove Lind looked at your page');
    expect(own).toContain('Anahit took consent back');
    const theirs = (await loadOwnData(other.actor)).lines.map(
      (line) => `${line.by} ${auditWordsForClient(line)}`,
    );
    expect(theirs).toEqual(['Tove Lind looked at your gaps']);
  });

  it('goes through every line once, page by page, though many share a moment', async () => {
    const team = await makeTestTeam('Many');
    await ownerQuery(
      `insert into audit (team_id, at, actor_role, action, fields)
       select $1, timestamptz '2026-11-24 10:00Z' - (n / 40) * interval '1 ms', 'system', 'standing-applied', '{}'
       from generate_series(1, 120) n`,
      [team.teamId],
    );
    const seen: string[] = [];
    let before: string | null = null;
    do {
      const page: Awaited<ReturnType<typeof loadAudit>> = await loadAudit(
        leadOf(team),
        filter(before ? { before } : {}),
        NOW,
      );
      seen.push(...page.lines.map(({ id }) => id));
      before = page.older;
    } while (before);
    expect(new Set(seen).size).toBe(120);
    expect(seen).toHaveLength(120);
  });
});
