import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { compareRows, compareTiers, pointsOf, type RowReason, rowOf, tierOf } from '#lib/checks/urgency.ts';
import { CHECK_KINDS, type CheckKind, LEVELS, type Level } from '#lib/domain/vocabulary.ts';

const reason = (kind: CheckKind, level: Level, over: Partial<RowReason> = {}): RowReason => ({
  kind,
  level,
  points: pointsOf(kind, level, DEFAULT_LIMITS),
  tier: tierOf(kind, level),
  sentence: kind,
  raisedAt: '2026-03-02T03:00:00.000Z',
  ...over,
});
const reasons = fc.array(
  fc
    .tuple(fc.constantFrom(...CHECK_KINDS), fc.constantFrom(...LEVELS), fc.integer({ min: 1, max: 28 }))
    .map(([kind, level, date]) =>
      reason(kind, level, { raisedAt: `2026-02-${String(date).padStart(2, '0')}T03:00:00.000Z` }),
    ),
  { maxLength: 8 },
);

describe('tiers and points', () => {
  it.each([
    ['danger-sign', 'act', 'now', 3],
    ['pain-high', 'act', 'now', 3],
    ['pain-rising', 'act', 'today', 2],
    ['pain-rising', 'watch', 'this-week', 1],
    ['question-waiting', 'act', 'today', 2],
    ['question-waiting', 'watch', 'this-week', 1],
    ['film-waiting', 'act', 'today', 2],
    ['plan-ending', 'act', 'today', 2],
    ['plan-ending', 'watch', 'this-week', 1],
    ['load-jump', 'act', 'this-week', 2],
    ['stalled', 'watch', 'this-week', 1],
    ['new-hardest', 'note', null, 0],
    ['step-up-earned', 'watch', 'good-news', 0],
  ] as const)('%s at %s: %s, %s points', (kind, level, tier, points) => {
    expect(tierOf(kind, level)).toBe(tier);
    expect(pointsOf(kind, level, DEFAULT_LIMITS)).toBe(points);
  });
});

describe('rowOf', () => {
  it('takes the most urgent tier and counts a kind once, at its highest', () => {
    const row = rowOf([
      reason('stalled', 'watch'),
      reason('side-gap', 'watch'),
      reason('side-gap', 'act'),
      reason('pain-rising', 'act'),
    ]);
    expect(row).toEqual({ tier: 'today', points: 5, lead: 3 });
  });
  it('leads with the most points, then the longest open', () => {
    expect(rowOf([reason('stalled', 'watch'), reason('side-gap', 'act')]).lead).toBe(1);
    expect(
      rowOf([
        reason('stalled', 'watch'),
        reason('slipping', 'watch', { raisedAt: '2026-03-01T03:00:00.000Z' }),
      ]).lead,
    ).toBe(1);
  });
  it('has nothing to show for notes', () => {
    expect(rowOf([reason('slipping', 'note')])).toMatchObject({ points: 0, lead: -1 });
    expect(rowOf([])).toMatchObject({ points: 0, lead: -1 });
    expect(rowOf([reason('slipping', 'note', { points: 9 }), reason('stalled', 'watch')])).toMatchObject({
      points: 1,
      lead: 1,
    });
  });
  it('is never less urgent by one more reason: worse never lowers, good news never hides bad', () => {
    fc.assert(
      fc.property(
        reasons,
        fc.constantFrom(...CHECK_KINDS),
        fc.constantFrom(...LEVELS),
        (list, kind, level) => {
          const [before, after] = [rowOf(list), rowOf([...list, reason(kind, level)])];
          if (before.lead !== -1) expect(compareTiers(after.tier, before.tier)).toBeLessThanOrEqual(0);
          expect(after.points).toBeGreaterThanOrEqual(before.points);
        },
      ),
      { numRuns: 1000 },
    );
  });
  it('is never less urgent when a reason rises a level', () => {
    fc.assert(
      fc.property(reasons, fc.nat(7), (list, at) => {
        const worse = list.map((each, index) => {
          const level = LEVELS[LEVELS.indexOf(each.level) + 1];
          return index === at && level ? reason(each.kind, level, { raisedAt: each.raisedAt }) : each;
        });
        const [before, after] = [rowOf(list), rowOf(worse)];
        if (before.lead !== -1) expect(compareTiers(after.tier, before.tier)).toBeLessThanOrEqual(0);
        expect(after.points).toBeGreaterThanOrEqual(before.points);
      }),
      { numRuns: 1000 },
    );
  });
  it('does not depend on the order of reasons', () => {
    fc.assert(
      fc.property(reasons, (list) => {
        const backward = [...list].reverse();
        const [one, other] = [rowOf(list), rowOf(backward)];
        expect([one.tier, one.points]).toEqual([other.tier, other.points]);
        expect(list[one.lead]).toEqual(backward[other.lead]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('compareRows', () => {
  const row = (over: Partial<Parameters<typeof compareRows>[0]>) => ({
    tier: 'today' as const,
    points: 2,
    waitingSince: '2026-03-02',
    name: 'B',
    ...over,
  });
  it('orders by tier, points, waiting, name', () => {
    const rows = [
      row({ name: 'tier', tier: 'now', points: 0 }),
      row({ name: 'points', points: 3, waitingSince: '2026-03-09' }),
      row({ name: 'waiting', waitingSince: '2026-03-01' }),
      row({ name: 'A' }),
      row({ name: 'B' }),
      row({ name: 'last', tier: 'good-news', points: 9 }),
    ];
    const shuffled = [4, 2, 5, 0, 3, 1].flatMap((at) => rows[at] ?? []);
    expect(shuffled.sort(compareRows).map((each) => each.name)).toEqual([
      'tier',
      'points',
      'waiting',
      'A',
      'B',
      'last',
    ]);
    expect(compareRows(row({}), row({}))).toBe(0);
  });
});
