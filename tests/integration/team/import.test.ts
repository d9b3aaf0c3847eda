import { beforeEach, describe, expect, it } from 'vitest';
import { importClients, previewClientList } from '#lib/usecases/import/import-clients.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { addMemberTo, leadOf, type MemberActor } from './arrange.ts';

const NOW = new Date('2026-11-25T09:00:00.000Z');
const LIST =
  'Name;E-mail;Zone;Coach;Goal;Under 18;Started\n' +
  'Ada Lund;ada@a.example;Europe/Oslo;Ruth;=press();no;2024-03-31\n' +
  'Bo Berg;;;;;yes;\n' +
  'Cem Aydin;not-an-address;;;;;\n';
let team: TestTeam;
let lead: MemberActor;
let ruth: MemberActor;
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  ruth = await addMemberTo(team, 'coach', 'Ruth');
});

type Row = { line: number; sameName: boolean };
const take = (lines: (number | Row)[], links: 'mail' | 'show' | 'later' = 'later', text = LIST) =>
  importClients(
    lead,
    {
      do: 'import',
      text,
      links,
      rows: lines.map((one) => (typeof one === 'number' ? { line: one, sameName: false } : one)),
    },
    NOW,
  );
const clients = () =>
  ownerQuery<{ name: string }>(
    `select name, email, zone, coach_id, goal, under18, standing from client where team_id = $1 order by name`,
    [team.teamId],
  );

describe('a list of clients', () => {
  it('is looked through before anything is written', async () => {
    const { rows, columns } = await previewClientList(lead, LIST, NOW);
    expect(columns).toHaveLength(7);
    expect(rows.map(({ problems }) => problems.length)).toEqual([0, 0, 1]);
    expect(await clients()).toEqual([]);
  });

  it('brings the ticked rows, each with its own coach, and what it says of the start as a note', async () => {
    await take([2, 3]);
    expect(await clients()).toEqual([
      {
        name: 'Ada Lund',
        email: 'ada@a.example',
        zone: 'Europe/Oslo',
        coach_id: ruth.memberId,
        goal: '=press()',
        under18: false,
        standing: 'invited',
      },
      {
        name: 'Bo Berg',
        email: null,
        zone: 'Europe/Berlin',
        coach_id: team.memberId,
        goal: '',
        under18: true,
        standing: 'invited',
      },
    ]);
    const notes = await ownerQuery('select text from private_note where team_id = $1', [team.teamId]);
    expect(notes).toEqual([
      { text: 'Training with us since Sunday 31 March 2024, as the imported list says.' },
    ]);
    const trail = await ownerQuery<{ action: string }>(
      'select action from audit where team_id = $1 order by action',
      [team.teamId],
    );
    expect(trail.map(({ action }) => action)).toEqual(['client-made', 'client-made', 'list-imported']);
  });

  it('brings all or nobody', async () => {
    await expect(take([2, 3, 4])).rejects.toMatchObject({
      code: 'invalid',
      fields: { 'line 4': 'email “not-an-address” is not an e-mail address' },
    });
    await expect(take([2, 9])).rejects.toThrow('line 9: is not a row of this list. Nobody was added.');
    expect(await clients()).toEqual([]);
  });

  it('sent again adds nobody twice, also at the same moment', async () => {
    const both = await Promise.allSettled([take([2, 3]), take([2, 3])]);
    expect(both.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    await expect(take([2, 3])).rejects.toThrow('this e-mail address is in your team already');
    await expect(take([3])).rejects.toThrow('this name is in your team already');
    expect(await clients()).toHaveLength(2);
    const again = await previewClientList(lead, LIST, NOW);
    expect(again.rows.map(({ double }) => double?.by)).toEqual(['e-mail', 'name', undefined]);
  });

  it('takes a second person of one name when told so, never a second one of one address', async () => {
    await take([2, 3]);
    await take([{ line: 3, sameName: true }]);
    expect((await clients()).map(({ name }) => name)).toEqual(['Ada Lund', 'Bo Berg', 'Bo Berg']);
    await expect(take([{ line: 2, sameName: true }])).rejects.toThrow('this e-mail address');
  });

  it('mails links to who has an address, and shows those of the others', async () => {
    const done = await take([2, 3], 'mail');
    expect(done.clients.map(({ name, mailedTo, url }) => [name, mailedTo, url === null])).toEqual([
      ['Ada Lund', 'ada@a.example', true],
      ['Bo Berg', null, false],
    ]);
    const mails = await ownerQuery<{ to: string }>(
      `select body->>'to' as to from outbox where team_id = $1`,
      [team.teamId],
    );
    expect(mails).toEqual([{ to: 'ada@a.example' }]);
  });

  it('shows every link when asked, and mails none', async () => {
    const done = await take([2, 3], 'show');
    expect(done.clients.every(({ url }) => url?.includes('/join/'))).toBe(true);
    expect(await ownerQuery('select 1 from outbox where team_id = $1', [team.teamId])).toEqual([]);
  });

  it('of 500 clients is taken in one go', async () => {
    const text = `name,email\n${Array.from({ length: 500 }, (_, at) => `Client ${at},c${at}@many.example`).join('\n')}\n`;
    await take(
      Array.from({ length: 500 }, (_, at) => at + 2),
      'mail',
      text,
    );
    expect(await clients()).toHaveLength(500);
  });
});
