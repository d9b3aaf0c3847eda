import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { isBroken } from '../broken-set.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { plannedSince } from '../plan-items.ts';
import { type RungDay, rungDays } from '../rung-days.ts';
import { standingsOf } from '../standings.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, dayInWords } from '../words.ts';

const KIND = 'too-hard';

export const tooHard: Check = {
  kind: KIND,
  title: 'Too hard',
  question: 'Are many of the planned sets of a rung cut short, not clean or failed?',
  evaluate: (view, limits) => rungsNow(view).map(({ rung, from }) => judge(view, rung, from, limits)),
};

type RungNow = { rung: HistoryRung; from: string };

/** Rungs in the plan and rungs stood on, each since it is there. */
function rungsNow(view: ClientView): RungNow[] {
  const now = new Map<string, RungNow>();
  for (const { rung, from } of standingsOf(view)) now.set(rung.id, { rung, from });
  for (const { rungId } of view.planOn(view.asOf.date)?.items ?? []) {
    const rung = view.rungs.get(rungId);
    const from = plannedSince(view, rungId, view.asOf.date);
    if (rung && from !== undefined && !now.has(rungId)) now.set(rungId, { rung, from });
  }
  return [...now.values()].sort((a, b) => (a.rung.id < b.rung.id ? -1 : 1));
}

function judge(view: ClientView, rung: HistoryRung, from: string, limits: Limits): Outcome {
  const subject: Subject = {
    key: `${rung.ladderId}:${rung.id}`,
    label: rung.name,
    ladderId: rung.ladderId,
    rungId: rung.id,
  };
  const days = lastPlannedDays(rungDays(view, rung.id), rung, from, limits['tooHard.ofDays']);
  if (days.length < limits['tooHard.fromDays']) {
    const missing = `${days.length} of ${counted(limits['tooHard.fromDays'], 'training day')} on this rung`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const hard = days.filter(({ broken, planned }) => reaches(broken / planned, limits['tooHard.setsShare']));
  // With two or three days so far all of them have to be hard.
  if (hard.length < Math.min(limits['tooHard.days'], days.length))
    return { status: 'clear', kind: KIND, subject };
  const broken = hard.reduce((sum, each) => sum + each.broken, 0);
  const planned = hard.reduce((sum, each) => sum + each.planned, 0);
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${rung.name}: **${broken} of ${planned}** planned sets cut short, not clean or failed, on ${hard.length} of the last ${days.length} training days.`,
      short: `${rung.name}: too hard`,
      since: hard[0]?.day.date ?? view.asOf.date,
      step: {
        kind: 'one-rung-back',
        text: 'One rung back: the rung on which the planned sets are clean every time',
      },
      clears: `${counted(limits['tooHard.ofDays'] - limits['tooHard.days'] + 1, 'training day')} of the last ${limits['tooHard.ofDays']} with over two thirds of the planned sets whole and clean`,
      evidence: { hardDays: hard.length, ofDays: days.length, broken, planned },
      inputs: days.map(({ day, broken: some, planned: all }) => ({
        name: dayInWords(day.date),
        value: `${some} of ${all}`,
        unit: 'planned sets broken',
      })),
      formula:
        'a day is hard when a third or more of its planned sets are cut short, not clean or failed; raised on 3 of the last 4 training days, or on both of the first two',
      thresholds: ['tooHard.days', 'tooHard.ofDays', 'tooHard.fromDays', 'tooHard.setsShare'],
      doubt: 'One bad night can make one bad day; that is why one day never raises this.',
    },
    limits,
  );
}

type PlannedDay = { day: RungDay; broken: number; planned: number };

/** The newest days since `from` with planned sets, oldest first. */
function lastPlannedDays(
  days: readonly RungDay[],
  rung: HistoryRung,
  from: string,
  most: number,
): PlannedDay[] {
  const found: PlannedDay[] = [];
  for (let index = days.length - 1; index >= 0 && found.length < most; index -= 1) {
    const day = days[index];
    if (!day || day.date < from) break;
    let planned = 0;
    let broken = 0;
    for (const set of day.sets) {
      if (set.planned === null) continue;
      planned += 1;
      if (isBroken(set, rung)) broken += 1;
    }
    if (planned > 0) found.push({ day, planned, broken });
  }
  return found.reverse();
}
