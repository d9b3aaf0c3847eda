import { randomUUID } from 'node:crypto';
import { withTeamPg } from '#lib/db/client.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { addDays } from '#lib/domain/local-date.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';

/** One ladder with one rung: a one-arm hold, each side, 3 x 20 s. */
export async function makeRung(team: TestTeam): Promise<string> {
  const [skill, part, ladder, drill, rung] = Array.from({ length: 5 }, () => randomUUID());
  const t = team.teamId;
  await ownerQuery(`insert into skill (team_id, id, name, position) values ($1, $2, 'Handstand', 1)`, [
    t,
    skill,
  ]);
  await ownerQuery(
    `insert into part (team_id, id, skill_id, name, position) values ($1, $2, $3, 'Balance', 1)`,
    [t, part, skill],
  );
  await ownerQuery(
    `insert into ladder (team_id, id, part_id, name, family, clean, faults, position)
     values ($1, $2, $3, 'One-arm hold', 'balance', 'still', '{hips-turn}', 1)`,
    [t, ladder, part],
  );
  await ownerQuery(
    `insert into drill (team_id, id, ladder_id, name, measure, each_side, share, helping_share, weights, equipment)
     values ($1, $2, $3, 'hold', 'hold', true, 0.8, 0.2, '{"wrist-back": 0.8}', '{}')`,
    [t, drill, ladder],
  );
  await ownerQuery(
    `insert into rung (team_id, id, ladder_id, drill_id, position, name, pass_sets, pass_target, pass_days, usual_weeks)
     values ($1, $2, $3, $4, 1, 'fingertips, 20 s', 3, 20, 3, 8)`,
    [t, rung, ladder, drill],
  );
  return rung ?? '';
}

export type Told = {
  date: string;
  rungId: string;
  effort?: number;
  minutes?: number;
  /** Worst joint pain at the back of the right wrist, after training. */
  pain?: number;
};

/** A check-in as the submit transaction leaves it: rows, and the day rolled up. */
export async function checkIn(team: TestTeam, clientId: string, told: Told): Promise<string> {
  const [id = ''] = await checkIns(team, clientId, [told]);
  return id;
}

async function checkIns(team: TestTeam, clientId: string, told: Told[]): Promise<string[]> {
  const rows = told.map((each) => ({ id: randomUUID(), effort: 6, minutes: 60, pain: null, ...each }));
  const values = [team.teamId, clientId, JSON.stringify(rows)];
  const from = `jsonb_to_recordset($3::jsonb)
    as told(id uuid, date date, "rungId" uuid, effort int, minutes int, pain int)`;
  await ownerQuery(
    `insert into check_in (team_id, id, client_id, body_hash, date, zone, sent_at, received_at, kind, session, effort, minutes, nothing_hurts)
     select $1, id, $2, 'x', date, 'UTC', timezone('UTC', date + time '18:00'), timezone('UTC', date + time '18:00'),
       'training', 'A', effort, minutes, pain is null from ${from}`,
    values,
  );
  await ownerQuery(
    `insert into check_in_set (team_id, check_in_id, client_id, rung_id, side, idx, planned, value, how)
     select $1, id, $2, "rungId", side, idx, 20, 12 + idx, 'typed'
     from ${from}, unnest('{left,right}'::text[]) side, generate_series(0, 2) idx`,
    values,
  );
  await ownerQuery(
    `insert into pain_score (team_id, check_in_id, client_id, region, side, moment, value, kind, usual)
     select $1, id, $2, 'wrist-back', 'right', 'after', pain, 'joint', false from ${from} where pain is not null`,
    values,
  );
  const dates = told.map((each) => each.date);
  await withTeamPg(team.scope, (tx) => rebuildRollups(tx, clientId, dates));
  return rows.map((row) => row.id);
}

/** A client who joined on `from` and trains every second day until `to`; pain as told by date. */
export async function trainingClient(
  team: TestTeam,
  options: { rungId: string; from: string; to: string; pain?: Record<string, number>; name?: string },
): Promise<string> {
  const { clientId } = await makeTestClient(team, { zone: 'UTC', name: options.name ?? 'Client' });
  await ownerQuery('update client set joined_at = $2, invited_at = $2 where id = $1', [
    clientId,
    `${options.from}T08:00:00Z`,
  ]);
  const told: Told[] = [];
  for (let date = options.from; date <= options.to; date = addDays(date, 2)) {
    const pain = options.pain?.[date];
    told.push({ date, rungId: options.rungId, ...(pain !== undefined && { pain }) });
  }
  await checkIns(team, clientId, told);
  return clientId;
}

/** Until the evening of 31 March 2026. */
export const TRAINED = { from: '2026-02-01', to: '2026-03-31' };

export type Group = { team: TestTeam; rungId: string; clientIds: string[] };

/** The same three people in every group: one fine, one with pain of 7 on the last day, one silent for three weeks. */
export async function makeGroup(): Promise<Group> {
  const team = await makeTestTeam();
  const rungId = await makeRung(team);
  const clientIds = [
    await trainingClient(team, { rungId, ...TRAINED, name: 'Fine' }),
    await trainingClient(team, { rungId, ...TRAINED, name: 'Hurting', pain: { '2026-03-31': 7 } }),
    await trainingClient(team, { rungId, from: '2026-02-01', to: '2026-03-10', name: 'Silent' }),
  ];
  // Somebody who is fine was looked at, too: nothing at all is owed to them.
  await ownerQuery('insert into seen_mark (team_id, client_id, by_id, at) values ($1, $2, $3, $4)', [
    team.teamId,
    clientIds[0],
    team.memberId,
    '2026-03-30T08:00:00Z',
  ]);
  return { team, rungId, clientIds };
}

/** As before the first night. */
export async function forgetNights(teamId: string): Promise<void> {
  await ownerQuery(
    `with a as (delete from reason where team_id = $1), b as (delete from night_client where team_id = $1)
     delete from night_run where team_id = $1`,
    [teamId],
  );
}
