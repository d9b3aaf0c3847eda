import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { deletePlanTemplate } from '#lib/usecases/delete-plan-template.ts';
import { keepPlanTemplate } from '#lib/usecases/keep-plan-template.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { loadToday } from '#lib/usecases/load-today.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import { planFormModel } from '#lib/views/plan-form.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { copyLibraryInto, leadOf } from './support.ts';

const NOW = new Date('2026-11-25T18:00:00.000Z');

const phoneOf = (team: TestTeam, clientId: string): Actor => ({
  ...leadOf(team),
  role: 'client',
  memberId: null,
  clientId,
});
const line = (rungId: string, over: object = {}) => ({
  session: 'A',
  rungId,
  side: 'both',
  sets: 5,
  target: 5,
  timesPerWeek: 2,
  ...over,
});
const planOf = (items: object[], over: object = {}) =>
  planSchema.parse({ baseVersion: 0, from: '2026-11-25', until: null, sessionsPerWeek: 3, items, ...over });

async function rungOf(team: TestTeam, key: string): Promise<string> {
  const [rung] = await ownerQuery<{ id: string }>('select id from rung where team_id = $1 and key = $2', [
    team.teamId,
    key,
  ]);
  return rung?.id ?? '';
}

async function arrange() {
  const team = await makeTestTeam();
  await copyLibraryInto(team);
  const { clientId } = await makeTestClient(team);
  const save = (plan: ReturnType<typeof planOf>) => savePlan(leadOf(team), { clientId, plan }, NOW);
  const today = (at = NOW) => loadToday(phoneOf(team, clientId), at);
  const train = (version: number) =>
    ownerQuery(
      `insert into check_in (team_id, id, client_id, body_hash, date, zone, sent_at, kind, session, plan_version, words)
       values ($1, $2, $3, 'x', '2026-11-24', 'Europe/Lisbon', '2026-11-24T19:00:00Z', 'training', 'A', $4, '')`,
      [team.teamId, randomUUID(), clientId, version],
    );
  return { team, clientId, save, today, train };
}

test('a new version is on the phone at once, with what changed since the last training', async () => {
  const { team, save, today, train } = await arrange();
  const [tuck, advanced] = [await rungOf(team, 'LV.2'), await rungOf(team, 'LV.3')];
  await save(planOf([line(tuck)], { from: '2026-11-20', notes: 'Slowly' }));
  expect((await today()).news).toEqual({ changes: [], coming: null });
  await train(1);
  expect((await today()).news.changes).toEqual([]);
  await save(planOf([line(tuck), line(advanced, { target: 3, pairedWith: tuck })], { baseVersion: 1 }));
  const after = await today();
  expect(after).toMatchObject({ planVersion: 2, planNotes: '' });
  expect(after.sessions[0]?.drills).toHaveLength(2);
  expect(after.sessions[0]?.drills[1]?.note).toContain('a pyramid with');
  expect(after.news.changes).toEqual([expect.stringMatching(/^New in session A: .*5 × 3 s, twice a week$/)]);
  await train(2);
  await ownerQuery("update check_in set sent_at = '2026-11-24T20:00:00Z' where plan_version = 2");
  expect((await today()).news.changes).toEqual([]);
});

test('a plan that has not begun is announced and not shown', async () => {
  const { team, save, today } = await arrange();
  const rungId = await rungOf(team, 'LV.2');
  await save(planOf([line(rungId)]));
  await save(planOf([line(rungId, { sets: 3 })], { baseVersion: 1, from: '2026-11-30' }));
  expect(await today()).toMatchObject({ planVersion: 1, news: { changes: [], coming: '2026-11-30' } });
  expect((await today(new Date('2026-11-30T18:00:00Z'))).planVersion).toBe(2);
});

test('warm-up, rest, easy weeks and weeks without kit reach the phone', async () => {
  const { team, save, today } = await arrange();
  const [lever, floor] = [await rungOf(team, 'LV.2'), await rungOf(team, 'H2.1')];
  await save(
    planOf([line(lever, { noKitRungId: floor })], {
      until: '2026-12-22',
      easyWeeks: ['2026-12-02'],
      noKitWeeks: ['2026-12-09'],
      sessions: [{ label: 'A', restSeconds: 90, warmUp: 'Wrists\nShoulders', warmUpMinutes: 6 }],
    }),
  );
  const drill = async (date: string) => {
    const { week, sessions } = await today(new Date(`${date}T18:00:00Z`));
    const side = sessions[0]?.drills[0]?.sides[0];
    return { week: week.length, rung: side?.rungId, sets: side?.sets };
  };
  expect((await today()).sessions[0]?.how).toEqual([
    'Warm-up, 6 min: Wrists, Shoulders.',
    'Rest 90 s between sets.',
  ]);
  expect(await drill('2026-11-25')).toEqual({ week: 0, rung: lever, sets: 5 });
  expect(await drill('2026-12-02')).toEqual({ week: 1, rung: lever, sets: 3 });
  expect(await drill('2026-12-09')).toEqual({ week: 1, rung: floor, sets: 5 });
});

test('a plan is copied from another client or a kept plan of the team, never from another team', async () => {
  const { team, clientId, save } = await arrange();
  const rungId = await rungOf(team, 'LV.2');
  const sessions = [{ label: 'A', restSeconds: 90, warmUp: 'Wrists' }];
  const plan = planOf([line(rungId, { stopRule: 'stop when it opens' })], { sessions });
  await save(plan);
  const { sessionsPerWeek, notes, items } = plan;
  const body = { sessionsPerWeek, notes, sessions: plan.sessions, items };
  const kept = await keepPlanTemplate(leadOf(team), { name: 'Lever block', body }, NOW);
  await expect(keepPlanTemplate(leadOf(team), { name: 'lever BLOCK', body }, NOW)).rejects.toMatchObject({
    code: 'conflict',
    fields: { name: expect.stringContaining('choose another') },
  });

  const { clientId: fresh } = await makeTestClient(team);
  const open = async (address: object) => {
    const form = await loadPlanForm(leadOf(team), fresh, NOW, address);
    return form && { from: form.copied?.from, model: planFormModel(form), sources: form.sources };
  };
  const copied = await open({ client: clientId });
  expect(copied?.model).toMatchObject({
    baseVersion: 0,
    sessions: [{ label: 'A', restSeconds: '90', warmUp: 'Wrists' }],
    rows: [{ rungId, sets: '5', stopRule: 'stop when it opens' }],
  });
  expect(await open({ template: kept.templateId })).toMatchObject({
    from: 'the kept plan “Lever block”',
    model: { rows: [{ rungId }] },
    sources: { clients: [{ id: clientId }], templates: [{ name: 'Lever block' }] },
  });
  const other = await makeTestTeam('Other');
  const { clientId: stranger } = await makeTestClient(other);
  const form = await loadPlanForm(leadOf(other), stranger, NOW, {
    client: clientId,
    template: kept.templateId,
  });
  expect(form).toMatchObject({ copied: undefined, sources: { clients: [], templates: [] } });
});

test('a kept plan is deleted for good by its own team only; what was copied from it stays', async () => {
  const { team, clientId, save } = await arrange();
  const plan = planOf([line(await rungOf(team, 'LV.2'))]);
  await save(plan);
  const { sessionsPerWeek, notes, sessions, items } = plan;
  const body = { sessionsPerWeek, notes, sessions, items };
  const { templateId } = await keepPlanTemplate(leadOf(team), { name: 'Lever block', body }, NOW);
  const left = async () => (await loadPlanForm(leadOf(team), clientId, NOW))?.sources.templates.length;
  const other = await makeTestTeam('Other');
  await expect(deletePlanTemplate(leadOf(other), templateId)).rejects.toMatchObject({ code: 'not-found' });
  expect(await left()).toBe(1);
  await deletePlanTemplate(leadOf(team), templateId);
  expect(await left()).toBe(0);
  expect((await loadPlanForm(leadOf(team), clientId, NOW))?.versions).toHaveLength(1);
  await expect(deletePlanTemplate(leadOf(team), templateId)).rejects.toMatchObject({ code: 'not-found' });
  expect(
    await ownerQuery("select object_id from audit where team_id = $1 and action = 'plan-template-deleted'", [
      team.teamId,
    ]),
  ).toEqual([{ object_id: templateId }]);
  await keepPlanTemplate(leadOf(team), { name: 'Lever block', body }, NOW);
  expect(await left()).toBe(1);
});
