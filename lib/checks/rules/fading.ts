import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { exceeds, reaches } from '../compare.ts';
import { isResting } from '../contact-silence.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { daysHere } from '../new-start.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView, Day } from '../types.ts';
import { plainNumber } from '../words.ts';

const SUBJECT: Subject = { key: 'training-days', label: '' };

/**
 * Training days logged in 28 days against what the 56 days before would give on as many days that were not off.
 * Off for the first 56 days; with fewer than 56 days before, those there are. Own rule.
 */
export const fading: Check = {
  kind: 'fading',
  title: 'Fading',
  question: 'Does this client log far fewer training days than in the two months before?',
  evaluate: (view, limits) => [judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const length = limits['fading.days'];
  const needed = limits['fading.beforeDays'];
  const clear: Outcome = { status: 'clear', kind: 'fading', subject: SUBJECT };
  if (isResting(view)) return clear;
  const here = daysHere(view);
  if (here < needed) {
    const missing = `${here} of ${needed} days here`;
    return { status: 'not-enough-history', kind: 'fading', subject: SUBJECT, missing };
  }
  const recent = logged(view.days.slice(-length));
  const before = logged(view.days.slice(-Math.min(here, length + needed), -length));
  const expected = (before.trained / Math.max(1, before.open)) * recent.open;
  const fewer = expected - recent.trained;
  const under = exceeds(limits['fading.share'] * expected, recent.trained);
  if (!under || !reaches(fewer, limits['fading.fewer'])) return clear;
  return findingOf(
    {
      kind: 'fading',
      subject: SUBJECT,
      level: 'watch',
      sentence: `**${recent.trained} training days** logged in 28 days; the two months before would give ${plainNumber(expected)}.`,
      short: `${recent.trained} of ${plainNumber(expected, 0)} training days`,
      since: view.days.at(-length)?.date ?? view.asOf.date,
      step: { kind: 'write-first', text: 'Ask what has changed; offer two short sessions' },
      clears: 'Training days back over half of what they were.',
      evidence: { trained: recent.trained, expected: roundTo(expected, 1), off: length - recent.open },
      inputs: [
        { name: 'training days logged in 28', value: recent.trained, unit: 'days' },
        { name: 'expected from the days before', value: roundTo(expected, 1), unit: 'days' },
        { name: 'days off in the 28', value: length - recent.open, unit: 'days' },
      ],
      formula:
        'Training days of 28 days, against the rate of the 56 days before; days off are left out of both.',
      thresholds: ['fading.share', 'fading.fewer', 'fading.beforeDays'],
      doubt: 'Counts what was written down, not what was trained.',
    },
    limits,
  );
}

function logged(days: readonly Day[]): { trained: number; open: number } {
  return {
    trained: days.filter((day) => day.state === 'trained').length,
    open: days.filter((day) => day.state !== 'off').length,
  };
}
