import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#lib/checks/run.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aPlan,
  aPlanItem,
  aRung,
  evening,
  sets,
} from '#tests/fixtures/history-builders.ts';

/** Rules about what was logged; the ones about silence itself, loads and what is owed have their own tests. */
const KINDS: CheckKind[] = [
  'danger-sign',
  'pain-high',
  'pain-rising',
  'pain-lingering',
  'pain-after-ground',
  'too-hard',
  'plan-outgrown',
  'stalled',
  'slipping',
  'too-little-time',
  'side-gap',
  'one-side-fault',
];
const RUNG = aRung({
  eachSide: true,
  measure: 'hold',
  usualWeeks: 2,
  pass: { sets: 1, target: 20, days: 2, tries: null },
  faults: ['came-off'],
});
const PLAN = aPlan({ items: [aPlanItem({ sets: 1, target: 20 })] });

const session = fc.record({
  skipped: fc.boolean(),
  calm: fc.boolean(),
  pain: fc.integer({ min: 0, max: 8 }),
  morning: fc.integer({ min: 0, max: 4 }),
  left: fc.integer({ min: 8, max: 21 }),
  right: fc.integer({ min: 14, max: 21 }),
  fault: fc.boolean(),
  grass: fc.boolean(),
});
type Session = typeof session extends fc.Arbitrary<infer One> ? One : never;

function checkIn(days: number, one: Session): HistoryCheckIn {
  const region = 'wrist-back' as const;
  const pain = [aPain(one.pain, { region }), aPain(one.morning, { region, moment: 'morning' })];
  const faults = one.fault ? ['came-off' as const] : [];
  const done = [
    ...sets([one.left], { side: 'left', planned: 20, faults }),
    ...sets([one.right], { side: 'right', planned: 20 }),
  ];
  return aCheckIn(days, {
    ground: one.grass && one.calm ? 'grass' : 'hard-floor',
    sets: one.skipped && one.calm ? [] : done,
    pain: one.calm ? [] : pain,
  });
}

const history = (sessions: Session[]): ClientHistory =>
  aHistory({ rungs: [RUNG], plans: [PLAN], checkIns: sessions.map((one, at) => checkIn(at * 2, one)) });
const sessions = fc.array(session, { minLength: 8, maxLength: 40 });

function flaggedKeys(of: ClientHistory, days: number, status: 'flagged' | 'clear'): Set<string> {
  const said = runChecks(of, evening(days)).filter(
    (each) => each.status === status && KINDS.includes(each.kind) && !isPartOfAnother(each),
  );
  return new Set(said.map((each) => `${each.kind} ${each.subject.key}`));
}

/** Clear only because a graver reason carries it as a fact. */
function isPartOfAnother(outcome: Outcome): boolean {
  return outcome.status === 'clear' && (outcome.why?.startsWith('part of') ?? false);
}

describe('silence', () => {
  it('closes nothing: what was flagged after the last check-in never turns clear by days alone', () => {
    fc.assert(
      fc.property(sessions, fc.integer({ min: 1, max: 90 }), (list, days) => {
        const of = history(list);
        const last = (list.length - 1) * 2;
        const later = flaggedKeys(of, last + days, 'clear');
        for (const key of flaggedKeys(of, last, 'flagged')) expect([...later]).not.toContain(key);
      }),
      { numRuns: 1000 },
    );
  });
  // Not the newest: what is usual is counted back from the newest check-in that speaks of the place.
  it('about pain closes nothing: a calm check-in of the last 14 days that says nothing instead', () => {
    fc.assert(
      fc.property(sessions, fc.integer({ min: 1, max: 6 }), (list, back) => {
        const of = history(list);
        const last = (list.length - 1) * 2;
        const at = of.checkIns[of.checkIns.length - 1 - back];
        if (!at?.nothingHurts) return;
        const silent = {
          ...of,
          checkIns: of.checkIns.map((each) => (each === at ? { ...each, nothingHurts: false } : each)),
        };
        const kept = flaggedKeys(silent, last, 'clear');
        for (const key of flaggedKeys(of, last, 'flagged'))
          if (key.includes('pain')) expect([...kept]).not.toContain(key);
      }),
      { numRuns: 1000 },
    );
  });
});
