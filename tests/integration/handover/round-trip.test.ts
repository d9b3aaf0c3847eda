import { beforeAll, describe, expect, it } from 'vitest';
import { packRecordSchema } from '#lib/schemas/pack-record.ts';
import { lookAtPack, type PackSeen, takeClientIn } from '#lib/usecases/handover/take-client-in.ts';
import { openPack } from '#tests/fixtures/open-pack.ts';
import type { Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { auditOf, leadOf, type MemberActor } from '../team/arrange.ts';
import { aFullClient, anotherTeam, LATER, packOfClient } from './arrange.ts';
import { sameButForIds, withoutTimesOfItsOwn } from './compare-records.ts';

let phone: Phone;
let pack: Buffer;
let other: Awaited<ReturnType<typeof anotherTeam>>;
let lead: MemberActor;
beforeAll(async () => {
  phone = await aFullClient('Noor Adeyemi');
  lead = leadOf(phone.team);
  other = await anotherTeam('High Bar');
  pack = await packOfClient(lead, phone.clientId);
});

async function countsOf(teamId: string): Promise<Record<string, number>> {
  const tables = await ownerQuery<{ name: string }>(
    `select table_name as name from information_schema.columns where table_schema = 'public' and column_name = 'team_id'`,
  );
  const each = tables.map(
    ({ name }) => `select '${name}' as name, count(*)::int as n from ${name} where team_id = $1`,
  );
  const rows = await ownerQuery<{ name: string; n: number }>(each.join(' union all '), [teamId]);
  return Object.fromEntries(rows.map(({ name, n }) => [name, n]));
}

describe('a pack that is taken in', () => {
  let seen: PackSeen;
  it('is tried first, and leaves nothing behind', async () => {
    const before = await countsOf(other.team.teamId);
    seen = await lookAtPack(other.lead, pack, LATER);
    expect(await countsOf(other.team.teamId)).toEqual(before);
    expect(seen.client).toMatchObject({
      name: 'Noor Adeyemi',
      standing: 'in-training',
      zone: 'Europe/Berlin',
    });
    expect(seen.from.team).toBe('Team of Noor Adeyemi');
    expect(seen.leftOut).toEqual([]);
    expect(seen.ladders.length).toBeGreaterThan(0);
    expect(seen.ladders.filter(({ own }) => own === null)).toEqual([]);
    expect(seen.consents.map(({ toTeam }) => toTeam)).toContain('Team of Noor Adeyemi');
  });

  it('carries something of every table, so that the round trip says something', async () => {
    const record = packRecordSchema.parse(JSON.parse((await openPack(pack)).text('data/record.json')));
    const empty = Object.entries(record).filter(([, rows]) => Array.isArray(rows) && rows.length === 0);
    expect(empty.map(([table]) => table)).toEqual([]);
  });

  it('comes out again as it went in, but for ids and the times of taking in', async () => {
    const taken = await takeClientIn(other.lead, { bytes: pack, seen: seen.manifestSha256 }, LATER);
    expect(taken.seen.rows).toEqual(seen.rows);
    expect(
      await ownerQuery('select version from plan where team_id = $1 and packed is null', [other.team.teamId]),
    ).toEqual([]);
    const [first, second] = await Promise.all([
      openPack(pack),
      openPack(await packOfClient(other.lead, taken.clientId)),
    ]);
    const recordOf = (opened: typeof first) =>
      withoutTimesOfItsOwn(packRecordSchema.parse(JSON.parse(opened.text('data/record.json'))));
    expect(sameButForIds(recordOf(second))).toEqual(sameButForIds(recordOf(first)));
    const historyOf = (opened: typeof first) => JSON.parse(opened.text('data/history.json'));
    expect(sameButForIds(historyOf(second))).toEqual(sameButForIds(historyOf(first)));
    expect(first.text('data/tables/check_ins.csv').split('\n').length).toBe(
      second.text('data/tables/check_ins.csv').split('\n').length,
    );
    expect(second.names.filter((name) => name.startsWith('data/stills/'))).toHaveLength(2);
  });

  it('is refused the second time, with who has the client and since when, and adds nothing', async () => {
    const before = await countsOf(other.team.teamId);
    const again = takeClientIn(other.lead, { bytes: pack, seen: seen.manifestSha256 }, LATER);
    await expect(again).rejects.toMatchObject({
      code: 'conflict',
      message: /Noor Adeyemi.*26 November 2026.*Lead of High Bar/,
    });
    await expect(lookAtPack(other.lead, pack, LATER)).rejects.toMatchObject({ code: 'conflict' });
    await expect(lookAtPack(lead, pack, LATER)).rejects.toMatchObject({ code: 'conflict' });
    expect(await countsOf(other.team.teamId)).toEqual(before);
    expect((await auditOf(other.team)).filter((action) => action === 'client-taken-in')).toHaveLength(1);
  });

  it('brings no consent: the new team asks its own, and what was given elsewhere is kept as read', async () => {
    const { teamId } = other.team;
    expect(await ownerQuery('select id from consent where team_id = $1', [teamId])).toEqual([]);
    const rows = await ownerQuery<{ kind: string; team: string }>(
      'select kind, to_team as team from consent_elsewhere where team_id = $1 order by kind',
      [teamId],
    );
    expect(rows).toEqual([
      { kind: 'health-data', team: 'Team of Noor Adeyemi' },
      { kind: 'share-with-next-coach', team: 'Team of Noor Adeyemi' },
    ]);
  });

  it('once when two press at the same moment', async () => {
    const { lead: third, team } = await anotherTeam('Third');
    const { manifestSha256 } = await lookAtPack(third, pack, LATER);
    const both = await Promise.allSettled(
      [1, 2, 3].map(() => takeClientIn(third, { bytes: pack, seen: manifestSha256 }, LATER)),
    );
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected', 'rejected']);
    expect(await ownerQuery('select id from client where team_id = $1', [team.teamId])).toHaveLength(1);
  });
});
