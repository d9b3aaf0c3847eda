import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import { daysAgo, isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import type { Limits } from '../thresholds.ts';
import { TISSUE_LABELS } from '../tissues.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords } from '../words.ts';

/** Limits on what a client may do that end within three days. Common practice. */
export const limitEnding: Check = {
  kind: 'limit-ending',
  title: 'Limit ending',
  question: 'Does something ruled out for this client come back within three days?',
  evaluate: (view, limits) => {
    if (isResting(view)) return [{ status: 'clear', kind: 'limit-ending', subject: { key: '*', label: '' } }];
    const judged = new Map(inOrder(view).map((limit) => [keyOf(limit), judge(view, limit, limits)]));
    return [...judged].sort(([a], [b]) => compare(a, b)).map(([, outcome]) => outcome);
  },
};

/** Of two alike the one that stands is judged, and of two that stand the newer. */
function inOrder(view: ClientView): HistoryLimit[] {
  const { date } = view.asOf;
  return [...view.history.limits].sort(
    (a, b) =>
      Number(a.from <= date) - Number(b.from <= date) || compare(a.from, b.from) || compare(a.who, b.who),
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function keyOf({ tissue, region, side, rule, until }: HistoryLimit): string {
  return `${rule}:${tissue ?? region ?? 'all'}:${side ?? 'both'}:${until ?? 'open'}`;
}

function judge(view: ClientView, limit: HistoryLimit, limits: Limits): Outcome {
  const place = placeOf(limit);
  const subject: Subject = { key: keyOf(limit), label: place };
  const left = limit.until === null ? Number.POSITIVE_INFINITY : -daysAgo(view, limit.until);
  const stands = limit.from <= view.asOf.date;
  if (limit.until === null || !stands || left < 0 || left > limits['limitEnding.days']) {
    return { status: 'clear', kind: 'limit-ending', subject };
  }
  return findingOf(
    {
      kind: 'limit-ending',
      subject,
      level: 'watch',
      sentence: `The limit “${RULES[limit.rule]}${place === '' ? '' : `, ${place}`}” ends in **${counted(left, 'day')}**, after ${dayInWords(limit.until)}; set by ${limit.who}.`,
      short: 'limit ends',
      since: limit.from,
      step: { kind: 'look', text: 'Decide: let it end, or set it on; the plan changes with it' },
      clears: 'The day after, or a new date.',
      evidence: { until: limit.until, daysLeft: left, rule: limit.rule, who: limit.who },
      inputs: [{ name: 'days left', value: left, unit: 'days' }],
      formula: 'Days from tonight to the last day of the limit.',
      thresholds: ['limitEnding.days'],
      doubt:
        'It does not say whether the limit is still needed: that is for the coach, or for the clinician who asked for it.',
    },
    limits,
  );
}

const RULES: Record<HistoryLimit['rule'], string> = {
  none: 'no load',
  reduced: 'less load',
  'no-floor': 'no floor',
  'no-overhead': 'nothing overhead',
  'no-upside-down': 'nothing upside down',
};

function placeOf({ tissue, region, side }: HistoryLimit): string {
  if (region) return placeInWords(region, side);
  if (!tissue) return '';
  return side === 'left' || side === 'right' ? `${side} ${TISSUE_LABELS[tissue]}` : TISSUE_LABELS[tissue];
}
