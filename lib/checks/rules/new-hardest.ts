import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { coldStart } from '../cold-start.ts';
import { exceeds, reaches } from '../compare.ts';
import type { Factor } from '../exposure.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { loadsOf } from '../load-series.ts';
import { recentPain } from '../recent-pain.ts';
import type { Limits } from '../thresholds.ts';
import { TISSUE_SIDES } from '../tissue-sides.ts';
import { TISSUE_LABELS } from '../tissues.ts';
import type { Check, ClientView, TissueSide } from '../types.ts';
import { totalUpTo, usualWeek } from '../usual-week.ts';
import { firstFrom, viewWork } from '../view-work.ts';
import { plainNumber } from '../words.ts';

const SUBJECT: Subject = { key: 'hardest', label: '' };

type Hardest = {
  key: TissueSide;
  before: number;
  peak: number;
  seconds: number;
  reps: number;
  rung: HistoryRung;
};

/**
 * How hard, beside how much: more than 30 s or 15 reps in 7 days at a share x weight more than 10 % above the largest
 * of the 28 days before. A note; watch when the week's load there is over usual or it hurts. Common practice.
 */
export const newHardest: Check = {
  kind: 'new-hardest',
  title: 'New hardest',
  question: 'Did this client do something clearly harder for a tissue than in the weeks before?',
  evaluate: (view, limits) => [coldStart(view, 'new-hardest', SUBJECT, limits) ?? judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const recentFrom = view.days.length - limits['week.days'];
  const beforeFrom = recentFrom - limits['newHardest.beforeDays'];
  const before = peaksOf(view, beforeFrom, recentFrom);
  const found = harderWork(view, recentFrom, before, limits)
    .filter(
      ({ seconds, reps }) =>
        exceeds(seconds, limits['newHardest.seconds']) || exceeds(reps, limits['newHardest.reps']),
    )
    .sort((a, b) => b.peak / b.before - a.peak / a.before || (a.key < b.key ? -1 : 1));
  const [hardest, ...others] = found;
  if (!hardest) {
    const lowerBound = view.days.slice(recentFrom).some(({ state }) => state === 'unknown');
    return { status: 'clear', kind: 'new-hardest', subject: SUBJECT, lowerBound };
  }
  const tissues = new Set(found.map(({ key }) => key.split(':')[0]));
  return raised(view, onItsSides(hardest, others), tissues.size - 1, limits);
}

type Named = Hardest & { tissue: Tissue; sides: TissueSide[] };

/** Two hands that work equally hard are no left or right: the hand that did more is counted. */
function onItsSides(hardest: Hardest, others: readonly Hardest[]): Named {
  const [tissue] = hardest.key.split(':') as [Tissue];
  const twin = others.find(({ key }) => key.startsWith(`${tissue}:`));
  if (!twin || exceeds(hardest.peak / hardest.before, twin.peak / twin.before))
    return { ...hardest, tissue, sides: [hardest.key] };
  return {
    ...hardest,
    tissue,
    sides: [hardest.key, twin.key],
    seconds: Math.max(hardest.seconds, twin.seconds),
    reps: Math.max(hardest.reps, twin.reps),
    rung: inOrder(twin.rung) < inOrder(hardest.rung) ? twin.rung : hardest.rung,
  };
}

/** By name, and by id where two ladders have a rung of one name. */
function inOrder({ name, id }: HistoryRung): string {
  return `${name}:${id}`;
}

/** Largest share x weight of each tissue and side on the days from one index up to another; 0 where not loaded. */
function peaksOf(view: ClientView, from: number, until: number): Float64Array {
  const peaks = new Float64Array(TISSUE_SIDES.length);
  const { alike } = viewWork(view);
  const within = alike.slice(firstFrom(alike, from), firstFrom(alike, until));
  // Sets that are alike share their loads: a few different ones in four weeks.
  for (const perSecond of new Set(within.map((one) => one.perSecond))) {
    for (const { index, factor } of perSecond) peaks[index] = Math.max(peaks[index] ?? 0, factor);
  }
  return peaks;
}

/** Work above the earlier peak, summed up for each tissue and side that was loaded before. */
function harderWork(view: ClientView, from: number, before: Float64Array, limits: Limits): Hardest[] {
  const found = new Map<TissueSide, Hardest>();
  const { alike } = viewWork(view);
  const isHarder = ({ index, factor }: Factor) => {
    const earlier = before[index] ?? 0;
    return (
      earlier !== 0 &&
      exceeds(factor, limits['newHardest.over'] * earlier) &&
      reaches(factor, limits['newHardest.atLeast'])
    );
  };
  // Asked once of sets that are alike: they share their loads.
  const harder = new Map<readonly Factor[], readonly Factor[]>();
  for (const { rung, seconds, reps, perSecond } of alike.slice(firstFrom(alike, from))) {
    const factors = harder.get(perSecond) ?? perSecond.filter(isHarder);
    harder.set(perSecond, factors);
    for (const { key, tissue, index, factor: peak } of factors) {
      if (!reaches(rung.weights[tissue] ?? 0, limits['tissue.loaded'])) continue;
      const earlier = before[index] ?? 0;
      const known = found.get(key) ?? { key, before: earlier, peak: 0, seconds: 0, reps: 0, rung };
      if (peak > known.peak) Object.assign(known, { peak, rung });
      known.seconds += seconds;
      known.reps += reps;
      found.set(key, known);
    }
  }
  return [...found.values()];
}

function raised(view: ClientView, hardest: Named, others: number, limits: Limits): Outcome {
  const { tissue, sides } = hardest;
  const side = sides.length > 1 ? 'both' : (hardest.key.split(':')[1] ?? 'both');
  // A rung the coach has placed the client on is a step taken with open eyes: it stays a note unless it hurts.
  const isPlaced = view.standing.some((placement) => placement.rungId === hardest.rung.id);
  const overUsual = !isPlaced && sides.some((key) => isOverUsual(view, key, limits));
  const pain = recentPain(view, [tissue], limits['week.days']);
  const hurts = pain !== undefined && reaches(pain.value, limits['newHardest.pain']);
  const percent = Math.round((hardest.peak / hardest.before - 1) * 100);
  const amount = hardest.reps > 0 ? `${plainNumber(hardest.reps)} reps` : `${plainNumber(hardest.seconds)} s`;
  return findingOf(
    {
      kind: 'new-hardest',
      subject: SUBJECT,
      level: overUsual || hurts ? 'watch' : 'note',
      sentence: `${hardest.rung.name}: ${amount} this week, **${percent} % harder** for ${TISSUE_LABELS[tissue]}${side === 'both' ? '' : ` (${side})`} than anything in the 4 weeks before${hurts && pain ? `; pain there ${pain.value} of 10` : ''}.`,
      short: 'new hardest position',
      since: view.days[Math.max(0, view.days.length - limits['week.days'])]?.date ?? view.asOf.date,
      step: {
        kind: 'look',
        text: 'Look at the form and the amount; keep most sets on the easier one for now',
      },
      clears: 'A week without it, or four weeks with it.',
      evidence: {
        tissues: `${tissue}:${side}`,
        peak: roundTo(hardest.peak, 3),
        before: roundTo(hardest.before, 3),
        seconds: roundTo(hardest.seconds, 1),
        reps: hardest.reps,
        others,
        overUsual,
        isPlaced,
        pain: pain?.value ?? null,
      },
      inputs: [
        { name: 'largest share × weight this week', value: roundTo(hardest.peak, 3), unit: '' },
        { name: 'largest in the 28 days before', value: roundTo(hardest.before, 3), unit: '' },
        { name: 'time above it', value: roundTo(hardest.seconds, 1), unit: 's' },
        { name: 'reps above it', value: hardest.reps, unit: 'reps' },
        { name: 'other tissues with the same', value: others, unit: '' },
      ],
      formula:
        'Share of body weight on the hand × weight of the rung on the tissue, against the largest of 28 days before.',
      thresholds: [
        'newHardest.over',
        'newHardest.seconds',
        'newHardest.reps',
        'newHardest.overUsual',
        'newHardest.pain',
        'tissue.loaded',
      ],
      doubt:
        'The weights are common practice; a new position is often the plan. It says what is new, not that it is wrong.',
    },
    limits,
  );
}

function isOverUsual(view: ClientView, key: TissueSide, limits: Limits): boolean {
  const series = loadsOf(view).tissues.get(key);
  const usual = series && usualWeek(view, series, limits);
  if (!series || !usual?.enough) return false;
  const { total } = totalUpTo(series, view.days.length - 1, limits['week.days']);
  return reaches(total, limits['newHardest.overUsual'] * usual.usual);
}
