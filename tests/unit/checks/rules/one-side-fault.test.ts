import { describe, expect, it } from 'vitest';
import { oneSideFault } from '#lib/checks/rules/one-side-fault.ts';
import { withVerdict } from '#lib/domain/clip-verdict.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import type { Fault } from '#lib/domain/vocabulary.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aRung, aSet, day } from '#tests/fixtures/history-builders.ts';

const RUNG = aRung({ name: 'Two fingers', eachSide: true, faults: ['hips-turn', 'came-off'] });
/** Eight days with two sets a side; the first `left` and `right` sets of each side carry the fault. */
function marked(left: number, right: number, fault: Fault = 'hips-turn', days = 8): HistoryCheckIn[] {
  const set = (side: 'left' | 'right', at: number, hits: number) =>
    aSet({ side, index: at % 2, faults: at < hits ? [fault] : [] });
  return Array.from({ length: days }, (_, at) =>
    aCheckIn(at * 3, {
      sets: [0, 1].flatMap((one) => [set('left', at * 2 + one, left), set('right', at * 2 + one, right)]),
    }),
  );
}
const on = (checkIns: HistoryCheckIn[], days = 30, over = {}, limits = {}) =>
  judge(oneSideFault, aHistory({ rungs: [RUNG], checkIns, ...over }), days, limits);
const saidOf = (checkIns: HistoryCheckIn[], days = 30, over = {}) =>
  said(theOutcome(on(checkIns, days, over)));

describe('one-side-fault', () => {
  it('speaks for 10 of 16 sets left against 2 of 16 right', () => {
    const finding = theFinding(on(marked(10, 2)));
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      subject: { key: 'pull', side: 'left' },
    });
    expect(finding.sentence).toBe('Two fingers: hips turn on **10 of 16** sets left, on 2 of 16 right.');
    // Hypergeometric upper tail by hand: (16C10 16C2 + 16C11 16C1 + 16C12) / 32C12 = 0.00458...
    expect(finding.evidence.p).toBeCloseTo(0.0046, 4);
    expect(finding.step.kind).toBe('ask-film');
    expect(finding.evidence).not.toHaveProperty('onFilm');
    expect(finding.working.doubt).toContain('a film from behind says more');
  });
  it('counts what a coach saw on film as well, and says of how many sets', () => {
    const told = { clean: true, faults: [] };
    const seen = marked(9, 2).map((checkIn, at) => ({
      ...checkIn,
      sets: checkIn.sets.map((set) =>
        at === 7 && set.side === 'left' && set.index === 1
          ? withVerdict({ ...set, ...told }, { verdict: 'not-clean', faults: ['hips-turn'] })
          : set,
      ),
    }));
    const finding = theFinding(on(seen));
    expect(finding.sentence).toContain('**10 of 16** sets left');
    expect(finding.evidence.onFilm).toBe(1);
    expect(finding.working.doubt).toContain('1 of these sets were looked at on film');
    const cleared = marked(10, 2).map((checkIn) => ({
      ...checkIn,
      sets: checkIn.sets.map((set) => withVerdict(set, { verdict: 'clean', faults: [] })),
    }));
    expect(saidOf(cleared)).toBe('clear');
  });
  it('draws the line at p 0.01: 9 of 16 against 2 of 16 is 0.011', () => {
    expect(saidOf(marked(9, 2))).toBe('clear');
    expect(saidOf(marked(9, 1))).toBe('flagged watch');
  });
  it('needs a chance under the limit: a fault that came once, on one of 16 sets of both sides, has one of 1 in 2', () => {
    const once = (p: number) =>
      said(theOutcome(on(marked(1, 0, 'hips-turn', 4), 30, {}, { 'oneSideFault.p': p })));
    expect(once(0.5)).toBe('clear');
    expect(once(0.501)).toBe('flagged watch');
  });
  it('names one of two faults that are as uneven as each other, however the rung lists them', () => {
    const both = marked(10, 2).map((checkIn) => ({
      ...checkIn,
      sets: checkIn.sets.map((set) =>
        set.faults.length > 0 ? { ...set, faults: ['hips-turn' as const, 'came-off' as const] } : set,
      ),
    }));
    for (const faults of [RUNG.faults, [...RUNG.faults].reverse()]) {
      const finding = theFinding(on(both, 30, { rungs: [{ ...RUNG, faults }] }));
      expect(finding.sentence).toBe('Two fingers: came off on **10 of 16** sets left, on 2 of 16 right.');
    }
  });
  it('names the other side when it is the other', () => {
    expect(theFinding(on(marked(1, 12))).subject.side).toBe('right');
  });
  it('is clear for a fault of both sides', () => {
    expect(saidOf(marked(14, 14))).toBe('clear');
    expect(saidOf(marked(0, 0))).toBe('clear');
  });
  it('needs 8 sets a side in 42 days', () => {
    expect(saidOf(marked(16, 0, 'hips-turn', 3))).toBe(
      'not-enough-history: 6 and 6 of 8 sets left and right in 42 days',
    );
    expect(saidOf(marked(16, 0, 'hips-turn', 4))).toBe('flagged watch');
    const later = (days: number) => {
      const [first, ...others] = marked(16, 0, 'hips-turn', 4);
      return [...(first ? [first] : []), ...others.map((one, at) => aCheckIn(days - at, { sets: one.sets }))];
    };
    expect(saidOf(later(41), 50)).toBe('flagged watch');
    expect(saidOf(later(42), 50)).toContain('6 and 6');
  });
  it('is lowered by no silence; after 42 days of it there is too little to say', () => {
    expect(saidOf(marked(16, 0), 62)).toBe('flagged watch');
    expect(saidOf(marked(16, 0), 63)).toContain('0 and 0');
  });
  it('needs them on both sides', () => {
    const lopsided = marked(16, 0, 'hips-turn', 4).map((one, at) =>
      at === 0 ? { ...one, sets: one.sets.filter((set) => set.side === 'left') } : one,
    );
    expect(saidOf(lopsided)).toContain('8 and 6 of 8');
  });
  it("looks at the rung's own faults only", () => {
    expect(saidOf(marked(16, 0, 'turned-out'))).toBe('clear');
    expect(on(marked(16, 0), 30, { rungs: [{ ...RUNG, faults: [] }] })).toEqual([]);
    expect(on(marked(16, 0), 30, { rungs: [{ ...RUNG, eachSide: false }] })).toEqual([]);
  });
  it('is silent while a step is worked on, and closes nothing', () => {
    const steps = [
      { kind: 'one-side-back', takenOn: day(10), ladderId: 'pull', side: null, reviewOn: day(40), words: '' },
    ];
    expect(saidOf(marked(16, 0), 30, { steps })).toBe('clear, lower bound');
    expect(saidOf(marked(16, 0), 40, { steps })).toBe('flagged watch');
  });
  it('leaves out soft ground and days only tapped', () => {
    const soft = marked(16, 0).map((checkIn) => ({ ...checkIn, ground: 'sand' as const }));
    expect(saidOf(soft)).toContain('0 and 0');
  });
});
