import type { Outcome } from '#lib/domain/finding.ts';
import type { HistoryPlanItem } from '#lib/domain/history.ts';
import { findingOf } from '../finding-of.ts';
import { askedNow, asksPassMark, lastPlanChange } from '../plan-items.ts';
import { type RungDay, rungDays } from '../rung-days.ts';
import { hasResult, isOfSide } from '../set-result.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords, inMeasure, passInWords } from '../words.ts';

const KIND = 'plan-outgrown';

export const planOutgrown: Check = {
  kind: KIND,
  title: 'Plan outgrown',
  question:
    'Is everything the plan asks on a rung done clean and with ease, while it asks less than the pass mark?',
  evaluate: (view, limits) => standingsOf(view).map((standing) => judge(view, standing, limits)),
};

function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  const { rung } = standing;
  const items = askedNow(view, rung.id, standing.side);
  // Asked for in two sessions: the one that asks least is named.
  const [item] = [...items].sort((a, b) => a.sets - b.sets || (a.target ?? 0) - (b.target ?? 0));
  if (!item || items.some((each) => asksPassMark(each, rung)))
    return { status: 'clear', kind: KIND, subject };
  const changed = lastPlanChange(view, rung.ladderId) ?? '';
  const days = rungDays(view, rung.id)
    .filter((day) => day.counts && day.date >= standing.from && day.date >= changed)
    .slice(-limits['planOutgrown.days']);
  if (days.length < limits['planOutgrown.days']) {
    const missing = `${days.length} of ${counted(limits['planOutgrown.days'], 'training day')} under this plan`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  if (!days.every((day) => isDone(day, standing, item.sets) && !isHard(day, limits)))
    return { status: 'clear', kind: KIND, subject };
  const told = days.filter((day) => day.effort !== null).length;
  if (told < days.length) {
    const missing = `effort known on ${told} of ${counted(days.length, 'training day')}`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const efforts = days.map((day) => day.effort ?? 0);
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${subject.label}: everything planned done clean on **${days.length} days** running, effort ${Math.max(...efforts)} of 10 at most; the plan asks ${askedInWords(item, standing)}, the pass mark is ${passInWords(rung)}.`,
      short: `${subject.label}: plan outgrown`,
      since: days[0]?.date ?? view.asOf.date,
      step: { kind: 'new-plan', text: `Ask the pass mark: ${passInWords(rung)}` },
      clears: 'a plan that asks the pass mark, or a day with a set missed or harder than that',
      evidence: {
        days: days.length,
        highestEffort: Math.max(...efforts),
        sets: item.sets,
        target: item.target,
      },
      inputs: days.map((day) => ({
        name: dayInWords(day.date),
        value: day.effort ?? 0,
        unit: 'effort of 10',
      })),
      formula:
        'on 3 training days running every planned set is done and clean at effort 6 or less, and the plan asks fewer sets or less than the pass mark',
      thresholds: ['planOutgrown.days', 'planOutgrown.maxEffort'],
      doubt: 'Effort is for the whole session, not for this drill.',
    },
    limits,
  );
}

function isHard({ effort }: RungDay, limits: Limits): boolean {
  return effort !== null && effort > limits['planOutgrown.maxEffort'];
}

function isDone(day: RungDay, { rung, side }: Standing, least: number): boolean {
  const planned = day.sets.filter((set) => set.planned !== null && isOfSide(set, side));
  const ranges = rung.measure.startsWith('range');
  const whole = planned.every(
    (set) => hasResult(set) && set.clean && (ranges || set.value >= (set.planned ?? 0)),
  );
  return whole && planned.length >= least;
}

function askedInWords(item: HistoryPlanItem, { rung }: Standing): string {
  return `${item.sets} × ${inMeasure(item.target ?? 0, rung)}`;
}
