import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mergeReasons } from '#lib/checks/merge-reasons.ts';
import { compareTiers, rowOf } from '#lib/checks/urgency.ts';
import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import { CHECK_KINDS, LEVELS } from '#lib/domain/vocabulary.ts';
import { aFinding } from '#tests/fixtures/reason-life.ts';

const ELBOW = {
  key: 'elbow-inner:right',
  label: 'right elbow, inner',
  region: 'elbow-inner',
  side: 'right',
} as const;
const KNEE = { key: 'knee:left', label: 'left knee', region: 'knee', side: 'left' } as const;
const elbow = (kind: Flagged['kind'], level: Flagged['level'] = 'watch', over = {}) =>
  aFinding(kind, level, { subject: ELBOW, ...over });
const flagged = (outcomes: readonly Outcome[]) =>
  outcomes.filter((each): each is Flagged => each.status === 'flagged');

describe('mergeReasons', () => {
  it('makes pain of one place one reason with two facts', () => {
    const lingering = elbow('pain-lingering', 'watch', { short: 'sore, 3 of 5', since: '2026-02-01' });
    const merged = mergeReasons([elbow('pain-rising', 'act'), lingering]);
    expect(flagged(merged)).toHaveLength(1);
    expect(flagged(merged)[0]).toMatchObject({
      kind: 'pain-rising',
      tier: 'today',
      points: 2,
      since: '2026-02-01',
      sentence: 'pain-rising **1** Also: sore, 3 of 5.',
      evidence: { also: 'pain-lingering' },
    });
    expect(merged[1]).toEqual({
      status: 'clear',
      kind: 'pain-lingering',
      subject: ELBOW,
      why: 'part of: pain-rising',
    });
  });
  it('takes every fact once, the graver first', () => {
    const working = (name: string) => ({
      working: {
        inputs: [
          { name: 'usual', value: 1, unit: '' },
          { name, value: 2, unit: '' },
        ],
        formula: '',
        thresholds: [
          { id: 'shared', value: 1, unit: '', meaning: '', source: '' },
          { id: name, value: 1, unit: '', meaning: '', source: '' },
        ],
        daysKnown: null,
        doubt: '',
      },
    });
    const three = [
      elbow('pain-after-ground', 'watch', working('ground')),
      elbow('pain-lingering', 'watch', working('lingering')),
      elbow('pain-rising', 'watch', working('rising')),
    ];
    const [lead] = flagged(mergeReasons(three));
    expect(lead?.sentence).toBe('pain-rising **1** Also: pain-lingering; pain-after-ground.');
    expect(lead?.working.inputs.map((input) => input.name)).toEqual([
      'usual',
      'rising',
      'lingering',
      'ground',
    ]);
    expect(lead?.working.thresholds.map((each) => each.id)).toEqual([
      'shared',
      'rising',
      'lingering',
      'ground',
    ]);
  });
  it('leaves other places, other causes and other kinds alone', () => {
    const apart = [
      elbow('pain-rising'),
      aFinding('pain-lingering', 'watch', { subject: KNEE }),
      aFinding('stalled', 'watch'),
    ];
    expect(mergeReasons(apart)).toEqual(apart);
  });
  it('never makes pain of 6 part of another, also when that is the sooner', () => {
    const known = elbow('pain-high', 'act', { tier: 'this-week' });
    const merged = flagged(mergeReasons([elbow('pain-rising', 'act'), known]));
    expect(merged).toMatchObject([{ kind: 'pain-high', tier: 'today', points: 3 }]);
  });
  it('puts a tissue inside a load jump into the jump', () => {
    const jump = aFinding('load-jump', 'watch', {
      subject: { key: 'load', label: '' },
      evidence: { tissues: 'elbow-bending:right,neck:both' },
    });
    const hardest = (tissue: 'elbow-bending' | 'low-back') =>
      aFinding('new-hardest', 'watch', { subject: { key: tissue, label: tissue, tissue, side: 'right' } });
    expect(flagged(mergeReasons([hardest('elbow-bending'), jump])).map((each) => each.kind)).toEqual([
      'load-jump',
    ]);
    expect(flagged(mergeReasons([hardest('low-back'), jump]))).toHaveLength(2);
  });
  it('names the parts of one kind by their places, whatever their order', () => {
    const jump = aFinding('load-jump', 'watch', {
      subject: { key: 'load', label: '' },
      evidence: { tissues: 'elbow-bending:right,neck:right' },
    });
    const hardest = (tissue: 'elbow-bending' | 'neck') =>
      aFinding('new-hardest', 'watch', {
        subject: { key: tissue, label: tissue, tissue, side: 'right' },
        short: tissue,
      });
    for (const parts of [
      [hardest('elbow-bending'), hardest('neck')],
      [hardest('neck'), hardest('elbow-bending')],
    ]) {
      const [lead] = flagged(mergeReasons([...parts, jump]));
      expect(lead?.sentence).toBe('load-jump **1** Also: elbow-bending; neck.');
    }
  });
  const subject = fc.constantFrom(ELBOW, KNEE);
  const finding = fc
    .tuple(fc.constantFrom(...CHECK_KINDS), fc.constantFrom(...LEVELS), subject)
    .map(([kind, level, place]) => aFinding(kind, level, { subject: place }));
  const list = fc.uniqueArray(finding, {
    maxLength: 6,
    selector: (each) => `${each.kind} ${each.subject.key}`,
  });
  const row = (outcomes: readonly Outcome[]) =>
    rowOf(flagged(outcomes).map((each) => ({ ...each, raisedAt: '' })));
  it('never makes a row less urgent, nor one more reason a merged row', () => {
    fc.assert(
      fc.property(list, finding, (all, more) => {
        const [alone, merged] = [row(all), row(mergeReasons(all))];
        expect(merged.tier).toBe(alone.tier);
        if (all.some((each) => each.kind === more.kind && each.subject.key === more.subject.key)) return;
        const after = row(mergeReasons([...all, more]));
        if (merged.lead !== -1) expect(compareTiers(after.tier, merged.tier)).toBeLessThanOrEqual(0);
      }),
      { numRuns: 1000 },
    );
  });
  it('does not depend on order, and merging twice is merging once', () => {
    fc.assert(
      fc.property(list, (all) => {
        const once = mergeReasons(all);
        const backward = mergeReasons([...all].reverse()).reverse();
        expect(backward).toEqual(once);
        expect(flagged(mergeReasons(once))).toEqual(flagged(once));
      }),
      { numRuns: 1000 },
    );
  });
});
