import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { boardAct } from '#lib/schemas/board.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { actAsAssistant } from '#lib/usecases/team/act-as-assistant.ts';
import { approveAct, sendBackAct } from '#lib/usecases/team/decide-approval.ts';
import { giveLeave } from '#lib/usecases/team/give-leave.ts';
import { type PreparedDone, prepareAct } from '#lib/usecases/team/prepare-act.ts';
import { undoApproval } from '#lib/usecases/team/undo-approval.ts';
import { holdsOf, NOW, openReason, waitingQuestion } from '../board/board-rows.ts';
import { copyLibraryInto } from '../clients/support.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { addMemberTo, leadOf, type MemberActor } from './arrange.ts';

let team: TestTeam;
let lead: MemberActor;
let sol: MemberActor;
let clientId: string;
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  sol = await addMemberTo(team, 'assistant', 'Sol Ahlgren');
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
});

const undo = (actId: string) => actAsAssistant(sol, { act: 'undo', actId }, NOW);
const act = async (body: object) =>
  (await actAsAssistant(sol, boardAct.parse({ clientId, ...body }), NOW)) as PreparedDone;
const answer = async (text = 'Bars, for now.') =>
  act({ act: 'answer', questionId: await waitingQuestion(team, clientId), text });
const approve = (done: PreparedDone, body?: unknown) =>
  approveAct(lead, { approvalId: done.actId, ...(body ? { body } : {}) }, NOW);
const stateOf = async (done: PreparedDone) => {
  const [row] = await ownerQuery<{ state: string; words: string }>(
    'select state, words from approval where id = $1',
    [done.actId],
  );
  return row;
};
const answers = () =>
  ownerQuery<{ text: string; by: string }>(
    `select a.text, a.by_id as by from answer a join question q on q.id = a.question_id where q.client_id = $1`,
    [clientId],
  );
const versions = async () =>
  (
    await ownerQuery<{ version: number }>('select version from plan where client_id = $1 order by version', [
      clientId,
    ])
  ).map(({ version }) => version);

describe('an answer of an assistant', () => {
  it('waits, and nothing is told before a coach approves it as it is', async () => {
    const done = await answer();
    expect(done).toMatchObject({ waits: true, folds: false });
    expect(done.line).toContain('Kept for approval by Lead of Low Wall or another coach.');
    expect(await answers()).toEqual([]);
    expect(await ownerQuery('select 1 from outbox where client_id = $1', [clientId])).toEqual([]);

    const approved = await approve(done);
    expect(approved).toMatchObject({ state: 'approved', line: 'Answered: “Bars, for now.”' });
    expect(await answers()).toEqual([{ text: 'Bars, for now.', by: lead.memberId }]);
    await expect(approve(done)).rejects.toThrow('it was approved by Lead of Low Wall');
    const trail = await ownerQuery<{ action: string; fields: string[]; object_id: string }>(
      `select action, fields, object_id from audit where client_id = $1 and action like 'act-%' order by action`,
      [clientId],
    );
    expect(trail).toEqual([
      { action: 'act-approved', fields: ['answer', `prepared-by ${sol.memberId}`], object_id: done.actId },
      { action: 'act-prepared', fields: ['answer'], object_id: done.actId },
    ]);
  });

  it('names who prepared it in the event of the reason', async () => {
    await openReason(team, clientId, 'question-waiting');
    await approve(await answer());
    const [event] = await ownerQuery<{ by_id: string; prepared: string }>(
      `select by_id, body->>'preparedById' as prepared from reason_event where body->>'clientId' = $1`,
      [clientId],
    );
    expect(event).toEqual({ by_id: lead.memberId, prepared: sol.memberId });
  });

  it('is sent as the coach changed it', async () => {
    const questionId = await waitingQuestion(team, clientId);
    const done = await act({ act: 'answer', questionId, text: 'Floor.' });
    await approve(done, { act: 'answer', clientId, questionId, text: 'Bars.' });
    expect(await answers()).toEqual([{ text: 'Bars.', by: lead.memberId }]);
    const other = { act: 'answer', clientId: randomUUID(), questionId, text: 'Bars.' };
    await expect(approve(await answer(), other)).rejects.toThrow('is another client');
  });

  it('waits again after the undo of the approval', async () => {
    await openReason(team, clientId, 'question-waiting');
    const before = await holdsOf(clientId);
    const done = await answer();
    await approve(done);
    expect(await holdsOf(clientId)).not.toEqual(before);
    await undoApproval(lead, done.actId, NOW);
    expect(await answers()).toEqual([]);
    expect(await holdsOf(clientId)).toEqual(before);
    expect(await stateOf(done)).toEqual({ state: 'waiting', words: '' });
    await approve(done);
    expect(await answers()).toHaveLength(1);
  });

  it('waits again also where no reason stood open', async () => {
    const done = await answer();
    await approve(done);
    await undoApproval(lead, done.actId, NOW);
    expect(await answers()).toEqual([]);
    expect((await approve(done)).state).toBe('approved');
  });

  it('is closed as overtaken when somebody answered meanwhile', async () => {
    const questionId = await waitingQuestion(team, clientId);
    const done = await act({ act: 'answer', questionId, text: 'Floor.' });
    await answerQuestion(lead, { clientId, questionId, text: 'Wedge.' }, NOW);
    const overtaken = await approve(done);
    expect(overtaken).toMatchObject({ state: 'overtaken', actId: null });
    expect(overtaken.line).toContain('This question does not wait any more.');
    expect((await stateOf(done))?.state).toBe('overtaken');
    expect(await answers()).toEqual([{ text: 'Wedge.', by: lead.memberId }]);
  });

  it('goes back with words, can be taken back from there, withdrawn, and prepared anew', async () => {
    const questionId = await waitingQuestion(team, clientId);
    const done = await act({ act: 'answer', questionId, text: 'Floor.' });
    await sendBackAct(lead, { approvalId: done.actId, words: 'Say how long.' }, NOW);
    expect(await stateOf(done)).toEqual({ state: 'sent-back', words: 'Say how long.' });
    await undoApproval(lead, done.actId, NOW);
    const newer = await act({ act: 'answer', questionId, text: 'Floor, two weeks.' });
    expect((await stateOf(done))?.state).toBe('withdrawn');
    await undo(newer.actId);
    expect((await stateOf(newer))?.state).toBe('withdrawn');
    await expect(approve(newer)).rejects.toThrow('it was withdrawn');
  });

  it('is told at once what is wrong with it, and is not kept then', async () => {
    const gone = { act: 'answer', questionId: randomUUID(), text: 'Bars.' };
    await expect(act(gone)).rejects.toThrow('This question does not wait any more');
    expect(await ownerQuery('select 1 from approval where client_id = $1', [clientId])).toEqual([]);
  });
});

describe('leave', () => {
  it('lets an assistant act as themselves for that kind alone, with an undo of their own', async () => {
    await giveLeave(lead, { memberId: sol.memberId, acts: ['answer'] }, NOW);
    await openReason(team, clientId);
    const done = await answer();
    expect(done.waits).toBeUndefined();
    expect(await answers()).toEqual([{ text: 'Bars, for now.', by: sol.memberId }]);
    expect((await act({ act: 'take' })).waits).toBe(true);
    await undo(done.actId);
    expect(await answers()).toEqual([]);
  });

  it('never covers acts of others, or other acts', async () => {
    await openReason(team, clientId);
    const questionId = await waitingQuestion(team, clientId);
    const { actId } = await answerQuestion(lead, { clientId, questionId, text: 'Wedge.' }, NOW);
    await expect(undo(actId)).rejects.toMatchObject({ code: 'forbidden' });
    for (const body of [{ act: 'seen' }, { act: 'done', words: 'x' }, { act: 'known', words: 'x' }])
      await expect(act(body)).rejects.toMatchObject({ code: 'forbidden' });
  });
});

describe('a step of an assistant', () => {
  it('is taken by the coach who approves it, and undone as any step', async () => {
    await openReason(team, clientId);
    const before = await holdsOf(clientId);
    const done = await act({ act: 'take', words: 'One rung back, two weeks.' });
    expect(await holdsOf(clientId)).toEqual(before);
    const approved = await approve(done);
    expect(approved.line).toContain('One rung back, two weeks.');
    const [step] = await ownerQuery<{ by_id: string }>('select by_id from step_taken where client_id = $1', [
      clientId,
    ]);
    expect(step?.by_id).toBe(lead.memberId);
    await undoApproval(lead, done.actId, NOW);
    expect(await holdsOf(clientId)).toEqual(before);
  });

  it('is overtaken by what came up since', async () => {
    await openReason(team, clientId);
    const done = await act({ act: 'take' });
    await openReason(team, clientId, 'pain-high');
    const overtaken = await approve(done);
    expect(overtaken.state).toBe('overtaken');
    expect(overtaken.line).toContain('Something new has come up');
    expect(await ownerQuery('select 1 from step_taken where client_id = $1', [clientId])).toEqual([]);
  });
});

describe('a plan of an assistant', () => {
  let rungs: Awaited<ReturnType<typeof copyLibraryInto>>;
  const planOf = (baseVersion: number, sets: number) =>
    planSchema.parse({
      baseVersion,
      from: '2026-11-25',
      until: '2026-12-22',
      sessionsPerWeek: '3',
      items: [
        {
          session: 'A',
          rungId: rungs.both,
          side: 'both',
          sets: String(sets),
          target: '5',
          timesPerWeek: '3',
        },
      ],
    });
  const prepare = (baseVersion: number, sets: number) =>
    prepareAct(sol, { act: 'plan', clientId, body: planOf(baseVersion, sets) }, NOW);
  const asLead = (baseVersion: number, sets: number) =>
    prepareAct(lead, { act: 'plan', clientId, body: planOf(baseVersion, sets) }, NOW);
  const goals = () =>
    ownerQuery('select skill_id, wanted_by::text, ended_on::text from goal where client_id = $1 order by 1', [
      clientId,
    ]);
  const skillIds = async (): Promise<[string, string]> => {
    const [one, two] = await ownerQuery<{ id: string }>(
      'select id from skill where team_id = $1 order by position',
      [team.teamId],
    );
    return [one?.id ?? '', two?.id ?? ''];
  };
  const placements = () =>
    ownerQuery(
      'select rung_id, side, from_date::text, why from placement where client_id = $1 order by 1, 2',
      [clientId],
    );
  beforeEach(async () => {
    rungs = await copyLibraryInto(team);
  });

  it('is a version only once it is approved, by whom approves it, and goes by undo', async () => {
    await asLead(0, 3);
    const standing = await placements();
    const [first, second] = await skillIds();
    const aimed = { skillId: first, wantedBy: '2027-03-01' };
    await prepareAct(lead, { act: 'plan', clientId, body: { ...planOf(1, 3), goals: [aimed] } }, NOW);
    await ownerQuery('delete from plan where client_id = $1 and version = 2', [clientId]);
    const before = await goals();
    const body = { ...planOf(1, 5), goals: [{ skillId: second, wantedBy: null }] };
    const done = await prepareAct(sol, { act: 'plan', clientId, body }, NOW);
    expect(done.waits).toBe(true);
    expect(await versions()).toEqual([1]);
    expect(await approve(done)).toMatchObject({ state: 'approved', line: 'Plan version 2 is saved.' });
    expect(await versions()).toEqual([1, 2]);
    expect(await goals()).not.toEqual(before);
    const [newest] = await ownerQuery<{ by_id: string }>(
      'select by_id from plan where client_id = $1 and version = 2',
      [clientId],
    );
    expect(newest?.by_id).toBe(lead.memberId);
    await undoApproval(lead, done.actId, NOW);
    expect(await versions()).toEqual([1]);
    expect(await placements()).toEqual(standing);
    expect(await goals()).toEqual(before);
    expect((await stateOf(done))?.state).toBe('waiting');
  });

  it('is overtaken by a newer version, which stays', async () => {
    await asLead(0, 3);
    const done = await prepare(1, 5);
    await asLead(1, 4);
    const overtaken = await approve(done);
    expect(overtaken.state).toBe('overtaken');
    expect(overtaken.line).toContain('Version 2 was saved');
    expect(await versions()).toEqual([1, 2]);
  });

  it('that was trained by stays', async () => {
    const done = await prepare(0, 5);
    await approve(done);
    await ownerQuery(
      `insert into check_in (team_id, client_id, date, zone, kind, body_hash, sent_at, plan_version)
       values ($1, $2, '2026-11-25', 'Europe/Berlin', 'training', 'x', now(), 1)`,
      [team.teamId, clientId],
    );
    await expect(undoApproval(lead, done.actId, NOW)).rejects.toThrow('trained by since');
    expect((await stateOf(done))?.state).toBe('approved');
  });
});

describe('an approval', () => {
  it('of another team is not there', async () => {
    const done = await answer();
    const other = leadOf(await makeTestTeam('Other'));
    await expect(approveAct(other, { approvalId: done.actId }, NOW)).rejects.toMatchObject({
      code: 'not-found',
    });
    await expect(undoApproval(other, done.actId, NOW)).rejects.toMatchObject({ code: 'not-found' });
  });

  it('is made once, however many press at the same moment', async () => {
    const done = await answer();
    const both = await Promise.allSettled([approve(done), approve(done), approve(done)]);
    expect(both.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
    expect(await answers()).toHaveLength(1);
  });
});
