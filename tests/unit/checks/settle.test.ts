import { describe, expect, it } from 'vitest';
import { runChecks } from '#lib/checks/run.ts';
import { settle } from '#lib/checks/settle.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aPain, evening } from '#tests/fixtures/history-builders.ts';
import { aFinding } from '#tests/fixtures/reason-life.ts';

const EARNED = aFinding('step-up-earned', 'watch', {
  subject: { key: 'pull:pull-1', label: 'Pull-up', ladderId: 'pull', rungId: 'pull-1', side: 'both' },
});
const JUMP = aFinding('load-jump', 'watch', {
  subject: { key: 'load', label: '' },
  evidence: { tissues: 'elbow-bending:right' },
});
const settled = (outcomes: Outcome[], checkIns: HistoryCheckIn[] = [aCheckIn(0)], days = 20) =>
  settle(buildView(aHistory({ checkIns }), evening(days)), outcomes, DEFAULT_LIMITS);
const statuses = (outcomes: Outcome[]) => outcomes.map((outcome) => `${outcome.kind} ${outcome.status}`);

describe('good news', () => {
  it('waits while pain or load is open on a tissue the rung loads', () => {
    const elbow = { key: 'elbow-inner:right', label: '', region: 'elbow-inner', side: 'right' } as const;
    for (const other of [
      aFinding('pain-rising', 'watch', { subject: elbow }),
      aFinding('pain-high', 'act', { subject: elbow }),
      JUMP,
    ]) {
      expect(statuses(settled([EARNED, other]))).toEqual(['step-up-earned clear', `${other.kind} flagged`]);
    }
  });
  it('does not wait for other tissues, notes, or a jump of the whole week', () => {
    const knee = { key: 'knee:right', label: '', region: 'knee', side: 'right' } as const;
    const week = { ...JUMP, evidence: { tissues: '' } };
    const neck = aFinding('new-hardest', 'note', {
      subject: { key: 'e', label: '', tissue: 'elbow-bending', side: 'right' },
    });
    for (const other of [
      aFinding('pain-rising', 'watch', { subject: knee }),
      week,
      neck,
      aFinding('stalled', 'watch'),
    ]) {
      expect(statuses(settled([EARNED, other]))[0]).toBe('step-up-earned flagged');
    }
  });
  it('waits for a tissue named by the reason itself', () => {
    const hardest = (tissue: 'elbow-bending' | 'neck') =>
      aFinding('new-hardest', 'watch', { subject: { key: tissue, label: '', tissue, side: 'right' } });
    expect(statuses(settled([EARNED, hardest('elbow-bending')]))[0]).toBe('step-up-earned clear');
    expect(statuses(settled([EARNED, hardest('neck')]))[0]).toBe('step-up-earned flagged');
  });
  it('waits on one side only for that side', () => {
    const left = { ...EARNED, subject: { ...EARNED.subject, side: 'left' as const } };
    const right = { ...EARNED, subject: { ...EARNED.subject, side: 'right' as const } };
    expect(statuses(settled([left, right, JUMP]))).toEqual([
      'step-up-earned flagged',
      'step-up-earned clear',
      'load-jump flagged',
    ]);
  });
  it('waits for every danger sign that has no place', () => {
    const chest = aFinding('danger-sign', 'act', {
      subject: { key: 'chest-pain:any:any', label: 'chest pain' },
    });
    expect(statuses(settled([EARNED, chest]))[0]).toBe('step-up-earned clear');
  });
});

describe('a sore tissue inside a load jump', () => {
  const morning = (days: number, value: number) =>
    aCheckIn(days, { pain: [aPain(value, { moment: 'morning' })] });
  const tier = (checkIns: HistoryCheckIn[], days = 20, jump = JUMP) => {
    const [outcome] = settled([jump], checkIns, days);
    return outcome?.status === 'flagged' ? outcome.tier : undefined;
  };
  it('makes the jump today: a morning 2 above usual, or 1 above on two mornings running', () => {
    expect(tier([morning(19, 1)])).toBe('this-week');
    expect(tier([morning(19, 2)])).toBe('today');
    expect(tier([morning(17, 1), morning(19, 1)])).toBe('today');
    expect(tier([morning(15, 1), morning(17, 0), morning(19, 1)])).toBe('this-week');
  });
  it('is not hidden by a check-in without a morning', () => {
    const noMorning = aCheckIn(20, { pain: [aPain(1)] });
    expect(tier([morning(19, 2), noMorning])).toBe('today');
    expect(tier([morning(19, 2), morning(20, 0)])).toBe('this-week');
  });
  it('is over after 14 days without a word, and elsewhere no matter', () => {
    expect(tier([morning(6, 2)])).toBe('today');
    expect(tier([morning(5, 2)])).toBe('this-week');
    const left = { ...JUMP, evidence: { tissues: 'elbow-bending:left' } };
    expect(tier([morning(19, 2)], 20, left)).toBe('this-week');
    const both = { ...JUMP, evidence: { tissues: 'elbow-bending:both' } };
    expect(tier([morning(19, 2)], 20, both)).toBe('today');
  });
});

describe('all checks together', () => {
  it('hold the step back on the day the elbow is at 6', () => {
    const checkIns = [aCheckIn(13), aCheckIn(15), aCheckIn(17)];
    const kinds = (over: HistoryCheckIn[]) =>
      runChecks(aHistory({ checkIns: over }), evening(18))
        .filter((outcome) => outcome.status === 'flagged')
        .map((outcome) => outcome.kind);
    expect(kinds(checkIns)).toContain('step-up-earned');
    const sore = kinds([...checkIns, aCheckIn(18, { sets: [], pain: [aPain(6, { moment: 'today' })] })]);
    expect(sore).toContain('pain-high');
    expect(sore).not.toContain('step-up-earned');
  });
});
