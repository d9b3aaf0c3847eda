import { describe, expect, it } from 'vitest';
import { advanceReasons } from '#lib/checks/reasons.ts';
import type { StoredReason } from '#lib/checks/types.ts';
import type { Clear, Outcome } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { day, evening } from '#tests/fixtures/history-builders.ts';
import { aFinding, afterNight } from '#tests/fixtures/reason-life.ts';

const SUBJECT = { key: 'subject', label: 'subject' };
const clear = (kind: CheckKind, over: Partial<Clear> = {}): Clear => ({
  status: 'clear',
  kind,
  subject: SUBJECT,
  ...over,
});
const unsure = (kind: CheckKind): Outcome => ({
  status: 'not-enough-history',
  kind,
  subject: SUBJECT,
  missing: '3 of 4',
});
const watch = aFinding('pain-rising', 'watch');
const act = aFinding('pain-rising', 'act');
const CALM = [clear('pain-rising')];

/** Nights one after another; the states after each, in one word with the clear nights. */
function nights(stored: StoredReason[], each: Outcome[][], from = 0) {
  let now = stored;
  const changes = each.map((outcomes, at) => {
    const night = afterNight(now, outcomes, from + at);
    now = night.stored;
    return night.changes.map((change) => change.change).join(' ');
  });
  return { stored: now, changes };
}
const raised = (finding = watch) => nights([], [[finding]]).stored;
const held = (over: Partial<StoredReason>, finding = watch) =>
  raised(finding).map((reason) => ({ ...reason, ...over }));

describe('raising and updating', () => {
  it('raises once, then says nothing while nothing changes', () => {
    expect(nights([], [[watch], [watch], [watch]]).changes).toEqual(['raise', '', '']);
  });
  it('updates when a number changes, never doubles', () => {
    const { stored, changes } = nights([], [[watch], [aFinding('pain-rising', 'watch', { value: 2 })]]);
    expect(changes).toEqual(['raise', 'update']);
    expect(stored).toHaveLength(1);
    expect(stored[0]?.sentence).toContain('2');
  });
  it('says worse on a higher level, an earlier tier, or a higher severity only', () => {
    const worse = (finding = watch) =>
      advanceReasons(raised(), [finding], evening(1), { earlyNights: false })[0];
    expect(worse(act)).toMatchObject({ change: 'update', worse: true });
    expect(worse(aFinding('pain-rising', 'watch', { tier: 'today' }))).toMatchObject({ worse: true });
    expect(worse(aFinding('pain-rising', 'watch', { value: 9 }))).toMatchObject({ worse: false });
    const severe = (severity: number) => aFinding('pain-high', 'act', { evidence: { severity } });
    const again = (severity: number) =>
      advanceReasons(raised(severe(6)), [severe(severity)], evening(1), { earlyNights: false })[0];
    expect(again(7)).toMatchObject({ worse: true });
    expect(again(5)).toMatchObject({ worse: false });
  });
  it('does not take the same severity for worse', () => {
    const severe = (value: number) => aFinding('pain-high', 'act', { evidence: { severity: 6, value } });
    expect(advanceReasons(raised(severe(1)), [severe(2)], evening(1), { earlyNights: false })).toMatchObject([
      { change: 'update', worse: false },
    ]);
  });
  it('writes to the client page only in the first nights, except what is urgent; notes always', () => {
    const first = (finding = watch, earlyNights = true) =>
      advanceReasons([], [finding], evening(0), { earlyNights })[0];
    expect(first()).toMatchObject({ onClientPageOnly: true });
    expect(first(watch, false)).toMatchObject({ onClientPageOnly: false });
    expect(first(aFinding('pain-high', 'act'))).toMatchObject({ onClientPageOnly: false });
    expect(first(aFinding('danger-sign', 'act'))).toMatchObject({ onClientPageOnly: false });
    expect(first(aFinding('slipping', 'note'), false)).toMatchObject({ onClientPageOnly: true });
  });
});

describe('clearing', () => {
  it('closes on the second clear night', () => {
    const { stored, changes } = nights(raised(), [CALM, CALM, CALM], 1);
    expect(changes).toEqual(['count-clear', 'close', '']);
    expect(stored[0]).toMatchObject({ state: 'closed', closedWhy: '2 clear nights' });
  });
  it('starts counting again after a flagged night', () => {
    expect(nights(raised(), [CALM, [watch], CALM, CALM], 1).changes).toEqual([
      'count-clear',
      'count-clear',
      'count-clear',
      'close',
    ]);
  });
  it('counts a rule that no longer names the subject as clear', () => {
    expect(nights(raised(), [[], []], 1).changes).toEqual(['count-clear', 'close']);
  });
  it('is neither raised nor closed by too little history or a lower bound', () => {
    const bound = [clear('pain-rising', { lowerBound: true })];
    expect(nights(raised(), [[unsure('pain-rising')], bound, bound], 1).changes).toEqual(['', '', '']);
    expect(nights([], [[unsure('pain-rising')], bound]).changes).toEqual(['', '']);
  });
  it('does not hold a clear night against one that says nothing', () => {
    expect(nights(raised(), [CALM, [unsure('pain-rising')], CALM], 1).changes).toEqual([
      'count-clear',
      '',
      'close',
    ]);
  });
  it('closes pain of 6 and danger signs at once when their rule says so, and never by silence', () => {
    for (const kind of ['pain-high', 'danger-sign'] as const) {
      const open = raised(aFinding(kind, 'act'));
      expect(nights(open, [[], [], [unsure(kind)], []], 1).changes).toEqual(['', '', '', '']);
      expect(nights(open, [[clear(kind)]], 1).changes).toEqual(['close']);
    }
  });
  it('closes what was corrected away, where the history reaches back to it', () => {
    const open = raised(aFinding('pain-high', 'act'));
    const rest = (coversFrom: string) => [
      clear('pain-high', { subject: { key: '*', label: '' }, coversFrom }),
    ];
    const later = nights(open, [rest(day(2))], 1);
    expect(later.changes).toEqual(['']);
    const corrected = nights(open, [rest(day(1))], 1);
    expect(corrected.stored[0]).toMatchObject({ state: 'closed', closedWhy: 'entry corrected' });
  });
  it('closes at once what became part of another reason', () => {
    const { stored } = nights(raised(), [[clear('pain-rising', { why: 'part of: elbow 6 of 10' })]], 1);
    expect(stored[0]).toMatchObject({ state: 'closed', closedWhy: 'part of: elbow 6 of 10' });
  });
  it('closes a step earned at once when the rung changed', () => {
    const earned = aFinding('step-up-earned', 'watch', { subject: { key: 'pull:pull-1', label: '' } });
    const next = clear('step-up-earned', { subject: { key: 'pull:pull-2', label: '' } });
    expect(nights(raised(earned), [[next]], 1).stored[0]).toMatchObject({
      state: 'closed',
      closedWhy: 'the rung changed',
    });
  });
});

describe('coming again', () => {
  const closed = nights(raised(), [CALM, CALM], 1).stored; // closed on the night of day 2
  it('reopens within 14 days, later it is new', () => {
    expect(nights(closed, [[watch]], 16).changes).toEqual(['reopen']);
    expect(nights(closed, [[watch]], 17).changes).toEqual(['raise']);
    expect(nights(closed, [[watch]], 16).stored).toMatchObject([{ state: 'open', closedAt: null }]);
  });
  const done = held({ state: 'closed', closedAt: `${day(1)}T08:00:00.000Z`, closedWhy: 'done by the coach' });
  it('stays done while nothing is worse, for as long as it lasts', () => {
    expect(nights(done, [[watch], [watch], [unsure('pain-rising')], [watch]], 1).changes).toEqual([
      '',
      '',
      '',
      '',
    ]);
    expect(nights(done, [[watch]], 60).changes).toEqual(['']);
    expect(nights(done, [[aFinding('pain-rising', 'watch', { value: 3 })]], 2).changes).toEqual(['']);
  });
  it('comes back when it is worse than what was done with', () => {
    expect(nights(done, [[act]], 2).changes).toEqual(['reopen']);
    expect(nights(done, [[act]], 60).changes).toEqual(['raise']);
  });
  it('comes back after two clear nights in between', () => {
    expect(nights(done, [CALM, [watch]], 2).changes).toEqual(['count-clear', '']);
    expect(nights(done, [CALM, CALM, CALM, [watch]], 2).changes).toEqual([
      'count-clear',
      'count-clear',
      '',
      'reopen',
    ]);
  });
  it('looks at the open one before any closed one, and at one of two closed at once, always the same', () => {
    const open = { ...held({})[0], id: 'a-open' } as StoredReason;
    const both = [open, ...done];
    expect(advanceReasons(both, [act], evening(2), { earlyNights: false })).toMatchObject([
      { change: 'update', id: 'a-open' },
    ]);
    expect(advanceReasons([...both].reverse(), [act], evening(2), { earlyNights: false })).toMatchObject([
      { id: 'a-open' },
    ]);
    const twins = ['a', 'b'].map((id) => ({ ...done[0], id }) as StoredReason);
    expect(advanceReasons(twins, [act], evening(2), { earlyNights: false })).toMatchObject([
      { change: 'reopen', id: 'b' },
    ]);
    expect(advanceReasons([...twins].reverse(), [act], evening(2), { earlyNights: false })).toMatchObject([
      { id: 'b' },
    ]);
  });
  it('looks at the newest of several closed ones', () => {
    const old = {
      ...done[0],
      id: 'old',
      closedAt: '2026-01-01T08:00:00.000Z',
      closedWhy: '2 clear nights',
    } as StoredReason;
    expect(advanceReasons([old, ...done], [watch], evening(2), { earlyNights: false })).toEqual([]);
    expect(advanceReasons([...done, old], [watch], evening(2), { earlyNights: false })).toEqual([]);
  });
});

describe('put aside and with the client', () => {
  it('holds until the morning of its date, updated meanwhile', () => {
    const aside = held({ state: 'aside', asideUntil: day(5) });
    const other = aFinding('pain-rising', 'watch', { value: 2 });
    const { changes, stored } = nights(aside, [[watch], [other], [other], [other]], 1);
    expect(changes).toEqual(['', 'update', '', 'back']);
    expect(stored[0]).toMatchObject({ state: 'open', asideUntil: null });
  });
  it('comes back as soon as it is worse, with or without a date', () => {
    for (const over of [{ asideUntil: day(9) }, { asideUntilWorse: true }]) {
      const aside = held({ state: 'aside', ...over });
      expect(advanceReasons(aside, [act], evening(1), { earlyNights: false })).toMatchObject([
        { change: 'back', why: 'worse' },
      ]);
      expect(advanceReasons(aside, [watch], evening(1), { earlyNights: false })).toEqual([]);
    }
  });
  it('holds without a date while nothing is worse', () => {
    expect(nights(held({ state: 'aside', asideUntilWorse: true }), [[watch]], 300).changes).toEqual(['']);
  });
  it('stays away until its date also when clear nights closed it before, unless it is worse', () => {
    for (const over of [
      { state: 'aside' as const, asideUntil: day(9) },
      { state: 'with-client' as const, withClientUntil: day(9) },
    ]) {
      const { changes, stored } = nights(held(over), [CALM, CALM, [watch], [watch]], 1);
      expect(changes).toEqual(['count-clear', 'close', '', '']);
      expect(stored).toMatchObject([{ state: 'closed' }]);
      expect(nights(stored, [[watch]], 7).changes).toEqual(['']);
      expect(nights(stored, [[watch]], 8).changes).toEqual(['reopen']);
      expect(nights(stored, [[act]], 5).changes).toEqual(['reopen']);
    }
  });
  it('is closed by clear nights like any other', () => {
    expect(nights(held({ state: 'aside', asideUntil: day(9) }), [CALM, CALM], 1).changes).toEqual([
      'count-clear',
      'close',
    ]);
  });
  it('comes back from the client on its date, or when worse', () => {
    const away = held({ state: 'with-client', withClientUntil: day(5) });
    expect(nights(away, [[watch], [watch], [watch], [watch]], 1).changes).toEqual(['', '', '', 'back']);
    expect(advanceReasons(away, [act], evening(1), { earlyNights: false })).toMatchObject([
      { change: 'back', why: 'worse' },
    ]);
    expect(advanceReasons(away, [watch], evening(4), { earlyNights: false })).toMatchObject([
      { change: 'back', why: 'date' },
    ]);
  });
});
