import { randomUUID } from 'node:crypto';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { actOnReason } from '#lib/usecases/act-on-reason.ts';
import { checkClientNow } from '#lib/usecases/check-client-now.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { sayAbsence } from '#lib/usecases/say-absence.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import { makeTestTeam, ownerQuery, type TestTeam } from '#tests/integration/support/database.ts';
import { forgetNights, makeRung, trainingClient } from './arrange.ts';

/** The day of the step, and the evening from which the reason that was left alone is known. */
const FROM = '2026-03-01';
let team: TestTeam;
let clientId: string;
let rungId: string;

beforeAll(async () => {
  team = await makeTestTeam();
  rungId = await makeRung(team);
  // Every second day from 1 January: 4 of 10 until the step, then 2.
  const pain: Record<string, number> = {};
  for (let date = '2026-01-01'; date <= '2026-04-10'; date = addDays(date, 2))
    pain[date] = date > FROM ? 2 : 4;
  clientId = await trainingClient(team, { rungId, from: '2026-01-01', to: '2026-04-10', pain });
});

beforeEach(async () => {
  await ownerQuery('delete from step_taken where team_id = $1', [team.teamId]);
  await ownerQuery('delete from absence where team_id = $1', [team.teamId]);
  await forgetNights(team.teamId);
});

async function aReason(
  over: { kind?: string; tier?: string | null; closedWhy?: string } = {},
): Promise<string> {
  const id = randomUUID();
  const { kind = 'pain-lingering', tier = 'this-week', closedWhy = null } = over;
  await ownerQuery(
    `insert into reason (team_id, id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
       step, clears, evidence, working, state, rules_version, raised_at, updated_at, known_from, closed_at, closed_why)
     values ($1, $2, $3, $4, 'wrist-back:right', '{"key":"wrist-back:right","label":"right wrist","region":"wrist-back","side":"right"}',
       'watch', 1, $5, 'Sore.', 'sore', $6, '{"kind":"cut-volume","text":"Less"}', 'less', '{}', '{}', case when $7::text is null then 'open' else 'closed' end, 'test',
       $6::date + interval '27 hours', $6::date + interval '27 hours', $6, case when $7::text is null then null else $6::timestamptz end, $7)`,
    [team.teamId, id, clientId, kind, tier, FROM, closedWhy],
  );
  return id;
}

async function aStep(reasonId: string): Promise<string> {
  const id = randomUUID();
  await ownerQuery(
    `insert into step_taken (team_id, id, client_id, reason_id, by_id, kind, taken_on) values ($1, $2, $3, $4, $5, 'cut-volume', $6)`,
    [team.teamId, id, clientId, reasonId, team.memberId, FROM],
  );
  return id;
}

const night = (date: string, late = 0) =>
  runNightBatch(
    team.scope,
    { localDate: date, clientIds: [clientId] },
    new Date(`${addDays(date, 1 + late)}T03:05:00Z`),
  );

type Told = { id: string; windowDays: number; outcome: string; before: number; after: number };
const COLUMNS = `window_days as "windowDays", outcome, (evidence->>'before')::float8 as before, (evidence->>'after')::float8 as after`;
const ofSteps = () =>
  ownerQuery<Told>(
    `select step_id as id, ${COLUMNS} from step_outcome where team_id = $1 order by step_id, window_days`,
    [team.teamId],
  );
const ofReasons = (id: string) =>
  ownerQuery<Told>(
    `select reason_id as id, ${COLUMNS} from reason_outcome where reason_id = $1 order by window_days`,
    [id],
  );

describe('a window that ends', () => {
  it('is told by the night on which it does, once, and none before', async () => {
    const id = await aStep(await aReason());
    await night('2026-03-07');
    expect(await ofSteps()).toEqual([]);
    await night('2026-03-08');
    const first = { id, windowDays: 7, outcome: 'better', before: 4, after: 2 };
    expect(await ofSteps()).toEqual([first]);
    await night('2026-03-15');
    expect(await ofSteps()).toEqual([first, { ...first, windowDays: 14 }]);
    const written = await ownerQuery('select * from step_outcome where team_id = $1 order by window_days', [
      team.teamId,
    ]);
    await night('2026-03-16');
    expect(
      await ownerQuery('select * from step_outcome where team_id = $1 order by window_days', [team.teamId]),
    ).toEqual(written);
  });

  it('is told the same by a night that runs weeks later, and by one that finds all of them due', async () => {
    await aStep(await aReason());
    for (const date of ['2026-03-08', '2026-03-15', '2026-03-29']) await night(date);
    const onTime = await ofSteps();
    expect(onTime.map((one) => one.windowDays)).toEqual([7, 14, 28]);
    await ownerQuery('delete from step_outcome where team_id = $1', [team.teamId]);
    await forgetNightsOnly();
    await night('2026-04-05', 3);
    expect(await ofSteps()).toEqual(onTime);
  });

  it('of a reason is told where no step was taken; not where one was, not of notes and errors', async () => {
    const alone = await aReason();
    const taken = await aReason({ kind: 'pain-rising' });
    await aStep(taken);
    const note = await aReason({ kind: 'pain-after-ground', tier: null });
    const error = await aReason({ kind: 'pain-high', closedWhy: 'entry corrected' });
    const owed = await aReason({ kind: 'plan-ending' });
    await night('2026-03-15');
    // Something was done about the body in these weeks: for pain rising.
    expect(await ofReasons(alone)).toEqual([]);
    await ownerQuery('update step_taken set undone_at = now() where team_id = $1', [team.teamId]);
    await night('2026-03-16');
    expect((await ofReasons(alone)).map((one) => [one.windowDays, one.outcome])).toEqual([
      [7, 'better'],
      [14, 'better'],
    ]);
    expect(await ofReasons(taken)).toHaveLength(2);
    for (const id of [note, error, owed]) expect(await ofReasons(id)).toEqual([]);
  });

  it('is dropped with its step, and the reason counts as left alone again', async () => {
    const reasonId = await aReason();
    const actor = {
      scope: team.scope,
      memberId: team.memberId,
      role: 'lead',
      name: 'Lead',
      userId: team.userId,
    } as never;
    const at = new Date(`${FROM}T10:00:00Z`);
    const act = { act: 'take', clientId, reasonId, words: '' } as never;
    const { actId } = await actOnReason(actor, act, at);
    await ownerQuery(`update reason set known_from = $2 where id = $1`, [reasonId, FROM]);
    await night('2026-03-08');
    expect(await ofSteps()).toHaveLength(1);
    expect(await ofReasons(reasonId)).toEqual([]);
    // As the act left it: the night has counted a clear night since, and an undo wants it untouched.
    await ownerQuery(
      `update reason set clear_nights = 0, state = 'with-client', closed_at = null, closed_why = null,
         with_client_until = (select (e.body->'after'->>'withClientUntil')::date from reason_event e
           where e.reason_id = reason.id and e.what = 'take') where id = $1`,
      [reasonId],
    );
    await undoAct(actor, { actId }, new Date('2026-03-09T10:00:00Z'));
    expect(await ofSteps()).toEqual([]);
    await night('2026-03-10');
    expect(await ofSteps()).toEqual([]);
    expect((await ofReasons(reasonId)).map((one) => one.outcome)).toEqual(['better']);
  });
});

describe('what is told later of the days in a window', () => {
  it('tells it anew, right after the check-in and without waiting for a night', async () => {
    const id = await aStep(await aReason());
    await night('2026-03-15');
    expect((await ofSteps()).map((one) => one.outcome)).toEqual(['better', 'better']);
    await ownerQuery(
      `update pain_score p set value = 9 from check_in c where c.id = p.check_in_id and p.client_id = $1 and c.date between '2026-03-09' and '2026-03-15'`,
      [clientId],
    );
    const dates = [
      '2026-03-10',
      '2026-03-12',
      '2026-03-14',
      '2026-03-09',
      '2026-03-11',
      '2026-03-13',
      '2026-03-15',
    ];
    await withTeamPg(team.scope, (tx) => rebuildRollups(tx, clientId, dates));
    await checkClientNow(team.scope, clientId, new Date('2026-03-16T09:00:00Z'));
    expect(await ofSteps()).toEqual([
      { id, windowDays: 7, outcome: 'better', before: 4, after: 2 },
      { id, windowDays: 14, outcome: 'worse', before: 4, after: 9 },
    ]);
    await ownerQuery(
      `update pain_score p set value = 2 from check_in c where c.id = p.check_in_id and p.client_id = $1 and c.date between '2026-03-09' and '2026-03-15'`,
      [clientId],
    );
    await withTeamPg(team.scope, (tx) => rebuildRollups(tx, clientId, dates));
  });

  it('leaves alone what it cannot have changed', async () => {
    await aStep(await aReason());
    await night('2026-03-08');
    const before = await ownerQuery('select * from step_outcome where team_id = $1', [team.teamId]);
    await withTeamPg(team.scope, (tx) => rebuildRollups(tx, clientId, ['2026-03-10']));
    expect(await ownerQuery('select * from step_outcome where team_id = $1', [team.teamId])).toEqual(before);
  });

  it('says a holiday beside it', async () => {
    await aStep(await aReason());
    await night('2026-03-15');
    const actor = {
      scope: team.scope,
      clientId,
      role: 'client',
      name: 'Client',
      userId: team.userId,
    } as never;
    const body = { id: randomUUID(), kind: 'holiday', from: '2026-03-10', to: '2026-03-11' } as never;
    await sayAbsence(actor, body, new Date('2026-03-16T09:00:00Z'));
    await night('2026-03-16');
    const changes = await ownerQuery<{ changes: string[] }>(
      `select evidence->'changes' as changes from step_outcome where team_id = $1 and window_days = 14`,
      [team.teamId],
    );
    expect(changes[0]?.changes).toEqual(['away (holiday) Tue 10 Mar to Wed 11 Mar']);
  });
});

async function forgetNightsOnly(): Promise<void> {
  await ownerQuery('delete from night_client where team_id = $1', [team.teamId]);
}
