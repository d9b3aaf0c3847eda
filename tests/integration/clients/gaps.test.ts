import { expect, test } from 'vitest';
import { POST as saveRoute } from '#app/api/clients/[clientId]/assessments/route.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { copyLibrary } from '#lib/db/library.ts';
import { assessmentSchema } from '#lib/schemas/assessment.ts';
import { draftOfGaps } from '#lib/usecases/draft-of-gaps.ts';
import { loadGaps } from '#lib/usecases/load-gaps.ts';
import { saveAssessment } from '#lib/usecases/save-assessment.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { browserRequest, cookieFor } from '#tests/integration/support/signing-in.ts';
import { leadOf } from './support.ts';

const NOW = new Date('2026-11-25T07:00:00.000Z');

async function arranged(name?: string) {
  const team = await makeTestTeam(name);
  const { clientId } = await makeTestClient(team, { name: 'Solveig' });
  const ids = await withTeamPg(team.scope, (tx) => copyLibrary(tx));
  const rung = (key: string) => ids.rungIds.get(key) ?? '';
  const ladder = (key: string) => ids.ladderIds.get(key) ?? '';
  const skill = async (skillName: string) =>
    (
      await ownerQuery<{ id: string }>('select id from skill where team_id = $1 and name = $2', [
        team.teamId,
        skillName,
      ])
    )[0]?.id ?? '';
  return { team, clientId, rung, ladder, press: await skill('Press to handstand') };
}

const place = (team: TestTeam, clientId: string, ladderId: string, rungId: string) =>
  ownerQuery(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date) values ($1, $2, $3, $4, 'both', '2026-09-01')`,
    [team.teamId, clientId, ladderId, rungId],
  );

async function train(team: TestTeam, clientId: string, rungId: string, date: string) {
  const sets = [1, 2, 3].map((index) => ({
    rungId,
    side: 'both',
    index,
    planned: 10,
    value: 3 + index,
    tried: null,
    how: 'typed',
    clean: true,
    faults: [],
    support: null,
    addedKg: null,
  }));
  const facts = [
    {
      id: `${date}`,
      date,
      zone: 'Europe/Berlin',
      sentAt: `${date}T18:00:00.000Z`,
      kind: 'training',
      session: 'A',
      effort: 6,
      minutes: 50,
      ground: null,
      sleepHours: null,
      nothingHurts: false,
      sets,
      pain: [{ region: 'wrist-back', side: 'left', moment: 'during', value: 4, kind: 'joint', usual: null }],
      dangerSigns: [],
      words: '',
    },
  ];
  await ownerQuery(
    `insert into day_rollup (team_id, client_id, date, state, check_ins, facts)
     values ($1, $2, $3, 'trained', 1, $4)`,
    [team.teamId, clientId, date, JSON.stringify(facts)],
  );
}

/** The form as the page fills it in, for an aim, with what the coach adds. */
async function formFor(of: Awaited<ReturnType<typeof arranged>>, aim: string) {
  const loaded = await loadGaps(leadOf(of.team), of.clientId, { skill: of.press, aim: of.rung(aim) }, NOW);
  if (!loaded) throw new Error('not here');
  return { loaded, input: assessmentSchema.parse(loaded.assessment) };
}

test('the form is filled in from placements, last results and pain', async () => {
  const of = await arranged();
  await place(of.team, of.clientId, of.ladder('P2'), of.rung('P2.2'));
  await train(of.team, of.clientId, of.rung('PT.2'), '2026-11-20');
  const { loaded } = await formFor(of, 'P4.4');
  const part = (key: string) => loaded.assessment.parts.find((one) => one.ladderId === of.ladder(key));
  expect(part('P2')?.sides[0]).toMatchObject({ rungId: of.rung('P2.2'), value: null, pain: 4 });
  expect(part('PT')).toMatchObject({
    askedRungId: of.rung('PT.2'),
    sides: [{ rungId: of.rung('PT.2'), sets: 3, value: 4, clean: true, pain: 4 }],
  });
  expect(part('H5')?.askedRungId).toBe(of.rung('H5.4'));
  expect(part('X1')?.sides.map(({ side }) => side)).toEqual(['left', 'right']);
  expect(part('P5')).toBeUndefined();
});

test('an assessment is kept, answered, and taken into the plan as a draft', async () => {
  const of = await arranged();
  const { input } = await formFor(of, 'P4.4');
  for (const part of input.parts)
    for (const side of part.sides) {
      if (part.ladderId === of.ladder('P3')) side.film = 'drops';
      if (part.ladderId === of.ladder('H2')) side.film = 'steady';
      if (part.ladderId === of.ladder('PT'))
        Object.assign(side, { rungId: of.rung('PT.2'), sets: 3, value: 4, clean: true });
    }
  const actor = leadOf(of.team);
  const { assessmentId } = await saveAssessment(
    actor,
    { clientId: of.clientId, assessment: { ...input, kit: ['block'], sessions: ['A', 'B'] } },
    NOW,
  );
  const shown = await loadGaps(actor, of.clientId, { assessment: assessmentId }, NOW);
  const result = shown?.kept?.result;
  expect(result?.open.map(({ ask }) => ask.ladder.id)).toEqual([of.ladder('PT'), of.ladder('P3')]);
  expect(result?.left).toEqual([]);
  expect(shown?.earlier).toHaveLength(1);

  const saved = await draftOfGaps(actor, { clientId: of.clientId, assessmentId }, NOW);
  expect(saved.address).toBe(`/clients/${of.clientId}/plan?draft=${saved.draftId}`);
  const [kept] = await ownerQuery<{ source: string; body: { lines: { rungId: string; why: string }[] } }>(
    'select source, body from plan_draft where id = $1',
    [saved.draftId],
  );
  expect(kept?.source).toBe('gap-finder');
  const lines = new Map(kept?.body.lines.map((line) => [line.rungId, line.why]));
  expect(lines.get(of.rung('PT.2'))).toContain('Covers Top');
  expect(lines.get(of.rung('P3.1'))).toContain('Covers Full range, down');
  expect(result?.chosen).toHaveLength(lines.size);
});

test("rungs of another ladder and of another team's are refused by their field, and nothing is kept", async () => {
  const [of, other] = [await arranged(), await arranged('Other')];
  const { input } = await formFor(of, 'P4.4');
  const actor = leadOf(of.team);
  const save = (over: object) =>
    saveAssessment(actor, { clientId: of.clientId, assessment: { ...input, ...over } }, NOW);
  await expect(save({ aimRungId: other.rung('P4.4') })).rejects.toMatchObject({
    code: 'invalid',
    fields: { aimRungId: expect.stringContaining('choose one') },
  });
  const [first, ...rest] = input.parts;
  await expect(save({ parts: [{ ...first, askedRungId: of.rung('H3.1') }, ...rest] })).rejects.toMatchObject({
    fields: { 'parts.0.askedRungId': expect.stringContaining('choose one') },
  });
  await expect(save({ parts: [first, first] })).rejects.toMatchObject({
    fields: { 'parts.1.ladderId': 'is there twice' },
  });
  expect(await ownerQuery('select 1 from assessment where team_id = $1', [of.team.teamId])).toEqual([]);
});

test('another team sees neither client nor assessment, and takes no draft of it', async () => {
  const [of, other] = [await arranged(), await arranged('Other')];
  const { input } = await formFor(of, 'P4.4');
  const { assessmentId } = await saveAssessment(
    leadOf(of.team),
    { clientId: of.clientId, assessment: input },
    NOW,
  );
  const stranger = leadOf(other.team);
  expect(await loadGaps(stranger, of.clientId, { assessment: assessmentId }, NOW)).toBeUndefined();
  expect(await loadGaps(stranger, other.clientId, { assessment: assessmentId }, NOW)).toBeUndefined();
  await expect(draftOfGaps(stranger, { clientId: other.clientId, assessmentId }, NOW)).rejects.toMatchObject({
    code: 'not-found',
  });
  await expect(
    saveAssessment(stranger, { clientId: of.clientId, assessment: input }, NOW),
  ).rejects.toMatchObject({ code: 'not-found' });
});

test('a form that is sent as text is read; a pain of 11 and a result without its rung are named', async () => {
  const of = await arranged();
  const { input } = await formFor(of, 'P4.4');
  const send = async (side: object) => {
    const [first, ...rest] = input.parts;
    const parts = [{ ...first, sides: [{ ...first?.sides[0], ...side }] }, ...rest];
    return saveRoute(
      browserRequest(`/api/clients/${of.clientId}/assessments`, {
        cookie: await cookieFor(of.team.userId),
        json: { ...input, parts },
      }),
      { params: Promise.resolve({ clientId: of.clientId }) },
    );
  };
  const refused = await send({ pain: '11', value: '12,5' });
  expect(refused.status).toBe(400);
  expect(((await refused.json()) as { error: { fields: object } }).error.fields).toMatchObject({
    'parts.0.sides.0.pain': 'from 0 to 10',
    'parts.0.sides.0.rungId': 'choose the rung this result was on',
  });
  const rungId = of.rung('PT.2');
  const saved = await send({ pain: '2', value: '12,5', sets: '3', rungId, clean: true });
  expect(saved.status).toBe(201);
});
