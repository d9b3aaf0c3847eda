import { expect, test } from 'vitest';
import { planSchema } from '#lib/schemas/plan.ts';
import { loadClient } from '#lib/usecases/load-client.ts';
import { loadClients } from '#lib/usecases/load-clients.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { makeClient } from '#lib/usecases/make-client.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { copyLibraryInto, leadOf } from './support.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');

const planOf = (rungId: string, over: object = {}) =>
  planSchema.parse({
    baseVersion: 0,
    from: '2026-11-25',
    until: '2026-12-22',
    sessionsPerWeek: '3',
    items: [{ session: 'A', rungId, side: 'both', sets: '4', target: '5', timesPerWeek: '3' }],
    ...over,
  });

const placements = (clientId: string) =>
  ownerQuery(
    'select side, rung_id, from_date::text from placement where client_id = $1 order by from_date, side',
    [clientId],
  );

test('saving a plan places the client; the same rung again places nothing', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const rungs = await copyLibraryInto(team);
  const save = (plan: ReturnType<typeof planOf>) => savePlan(leadOf(team), { clientId, plan }, NOW);
  expect(await save(planOf(rungs.both))).toMatchObject({ version: 1 });
  expect(await placements(clientId)).toEqual([
    { side: 'both', rung_id: rungs.both, from_date: '2026-11-25' },
  ]);
  expect(await save(planOf(rungs.both, { baseVersion: 1, from: '2026-11-26' }))).toMatchObject({
    version: 2,
  });
  expect(await placements(clientId)).toHaveLength(1);
});

test('a rung done on each side is planned and placed left and right', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const { each } = await copyLibraryInto(team);
  await savePlan(leadOf(team), { clientId, plan: planOf(each) }, NOW);
  expect(await placements(clientId)).toMatchObject([{ side: 'left' }, { side: 'right' }]);
  const form = await loadPlanForm(leadOf(team), clientId, NOW);
  expect(form?.versions[0]?.items.map((item) => item.side)).toEqual(['left', 'right']);
});

test('the second of two editors of one version is told, and nothing is half-written', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeTestClient(team);
  const { both, both2 } = await copyLibraryInto(team);
  const outcomes = await Promise.allSettled(
    [both, both2].map((rungId) => savePlan(leadOf(team), { clientId, plan: planOf(rungId) }, NOW)),
  );
  expect(outcomes.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected']);
  const refused = outcomes.find((one) => one.status === 'rejected');
  expect(refused?.reason).toMatchObject({ code: 'conflict', fields: { baseVersion: '1' } });
  expect(await ownerQuery('select version from plan where client_id = $1', [clientId])).toEqual([
    { version: 1 },
  ]);
  expect(await placements(clientId)).toHaveLength(1);
});

test('a rung of another team is refused by its line and nothing is kept', async () => {
  const [mine, other] = [await makeTestTeam(), await makeTestTeam('Other')];
  const { clientId } = await makeTestClient(mine);
  const { both } = await copyLibraryInto(other);
  await expect(savePlan(leadOf(mine), { clientId, plan: planOf(both) }, NOW)).rejects.toMatchObject({
    code: 'invalid',
    fields: { 'items.0.rungId': expect.stringContaining('choose one') },
  });
  expect(await ownerQuery('select 1 from plan where client_id = $1', [clientId])).toEqual([]);
});

test("somebody else's client: no page, no plan, not in the list", async () => {
  const [mine, other] = [await makeTestTeam(), await makeTestTeam('Other')];
  const { clientId } = await makeTestClient(other, { name: 'Hidden' });
  const { both } = await copyLibraryInto(mine);
  expect(await loadClient(leadOf(mine), clientId, NOW)).toBeUndefined();
  expect(await loadPlanForm(leadOf(mine), clientId, NOW)).toBeUndefined();
  expect(await loadClients(leadOf(mine), { text: '' })).toEqual([]);
  const saved = savePlan(leadOf(mine), { clientId, plan: planOf(both) }, NOW);
  await expect(saved).rejects.toMatchObject({ code: 'not-found' });
});

test('a new client stands invited, with the told week, and has a page', async () => {
  const team = await makeTestTeam();
  const { clientId } = await makeClient(
    leadOf(team),
    {
      name: 'Zoë Ångström',
      email: null,
      zone: 'Pacific/Apia',
      under18: false,
      goal: 'Freestanding handstand',
      usualSessionMinutes: 60,
      toldWeek: { days: 3, minutes: 60, effort: 6 },
    },
    NOW,
  );
  const loaded = await loadClient(leadOf(team), clientId, NOW);
  expect(loaded).toMatchObject({
    standing: 'invited',
    joined: false,
    page: { name: 'Zoë Ångström', timeline: [] },
  });
  expect(loaded?.page.headline[0]).toBe('Zoë Ångström is invited and has not come in yet.');
  expect(await ownerQuery('select told_week_au from client where id = $1', [clientId])).toEqual([
    { told_week_au: 1080 },
  ]);
  expect(await loadClients(leadOf(team), { text: 'ångs' })).toHaveLength(1);
});
