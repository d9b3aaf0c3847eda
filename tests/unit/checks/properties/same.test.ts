import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareTiers } from '#lib/checks/urgency.ts';
import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import { parseHistory } from '#lib/schemas/history.ts';
import { anyLife, told } from './any-history.ts';
import { shuffled, withLater } from './order.ts';
import { always, apartFrom, flaggedIn, keyOf, rowFrom, said } from './said.ts';

/** Rules that answer from what is there, and never say that it is too little. */
const NEVER_TOO_LITTLE: readonly CheckKind[] = [
  'danger-sign',
  'pain-high',
  'too-many-goals',
  'gone-quiet',
  'question-waiting',
  'film-waiting',
  'plan-ending',
  'not-seen',
  'asked-no-answer',
  'limit-ending',
];
/** In how many of the thousand clients a check must have spoken for the properties to say something about it. */
const SPOKEN_AT_LEAST = 15;

const spoken = new Map<string, Set<number>>();
let run = 0;

function count(outcomes: readonly Outcome[]): void {
  run += 1;
  for (const { kind, status } of outcomes) {
    const key = `${kind} ${status}`;
    spoken.set(key, (spoken.get(key) ?? new Set()).add(run));
  }
}

function times(kind: CheckKind, status: Outcome['status']): number {
  return spoken.get(`${kind} ${status}`)?.size ?? 0;
}

describe('what the checks say about random clients', () => {
  it('is the same for the same rows in any order, with nothing that is dated later, and is well said', () => {
    always(({ history, asOf, base }) => {
      const { apart, together } = said(history, asOf);
      count(apart);
      for (const finding of flaggedIn(together)) isWellSaid(finding);
      expect(together.filter((each) => !isPlain(each))).toEqual([]);
      losesNothing(apart, together);
      goodNewsHidesNothing(together);
      const later = shuffled(withLater(history, asOf.date, base.seed), base.seed);
      expect(apartFrom(said(later, asOf).together, together)).toEqual([]);
    });
    expect(CHECK_KINDS.filter((kind) => times(kind, 'flagged') < SPOKEN_AT_LEAST)).toEqual([]);
    expect(CHECK_KINDS.filter((kind) => times(kind, 'clear') === 0)).toEqual([]);
    expect(CHECK_KINDS.filter((kind) => times(kind, 'not-enough-history') === 0)).toEqual(NEVER_TOO_LITTLE);
  }, 120_000);
  it('is about histories that the file format takes', () => {
    for (const { history } of fc.sample(anyLife, { numRuns: 50, seed: 1 }).map(told))
      expect(parseHistory(structuredClone(history))).toEqual(history);
  });
});

function isWellSaid({ kind, sentence, short, step, clears, working, evidence, subject }: Flagged): void {
  const words = `${sentence} ${short} ${step.text} ${clears} ${working.formula} ${working.doubt}`;
  expect(sentence, kind).toMatch(/\d/);
  // A step earned in the first days ends with a question to the coach.
  expect(sentence, kind).toMatch(kind === 'step-up-earned' ? /\S[.?]$/ : /\S\.$/);
  expect(sentence.split('**').length % 2, `${kind}: ${sentence}`).toBe(1);
  expect(words, kind).not.toMatch(/injur|risk of|!|undefined|NaN|Infinity|\[object/i);
  expect(short.length, short).toBeGreaterThan(0);
  expect(short.length, short).toBeLessThanOrEqual(70);
  expect(step.text, kind).not.toBe('');
  expect(clears, kind).not.toBe('');
  expect(subject.key, kind).not.toBe('');
  expect(working.inputs.length, kind).toBeGreaterThan(0);
  expect(working.formula, kind).not.toBe('');
  expect(working.thresholds.length, kind).toBeGreaterThan(0);
  const nameless = working.thresholds.filter(
    (each) => !each.id || !each.unit || !each.meaning || !each.source,
  );
  expect(nameless, kind).toEqual([]);
  const nested = Object.values(evidence).filter((value) => typeof value === 'object' && value !== null);
  expect(nested, kind).toEqual([]);
}

/** Everything is text, a finite number, true, false or null: nothing changes on its way through JSON. */
function isPlain(value: unknown): boolean {
  if (typeof value === 'object' && value !== null) return Object.values(value).every(isPlain);
  if (typeof value === 'number') return Number.isFinite(value);
  return value === null || typeof value === 'string' || typeof value === 'boolean';
}

/** Each finding of a single check is a finding of all, part of one that names it, or good news that has to wait. */
function losesNothing(apart: readonly Outcome[], together: readonly Outcome[]): void {
  expect(together.map(keyOf)).toEqual(apart.map(keyOf));
  const left = flaggedIn(together);
  flaggedIn(apart).forEach((finding) => {
    const now = together.find((each) => keyOf(each) === keyOf(finding));
    if (now?.status === 'flagged') {
      expect(compareTiers(now.tier, finding.tier)).toBeLessThanOrEqual(0);
      expect(now.points).toBeGreaterThanOrEqual(finding.points);
      return;
    }
    if (finding.kind === 'step-up-earned') return;
    const leads = left.filter(
      (each) =>
        String(each.evidence.also ?? '').includes(finding.kind) && each.sentence.includes(finding.short),
    );
    expect(leads.length, `${keyOf(finding)} is part of one finding`).toBeGreaterThan(0);
    expect(
      leads.some((each) => each.points >= finding.points && compareTiers(each.tier, finding.tier) <= 0),
    ).toBe(true);
  });
}

/** The row without its good news is as urgent, and is led by the same reason. */
function goodNewsHidesNothing(together: readonly Outcome[]): void {
  const bad = together.filter((each) => each.kind !== 'step-up-earned');
  const [all, without] = [rowFrom(together), rowFrom(bad)];
  if (without.lead === -1) return;
  expect([all.tier, all.points]).toEqual([without.tier, without.points]);
  const leads = (outcomes: readonly Outcome[], at: number) => flaggedIn(outcomes)[at];
  expect(leads(together, all.lead)).toBe(leads(bad, without.lead));
}
