import { beforeEach, describe, expect, it } from 'vitest';
import { parseWith } from '#lib/edge/parse-with.ts';
import { AppError } from '#lib/errors.ts';
import { boardAct, type ReasonAct } from '#lib/schemas/board.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { actOnReason } from '#lib/usecases/act-on-reason.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { loadStepDraft, openStepDraft } from '#lib/usecases/load-step-draft.ts';
import { savePlan } from '#lib/usecases/save-plan.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import { copyLibraryInto } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { holdsOf, leadOf, NOW } from './board-rows.ts';

type Rung = { id: string; ladder_id: string; position: number; name: string; each: boolean };
let team: TestTeam;
let clientId: string;
let ladder: Rung[];

const later = new Date(NOW.getTime() + 20_000);
const rows = <Row extends object = object>(sql: string) =>
  ownerQuery<Row & Record<string, unknown>>(sql, [clientId]);

beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
  await copyLibraryInto(team);
  ladder = await ownerQuery<Rung>(
    `select r.id, r.ladder_id, r.position, r.name, d.each_side as each from rung r
     join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     join drill d on d.team_id = r.team_id and d.id = r.drill_id
     where r.team_id = $1 and l.key = 'PU' order by r.position`,
    [team.teamId],
  );
  const plan = planSchema.parse({
    baseVersion: 0,
    from: '2026-11-01',
    until: null,
    sessionsPerWeek: 3,
    items: [{ session: 'A', rungId: rung(2).id, side: 'both', sets: 4, target: 5, timesPerWeek: 3 }],
  });
  await savePlan(leadOf(team), { clientId, plan }, new Date('2026-11-01T08:00:00.000Z'));
});

function rung(position: number): Rung {
  const found = ladder.find((one) => one.position === position);
  if (!found) throw new Error(`no rung ${position}`);
  return found;
}

async function open(
  kind: string,
  step: string,
  subject: object = {},
  evidence: object = {},
): Promise<string> {
  const { id, ladder_id: ladderId } = rung(2);
  const about = { key: kind, label: 'it', ladderId, rungId: id, side: 'both', ...subject };
  const [row] = await ownerQuery<{ id: string }>(
    `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
       step, clears, evidence, working, rules_version, raised_at, updated_at)
     values ($1, $2, $3, $3, $4, 'act', 2, 'this-week', 'It is so.', 'so', '2026-11-20', $5, 'x', $6,
       '{"daysKnown":null}', '1', '2026-11-21T03:00:00Z', '2026-11-24T03:00:00Z') returning id`,
    [team.teamId, clientId, kind, about, { kind: step, text: 'The step' }, evidence],
  );
  return row?.id ?? '';
}

const shown = async () => {
  const draft = await loadStepDraft(leadOf(team), { clientId }, NOW);
  if (!draft) throw new Error('no draft');
  return draft;
};
const take = async (words?: string) => {
  const draft = await shown();
  const body = {
    act: 'take',
    clientId,
    draft: { reasonId: draft.reasonId, planVersion: draft.planVersion, words: words ?? draft.words },
  };
  return actOnReason(leadOf(team), parseWith(boardAct, body) as ReasonAct, NOW);
};
const placements = () =>
  rows<{ rung_id: string; from: string }>(
    `select rung_id, side, from_date::text as from, why from placement where client_id = $1 order by from_date, side`,
  );
const plans = () =>
  rows<{ version: number; from: string; sets: number[] }>(
    `select p.version, p.from_date::text as from, array_agg(i.sets order by i.position)::int[] as sets,
       array_agg(i.rung_id order by i.position)::text[] as rungs
     from plan p join plan_session s on s.plan_id = p.id join plan_item i on i.session_id = s.id
     where p.client_id = $1 group by p.version, p.from_date order by p.version`,
  );
const refusal = (promise: Promise<unknown>): Promise<AppError> =>
  promise.then(
    () => expect.fail('was not refused'),
    (error: unknown) => (error instanceof AppError ? error : expect.fail(String(error))),
  );

describe('a proposed step taken in one action', () => {
  it('shows what would happen and changes nothing', async () => {
    await open('step-up-earned', 'step-up');
    const draft = await shown();
    expect(draft).toMatchObject({ planVersion: 1, opensInPlan: true, step: 'The step' });
    expect(draft.does[0]).toContain(rung(3).name);
    expect(await plans()).toHaveLength(1);
  });

  it('steps up: plan version, placement on the next rung, step to be followed, words to the client', async () => {
    await open('step-up-earned', 'step-up');
    const before = await placements();
    const done = await take('From today one up.');
    expect(done.folds).toBe(true);
    expect(await plans()).toMatchObject([
      { version: 1 },
      { version: 2, from: '2026-11-25', rungs: [rung(3).id] },
    ]);
    expect((await placements()).at(-1)).toMatchObject({ rung_id: rung(3).id, from: '2026-11-25' });
    expect(await rows('select kind, plan_version, undone_at from step_taken where client_id = $1')).toEqual([
      { kind: 'step-up', plan_version: 2, undone_at: null },
    ]);
    expect(await rows('select text from coach_word where client_id = $1')).toEqual([
      { text: 'From today one up.' },
    ]);
    expect(await holdsOf(clientId)).toMatchObject([{ state: 'with-client' }]);

    await undoAct(leadOf(team), { actId: done.actId }, later);
    expect(await plans()).toHaveLength(1);
    expect(await placements()).toEqual(before);
    expect(await rows('select 1 from coach_word where client_id = $1')).toEqual([]);
    expect(await holdsOf(clientId)).toMatchObject([{ state: 'open' }]);
  });

  it('says nothing to the client where the coach left the words empty', async () => {
    await open('step-up-earned', 'step-up');
    await take('');
    expect(await plans()).toHaveLength(2);
    expect(await rows('select 1 from coach_word where client_id = $1')).toEqual([]);
  });

  it('cuts volume as three versions that come back in steps, and takes all of them back', async () => {
    await open('load-jump', 'cut-volume', { key: 'load', ladderId: undefined, rungId: undefined });
    const done = await take();
    expect((await plans()).map(({ from, sets }) => `${from} ${sets}`)).toEqual([
      '2026-11-01 4',
      '2026-11-25 2',
      '2026-12-02 3',
      '2026-12-09 4',
    ]);
    await undoAct(leadOf(team), { actId: done.actId }, later);
    expect(await plans()).toHaveLength(1);
  });

  it('takes back a pyramid too', async () => {
    const line = { session: 'A', side: 'both', sets: 4, target: 5, timesPerWeek: 3 };
    const plan = planSchema.parse({
      baseVersion: 1,
      from: '2026-11-02',
      until: null,
      sessionsPerWeek: 3,
      items: [
        { ...line, rungId: rung(1).id, pairedWith: rung(2).id },
        { ...line, rungId: rung(2).id, pairedWith: rung(1).id },
      ],
    });
    await savePlan(leadOf(team), { clientId, plan }, NOW);
    await open('load-jump', 'cut-volume', { key: 'load', ladderId: undefined, rungId: undefined });
    const done = await take();
    expect(await plans()).toHaveLength(5);
    await undoAct(leadOf(team), { actId: done.actId }, later);
    expect(await plans()).toHaveLength(2);
  });

  it('asks for a film', async () => {
    await open('one-side-fault', 'ask-film');
    const done = await take();
    const films = 'select rung_id, by_date::text, words from film_request where client_id = $1';
    expect(await rows(films)).toMatchObject([{ rung_id: rung(2).id, by_date: '2026-12-02' }]);
    await ownerQuery(
      `insert into clip (team_id, client_id, request_id, rung_id, side, filmed_on, storage_key, bytes, state)
       select team_id, client_id, id, rung_id, side, by_date, id::text, 0, 'arriving' from film_request where client_id = $1`,
      [clientId],
    );
    await undoAct(leadOf(team), { actId: done.actId }, later);
    expect(await rows(films)).toEqual([]);
  });

  it('rules a place out and sends to a clinician', async () => {
    await open('pain-high', 'send-to-clinician', {
      key: 'elbow',
      ladderId: undefined,
      rungId: undefined,
      region: 'elbow-inner',
      side: 'left',
    });
    const done = await take();
    const limits =
      'select region, side, rule, from_date::text, until_date from limit_rule where client_id = $1';
    expect(await rows(limits)).toEqual([
      { region: 'elbow-inner', side: 'left', rule: 'none', from_date: '2026-11-25', until_date: null },
    ]);
    expect(await plans()).toHaveLength(1);
    await undoAct(leadOf(team), { actId: done.actId }, later);
    expect(await rows(limits)).toEqual([]);
  });

  it('drops a goal with its lines and ends it, and opens it again', async () => {
    const [hold] = await ownerQuery<{ id: string; skill_id: string }>(
      `select r.id, p.skill_id from rung r join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
       join part p on p.team_id = l.team_id and p.id = l.part_id join drill d on d.team_id = r.team_id and d.id = r.drill_id
       where r.team_id = $1 and l.key = 'PL' and not d.each_side order by r.position limit 1`,
      [team.teamId],
    );
    const [skill] = await ownerQuery<{ skill_id: string }>(
      `select p.skill_id from ladder l join part p on p.team_id = l.team_id and p.id = l.part_id
       where l.team_id = $1 and l.key = 'PU'`,
      [team.teamId],
    );
    const line = { session: 'A', side: 'both', sets: 4, target: 5, timesPerWeek: 3 };
    const plan = planSchema.parse({
      baseVersion: 1,
      from: '2026-11-02',
      until: null,
      sessionsPerWeek: 3,
      items: [
        { ...line, rungId: rung(2).id },
        { ...line, rungId: hold?.id },
      ],
      goals: [
        { skillId: skill?.skill_id, wantedBy: null },
        { skillId: hold?.skill_id, wantedBy: null },
      ],
    });
    await savePlan(leadOf(team), { clientId, plan }, NOW);
    await open('too-many-goals', 'drop-a-goal', { key: 'goals', ladderId: undefined, rungId: undefined });
    const done = await take();
    const goals = () =>
      rows<{ open: number }>(
        'select count(*)::int as open from goal where client_id = $1 and ended_on is null',
      );
    expect(await goals()).toEqual([{ open: 1 }]);
    expect((await plans()).at(-1)).toMatchObject({ version: 3, rungs: [rung(2).id] });
    await undoAct(leadOf(team), { actId: done.actId }, later);
    expect(await goals()).toEqual([{ open: 2 }]);
  });

  it('refuses a draft of an older version; nothing is written', async () => {
    await open('step-up-earned', 'step-up');
    const draft = await shown();
    const plan = planSchema.parse({
      baseVersion: 1,
      from: '2026-11-24',
      until: null,
      sessionsPerWeek: 3,
      items: [{ session: 'A', rungId: rung(2).id, side: 'both', sets: 5, target: 5, timesPerWeek: 3 }],
    });
    await savePlan(leadOf(team), { clientId, plan }, NOW);
    const body = {
      act: 'take',
      clientId,
      draft: { reasonId: draft.reasonId, planVersion: draft.planVersion, words: 'x' },
    };
    const error = await refusal(actOnReason(leadOf(team), parseWith(boardAct, body) as ReasonAct, NOW));
    expect(error).toMatchObject({ code: 'conflict', message: expect.stringContaining('Nothing was saved') });
    expect(await plans()).toHaveLength(2);
    expect(await rows('select 1 from step_taken where client_id = $1')).toEqual([]);
    expect(await holdsOf(clientId)).toMatchObject([{ state: 'open' }]);
  });

  it('is not undone once the client has trained by it, or the plan was changed again', async () => {
    await open('step-up-earned', 'step-up');
    const done = await take();
    await ownerQuery(
      `insert into check_in (team_id, client_id, body_hash, date, zone, sent_at, kind, plan_version)
       values ($1, $2, 'x', '2026-11-25', 'Europe/Lisbon', $3, 'training', 2)`,
      [team.teamId, clientId, later],
    );
    const error = await refusal(undoAct(leadOf(team), { actId: done.actId }, later));
    expect(error).toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('new version of the plan'),
    });
    expect(await plans()).toHaveLength(2);
    expect(await holdsOf(clientId)).toMatchObject([{ state: 'with-client' }]);
  });

  it('opens in the plan editor as a draft that changes nothing yet', async () => {
    const reasonId = await open('stalled', 'one-rung-back');
    const { address, draftId } = await openStepDraft(leadOf(team), { clientId, reasonId }, NOW);
    expect(address).toBe(`/clients/${clientId}/plan?draft=${draftId}`);
    const [draft] = await rows<{ body: { lines: object[]; reasonId: string } }>(
      'select body from plan_draft where client_id = $1',
    );
    expect(draft?.body.lines).toMatchObject([{ act: 'put', rungId: rung(1).id, session: 'A' }]);
    expect(draft?.body.reasonId).toBe(reasonId);
    expect(await plans()).toHaveLength(1);
  });

  it('opens a step back in a pyramid with both its halves: one in a new place, one out', async () => {
    const line = { session: 'A', side: 'both', sets: 4, target: 5, timesPerWeek: 3 };
    const plan = planSchema.parse({
      baseVersion: 1,
      from: '2026-11-02',
      until: null,
      sessionsPerWeek: 3,
      items: [
        { ...line, rungId: rung(2).id, pairedWith: rung(3).id },
        { ...line, rungId: rung(3).id, pairedWith: rung(2).id },
      ],
    });
    await savePlan(leadOf(team), { clientId, plan }, NOW);
    const reasonId = await open('stalled', 'one-rung-back');
    const { draftId } = await openStepDraft(leadOf(team), { clientId, reasonId }, NOW);
    const form = await loadPlanForm(leadOf(team), clientId, NOW, { draft: draftId });
    expect(form?.draft?.draft.lines).toMatchObject([
      { act: 'put', rungId: rung(1).id, replaces: rung(2).id, pairedWith: null },
      { act: 'drop', rungId: rung(3).id },
    ]);
  });

  it('is not there for another team, and null where the step is to look', async () => {
    await open('not-seen', 'look', { ladderId: undefined, rungId: undefined });
    expect(await loadStepDraft(leadOf(team), { clientId }, NOW)).toBeNull();
    const other = await makeTestTeam('High Wall');
    expect((await refusal(loadStepDraft(leadOf(other), { clientId }, NOW))).code).toBe('not-found');
  });
});
