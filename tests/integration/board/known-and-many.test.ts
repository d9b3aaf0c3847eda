import { beforeEach, describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { updateReasonContents } from '#lib/db/reasons.ts';
import { parseWith } from '#lib/edge/parse-with.ts';
import { AppError } from '#lib/errors.ts';
import { boardAct, type ManyAct, type ReasonAct } from '#lib/schemas/board.ts';
import { actOnReason } from '#lib/usecases/act-on-reason.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { putAsideMany } from '#lib/usecases/put-aside-many.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { holdsOf, leadOf, NOW, openReason } from './board-rows.ts';

let team: TestTeam;
let other: TestTeam;
let ada: string;
let bo: string;

beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  other = await makeTestTeam('High Wall');
  ({ clientId: ada } = await makeTestClient(team, { name: 'Ada' }));
  ({ clientId: bo } = await makeTestClient(team, { name: 'Bo' }));
});

const parsed = <Act>(body: object) => parseWith(boardAct, body) as Act;
const act = (body: object) => actOnReason(leadOf(team), parsed<ReasonAct>({ clientId: ada, ...body }), NOW);
const many = (body: object, of = team) =>
  putAsideMany(leadOf(of), parsed<ManyAct>({ act: 'put-aside-many', ...body }), NOW);
const undo = (actId: string) => undoAct(leadOf(team), { actId }, NOW);
const rows = async (of = team) =>
  (await loadBoard(leadOf(of), {}, NOW)).groups.flatMap((group) => group.rows);
const known = async () => (await rows()).map((row) => [row.name, row.known]);
const refusal = (promise: Promise<unknown>): Promise<AppError> =>
  promise.then(
    () => expect.fail('was not refused'),
    (error: unknown) => (error instanceof AppError ? error : expect.fail(String(error))),
  );

describe('known', () => {
  const words = 'waits for the new bars';

  it('folds the row with words, unfolds it again, and both are undone', async () => {
    await openReason(team, ada, 'stalled');
    await openReason(team, ada, 'load-jump');
    const before = await holdsOf(ada);
    const folded = await act({ act: 'known', words });
    expect(folded).toMatchObject({ folds: true, line: expect.stringContaining(words) });
    expect(await known()).toEqual([['Ada', words]]);
    const unfolded = await act({ act: 'not-known' });
    expect(unfolded.folds).toBe(false);
    expect(await known()).toEqual([['Ada', null]]);
    await undo(unfolded.actId);
    expect(await known()).toEqual([['Ada', words]]);
    await undo(folded.actId);
    expect(await known()).toEqual([['Ada', null]]);
    expect(await holdsOf(ada)).toEqual(before);
  });

  it('needs words, and a row that stands for the third morning', async () => {
    const reasonId = await openReason(team, ada);
    expect((await refusal((async () => act({ act: 'known', words: ' ' }))())).fields).toHaveProperty('words');
    await ownerQuery(`update reason set raised_at = '2026-11-24T03:00:00Z' where id = $1`, [reasonId]);
    const error = await refusal(act({ act: 'known', words }));
    expect(error.message).toMatch(/third morning/);
    expect(await known()).toEqual([['Ada', null]]);
  });

  it.each(['pain-high', 'danger-sign'])('never folds %s away', async (kind) => {
    await openReason(team, ada, kind);
    expect((await refusal(act({ act: 'known', words }))).message).toMatch(/cannot be folded away/);
    expect(await known()).toEqual([['Ada', null]]);
  });

  it.each([
    [{ back: false, worse: true }, null],
    [{ back: true, worse: false }, null],
    [{ back: false, worse: false }, words],
  ])('a night that says %j leaves %s', async (change, left) => {
    const id = await openReason(team, ada);
    await act({ act: 'known', words });
    const outcome = {
      status: 'flagged' as const,
      kind: 'stalled' as const,
      subject: { key: 'toe-pull', label: 'Toe pull' },
      level: 'act' as const,
      points: 2,
      tier: 'this-week' as const,
      sentence: 'Toe pull for **53 days**.',
      short: 'toe pull 53 days',
      since: '2026-11-20',
      step: { kind: 'one-rung-back' as const, text: 'One rung back.' },
      clears: 'the rung changes',
      evidence: {},
      working: { inputs: [], formula: '', thresholds: [], daysKnown: null, doubt: '' },
    };
    const night = { rulesVersion: '1', settingsVersion: 0, at: '2026-11-26T03:00:00Z' };
    await withTeamPg(team.scope, (tx) =>
      updateReasonContents(tx, [{ id, state: 'open', outcome, ...night, ...change }]),
    );
    expect(await known()).toEqual([['Ada', left]]);
  });
});

describe('good news behind a danger sign', () => {
  it('is neither closed nor put aside with it', async () => {
    await openReason(team, ada, 'danger-sign');
    const stepUp = await openReason(team, ada, 'step-up-earned');
    await ownerQuery(`update reason set tier = 'good-news', points = 0 where id = $1`, [stepUp]);
    expect((await rows())[0]).toMatchObject({ kinds: ['danger-sign'], earned: false });
    const done = await act({ act: 'done', words: 'clinician saw her' });
    expect(done.folds).toBe(true);
    expect((await rows())[0]).toMatchObject({ kinds: ['step-up-earned'], earned: true });
  });
});

describe('many at once', () => {
  it('puts rows aside in one act, leaves urgent ones and says whom, and one undo brings all back', async () => {
    const { clientId: cy } = await makeTestClient(team, { name: 'Cy' });
    await openReason(team, ada);
    await openReason(team, bo);
    await openReason(team, cy, 'pain-high');
    const before = [await holdsOf(ada), await holdsOf(bo), await holdsOf(cy)];
    const done = await many({ clientIds: [ada, bo, cy], until: 'date', date: '2026-12-01', words: 'away' });
    expect(done.done.map((one) => one.clientId).toSorted()).toEqual([ada, bo].toSorted());
    expect(done.left).toEqual([{ clientId: cy, name: 'Cy', why: 'a danger sign or pain of 6 or more' }]);
    expect(done.line).toBe('2 clients put aside. Left: Cy (a danger sign or pain of 6 or more).');
    expect((await rows()).map((row) => row.name)).toEqual(['Cy']);
    expect((await holdsOf(ada))[0]).toMatchObject({ state: 'aside', aside_until: '2026-12-01' });
    await undo(done.actId);
    expect([await holdsOf(ada), await holdsOf(bo), await holdsOf(cy)]).toEqual(before);
    expect((await refusal(undo(done.actId))).code).toBe('conflict');
    const audited = await ownerQuery<{ action: string; n: number }>(
      'select action, count(*)::int as n from audit where team_id = $1 group by action order by action',
      [team.teamId],
    );
    expect(audited).toEqual([
      { action: 'act-undone', n: 2 },
      { action: 'reasons-put-aside', n: 2 },
    ]);
  });

  it('holds each until its own next check-in', async () => {
    await openReason(team, ada);
    await openReason(team, bo);
    await many({ clientIds: [ada, bo], until: 'next-check-in' });
    for (const id of [ada, bo]) expect((await holdsOf(id))[0]).toMatchObject({ aside_until: '2026-11-26' });
  });

  it('refuses when nothing can be put aside, and for another team, and writes nothing', async () => {
    await openReason(team, ada, 'pain-high');
    const before = await holdsOf(ada);
    expect((await refusal(many({ clientIds: [ada], until: 'change' }))).message).toMatch(/Left: Ada/);
    await openReason(team, bo);
    expect((await refusal(many({ clientIds: [bo, crypto.randomUUID()], until: 'change' }))).code).toBe(
      'not-found',
    );
    expect((await refusal(many({ clientIds: [bo], until: 'change' }, other))).code).toBe('not-found');
    expect([await holdsOf(ada), (await holdsOf(bo))[0]?.state]).toEqual([before, 'open']);
  });

  it.each([
    [{ clientIds: [] }, 'clientIds'],
    [{ clientIds: ['x'] }, 'clientIds.0'],
    [{ clientIds: [crypto.randomUUID()], until: 'date' }, 'date'],
  ])('%j names the field', async (body, field) => {
    const error = await refusal((async () => many({ until: 'change', ...body }))());
    expect(Object.keys(error.fields)).toEqual([field]);
  });
});
