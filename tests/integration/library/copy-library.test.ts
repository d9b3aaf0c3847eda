import { describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { makeTestTeam, ownerQuery } from '../support/database.ts';

const count = async (table: string, teamId: string) =>
  (await ownerQuery<{ n: number }>(`select count(*)::int as n from ${table} where team_id = $1`, [teamId]))[0]
    ?.n;

describe('copying the starter library into a team', () => {
  it('writes every ladder and rung, for this team only, well under a second', async () => {
    const [one, two] = [await makeTestTeam('One'), await makeTestTeam('Two')];
    const start = performance.now();
    const copied = await withTeamPg(one.scope, (tx) => copyLibrary(tx));
    const milliseconds = performance.now() - start;
    expect(await count('ladder', one.teamId)).toBe(37);
    expect(await count('rung', one.teamId)).toBe(229);
    expect(await count('support_profile', one.teamId)).toBe(9);
    expect(await count('rung', two.teamId)).toBe(0);
    expect(copied.rungIds.size).toBe(229);
    expect(milliseconds).toBeLessThan(1000);
  });

  it('keeps every column', async () => {
    const team = await makeTestTeam('Columns');
    const copied = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
    const [row] = await ownerQuery(
      `select r.key, r.name, r.pass_sets, r.pass_target, r.pass_days, r.pass_tries, r.usual_weeks, r.position,
         d.measure, d.each_side, d.each_is_leg, d.share, d.helping_share, d.share_source, d.family, d.equipment,
         d.seconds_per_rep, d.weights->>'wrist-back' as wrist_back, l.key as ladder, l.faults, p.name as part, s.key as skill
       from rung r join drill d on (d.team_id, d.id) = (r.team_id, r.drill_id)
       join ladder l on (l.team_id, l.id) = (r.team_id, r.ladder_id)
       join part p on (p.team_id, p.id) = (l.team_id, l.part_id)
       join skill s on (s.team_id, s.id) = (p.team_id, p.skill_id)
       where r.team_id = $1 and r.id = $2`,
      [team.teamId, copied.rungIds.get('OA.6')],
    );
    expect(row).toMatchObject({
      key: 'OA.6',
      name: 'Two fingers',
      pass_sets: 3,
      pass_target: 10,
      pass_days: 3,
      pass_tries: null,
      usual_weeks: 6,
      position: 6,
      measure: 'hold',
      each_side: true,
      each_is_leg: false,
      share: 0.9,
      helping_share: 0.1,
      share_source: 'cp',
      family: null,
      equipment: ['hard-floor', 'block', 'scale'],
      seconds_per_rep: null,
      wrist_back: '0.7',
      ladder: 'OA',
      skill: 'one-arm-handstand',
    });
    expect(row?.faults).toContain('hips-turn');
  });
});
