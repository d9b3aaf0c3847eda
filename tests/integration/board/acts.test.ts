import { beforeEach, describe, expect, it } from 'vitest';
import { parseWith } from '#lib/edge/parse-with.ts';
import { AppError } from '#lib/errors.ts';
import { boardAct, type ReasonAct } from '#lib/schemas/board.ts';
import { actOnReason } from '#lib/usecases/act-on-reason.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { holdsOf, leadOf, NOW, openReason, waitingQuestion } from './board-rows.ts';

let team: TestTeam;
let other: TestTeam;
let clientId: string;

beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  other = await makeTestTeam('High Wall');
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
});

const later = new Date(NOW.getTime() + 20_000);
const act = (body: object) =>
  actOnReason(leadOf(team), parseWith(boardAct, { clientId, ...body }) as ReasonAct, NOW);
const undo = (actId: string) => undoAct(leadOf(team), { actId }, later);
const count = async (table: string, where = 'true') =>
  (
    await ownerQuery<{ n: number }>(
      `select count(*)::int as n from ${table} where team_id = $1 and ${where}`,
      [team.teamId],
    )
  )[0]?.n;
const names = async (of: TestTeam) =>
  (await loadBoard(leadOf(of), {}, NOW)).groups.flatMap((group) => group.rows.map((row) => row.name));
const refusal = (promise: Promise<unknown>): Promise<AppError> =>
  promise.then(
    () => expect.fail('was not refused'),
    (error: unknown) => (error instanceof AppError ? error : expect.fail(String(error))),
  );

describe('a step up while pain of 6 is not over', () => {
  it('is not shown and not taken, whether the pain is open or with the client', async () => {
    const stepUp = await openReason(team, clientId, 'step-up-earned');
    const pain = await openReason(team, clientId, 'pain-high');
    for (const state of ['open', 'with-client', 'aside']) {
      await ownerQuery('update reason set state = $2 where id = $1', [pain, state]);
      const refused = await refusal(act({ act: 'take', reasonId: stepUp }));
      expect(['not-found', 'conflict']).toContain(refused.code);
      expect(await names(team)).toEqual(state === 'open' ? ['Maren Oduya'] : []);
    }
    await ownerQuery(`update reason set state = 'closed', closed_at = now() where id = $1`, [pain]);
    expect(await names(team)).toEqual(['Maren Oduya']);
    expect((await act({ act: 'take', reasonId: stepUp })).actId).toMatch(/^[0-9a-f-]{36}$/);
  });
});

describe('acts on a row', () => {
  const CASES = [
    {
      body: { act: 'take' },
      leaves: { state: 'with-client', with_client_until: '2026-12-09' },
      line: 'With the client until Wed 9 Dec. Step: One rung back.',
    },
    {
      body: { act: 'put-aside', until: 'date', date: '2026-12-01' },
      leaves: { state: 'aside', aside_until: '2026-12-01', aside_until_worse: false },
      line: 'Put aside until Tue 1 Dec',
    },
    {
      body: { act: 'put-aside', until: 'change', words: 'on holiday' },
      leaves: { state: 'aside', aside_until: null, aside_until_worse: true },
      line: 'Put aside until it changes: “on holiday”',
    },
    {
      body: { act: 'put-aside', until: 'next-check-in' },
      leaves: { state: 'aside', aside_until: '2026-11-26' },
      line: 'Put aside until Thu 26 Nov',
    },
    {
      body: { act: 'done', rightToTell: true },
      leaves: { state: 'closed', closed_at: NOW, closed_why: 'done by the coach' },
      line: 'Done, right to tell me',
    },
    { body: { act: 'done' }, leaves: { state: 'closed', closed_at: NOW }, line: 'Done' },
  ];

  it.each(CASES)(
    '$body.act $body.until: all reasons of the row, and undo restores them exactly',
    async ({ body, leaves, line }) => {
      await openReason(team, clientId, 'stalled');
      await openReason(team, clientId, 'load-jump');
      const before = await holdsOf(clientId);
      const done = await act(body);
      expect(done).toMatchObject({ folds: true, line });
      for (const hold of await holdsOf(clientId)) expect(hold).toMatchObject(leaves);
      expect(await names(team)).toEqual([]);

      await undo(done.actId);
      expect(await holdsOf(clientId)).toEqual(before);
      expect(await names(team)).toEqual(['Maren Oduya']);
      expect(await count('reason_event')).toBe(4);
      expect(await count('audit')).toBe(2);
      expect(await count('step_taken', 'undone_at is null')).toBe(0);
      expect(await count('verdict', 'undone_at is null')).toBe(0);
      expect((await refusal(undo(done.actId))).code).toBe('conflict');
    },
  );

  it('comes back from the client at the earliest date of its reasons', async () => {
    await openReason(team, clientId, 'stalled');
    await openReason(team, clientId, 'pain-rising');
    await act({ act: 'take' });
    expect((await holdsOf(clientId)).map((hold) => hold.with_client_until)).toEqual([
      '2026-12-02',
      '2026-12-02',
    ]);
  });

  it('keeps the step that was taken and the verdict, on the leading reason only', async () => {
    await openReason(team, clientId, 'stalled');
    await openReason(team, clientId, 'load-jump');
    await act({ act: 'take' });
    expect(
      await ownerQuery(
        'select kind, words, taken_on::text, review_on::text from step_taken where team_id = $1',
        [team.teamId],
      ),
    ).toEqual([
      { kind: 'one-rung-back', words: 'One rung back.', taken_on: '2026-11-25', review_on: '2026-12-09' },
    ]);
  });

  it('acts on the named reason only, and the row stays', async () => {
    const reasonId = await openReason(team, clientId, 'stalled');
    await openReason(team, clientId, 'load-jump');
    const done = await act({ act: 'done', reasonId, rightToTell: false, words: 'knew it' });
    expect(done.folds).toBe(false);
    expect((await holdsOf(clientId)).map((hold) => [hold.kind, hold.state])).toEqual([
      ['load-jump', 'open'],
      ['stalled', 'closed'],
    ]);
    expect(
      await ownerQuery('select reason_id, right_to_tell, text from verdict where team_id = $1', [
        team.teamId,
      ]),
    ).toEqual([{ reason_id: reasonId, right_to_tell: false, text: 'knew it' }]);
  });
});

describe('refusals', () => {
  it.each([
    { act: 'put-aside', until: 'change' },
    { act: 'done', rightToTell: false },
  ])('pain of 6 or more: %j needs words', async (body) => {
    await openReason(team, clientId, 'pain-high');
    const error = await refusal(act(body));
    expect([error.code, Object.keys(error.fields)]).toEqual(['invalid', ['words']]);
    expect(await names(team)).toEqual(['Maren Oduya']);
    expect(await count('reason_event')).toBe(0);
    expect((await act({ ...body, words: 'spoke with her, clinician on Friday' })).folds).toBe(true);
  });

  it.each(['2026-11-25', '2026-11-01', '2028-01-01'])('put aside until %s names the date', async (date) => {
    await openReason(team, clientId);
    const error = await refusal(act({ act: 'put-aside', until: 'date', date }));
    expect([error.code, Object.keys(error.fields)]).toEqual(['invalid', ['date']]);
  });

  it.each([
    [{ act: 'fly' }, 'act'],
    [{ act: 'take', clientId: 'x' }, 'clientId'],
    [{ act: 'put-aside', until: 'later' }, 'until'],
    [{ act: 'put-aside', until: 'date' }, 'date'],
    [{ act: 'done', rightToTell: 'yes' }, 'rightToTell'],
    [{ act: 'answer', questionId: crypto.randomUUID(), text: '  ' }, 'text'],
    [{ act: 'take', more: 1 }, 'more'],
  ])('%j names the field', async (body, field) => {
    const error = await refusal((async () => parseWith(boardAct, { clientId, ...body }))());
    expect([error.code, Object.keys(error.fields)]).toEqual(['invalid', [field]]);
  });

  it('answers alike for another team’s client and for none, and touches nothing', async () => {
    const reasonId = await openReason(team, clientId);
    const before = await holdsOf(clientId);
    const strange = leadOf(other);
    const done = await act({ act: 'put-aside', until: 'change' });
    const aside = await holdsOf(clientId);
    const tries = [
      () => actOnReason(strange, { act: 'done', clientId, words: '' }, NOW),
      () => actOnReason(strange, { act: 'done', clientId: crypto.randomUUID(), words: '' }, NOW),
      () => actOnReason(strange, { act: 'take', clientId, reasonId, words: '' }, NOW),
      () => markSeen(strange, { clientId }, NOW),
      () => answerQuestion(strange, { clientId, questionId: crypto.randomUUID(), text: 'no' }, NOW),
      () => undoAct(strange, { actId: done.actId }, NOW),
      () => undoAct(strange, { actId: crypto.randomUUID() }, NOW),
    ];
    for (const tried of tries) expect((await refusal(tried())).code).toBe('not-found');
    expect(await holdsOf(clientId)).toEqual(aside);
    await undo(done.actId);
    expect(await holdsOf(clientId)).toEqual(before);
    expect(await names(other)).toEqual([]);
  });

  it('does not undo what a night has changed since', async () => {
    await openReason(team, clientId);
    const { actId } = await act({ act: 'put-aside', until: 'change' });
    await ownerQuery("update reason set state = 'open', aside_until_worse = false where client_id = $1", [
      clientId,
    ]);
    expect((await refusal(undo(actId))).code).toBe('conflict');
  });

  it('does not undo into a second open reason of the same kind and subject', async () => {
    await openReason(team, clientId);
    const { actId } = await act({ act: 'done' });
    await openReason(team, clientId);
    expect((await refusal(undo(actId))).code).toBe('conflict');
  });
});

describe('answer and seen', () => {
  it('answers, closes the question’s reason, and takes both back', async () => {
    const questionId = await waitingQuestion(team, clientId);
    await openReason(team, clientId, 'question-waiting');
    await openReason(team, clientId, 'stalled');
    const before = await holdsOf(clientId);
    const done = await answerQuestion(
      leadOf(team),
      { clientId, questionId, text: 'Bars until Friday.' },
      NOW,
    );
    expect(done.folds).toBe(false);
    expect((await holdsOf(clientId)).map((hold) => [hold.kind, hold.closed_why])).toEqual([
      ['question-waiting', 'answered'],
      ['stalled', null],
    ]);
    expect(await count('answer')).toBe(1);
    expect(
      (await refusal(answerQuestion(leadOf(team), { clientId, questionId, text: 'Again.' }, NOW))).code,
    ).toBe('conflict');

    await undo(done.actId);
    expect(await holdsOf(clientId)).toEqual(before);
    expect(await count('answer')).toBe(0);
    expect(await count('question', 'answered_at is null')).toBe(1);
  });

  it('marks as seen without moving the row, and takes it back', async () => {
    await openReason(team, clientId);
    const before = await holdsOf(clientId);
    const done = await markSeen(leadOf(team), { clientId }, NOW);
    expect(await count('seen_mark')).toBe(1);
    expect(await holdsOf(clientId)).toEqual(before);
    expect((await loadBoard(leadOf(team), {}, NOW)).groups[0]?.rows[0]?.seen).toBe('seen today 08:00');
    await undo(done.actId);
    expect(await count('seen_mark')).toBe(0);
  });
});

describe('the board', () => {
  it('reads days, absences and rungs of the clients on it', async () => {
    await openReason(team, clientId);
    await ownerQuery(
      `insert into day_rollup (team_id, client_id, date, state, session_load_au, worst_pain, check_ins, facts)
       values ($1, $2, '2026-11-24', 'trained', 320, 4, 1, '[]')`,
      [team.teamId, clientId],
    );
    await ownerQuery(
      `insert into night_run (team_id, local_date, started_at, finished_at, clients_due, clients_done, clients_failed, rules_version)
       values ($1, '2026-11-24', '2026-11-25T04:10:00Z', '2026-11-25T04:12:00Z', 2, 1, 1, '1')`,
      [team.teamId],
    );
    const board = await loadBoard(leadOf(team), {}, NOW);
    const row = board.groups[0]?.rows[0];
    expect(row?.strip.weeks[11]).toMatchObject({ load: 320, knownDays: 1 });
    expect(row?.strip.peak).toEqual({ day: 83, value: 4 });
    expect(row?.others).toEqual(['27 of 28 days known']);
    expect(board.night).toMatchObject({
      endedAt: '05:12',
      endedOn: '2026-11-25',
      due: 2,
      done: 1,
      failed: 1,
    });
  });
});
