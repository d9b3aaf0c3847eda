import { expect, test } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { AppError } from '#lib/errors.ts';
import { planTemplateSchema } from '#lib/schemas/plan.ts';
import { answerStartTest, startAsked } from '#lib/schemas/start-tests.ts';
import { keepPlanTemplate } from '#lib/usecases/keep-plan-template.ts';
import { answerTest } from '#lib/usecases/start/answer-test.ts';
import { askTests, takeTestsBack } from '#lib/usecases/start/ask-tests.ts';
import { loadOwnTests } from '#lib/usecases/start/load-own-tests.ts';
import { loadStart } from '#lib/usecases/start/load-start.ts';
import { placeByTests, undoPlacing } from '#lib/usecases/start/place-by-tests.ts';
import { planFromTests } from '#lib/usecases/start/plan-from-tests.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { leadOf } from '../clients/support.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');
const NONE = startAsked.parse({});

async function arranged(name?: string) {
  const team = await makeTestTeam(name);
  const { clientId, userId } = await makeTestClient(team, { name: 'Solveig' });
  const ids = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  const rung = (key: string) => ids.rungIds.get(key) ?? '';
  const ladder = (key: string) => ids.ladderIds.get(key) ?? '';
  await ownerQuery('update client set joined_at = $2 where id = $1', [clientId, '2026-11-23T10:00:00Z']);
  const skills = await ownerQuery<{ id: string }>(
    `select id from skill where team_id = $1 and name = 'Handstand'`,
    [team.teamId],
  );
  const lead = leadOf(team);
  const phone: Actor = { ...lead, userId: userId ?? lead.userId, role: 'client', memberId: null, clientId };
  const asked = {
    aims: [{ skillId: skills[0]?.id ?? '', aimRungId: rung('H5.4') }],
    kit: ['box' as const],
    under18Allowed: false,
    tests: ['H2.1', 'H2.3', 'X2.4', 'H3.1'].map((key) => ({
      ladderId: ladder(key.split('.')[0] ?? ''),
      rungId: rung(key),
      sets: key.startsWith('X') ? 1 : key === 'H2.3' ? 3 : 2,
      film: key === 'H2.3',
    })),
    words: 'take your time',
  };
  const says = (key: string, values: number[], over: object = {}) =>
    answerStartTest.parse({
      ladderId: ladder(key.split('.')[0] ?? ''),
      rungId: rung(key),
      side: 'both',
      answer: {
        ladderId: ladder(key.split('.')[0] ?? ''),
        rungId: rung(key),
        side: 'both',
        outcome: 'done',
        values,
        tried: null,
        clean: true,
        pain: null,
        region: null,
        ...over,
      },
      ...('side' in over && { side: over.side }),
    });
  return { team, lead, clientId, phone, rung, ladder, asked, says };
}

const placementsOf = (clientId: string) =>
  ownerQuery<{ rungId: string; side: string; from: string }>(
    `select rung_id as "rungId", side, from_date as "from" from placement where client_id = $1 order by created_at, side`,
    [clientId],
  );

test('asked, answered step by step, placed in one act, planned for four weeks; each with its way back', async () => {
  const { lead, clientId, phone, rung, ladder, asked, says, team } = await arranged();
  const { testsId } = await askTests(lead, { clientId, asked }, NOW);
  await expect(askTests(lead, { clientId, asked }, NOW)).rejects.toThrow(/asked of this client already/);

  const fresh = await loadOwnTests(phone, NOW);
  expect(fresh?.tests.map(({ state }) => state)).toEqual(['next', 'waits', 'next', 'next', 'closed']);
  await expect(answerTest(phone, says('H2.3', [45, 45, 45]), NOW)).rejects.toThrow(/not to be done now/);

  const first = says('H2.1', [60, 55]);
  await answerTest(phone, first, NOW);
  await answerTest(phone, first, NOW);
  expect((await loadOwnTests(phone, NOW))?.progress).toBe('1 answered, 3 to go');
  await answerTest(phone, says('H2.3', [45, 45, 45]), NOW);
  await answerTest(phone, says('H2.3', [45, 45, 45]), NOW);
  const films = await ownerQuery<{ rungId: string }>(
    'select rung_id as "rungId" from film_request where client_id = $1',
    [clientId],
  );
  expect(films).toEqual([{ rungId: rung('H2.3') }]);
  await answerTest(phone, says('X2.4', [95], { side: 'left' }), NOW);
  await answerTest(phone, says('X2.4', [92], { side: 'right' }), NOW);
  // The wrists reach: what was closed opens.
  expect((await loadOwnTests(phone, NOW))?.tests.map(({ state }) => state).at(-1)).toBe('next');
  const { left } = await answerTest(phone, says('H3.1', [], { outcome: 'cannot', clean: null }), NOW);
  expect(left).toBe(0);

  const page = await loadStart(lead, clientId, NONE, NOW);
  expect(page?.startsAs).toBe('new');
  const proposed = page?.asked?.places ?? [];
  expect(proposed.map(({ ladderId, side, rungId }) => [ladderId, side, rungId])).toEqual([
    [ladder('H2'), 'both', rung('H2.3')],
    [ladder('H3'), 'both', ''],
    [ladder('X2'), 'left', rung('X2.3')],
    [ladder('X2'), 'right', rung('X2.3')],
  ]);
  const places = proposed.map(({ ladderId, side, rungId }) => ({ ladderId, side, rungId: rungId || null }));
  await placeByTests(lead, { clientId, testsId, asked: { places } }, NOW);
  expect(await placementsOf(clientId)).toEqual([
    { rungId: rung('H2.3'), side: 'both', from: '2026-11-25' },
    { rungId: rung('X2.3'), side: 'left', from: '2026-11-25' },
    { rungId: rung('X2.3'), side: 'right', from: '2026-11-25' },
  ]);
  expect(await loadOwnTests(phone, NOW)).toBeNull();
  await undoPlacing(lead, { clientId, testsId }, NOW);
  expect(await placementsOf(clientId)).toEqual([]);
  await placeByTests(lead, { clientId, testsId, asked: { places } }, NOW);

  const item = (key: string, sets: number) => ({
    session: 'A',
    rungId: rung(key),
    side: 'both',
    sets,
    target: 30,
    minutes: null,
    timesPerWeek: 2,
  });
  const template = planTemplateSchema.parse({
    name: 'First month',
    body: { sessionsPerWeek: 3, notes: '', items: [item('H2.6', 4), item('H3.3', 4), item('PU.6', 4)] },
  });
  const { templateId } = await keepPlanTemplate(lead, template, NOW);
  const fits = (await loadStart(lead, clientId, NONE, NOW))?.templates;
  expect(fits).toMatchObject([{ fits: 1, of: 3, foreseen: [] }]);
  // One drill of some ten minutes: far under the told week, and too little in all to be a jump against a small one.
  await ownerQuery(
    `insert into intake (team_id, client_id, answers) values ($1, $2, '{"week": {"days": 3, "minutes": 40, "effort": 6}}')`,
    [team.teamId, clientId],
  );
  const foreseen = async (au: number) => {
    await ownerQuery('update client set told_week_au = $2 where id = $1', [clientId, au]);
    return (await loadStart(lead, clientId, NONE, NOW))?.templates[0]?.foreseen ?? [];
  };
  expect(await foreseen(720)).toEqual([
    expect.stringMatching(/^Done as planned its fullest week comes to \d+ AU of 720 AU told/),
  ]);
  expect((await foreseen(10)).length).toBe(1);
  const drafts = await planFromTests(lead, { clientId, testsId, asked: { templateId, how: 'draft' } }, NOW);
  expect(drafts.address).toMatch(/\/plan\?draft=.*&template=/);
  await planFromTests(lead, { clientId, testsId, asked: { templateId, how: 'save' } }, NOW);
  const plans = await ownerQuery(
    `select p.version, p.from_date as "from", p.until_date as "until", i.sets, i.target, i.rung_id as "rungId"
     from plan p join plan_session s on s.plan_id = p.id join plan_item i on i.session_id = s.id
     where p.client_id = $1 order by p.version`,
    [clientId],
  );
  expect(plans).toEqual([
    { version: 1, from: '2026-11-25', until: '2026-12-22', sets: 2, target: 45, rungId: rung('H2.3') },
    { version: 2, from: '2026-12-02', until: '2026-12-22', sets: 4, target: 45, rungId: rung('H2.3') },
  ]);
  await expect(undoPlacing(lead, { clientId, testsId }, NOW)).rejects.toThrow(/A plan was written since/);
  const audited = await ownerQuery<{ action: string }>(
    `select action from audit where team_id = $1 and action like 'start-%' order by at, id`,
    [team.teamId],
  );
  expect(audited.map(({ action }) => action).sort()).toEqual(
    ['start-placing-undone', 'start-tests-asked', 'start-tests-placed', 'start-tests-placed'].sort(),
  );
});

test('pain of 6 stops the harder ones and reaches the coach at once, once', async () => {
  const { lead, clientId, phone, asked, says } = await arranged();
  await askTests(lead, { clientId, asked }, NOW);
  const sore = says('H2.1', [], { outcome: 'hurts', clean: null, pain: 7, region: 'wrist-back' });
  await answerTest(phone, sore, NOW);
  await answerTest(phone, sore, NOW);
  const reasons = await ownerQuery<{ kind: string; tier: string }>(
    'select kind, tier from reason where client_id = $1',
    [clientId],
  );
  expect(reasons).toEqual([{ kind: 'pain-high', tier: 'now' }]);
  const tests = (await loadOwnTests(phone, NOW))?.tests ?? [];
  expect(tests.map(({ state }) => state).slice(0, 2)).toEqual(['answered', 'stopped']);
  const [h2] = (await loadStart(lead, clientId, NONE, NOW))?.asked?.places ?? [];
  expect(h2).toMatchObject({ rungId: '' });
});

test('without a kept plan the fewest drills are a draft', async () => {
  const { lead, clientId, phone, asked, says } = await arranged();
  const { testsId } = await askTests(lead, { clientId, asked }, NOW);
  await answerTest(phone, says('H2.1', [60, 60]), NOW);
  const made = await planFromTests(
    lead,
    { clientId, testsId, asked: { templateId: null, how: 'draft' } },
    NOW,
  );
  expect(made.address).toMatch(/\/plan\?draft=/);
});

test('bad input is refused with the field and the fix, and changes nothing', async () => {
  const { lead, clientId, phone, rung, asked, says } = await arranged();
  const ask = (over: object) => askTests(lead, { clientId, asked: { ...asked, ...over } }, NOW);
  const [h2] = asked.tests;
  await expect(ask({ tests: [h2, h2] })).rejects.toMatchObject({
    fields: { 'tests.1.rungId': 'is there twice' },
  });
  await expect(ask({ tests: [{ ...h2, rungId: rung('H3.1') }] })).rejects.toThrow(/tests.0.rungId/);
  await expect(ask({ aims: [{ ...asked.aims[0], aimRungId: rung('PL.2') }] })).rejects.toThrow(
    /aims.0.aimRungId/,
  );
  await expect(answerTest(phone, says('H2.1', [60, 60]), NOW)).rejects.toThrow(/asks for no start tests/);
  const { testsId } = await askTests(lead, { clientId, asked }, NOW);
  await expect(answerTest(phone, says('H2.1', [60, 60, 60]), NOW)).rejects.toMatchObject({
    fields: { values: 'at most 2' },
  });
  await expect(answerTest(phone, says('H4.1', [10]), NOW)).rejects.toThrow(/not among the tests/);
  const place = (places: object[]) =>
    placeByTests(lead, { clientId, testsId, asked: { places: places as never } }, NOW);
  const on = { ladderId: h2?.ladderId, side: 'both', rungId: rung('H2.1') };
  await expect(place([on, on])).rejects.toThrow(/places.1.ladderId: is there twice/);
  await expect(place([{ ...on, side: 'left' }])).rejects.toThrow(/choose it for left and right/);
  await expect(place([{ ...on, rungId: null }])).rejects.toThrow(/at least one ladder/);
  expect(await placementsOf(clientId)).toEqual([]);
  await takeTestsBack(lead, { clientId, testsId }, NOW);
  expect(await loadOwnTests(phone, NOW)).toBeNull();
  await expect(place([on])).rejects.toThrow(AppError);
});

test('another team sees and changes nothing', async () => {
  const { lead, clientId, asked } = await arranged();
  const { testsId } = await askTests(lead, { clientId, asked }, NOW);
  const other = leadOf(await makeTestTeam('Other'));
  expect(await loadStart(other, clientId, NONE, NOW)).toBeUndefined();
  await expect(takeTestsBack(other, { clientId, testsId }, NOW)).rejects.toThrow(/not here/);
  await expect(undoPlacing(other, { clientId, testsId }, NOW)).rejects.toThrow(/not here/);
});

test('under 18 nothing is tested before a parent or guardian agrees, and they hear of pain of 4', async () => {
  const { lead, clientId, phone, asked, says, team } = await arranged();
  await askTests(lead, { clientId, asked }, NOW);
  await ownerQuery('update client set under18 = true where id = $1', [clientId]);
  const guardian = await ownerQuery<{ id: string }>(
    `insert into guardian (team_id, client_id, name, email) values ($1, $2, 'Marta', 'marta@home.example') returning id`,
    [team.teamId, clientId],
  );
  await expect(answerTest(phone, says('H2.1', [60, 55]), NOW)).rejects.toThrow(/wait until Marta agrees/);
  await ownerQuery('update guardian set agreed_at = now() where id = $1', [guardian[0]?.id]);
  expect((await loadOwnTests(phone, NOW))?.under18).toBe(true);
  const sore = (pain: number) =>
    answerTest(phone, says('H2.1', [], { outcome: 'hurts', clean: null, pain, region: 'wrist-back' }), NOW);
  const mails = () =>
    ownerQuery(`select 1 from outbox where client_id = $1 and dedupe_key like 'guardian:%'`, [clientId]);
  await sore(3);
  expect(await mails()).toHaveLength(0);
  await sore(4);
  await sore(4);
  expect(await mails()).toHaveLength(1);
});
