import { buffer } from 'node:stream/consumers';
import { expect, test } from 'vitest';
import yauzl from 'yauzl';
import { readHistory } from '#lib/handover/read-history.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { exportClient } from '#lib/usecases/export-client.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import { savePlanDraft } from '#lib/usecases/save-plan-draft.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { copyLibraryInto, leadOf } from './support.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');

/** Two rungs of one ladder done on each side, a rung without kit and one with, and a skill. */
async function arrange(team: TestTeam) {
  const { both, both2 } = await copyLibraryInto(team);
  const byKey = async (key: string) =>
    (
      await ownerQuery<{ id: string }>('select id from rung where team_id = $1 and key = $2', [
        team.teamId,
        key,
      ])
    )[0]?.id ?? '';
  const [skill] = await ownerQuery<{ id: string; name: string }>(
    "select id, name from skill where team_id = $1 and key = 'front-lever'",
    [team.teamId],
  );
  const { clientId } = await makeTestClient(team);
  return {
    clientId,
    both,
    both2,
    pullUp: await byKey('PU.6'),
    lever: await byKey('LV.2'),
    harderLever: await byKey('LV.3'),
    oneArm: await byKey('OA.3'),
    harderOneArm: await byKey('OA.4'),
    skillId: skill?.id ?? '',
  };
}

const line = (rungId: string, over: object = {}) => ({
  session: 'A',
  rungId,
  side: 'both',
  sets: '4',
  target: '5',
  minutes: '',
  timesPerWeek: '2',
  ...over,
});
const planOf = (items: object[], over: object = {}) =>
  planSchema.parse({
    baseVersion: 0,
    from: '2026-11-25',
    until: '2026-12-22',
    sessionsPerWeek: '3',
    items,
    ...over,
  });

async function exportedPlan(team: TestTeam, clientId: string) {
  const { zip } = await exportClient(leadOf(team), clientId, NOW);
  const archive = await yauzl.fromBufferPromise(await buffer(zip));
  for await (const entry of archive.eachEntry()) {
    if (entry.fileName !== 'data/history.json') continue;
    return readHistory(await buffer(await archive.openReadStreamPromise(entry)), 'history.json');
  }
  throw new Error('no history.json');
}

test('all that a plan says is kept, read back and exported', async () => {
  const team = await makeTestTeam();
  const it = await arrange(team);
  const plan = planOf(
    [
      line(it.lever, { session: 'B', pairedWith: it.harderLever, stopRule: 'stop when the hips drop' }),
      line(it.harderLever, { session: 'B', support: 'rings', noKitRungId: it.both, target: '3' }),
      line(it.oneArm, { side: 'left', notTwoDaysRunning: true, target: '10' }),
      line(it.harderOneArm, { side: 'right', target: '10', minutes: '8' }),
    ],
    {
      easyWeeks: ['2026-12-09'],
      testWeeks: ['2026-12-16'],
      noKitWeeks: ['2026-12-02'],
      sessions: [
        { label: 'A', restSeconds: '90', warmUp: 'Wrists', warmUpMinutes: '6' },
        { label: 'B', restSeconds: '', warmUp: '', warmUpMinutes: '', minutes: '40' },
      ],
      goals: [{ skillId: it.skillId, wantedBy: '2027-06-01' }],
      why: 'Left lags',
      notes: 'Slowly',
      acceptedWeekAu: 1_200,
    },
  );
  await savePlan(leadOf(team), { clientId: it.clientId, plan }, NOW);

  const form = await loadPlanForm(leadOf(team), it.clientId, NOW);
  const [version] = form?.versions ?? [];
  expect(version).toMatchObject({
    by: 'Lead of Test team',
    why: 'Left lags',
    notes: 'Slowly',
    easyWeeks: ['2026-12-09'],
    testWeeks: ['2026-12-16'],
    noKitWeeks: ['2026-12-02'],
    acceptedWeekAu: 1_200,
    skillsInFocus: ['Front lever'],
    sessions: [
      { label: 'A', restSeconds: 90, warmUp: 'Wrists', warmUpMinutes: 6, minutes: null },
      { label: 'B', restSeconds: null, warmUp: '', warmUpMinutes: 0, minutes: 40 },
    ],
  });
  expect(version?.items).toMatchObject([
    { session: 'A', rungId: it.oneArm, side: 'left', notTwoDaysRunning: true },
    { session: 'A', rungId: it.harderOneArm, side: 'right', minutes: 8 },
    { session: 'B', rungId: it.lever, pairedWith: it.harderLever, stopRule: 'stop when the hips drop' },
    { session: 'B', rungId: it.harderLever, pairedWith: null, support: 'rings', noKitRungId: it.both },
  ]);
  expect(form?.goals).toEqual([{ skillId: it.skillId, skill: 'Front lever', wantedBy: '2027-06-01' }]);

  const history = await exportedPlan(team, it.clientId);
  const [exported] = history.plans;
  const { createdAt: _at, ...kept } = version ?? { createdAt: NOW };
  expect(exported).toEqual(kept);
  expect(history.goals).toEqual([
    { skill: 'Front lever', from: '2026-11-25', wantedBy: '2027-06-01', endedOn: null },
  ]);
  expect(history.rungs.map((rung) => rung.id)).toContain(it.both);
});

test('a goal left out ends, one kept takes its new date, none named leaves them', async () => {
  const team = await makeTestTeam();
  const { clientId, both, skillId } = await arrange(team);
  const [other] = await ownerQuery<{ id: string }>(
    "select id from skill where team_id = $1 and key = 'planche'",
    [team.teamId],
  );
  const save = (baseVersion: number, goals: object[] | undefined) =>
    savePlan(leadOf(team), { clientId, plan: planOf([line(both)], { baseVersion, goals }) }, NOW);
  const open = async () =>
    (await loadPlanForm(leadOf(team), clientId, NOW))?.goals.map((goal) => [goal.skill, goal.wantedBy]);
  await save(0, [
    { skillId, wantedBy: null },
    { skillId: other?.id, wantedBy: '2027-01-01' },
  ]);
  expect(await open()).toEqual([
    ['Planche', '2027-01-01'],
    ['Front lever', null],
  ]);
  await save(1, [{ skillId, wantedBy: '2027-03-01' }]);
  expect(await open()).toEqual([['Front lever', '2027-03-01']]);
  await save(2, undefined);
  expect(await open()).toEqual([['Front lever', '2027-03-01']]);
  expect(await ownerQuery('select 1 from goal where client_id = $1', [clientId])).toHaveLength(2);
});

test('what does not fit the ladders is refused by line and field, and nothing is kept', async () => {
  const team = await makeTestTeam();
  const it = await arrange(team);
  const foreign = await arrange(await makeTestTeam('Other'));
  const save = (items: object[], over: object = {}) =>
    savePlan(leadOf(team), { clientId: it.clientId, plan: planOf(items, over) }, NOW);
  const refusedBy = (field: string, message: RegExp) => ({
    code: 'invalid',
    fields: { [field]: expect.stringMatching(message) },
  });
  await expect(save([line(it.lever, { noKitRungId: it.pullUp })])).rejects.toMatchObject(
    refusedBy('items.0.noKitRungId', /needs bar.*choose one that needs no kit/),
  );
  await expect(save([line(it.both), line(it.lever, { pairedWith: it.both })])).rejects.toMatchObject(
    refusedBy('items.1.pairedWith', /another ladder/),
  );
  await expect(save([line(it.oneArm), line(it.oneArm, { side: 'left' })])).rejects.toMatchObject(
    refusedBy('items.1.side', /already in session A for the left side/),
  );
  await expect(
    save([line(it.both)], { goals: [{ skillId: foreign.skillId, wantedBy: null }] }),
  ).rejects.toMatchObject(refusedBy('goals.0.skillId', /choose one from the list/));
  const { draftId } = await savePlanDraft(
    leadOf(team),
    {
      clientId: (await makeTestClient(team)).clientId,
      draft: {
        source: 'copy',
        lines: [{ session: 'A', rungId: it.both, side: 'both', sets: 4, target: 5, timesPerWeek: 2 }],
      },
    },
    NOW,
  );
  await expect(save([line(it.both)], { draftId })).rejects.toMatchObject(
    refusedBy('draftId', /no draft of this client/),
  );
  expect(await ownerQuery('select 1 from plan where client_id = $1', [it.clientId])).toEqual([]);
  expect(await ownerQuery('select 1 from goal where client_id = $1', [it.clientId])).toEqual([]);
});
