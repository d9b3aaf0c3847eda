import { beforeEach, describe, expect, it } from 'vitest';
import { boardAct } from '#lib/schemas/board.ts';
import { planSchema } from '#lib/schemas/plan.ts';
import { changeStanding } from '#lib/usecases/change-standing.ts';
import { loadBoard } from '#lib/usecases/load-board.ts';
import { loadPlanForm } from '#lib/usecases/load-plan-form.ts';
import { actAsAssistant } from '#lib/usecases/team/act-as-assistant.ts';
import { sendBackAct } from '#lib/usecases/team/decide-approval.ts';
import { loadApprovals } from '#lib/usecases/team/load-approvals.ts';
import { loadClientTeam } from '#lib/usecases/team/load-client-team.ts';
import { loadMovable } from '#lib/usecases/team/load-movable.ts';
import { moveClients, readMove } from '#lib/usecases/team/move-clients.ts';
import { type PreparedDone, prepareAct } from '#lib/usecases/team/prepare-act.ts';
import { setCover } from '#lib/usecases/team/set-cover.ts';
import { NOW, openReason, waitingQuestion } from '../board/board-rows.ts';
import { copyLibraryInto } from '../clients/support.ts';
import { makeTestClient, makeTestTeam, type TestTeam } from '../support/database.ts';
import { addMemberTo, giveTo, leadOf, type MemberActor } from './arrange.ts';

let team: TestTeam;
let lead: MemberActor;
let ruth: MemberActor;
let sol: MemberActor;
let clientId: string;
beforeEach(async () => {
  team = await makeTestTeam('Low Wall');
  lead = leadOf(team);
  ruth = await addMemberTo(team, 'coach', 'Ruth');
  sol = await addMemberTo(team, 'assistant', 'Sol');
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
});
const days = (count: number) => new Date(NOW.getTime() + count * 86_400_000);
const act = async (body: object, at = NOW) =>
  (await actAsAssistant(sol, boardAct.parse({ clientId, ...body }), at)) as PreparedDone;

describe('the board', () => {
  it('of the coach who covers has the clients of the one who is away, as long as that lasts', async () => {
    await giveTo(clientId, ruth);
    await openReason(team, clientId);
    const cover = { memberId: ruth.memberId, coveredById: team.memberId };
    await setCover(lead, { ...cover, from: '2026-11-24', to: '2026-11-27' }, NOW);
    const mine = async (at: Date) => {
      const board = await loadBoard(lead, { coach: 'mine' }, at);
      return [
        board.groups.flatMap(({ rows }) => rows.map(({ name }) => name)),
        board.lines.map(({ words }) => words),
      ];
    };
    expect(await mine(NOW)).toEqual([
      ['Maren Oduya'],
      ['You have Ruth’s 1 client too, until Friday 27 November.'],
    ]);
    expect(await mine(days(3))).toEqual([[], []]);
    expect((await loadBoard(ruth, {}, NOW)).lines.map(({ words }) => words)).toEqual([
      'Lead of Low Wall has your 1 client until Friday 27 November.',
    ]);
  });

  it('counts what waits, for coaches all of it, for an assistant own acts', async () => {
    await openReason(team, clientId);
    const done = await act({ act: 'take' });
    const lines = async (who: MemberActor) => (await loadBoard(who, {}, NOW)).lines.map(({ words }) => words);
    expect(await lines(lead)).toEqual(['1 act waits for your approval']);
    expect(await lines(sol)).toEqual(['1 act of yours waits for approval']);
    expect(await lines(await addMemberTo(team, 'assistant', 'Tove'))).toEqual([]);
    await sendBackAct(lead, { approvalId: done.actId, words: 'Wait a week.' }, NOW);
    expect(await lines(sol)).toEqual(['1 act came back to you']);
  });
});

describe('what waits for approval', () => {
  it('is shown with what it is about and what would be done', async () => {
    await openReason(team, clientId);
    const questionId = await waitingQuestion(team, clientId);
    await act({ act: 'answer', questionId, text: 'Bars.' });
    const later = new Date(NOW.getTime() + 1000);
    await act({ act: 'take', words: 'One rung back, two weeks.' }, later);
    const { waiting } = await loadApprovals(lead, {}, NOW);
    expect(
      waiting.map(({ title, about, does, words, preparedBy }) => [title, about, does, words, preparedBy]),
    ).toEqual([
      ['An answer', 'Bars or floor?', [], 'Bars.', 'Sol'],
      ['A step', 'Toe pull for 52 days.', ['One rung back, two weeks.'], null, 'Sol'],
    ]);
    expect((await loadApprovals(lead, { clientId: team.teamId }, NOW)).waiting).toEqual([]);
  });

  it('says of a plan what it changes, and opens it as it was prepared', async () => {
    const rungs = await copyLibraryInto(team);
    const plan = (baseVersion: number, sets: number) =>
      planSchema.parse({
        baseVersion,
        from: '2026-11-30',
        until: '2026-12-20',
        sessionsPerWeek: 2,
        why: 'More room',
        items: [{ session: 'A', rungId: rungs.both, side: 'both', sets, target: 5, timesPerWeek: 2 }],
      });
    await prepareAct(lead, { act: 'plan', clientId, body: plan(0, 3) }, NOW);
    const done = await prepareAct(sol, { act: 'plan', clientId, body: plan(1, 5) }, NOW);
    const [shown] = (await loadApprovals(lead, { clientId }, NOW)).waiting;
    expect(shown).toMatchObject({ title: 'Plan version 2', about: 'More room' });
    expect(shown?.does).toHaveLength(1);
    expect(shown?.does[0]).toContain('5 × 5');
    const form = await loadPlanForm(lead, clientId, NOW, { approval: done.actId });
    expect(form?.approval?.plan.items[0]?.sets).toBe(5);
    expect(form?.prepares).toBe(false);
    const own = await loadPlanForm(sol, clientId, NOW, { approval: done.actId });
    expect([own?.approval, own?.prepares]).toEqual([undefined, true]);
  });

  it('comes back to who prepared it for 14 days', async () => {
    const questionId = await waitingQuestion(team, clientId);
    const done = await act({ act: 'answer', questionId, text: 'Bars.' });
    await sendBackAct(lead, { approvalId: done.actId, words: 'How long?' }, NOW);
    const back = async (who: MemberActor, at: Date) =>
      (await loadApprovals(who, {}, at)).decided.map(({ said }) => said);
    expect(await back(sol, days(13))).toEqual(['How long?']);
    expect(await back(sol, days(15))).toEqual([]);
    expect(await back(lead, NOW)).toEqual([]);
  });
});

describe('the client page', () => {
  it('shows the note to the new coach until it is read, or for 14 days', async () => {
    const { moveIds } = await moveClients(
      lead,
      { clientIds: [clientId], toId: ruth.memberId, note: 'Knee.' },
      NOW,
    );
    const note = async (who: MemberActor, at: Date) => (await loadClientTeam(who, clientId, at))?.note?.words;
    expect(await note(ruth, days(1))).toBe('Wed: from Lead of Low Wall to you, by Lead of Low Wall: “Knee.”');
    expect(await note(lead, days(1))).toBeUndefined();
    expect(await note(ruth, days(15))).toBeUndefined();
    await readMove(ruth, moveIds[0] ?? '', NOW);
    expect(await note(ruth, days(1))).toBeUndefined();
  });

  it('keeps moves and standings in one trace, newest first, and says what is ahead', async () => {
    await moveClients(lead, { clientIds: [clientId], toId: ruth.memberId, note: '' }, NOW);
    await changeStanding(lead, { clientId, standing: 'paused', why: 'Moving house' }, days(1));
    await changeStanding(lead, { clientId, standing: 'back', from: '2026-12-10' }, days(1));
    const found = await loadClientTeam(lead, clientId, days(1));
    expect(found?.trace.map(({ words }) => words)).toEqual([
      'in training to paused from Thursday 26 November, by Lead of Low Wall: “Moving house”',
      'From Lead of Low Wall to Ruth, by Lead of Low Wall; not read yet',
    ]);
    expect(found?.ahead?.words).toBe('From Thursday 10 December: back');
  });

  it('offers the move to who may move', async () => {
    const others = async (who: MemberActor) =>
      (await loadClientTeam(who, clientId, NOW))?.others.map(({ name }) => name);
    expect(await others(lead)).toEqual(['Ruth']);
    expect(await others(ruth)).toEqual([]);
    expect(await others(sol)).toEqual([]);
    expect((await loadMovable(ruth, NOW)).clients).toEqual([]);
    expect((await loadMovable(lead, NOW)).clients).toMatchObject([
      { name: 'Maren Oduya', coach: 'Lead of Low Wall' },
    ]);
  });
});
