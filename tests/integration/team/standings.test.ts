import { beforeEach, describe, expect, it } from 'vitest';
import { actorOf } from '#lib/auth/actor.ts';
import { listOwedNightsOf } from '#lib/db/ledger.ts';
import { NEXT_STANDINGS } from '#lib/domain/standing-steps.ts';
import { STANDINGS, type Standing } from '#lib/domain/vocabulary.ts';
import { applyDueStandings } from '#lib/usecases/apply-due-standings.ts';
import { changeStanding } from '#lib/usecases/change-standing.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { actAsAssistant } from '#lib/usecases/team/act-as-assistant.ts';
import { undoStanding } from '#lib/usecases/undo-standing.ts';
import { holdsOf, openReason, waitingQuestion } from '../board/board-rows.ts';
import { aPhone, aTraining, NOW, type Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';
import { cookieFor } from '../support/signing-in.ts';
import { addMemberTo, leadOf, type MemberActor } from './arrange.ts';

let phone: Phone;
let lead: MemberActor;
let clientId: string;
beforeEach(async () => {
  phone = await aPhone('Maren Oduya');
  lead = leadOf(phone.team);
  ({ clientId } = phone);
});

const change = (standing: Standing, from?: string, now = NOW) =>
  changeStanding(lead, { clientId, standing, from, why: 'as agreed' }, now);
const standing = async () =>
  (await ownerQuery<{ standing: string }>('select standing from client where id = $1', [clientId]))[0]
    ?.standing;
const setStanding = (to: string) =>
  ownerQuery('update client set standing = $2 where id = $1', [clientId, to]);
const absences = () =>
  ownerQuery(
    'select kind, from_date::text as from, to_date::text as to from absence where client_id = $1 order by 2',
    [clientId],
  );
const nightsOwed = async (at: string) =>
  (await listOwedNightsOf(phone.team.scope, [clientId], new Date(at))).map(({ localDate }) => localDate);

describe('a change of standing', () => {
  it.each(
    STANDINGS.flatMap((from) =>
      STANDINGS.map((to) => [from, to, NEXT_STANDINGS[from].includes(to)] as const),
    ),
  )('%s to %s: %s', async (from, to, follows) => {
    await setStanding(from);
    const asked = change(to);
    if (follows) {
      await asked;
      expect(await standing()).toBe(to);
    } else {
      await expect(asked).rejects.toMatchObject({ code: 'invalid' });
      expect(await standing()).toBe(from);
    }
  });

  it('says which ones follow', async () => {
    await expect(change('invited')).rejects.toThrow(
      'standing: “invited” does not follow “in training”: choose “paused”, “ending”, “left”',
    );
    await expect(change('in-training')).rejects.toThrow('Maren Oduya stands there already');
    await expect(change('paused', '2025-11-01')).rejects.toThrow('from: is more than a year ago');
  });

  it('leaves a trace with who, when, from when and why', async () => {
    await change('paused', '2026-11-20');
    const rows = await ownerQuery(
      'select by_id, before, after, from_date::text as from, why from standing_change where client_id = $1',
      [clientId],
    );
    expect(rows).toEqual([
      { by_id: lead.memberId, before: 'in-training', after: 'paused', from: '2026-11-20', why: 'as agreed' },
    ]);
    const [line] = await ownerQuery(
      `select fields from audit where client_id = $1 and action = 'standing-changed'`,
      [clientId],
    );
    expect(line).toEqual({ fields: ['standing', 'from', 'why'] });
  });
});

describe('paused', () => {
  it('is days off from its day until the day of return, and owes no night of them', async () => {
    await change('paused', '2026-11-20');
    expect(await absences()).toEqual([{ kind: 'pause', from: '2026-11-20', to: null }]);
    expect(await nightsOwed('2026-11-25T12:00:00Z')).toEqual([]);
    const later = new Date('2026-12-01T09:00:00Z');
    const back = await change('back', '2026-12-01', later);
    expect(await absences()).toEqual([{ kind: 'pause', from: '2026-11-20', to: '2026-11-30' }]);
    expect(await nightsOwed('2026-12-03T12:00:00Z')).toEqual(['2026-12-01', '2026-12-02']);
    await undoStanding(lead, { clientId, changeId: back.changeId }, later);
    expect(await absences()).toEqual([{ kind: 'pause', from: '2026-11-20', to: null }]);
    expect(await standing()).toBe('paused');
  });

  it('runs no night that was queued before', async () => {
    await change('paused');
    const night = { localDate: '2026-11-23', clientIds: [clientId] };
    expect(await runNightBatch(phone.team.scope, night, NOW)).toEqual({ done: 0, failed: 0 });
  });

  it('still raises a danger sign with the check-in that tells it', async () => {
    await change('paused');
    await submitCheckIn(phone.actor, aTraining(phone, { dangerSigns: [{ sign: 'chest-pain' }] }), NOW);
    const open = await ownerQuery<{ kind: string }>(
      'select kind from reason where client_id = $1 and closed_at is null',
      [clientId],
    );
    expect(open.map(({ kind }) => kind)).toEqual(['danger-sign']);
  });

  it('goes by undo with its days off', async () => {
    const { changeId } = await change('paused');
    await undoStanding(lead, { clientId, changeId }, NOW);
    expect(await standing()).toBe('in-training');
    expect(await absences()).toEqual([]);
    await expect(undoStanding(lead, { clientId, changeId }, NOW)).rejects.toMatchObject({
      code: 'not-found',
    });
  });
});

describe('left', () => {
  it('closes what is open, signs the phone out and owes no nights; undo brings it back', async () => {
    const cookie = await cookieFor(phone.actor.userId);
    await openReason(phone.team, clientId);
    await openReason(phone.team, clientId, 'pain-high');
    const before = await holdsOf(clientId);
    const sol = await addMemberTo(phone.team, 'assistant', 'Sol');
    const questionId = await waitingQuestion(phone.team, clientId);
    await actAsAssistant(sol, { act: 'answer', clientId, questionId, text: 'Bars.' }, NOW);

    const { changeId } = await change('left');
    expect((await holdsOf(clientId)).map(({ state, closed_why: why }) => [state, why])).toEqual([
      ['closed', 'left'],
      ['closed', 'left'],
    ]);
    expect(await actorOf(new Headers({ cookie }))).toBeNull();
    expect(await ownerQuery('select 1 from session where user_id = $1', [phone.actor.userId])).toEqual([]);
    expect(await nightsOwed('2026-11-25T12:00:00Z')).toEqual([]);
    expect(await ownerQuery('select state, words from approval where client_id = $1', [clientId])).toEqual([
      { state: 'overtaken', words: 'the client left' },
    ]);
    expect((await ownerQuery('select left_at from client where id = $1', [clientId]))[0]?.left_at).toEqual(
      NOW,
    );

    await undoStanding(lead, { clientId, changeId }, NOW);
    expect(await holdsOf(clientId)).toEqual(before);
    expect(await standing()).toBe('in-training');
    expect((await ownerQuery('select left_at from client where id = $1', [clientId]))[0]?.left_at).toBeNull();
  });

  it('says on the way back when the client starts as new', async () => {
    await submitCheckIn(phone.actor, aTraining(phone), NOW);
    await change('left');
    const later = (days: number) => new Date(NOW.getTime() + days * 86_400_000);
    const soon = await change('back', undefined, later(84)); // 83 days lie in between
    expect(soon.line).toContain('84 days after the last training.');
    expect(soon.line).not.toContain('as new');
    await undoStanding(lead, { clientId, changeId: soon.changeId }, later(84));
    const late = await change('back', undefined, later(85));
    expect(late.line).toContain('85 days after the last training. That long away means starting as new');
  });
});

describe('a change that is still to come', () => {
  it('is made when its day comes where the client lives, once', async () => {
    const { line } = await change('paused', '2026-11-26');
    expect(line).toBe('From Thursday 26 November: paused. Until then nothing changes.');
    expect(await standing()).toBe('in-training');
    expect(await applyDueStandings(new Date('2026-11-25T22:00:00Z'))).toBe(0); // 23:00 in Berlin
    expect(await applyDueStandings(new Date('2026-11-25T23:30:00Z'))).toBe(1);
    expect(await applyDueStandings(new Date('2026-11-25T23:30:00Z'))).toBe(0);
    expect(await standing()).toBe('paused');
    expect(await absences()).toEqual([{ kind: 'pause', from: '2026-11-26', to: null }]);
  });

  it('is replaced by a newer one and taken back by undo', async () => {
    const first = await change('paused', '2026-11-30');
    const second = await change('ending', '2026-11-28');
    await expect(undoStanding(lead, { clientId, changeId: first.changeId }, NOW)).rejects.toMatchObject({
      code: 'not-found',
    });
    await undoStanding(lead, { clientId, changeId: second.changeId }, NOW);
    expect(await applyDueStandings(new Date('2026-12-05T12:00:00Z'))).toBe(0);
    expect(await standing()).toBe('in-training');
  });

  it('is dropped when it does not follow any more', async () => {
    await change('ending', '2026-11-28');
    await setStanding('left');
    expect(await applyDueStandings(new Date('2026-11-29T12:00:00Z'))).toBe(0);
    expect(await standing()).toBe('left');
    expect(await ownerQuery(`select 1 from audit where action = 'standing-dropped'`)).toHaveLength(1);
  });
});
