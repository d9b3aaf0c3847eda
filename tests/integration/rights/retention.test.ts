import { beforeEach, describe, expect, it } from 'vitest';
import { announceAged } from '#lib/usecases/rights/announce-aged.ts';
import { takeErasureBack } from '#lib/usecases/rights/ask-erasure.ts';
import { chooseRetention } from '#lib/usecases/rights/choose-retention.ts';
import { eraseDueClients } from '#lib/usecases/rights/erase-client.ts';
import { loadRecords } from '#lib/usecases/rights/load-records.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { leadOf } from '../team/arrange.ts';

const NOW = new Date('2026-11-24T19:00:00.000Z');
const inDays = (days: number) => new Date(NOW.getTime() + days * 86_400_000);
let team: TestTeam;

async function left(
  name: string,
  at: string,
  more: { under18?: boolean; birthYear?: number } = {},
): Promise<string> {
  const { clientId } = await makeTestClient(team, { name, standing: 'left' });
  await ownerQuery(
    'update client set left_at = $2, under18 = $3, birth_year = $4, email = $5 where id = $1',
    [clientId, at, more.under18 ?? false, more.birthYear ?? null, `${clientId}@client.example`],
  );
  return clientId;
}
const aged = async (at = NOW) => (await loadRecords(leadOf(team), at)).aged.map(({ name }) => name);
const isThere = async (clientId: string) =>
  (await ownerQuery('select from client where id = $1', [clientId])).length === 1;

beforeEach(async () => {
  await ownerQuery('update team set retention_erases = false');
  team = await makeTestTeam('Low Wall');
});

describe('how long records are kept', () => {
  it('lists whose six years are over or will be in 30 days, and deletes nobody unless it was switched on', async () => {
    const old = await left('Old', '2020-11-01T00:00:00Z');
    await left('Soon', '2020-12-20T00:00:00Z');
    await left('Later', '2020-12-26T00:00:00Z');
    await makeTestClient(team, { name: 'Trains' });
    expect(await aged()).toEqual(['Old', 'Soon']);
    expect(await announceAged(NOW)).toBe(0);
    expect(await eraseDueClients(inDays(400))).toBe(0);
    expect(await isThere(old)).toBe(true);
  });

  it('counts from the end of the year of turning 18, and never by itself without a year of birth', async () => {
    await left('Was fourteen', '2018-01-01T00:00:00Z', { birthYear: 2004, under18: true }); // 18 in 2022
    await left('Age unknown', '2010-01-01T00:00:00Z', { under18: true });
    await left('Grown', '2018-01-01T00:00:00Z', { birthYear: 1980 });
    expect(await aged()).toEqual(['Grown']);
    expect(await aged(new Date('2028-12-15T00:00:00Z'))).toEqual(['Grown', 'Was fourteen']);
  });

  it('switched on, announces once to leads and to who trained, and deletes after 30 days', async () => {
    const old = await left('Old', '2020-11-01T00:00:00Z');
    await chooseRetention(leadOf(team), { years: 6, erases: true });
    expect(await announceAged(NOW)).toBe(1);
    expect(await announceAged(inDays(1))).toBe(0);
    const mails = await ownerQuery<{ to: string; subject: string; text: string }>(
      `select body->>'to' as to, body->>'subject' as subject, body->>'text' as text from outbox
       where team_id = $1 and kind = 'mail' order by 1`,
      [team.teamId],
    );
    expect(mails.map(({ to }) => to).sort()).toEqual(
      [`${team.userId}@test.example`, `${old}@client.example`].sort(),
    );
    for (const { subject, text } of mails) {
      expect(subject).toContain('Thursday 24 December 2026');
      expect(text).not.toContain('Old');
    }
    expect(await eraseDueClients(inDays(29.9))).toBe(0);
    expect(await eraseDueClients(inDays(30))).toBe(1);
    expect(await isThere(old)).toBe(false);
  });

  it('kept on by the lead, is quiet for a year', async () => {
    const old = await left('Old', '2020-11-01T00:00:00Z');
    await chooseRetention(leadOf(team), { years: 6, erases: true });
    await announceAged(NOW);
    await takeErasureBack(leadOf(team), old, inDays(10));
    expect(await eraseDueClients(inDays(40))).toBe(0);
    expect(await announceAged(inDays(360))).toBe(0);
    expect(await announceAged(inDays(376))).toBe(1);
  });

  it('says in the record of acts what of it was changed, once', async () => {
    await chooseRetention(leadOf(team), { years: 10, erases: false });
    await chooseRetention(leadOf(team), { years: 10, erases: false });
    const lines = await ownerQuery<{ fields: string[] }>(
      `select fields from audit where team_id = $1 and action = 'retention-changed'`,
      [team.teamId],
    );
    expect(lines).toEqual([{ fields: ['years'] }]);
  });
});
