import { beforeAll, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { packPlans } from '#lib/db/history-plans.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { insertPlan, type PlanToInsert } from '#lib/db/plans.ts';
import type { HistoryPlan } from '#lib/domain/history.ts';
import type { PlanLine } from '#lib/domain/plan-line.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';

let team: TestTeam;
let clientId: string;
let given: PlanToInsert[];

beforeAll(async () => {
  team = await makeTestTeam('Packed');
  ({ clientId } = await makeTestClient(team));
  const { rungIds } = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  const [hold, press, stand] = ['H3.4', 'H3.3', 'H3.2'].map((key) => rungIds.get(key) ?? '');
  const line = (fields: Partial<PlanLine> & Pick<PlanLine, 'session' | 'rungId'>): PlanLine => ({
    side: 'both',
    sets: 3,
    target: 20,
    minutes: null,
    timesPerWeek: 3,
    support: null,
    stopRule: '',
    notTwoDaysRunning: false,
    pairedWith: null,
    noKitRungId: null,
    ...fields,
  });
  const plan = (version: number, fields: Pick<PlanToInsert, 'sessions' | 'items'>): PlanToInsert => ({
    clientId,
    byId: team.memberId,
    version,
    from: `2026-03-0${version}`,
    until: version === 2 ? '2026-03-02' : null,
    sessionsPerWeek: version,
    notes: 'Slowly "at first"\nplease',
    why: 'Because, [so]',
    easyWeeks: version === 1 ? ['2026-03-08', '2026-04-05'] : [],
    testWeeks: version === 1 ? ['2026-03-15'] : [],
    noKitWeeks: version === 1 ? ['2026-03-22'] : [],
    acceptedWeekAu: version === 1 ? 1234.5 : null,
    skillsInFocus: version === 1 ? ['Handstand', 'Planche, "straddle"'] : [],
    now: new Date('2026-03-01T10:00:00Z'),
    ...fields,
  });
  const session = (label: string, minutes: number | null) => ({
    label,
    minutes,
    restSeconds: minutes === null ? null : 90,
    warmUp: 'Wrists, "slowly"\nthen shoulders',
    warmUpMinutes: 8,
  });
  given = [
    plan(1, {
      sessions: [session('A', 55), session('Ü ’n’ more', null)],
      items: [
        line({ session: 'Ü ’n’ more', rungId: stand ?? '', target: null, minutes: 7.5, timesPerWeek: 1.5 }),
        line({
          session: 'A',
          rungId: hold ?? '',
          pairedWith: press ?? null,
          stopRule: 'Stop at "bent" arms \\ or\u001e',
        }),
        line({
          session: 'A',
          rungId: press ?? '',
          pairedWith: hold ?? null,
          side: 'both',
          support: 'wedge',
          notTwoDaysRunning: true,
        }),
        line({ session: 'A', rungId: stand ?? '', side: 'left', noKitRungId: press ?? null }),
      ],
    }),
    plan(2, { sessions: [session('A', 40)], items: [] }),
    plan(3, { sessions: [], items: [] }),
  ];
  await withTeamPg(team.scope, async (tx) => {
    for (const one of given) await insertPlan(tx, one);
  });
});

async function plans(): Promise<HistoryPlan[]> {
  const histories = await withTeamPg(team.scope, (tx) =>
    loadHistories(tx, [clientId], { from: '2026-01-01' }),
  );
  return histories.get(clientId)?.plans ?? [];
}

async function packed(): Promise<(string | null)[]> {
  const rows = await ownerQuery<{ packed: string | null }>(
    'select packed from plan where client_id = $1 order by version',
    [clientId],
  );
  return rows.map((row) => row.packed);
}

it('says what was written, session by session', async () => {
  const read = await plans();
  const name = (
    await ownerQuery<{ name: string }>('select name from member where id = $1', [team.memberId])
  )[0];
  for (const [at, { clientId: _, byId, now, items, ...said }] of given.entries()) {
    const inOrder = said.sessions.flatMap(({ label }) => items.filter(({ session }) => session === label));
    expect(read[at]).toEqual({ ...said, by: name?.name, items: inOrder });
  }
  expect(read.map((plan) => plan.items.length)).toEqual([4, 0, 0]);
});

it('says the same as the rows of sessions and lines', async () => {
  const [read, texts] = [await plans(), await packed()];
  expect(texts).not.toContain(null);
  await ownerQuery('update plan set packed = null where client_id = $1', [clientId]);
  expect(await plans()).toEqual(read);
  await withTeamPg(team.scope, (tx) => packPlans(tx, [clientId]));
  expect(await packed()).toEqual(texts);
});

it('follows a skill that is renamed', async () => {
  await withTeamPg(team.scope, (tx) =>
    tx.client.query(`update plan set skills_in_focus = '{Stand}' where client_id = $1 and version = 1`, [
      clientId,
    ]),
  );
  expect((await plans())[0]?.skillsInFocus).toEqual(['Stand']);
});

it('is written once, by the database alone', async () => {
  await ownerQuery(`update plan set packed = 'kept' where client_id = $1 and version = 3`, [clientId]);
  await withTeamPg(team.scope, (tx) => packPlans(tx, [clientId]));
  expect((await packed())[2]).toBe('kept');
  await expect(
    withTeamPg(team.scope, (tx) =>
      tx.client.query('update plan set packed = null where client_id = $1', [clientId]),
    ),
  ).rejects.toThrow(/permission denied/);
});

it("is not another team's to write", async () => {
  const stranger = await makeTestTeam('Stranger');
  await ownerQuery('update plan set packed = null where client_id = $1', [clientId]);
  await withTeamPg(stranger.scope, (tx) => packPlans(tx, [clientId]));
  expect(await packed()).toEqual([null, null, null]);
});
