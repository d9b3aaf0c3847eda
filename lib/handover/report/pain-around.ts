import { TISSUE_LABELS, tissuesOfRegion } from '#lib/checks/tissues.ts';
import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { SOFT_GROUNDS } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { STEP_WORDS } from '#lib/views/steps/step-words.ts';
import type { Block } from './blocks.ts';
import type { ReportInput } from './input.ts';
import { day, number, table } from './say.ts';
import { highestOf, type SorePlace } from './sore-places.ts';

const BEFORE_DAYS = 21;

/** What had changed in the three weeks before the first score: plan versions, steps, ground, time off. */
export function changedBefore({ history, record }: ReportInput, place: SorePlace): string {
  const from = addDays(place.since, -BEFORE_DAYS);
  const within = (date: string) => date >= from && date <= place.since;
  const plans = history.plans
    .filter((plan) => within(plan.from))
    .map(
      (plan) =>
        `plan version ${plan.version} from ${day(plan.from)}${plan.why ? ` (${plan.why.replace(/[.\s]+$/, '')})` : ''}`,
    );
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung.name]));
  const moves = history.placements
    .filter((one) => within(one.from))
    .map(
      (one) =>
        `on ${rungs.get(one.rungId) ?? 'a rung'}${one.side === 'both' ? '' : `, ${one.side}`}, from ${day(one.from)}`,
    );
  const soft = history.checkIns.filter(
    (one) => within(one.date) && one.ground !== null && SOFT_GROUNDS.includes(one.ground),
  );
  const steps = record.steps
    .filter((one) => within(one.takenOn))
    .map(
      (one) =>
        `${(STEP_WORDS as Readonly<Record<string, string>>)[one.kind] ?? one.kind} on ${day(one.takenOn)}`,
    );
  const off = history.absences
    .filter((one) => within(one.from))
    .map((one) => `${one.kind} from ${day(one.from)}`);
  const all = [
    ...plans,
    ...moves,
    ...[...new Set(steps)],
    ...off,
    ...(soft.length > 0 ? [`soft ground on ${soft.map((one) => day(one.date)).join(', ')}`] : []),
  ];
  return all.length > 0
    ? `In the ${BEFORE_DAYS} days before it was first told: ${all.join('; ')}.`
    : `Nothing of plan, rung, ground or time off changed in the ${BEFORE_DAYS} days before it was first told, as far as is known.`;
}

/** Which drills load the tissues of the place, and the scores of the days with them. */
export function positions(
  { history, period }: ReportInput,
  place: SorePlace,
  from: string,
  loadsFrom: number,
): Block[] {
  const tissues = tissuesOfRegion(place.region);
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const rows = new Map<
    string,
    { name: string; weight: number; sets: number; scores: number[]; days: Set<string> }
  >();
  for (const { date, sets } of history.checkIns) {
    if (date < from || date > period.to) continue;
    const scores = place.days.get(date);
    for (const set of sets) {
      const rung = rungs.get(set.rungId);
      if (
        !rung ||
        set.how === 'not-done' ||
        (place.side !== 'middle' && set.side !== 'both' && set.side !== place.side)
      )
        continue;
      const weight = Math.max(0, ...tissues.map((tissue) => rung.weights[tissue] ?? 0));
      if (weight < loadsFrom) continue;
      const name = `${rung.name}${set.support ? `, ${SUPPORT_LABELS[set.support]}` : ''}`;
      const row = rows.get(name) ?? { name, weight, sets: 0, scores: [], days: new Set<string>() };
      rows.set(name, row);
      row.sets += 1;
      if (scores && !row.days.has(date)) row.scores.push(highestOf(scores));
      row.days.add(date);
    }
  }
  if (rows.size === 0) return [];
  const shown = [...rows.values()].sort((a, b) => b.weight - a.weight || b.sets - a.sets).slice(0, 10);
  return [
    table(
      `Drills that load it (${tissues.map((tissue) => TISSUE_LABELS[tissue]).join('; ')})`,
      'sets.csv',
      ['Drill and support', 'Stress 0-1#', 'Days#', 'Sets#', 'Days told#', 'Median score#', 'Highest#'],
      shown.map((row) => [
        row.name,
        number(row.weight),
        number(row.days.size),
        number(row.sets),
        number(row.scores.length),
        number(median(row.scores)),
        row.scores.length === 0 ? '' : number(Math.max(...row.scores)),
      ]),
      'Scores of the days with the drill, “nothing hurts” as 0: they stand beside each other, and say nothing of a cause.',
    ),
  ];
}
