import { expect, test } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { AppError } from '#lib/errors.ts';
import { limitSchema } from '#lib/schemas/limit.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { addLimit } from '#lib/usecases/add-limit.ts';
import { endLimit } from '#lib/usecases/end-limit.ts';
import { loadClient } from '#lib/usecases/load-client.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { copyLibraryInto, leadOf } from './support.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');
const limitOf = (over: object = {}) =>
  limitSchema.parse({
    rule: 'none',
    tissue: 'wrist-back',
    from: '2026-11-25',
    until: '2026-12-11',
    who: 'the physiotherapist',
    ...over,
  });

const phoneOf = (team: TestTeam, clientId: string): Actor => ({
  ...leadOf(team),
  role: 'client',
  memberId: null,
  clientId,
});

/** A client with a wall handstand and a pull-up in the plan. */
async function arrange(keys = ['H4.3', 'PU.3']) {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  await copyLibraryInto(team);
  const rungs = await ownerQuery<{ id: string; key: string; name: string; each: boolean }>(
    `select r.id, r.key, r.name, d.each_side as each from rung r
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     where r.team_id = $1 and r.key = any($2)`,
    [team.teamId, keys],
  );
  const line = { session: 'A', side: 'both', sets: 4, target: 5, timesPerWeek: 3 };
  const plan = planSchema.parse({
    baseVersion: 0,
    from: '2026-11-01',
    until: null,
    sessionsPerWeek: 3,
    items: rungs.sort((a, b) => (a.key < b.key ? -1 : 1)).map(({ id }) => ({ ...line, rungId: id })),
  });
  await savePlan(leadOf(team), { clientId, plan }, NOW);
  return { team, clientId, names: rungs.map((rung) => rung.name) };
}

test('a limit is kept with its audit line, stands on the client page and on the phone from its first day', async () => {
  const { team, clientId, names } = await arrange();
  const { limitId } = await addLimit(leadOf(team), { clientId, limit: limitOf() }, NOW);
  expect(
    await ownerQuery('select action, object_id from audit where client_id = $1 and action like $2', [
      clientId,
      'limit%',
    ]),
  ).toEqual([{ action: 'limit-added', object_id: limitId }]);

  const page = await loadClient(leadOf(team), clientId, NOW);
  expect(page?.limits).toMatchObject([
    { id: limitId, what: 'Nothing for the wrist bent back', state: 'in force', touches: [`${names[0]} out`] },
  ]);

  const today = await loadToday(phoneOf(team, clientId), NOW);
  expect(today.limits).toEqual(['Nothing for the wrist bent back, until Fri 11 Dec (the physiotherapist)']);
  const [stand, pull] = today.sessions[0]?.drills ?? [];
  expect(stand?.limit).toMatchObject({ out: true });
  expect(stand?.limit?.swaps.map((swap) => swap.support)).toEqual(['parallel-bars', 'fists']);
  expect(pull?.limit).toBeUndefined();
});

test('nothing upside down: every such drill is struck out, with a rung of the same part beside where there is one', async () => {
  const { team, clientId, names } = await arrange(['H4.3', 'U1.8', 'PU.3']);
  const limit = limitOf({ rule: 'no-upside-down', tissue: null, until: '', who: 'the doctor' });
  await addLimit(leadOf(team), { clientId, limit }, NOW);
  const page = await loadClient(leadOf(team), clientId, NOW);
  expect(page?.limits).toMatchObject([
    { what: 'Nothing upside down', touches: [`${names[0]} out`, `${names[2]} out`] },
  ]);
  const today = await loadToday(phoneOf(team, clientId), NOW);
  expect(today.limits).toEqual(['Nothing upside down, until further word (the doctor)']);
  const [toe, pull, push] = today.sessions[0]?.drills ?? [];
  expect(toe?.limit).toMatchObject({ out: true, swaps: [] });
  expect(pull?.limit).toBeUndefined();
  expect(push?.limit).toMatchObject({ out: true });
  expect(push?.limit?.swaps.map((swap) => swap.title)).toEqual(['Push-up, floor', 'Push-up, hands on 60 cm']);
  expect(limitSchema.safeParse({ ...limit, side: 'left' }).error?.issues).toMatchObject([{ path: ['side'] }]);
});

test('before its first day and after its last a limit changes nothing on the phone', async () => {
  const { team, clientId } = await arrange();
  await addLimit(leadOf(team), { clientId, limit: limitOf({ from: '2026-11-26' }) }, NOW);
  await addLimit(
    leadOf(team),
    { clientId, limit: limitOf({ from: '2026-11-01', until: '2026-11-24' }) },
    NOW,
  );
  const today = await loadToday(phoneOf(team, clientId), NOW);
  expect(today.limits).toEqual([]);
  expect(today.sessions[0]?.drills.every((drill) => drill.limit === undefined)).toBe(true);
});

test('an ended limit is over from today on and stays on record; ending it twice is told', async () => {
  const { team, clientId } = await arrange();
  const { limitId } = await addLimit(leadOf(team), { clientId, limit: limitOf({ from: '2026-11-20' }) }, NOW);
  await endLimit(leadOf(team), { clientId, limitId }, NOW);
  const today = await loadToday(phoneOf(team, clientId), NOW);
  expect(today.limits).toEqual([]);
  const page = await loadClient(leadOf(team), clientId, NOW);
  expect(page?.limits).toMatchObject([{ id: limitId, state: 'over' }]);
  await expect(endLimit(leadOf(team), { clientId, limitId }, NOW)).rejects.toMatchObject({
    code: 'conflict',
  });
});

test('a team of before gets its swaps with the first limit, once', async () => {
  const { team, clientId } = await arrange();
  await ownerQuery('delete from swap where team_id = $1', [team.teamId]);
  await addLimit(leadOf(team), { clientId, limit: limitOf() }, NOW);
  const count = () =>
    ownerQuery<{ n: number }>('select count(*)::int as n from swap where team_id = $1', [team.teamId]);
  const [first] = await count();
  expect(first?.n).toBeGreaterThan(400);
  await addLimit(leadOf(team), { clientId, limit: limitOf() }, NOW);
  expect(await count()).toEqual([first]);
});

test('a client of another team has no limit set or ended; a client sets none', async () => {
  const { team, clientId } = await arrange();
  const other = await makeTestTeam('Other');
  const { limitId } = await addLimit(leadOf(team), { clientId, limit: limitOf() }, NOW);
  const attempts = [
    () => addLimit(leadOf(other), { clientId, limit: limitOf() }, NOW),
    () => endLimit(leadOf(other), { clientId, limitId }, NOW),
    () => addLimit(phoneOf(team, clientId), { clientId, limit: limitOf() }, NOW),
  ];
  for (const attempt of attempts) await expect(attempt()).rejects.toBeInstanceOf(AppError);
  expect(await ownerQuery('select 1 from limit_rule where client_id = $1', [clientId])).toHaveLength(1);
});

test.each([
  [{ rule: 'reduced' }, 'percent'],
  [{ percent: 50 }, 'percent'],
  [{ rule: 'reduced', percent: 100 }, 'percent'],
  [{ region: 'wrist-back' }, 'region'],
  [{ until: '2026-11-24' }, 'until'],
  [{ who: ' ' }, 'who'],
  [{ from: '' }, 'from'],
])('bad input %j is refused at its field', (over, field) => {
  const read = limitSchema.safeParse({
    rule: 'none',
    tissue: 'wrist-back',
    from: '2026-11-25',
    who: 'coach',
    ...over,
  });
  expect(read.error?.issues.map((issue) => issue.path[0])).toEqual([field]);
});
