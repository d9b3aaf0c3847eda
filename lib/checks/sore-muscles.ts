import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { asSentence, placeInWords } from '#lib/domain/labels.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import type { CheckKind, PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { findingOf } from './finding-of.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { counted } from './words.ts';

/** Highest soreness of one muscle, by the dates of the check-ins that speak of it; "nothing hurts" is 0. */
type Soreness = { region: PainRegion; side: PainSide; byDate: Map<string, number> };

/**
 * Is a muscle very sore on several days of one week? A note for the client page and nothing else: no other check reads
 * soreness. Counted back from the last check-in that speaks of the muscle, so that silence neither raises nor clears.
 * Muscles that never were so sore on that many days are not named. Values 0-10 as the client gave them; limits: own.
 */
export function soreMuscles(view: ClientView, kind: CheckKind, limits: Limits): Outcome[] {
  return sorenessOf(view)
    .filter(({ byDate }) => soreDates(byDate, limits).length >= limits['soreMuscle.days'])
    .map((soreness) => judge(view, kind, soreness, limits));
}

function judge(
  view: ClientView,
  kind: CheckKind,
  { region, side, byDate }: Soreness,
  limits: Limits,
): Outcome {
  const label = placeInWords(region, side);
  const subject: Subject = { key: `sore:${region}:${side}`, label, region, side };
  const week = limits['week.days'];
  const last = [...byDate.keys()].sort().at(-1) ?? view.asOf.date;
  if (daysBetween(last, view.asOf.date) >= week) {
    const missing = `no check-in in ${week} days says how sore ${label} is`;
    return { status: 'not-enough-history', kind, subject, missing };
  }
  const days = soreDates(byDate, limits).filter((date) => date > addDays(last, -week));
  if (days.length < limits['soreMuscle.days']) return { status: 'clear', kind, subject };
  const from = limits['soreMuscle.from'];
  const highest = Math.max(...days.map((date) => byDate.get(date) ?? 0));
  return findingOf(
    {
      kind,
      subject,
      level: 'note',
      sentence: `${asSentence(label)}: sore muscle, ${from} or more on **${days.length} days** of ${week}, highest ${highest}.`,
      short: `${label} sore muscle, ${counted(days.length, 'day')}`,
      since: days[0] ?? last,
      step: { kind: 'look', text: 'Ask what made it sore, and whether it is the muscle and not a joint' },
      clears: `fewer than ${counted(limits['soreMuscle.days'], 'day')} of ${from} or more in ${week} days`,
      evidence: { days: days.length, highest, from },
      inputs: [
        { name: `days of ${from} or more`, value: days.length, unit: `days of ${week}` },
        { name: 'highest', value: highest, unit: 'of 10' },
      ],
      formula:
        'days on which the highest soreness of the muscle was at the threshold or over it, in one week',
      thresholds: ['soreMuscle.from', 'soreMuscle.days', 'week.days'],
      doubt: 'Taken as the client named it: a sore muscle, not a joint or tendon. No other check reads it.',
    },
    limits,
  );
}

function soreDates(byDate: ReadonlyMap<string, number>, limits: Limits): string[] {
  return [...byDate]
    .filter(([, value]) => value >= limits['soreMuscle.from'])
    .map(([date]) => date)
    .sort();
}

function sorenessOf(view: ClientView): Soreness[] {
  const places = new Map<string, Soreness>();
  for (const { date, checkIns } of view.days) {
    for (const { pain } of checkIns) {
      for (const { kind, region, side, value } of pain) {
        if (kind !== 'muscle') continue;
        const key = `${region}:${side}`;
        const place = places.get(key) ?? { region, side, byDate: new Map<string, number>() };
        place.byDate.set(date, Math.max(value, place.byDate.get(date) ?? 0));
        places.set(key, place);
      }
    }
  }
  if (places.size === 0) return [];
  for (const { date, checkIns } of view.days) {
    if (!checkIns.some((checkIn) => checkIn.nothingHurts)) continue;
    for (const { byDate } of places.values()) byDate.set(date, byDate.get(date) ?? 0);
  }
  return [...places].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, place]) => place);
}
