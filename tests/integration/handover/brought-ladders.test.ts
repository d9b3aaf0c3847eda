import { beforeAll, describe, expect, it } from 'vitest';
import { packRecordSchema } from '#lib/schemas/pack-record.ts';
import { lookAtPack, takeClientIn } from '#lib/usecases/handover/take-client-in.ts';
import { loadClient } from '#lib/usecases/load-client.ts';
import { loadLadders } from '#lib/usecases/load-ladders.ts';
import { loadClientRights } from '#lib/usecases/rights/load-client-rights.ts';
import { loadTeam } from '#lib/usecases/team/load-team.ts';
import { openPack } from '#tests/fixtures/open-pack.ts';
import type { Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { leadOf, type MemberActor } from '../team/arrange.ts';
import { aFullClient, anotherTeam, EVERYTHING, LATER, packOfClient } from './arrange.ts';
import { sameButForIds, withoutTimesOfItsOwn } from './compare-records.ts';

let phone: Phone;
let lead: MemberActor;
let pack: Buffer;
beforeAll(async () => {
  phone = await aFullClient('Ilse Marx');
  lead = leadOf(phone.team);
  pack = await packOfClient(lead, phone.clientId);
});
const rungOf = (teamId: string, key: string) =>
  ownerQuery<{ id: string; drillId: string; ladderId: string }>(
    'select id, drill_id as "drillId", ladder_id as "ladderId" from rung where team_id = $1 and key = $2',
    [teamId, key],
  );

describe('ladders of a pack', () => {
  it('are the own ones of the team, whose pass marks count from then on', async () => {
    const { lead: there, team } = await anotherTeam('Other marks');
    await ownerQuery(`update rung set pass_target = 25 where team_id = $1 and key = 'H3.4'`, [team.teamId]);
    const { ladders } = await lookAtPack(there, pack, LATER);
    const [own] = ladders;
    expect(ladders).toHaveLength(1);
    expect(own?.own?.id).toBe((await rungOf(team.teamId, 'H3.4'))[0]?.ladderId);
    expect(own?.otherMarks).toHaveLength(1);
  });

  it('come along whole and marked where a number would mean something else', async () => {
    const { lead: there, team } = await anotherTeam('Counts reps');
    const [own] = await rungOf(team.teamId, 'H3.4');
    await ownerQuery(`update drill set measure = 'reps' where team_id = $1 and id = $2`, [
      team.teamId,
      own?.drillId,
    ]);
    const seen = await lookAtPack(there, pack, LATER);
    expect(seen.ladders[0]).toMatchObject({
      own: null,
      why: expect.stringContaining('counted in another way'),
    });
    const taken = await takeClientIn(there, { bytes: pack, seen: seen.manifestSha256 }, LATER);
    const rows = await ownerQuery<{ key: string | null; from: string }>(
      `select distinct l.key, l.brought_from as "from" from check_in_set s join rung r on r.team_id = s.team_id and r.id = s.rung_id
       join ladder l on l.team_id = r.team_id and l.id = r.ladder_id where s.team_id = $1 and s.client_id = $2`,
      [team.teamId, taken.clientId],
    );
    expect(rows).toEqual([{ key: null, from: 'Team of Ilse Marx' }]);
    const { outline } = await loadLadders(there, LATER);
    expect(outline.ladders.filter(({ broughtFrom }) => broughtFrom !== null)).toHaveLength(1);
    const again = await openPack(await packOfClient(there, taken.clientId));
    const recordOf = (text: string) => {
      const record = packRecordSchema.parse(JSON.parse(text));
      const unplaced = <One extends object>(row: One) => ({ ...row, key: null, position: 0, openings: null });
      return sameButForIds({
        ...(withoutTimesOfItsOwn(record) as object),
        ladder: record.ladder.map(unplaced),
        rung: record.rung.map((row) => ({ ...row, key: null })),
      });
    };
    expect(recordOf(again.text('data/record.json'))).toEqual(
      recordOf((await openPack(pack)).text('data/record.json')),
    );
  });
});

describe('a client who was taken in', () => {
  it('opens like any other, says where they came from, and brings no member into the team', async () => {
    const { lead: there } = await anotherTeam('Opens');
    const before = (await loadTeam(there, LATER)).members.length;
    const { manifestSha256 } = await lookAtPack(there, pack, LATER);
    const { clientId } = await takeClientIn(there, { bytes: pack, seen: manifestSha256 }, LATER);
    const page = await loadClient(there, clientId, LATER);
    expect(page?.page.name).toBe('Ilse Marx');
    expect((await loadTeam(there, LATER)).members).toHaveLength(before);
    const rights = await loadClientRights(there, clientId, LATER);
    expect(rights?.health).toEqual({ state: 'none' });
    expect(rights?.cameFrom).toMatchObject({ team: 'Team of Ilse Marx', by: 'Lead of Opens' });
    expect(rights?.cameFrom?.consents.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['health-data', 'share-with-next-coach']),
    );
  });

  it('comes with what a chosen period holds; what hangs on earlier rows is said', async () => {
    const { lead: there } = await anotherTeam('A week');
    const week = await packOfClient(lead, phone.clientId, {
      ...EVERYTHING,
      period: { from: '2026-11-25', to: '2026-11-26' },
    });
    const seen = await lookAtPack(there, week, LATER);
    expect(seen.rows.check_in).toBeUndefined();
    expect(seen.rows.plan).toBe(1);
    expect(seen.leftOut.every(({ why }) => why === 'what they belong to is not in the pack')).toBe(true);
  });
});
