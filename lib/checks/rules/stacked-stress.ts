import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { FAMILIES, type Family, TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { coldStart } from '../cold-start.ts';
import { exceeds, reaches } from '../compare.ts';
import { drillsOf, weightOn } from '../drill-days.ts';
import { findingOf } from '../finding-of.ts';
import { type MoreSets, moreSets } from '../load-causes.ts';
import { recentPain } from '../recent-pain.ts';
import type { Limits } from '../thresholds.ts';
import { TISSUE_LABELS } from '../tissues.ts';
import type { Check, ClientView } from '../types.ts';
import { plainNumber } from '../words.ts';

const SUBJECT: Subject = { key: 'stacked', label: '' };
const STRENGTH: readonly Family[] = FAMILIES.filter(
  (family) => family !== 'balance' && family !== 'mobility',
);

/**
 * Several kinds of work rising at once: in each of 3 of the four strength families one drill with more sets than usual
 * on each of its last 3 days and the family's fortnight over its usual; or so for one drill that bends the wrist back
 * and one that bends it forward. Own rule.
 */
export const stackedStress: Check = {
  kind: 'stacked-stress',
  title: 'Stacked stress',
  question: 'Is work rising in several families, or both ways at the wrist, in the same fortnight?',
  evaluate: (view, limits) => [coldStart(view, 'stacked-stress', SUBJECT, limits) ?? judge(view, limits)],
};

function judge(view: ClientView, limits: Limits): Outcome {
  const rising = drillsOf(view)
    .map((drill) => moreSets(view, drill, rule(limits)))
    .filter((more) => more !== undefined)
    .filter((more) => isFortnightOver(view, more.drill.family, limits));
  const byFamily = STRENGTH.flatMap((family) => rising.find(({ drill }) => drill.family === family) ?? []);
  if (byFamily.length >= limits['stackedStress.families']) return raised(view, byFamily, 'families', limits);
  const back = rising.find((more) => bends(view, more, 'wrist-back', 'wrist-forward', limits));
  const forward = rising.find((more) => bends(view, more, 'wrist-forward', 'wrist-back', limits));
  if (back && forward) return raised(view, [back, forward], 'wrist', limits);
  const window = view.days.slice(-limits['stackedStress.withinDays']);
  const lowerBound = window.some(({ state }) => state === 'unknown');
  return { status: 'clear', kind: 'stacked-stress', subject: SUBJECT, lowerBound };
}

function rule(limits: Limits) {
  return {
    days: limits['stackedStress.days'],
    before: limits['stackedStress.daysBefore'],
    beforeAtLeast: limits['stackedStress.daysAtLeast'],
    each: limits['stackedStress.each'],
    mean: limits['stackedStress.mean'],
    within: limits['stackedStress.withinDays'],
  };
}

/** Sets of a family in the last fortnight against the median of the fortnights before. */
function isFortnightOver(view: ClientView, family: Family, limits: Limits): boolean {
  const length = limits['stackedStress.fortnightDays'];
  const last = view.days.length - 1;
  const totals = new Array<number>(limits['stackedStress.fortnightsBefore'] + 1).fill(0);
  for (const drill of drillsOf(view)) {
    if (drill.family !== family) continue;
    for (const { index, sets } of drill.days) {
      const back = Math.floor((last - index) / length);
      if (back < totals.length) totals[back] = (totals[back] ?? 0) + sets;
    }
  }
  const whole = totals.slice(1).filter((_, back) => last - (back + 2) * length + 1 >= 0);
  const usual = median(whole);
  return usual !== undefined && exceeds(totals[0] ?? 0, usual);
}

/** Bends the wrist this way, and more so than the other. */
function bends(
  view: ClientView,
  { drill, sets }: MoreSets,
  way: Tissue,
  other: Tissue,
  limits: Limits,
): boolean {
  return drill.days.slice(-sets.length).every((day) => {
    const weight = weightOn(view, drill, day, way);
    return reaches(weight, limits['tissue.loaded']) && weight > weightOn(view, drill, day, other);
  });
}

/** Tissues that at least two of the drills load, in the fixed order of the list. */
function shared(view: ClientView, drills: readonly MoreSets[], limits: Limits): Tissue[] {
  return TISSUES.filter((tissue) => {
    const loading = drills.filter(({ drill }) => {
      const newest = drill.days.at(-1);
      return newest && reaches(weightOn(view, drill, newest, tissue), limits['tissue.loaded']);
    });
    return loading.length >= 2;
  });
}

function raised(view: ClientView, drills: MoreSets[], how: 'families' | 'wrist', limits: Limits): Outcome {
  const tissues: Tissue[] = how === 'wrist' ? ['wrist-back', 'wrist-forward'] : shared(view, drills, limits);
  const pain = recentPain(view, tissues, limits['stackedStress.painDays']);
  const hurts = pain !== undefined && reaches(pain.value, limits['stackedStress.pain']);
  const listed = drills
    .map(({ drill, sets, usual }) => `${drill.name} ${sets.join(', ')} sets (usually ${plainNumber(usual)})`)
    .join('; ');
  const what =
    how === 'wrist'
      ? 'The wrist is loaded more both ways'
      : `**${drills.length} kinds of work** rise at once`;
  const from = Math.min(...drills.map((more) => more.from));
  return findingOf(
    {
      kind: 'stacked-stress',
      subject: SUBJECT,
      level: hurts ? 'act' : 'watch',
      sentence: `${how === 'wrist' ? `**${what}**` : what}: ${listed}${hurts && pain ? `; pain ${pain.value} of 10 there` : ''}.`,
      short: how === 'wrist' ? 'wrist both ways' : `${drills.length} families rising`,
      since: view.days[from]?.date ?? view.asOf.date,
      step: { kind: 'drop-a-goal', text: 'Cut the volume of everything, or drop one of the goals for now' },
      clears: 'One of these drills back at its usual sets, or the fortnight back at usual.',
      evidence: {
        drills: drills.map(({ drill }) => drill.ladderId).join(','),
        tissues: tissues.join(','),
        how,
        pain: pain?.value ?? null,
      },
      inputs: [
        ...drills.map(({ drill, mean, usual }) => ({
          name: `${drill.name}, mean sets of the last 3 days over usual`,
          value: plainNumber(mean / usual, 2),
          unit: '×',
        })),
        {
          name: 'loaded by two of them',
          value: tissues.map((tissue) => TISSUE_LABELS[tissue]).join(', ') || 'nothing',
          unit: '',
        },
      ],
      formula:
        'Sets of a drill on each of its last 3 days against the median of its 10 days before, and sets of its family in 14 days against the fortnights before.',
      thresholds: [
        'stackedStress.families',
        'stackedStress.each',
        'stackedStress.mean',
        'stackedStress.withinDays',
        'stackedStress.pain',
      ],
      doubt: 'Counts sets, not how hard they were. It describes what rose together.',
    },
    limits,
  );
}
