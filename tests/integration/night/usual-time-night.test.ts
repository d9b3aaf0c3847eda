import { randomUUID } from 'node:crypto';
import { expect, it } from 'vitest';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { makeRung, trainingClient } from './arrange.ts';

const NIGHT = '2026-03-31';
const now = new Date('2026-04-01T03:05:00Z');

async function place(team: TestTeam, clientId: string, rungId: string, from: string) {
  await ownerQuery(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
     select $1, $2, ladder_id, id, 'both', $4 from rung where id = $3`,
    [team.teamId, clientId, rungId, from],
  );
}

/** Kinds open after the night for a client 89 days on a rung without gain, in a team where others took `days`. */
async function openKinds(others: number, days: number): Promise<string[]> {
  const team = await makeTestTeam();
  const rungId = await makeRung(team);
  const [next, plan, session] = [randomUUID(), randomUUID(), randomUUID()];
  await ownerQuery(
    `insert into rung (team_id, id, ladder_id, drill_id, position, name, pass_sets, pass_target, pass_days, usual_weeks)
     select team_id, $2, ladder_id, drill_id, 2, 'later', 3, 20, 3, 8 from rung where id = $1`,
    [rungId, next],
  );
  const clientId = await trainingClient(team, { rungId, from: '2026-01-01', to: NIGHT });
  await place(team, clientId, rungId, '2026-01-01');
  await ownerQuery(
    `insert into plan (team_id, id, client_id, version, from_date, sessions_per_week, easy_weeks, test_weeks, skills_in_focus)
     values ($1, $2, $3, 1, '2026-01-01', 3, '{}', '{}', '{}')`,
    [team.teamId, plan, clientId],
  );
  await ownerQuery(
    `insert into plan_session (team_id, id, plan_id, label, position) values ($1, $2, $3, 'A', 1)`,
    [team.teamId, session, plan],
  );
  await ownerQuery(
    `insert into plan_item (team_id, session_id, rung_id, side, position, sets, target, times_per_week)
     values ($1, $2, $3, 'both', 1, 3, 20, 3)`,
    [team.teamId, session, rungId],
  );
  for (let other = 0; other < others; other += 1) {
    const { clientId: passed } = await makeTestClient(team, { zone: 'UTC' });
    await place(team, passed, rungId, '2025-06-01');
    await ownerQuery(
      `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
       select team_id, $2, ladder_id, id, 'both', '2025-06-01'::date + $3::int from rung where id = $1`,
      [next, passed, days],
    );
  }
  expect(await runNightBatch(team.scope, { localDate: NIGHT, clientIds: [clientId] }, now)).toEqual({
    done: 1,
    failed: 0,
  });
  const rows = await ownerQuery<{ kind: string }>(
    'select kind from reason where client_id = $1 and closed_at is null',
    [clientId],
  );
  return rows.map((row) => row.kind);
}

it("a night takes the usual time of the team once eight passed, and the library's before", async () => {
  expect(await openKinds(7, 100)).toContain('stalled'); // usually 8 weeks
  expect(await openKinds(8, 100)).not.toContain('stalled');
  expect(await openKinds(8, 60)).toContain('stalled');
});
