import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import type { CheckKind, Tissue } from '#lib/domain/vocabulary.ts';
import { gradeAt } from './day-grade.ts';
import { loadedTissues } from './limits-on-rung.ts';
import { mergeReasons } from './merge-reasons.ts';
import { painSeries } from './pain-series.ts';
import type { Limits } from './thresholds.ts';
import { tissuesOfRegion } from './tissues.ts';
import type { ClientView } from './types.ts';
import { compareTiers } from './urgency.ts';

/** Kinds that hold good news back when they are about a tissue the rung loads. */
const HOLDS_BACK: readonly CheckKind[] = [
  'danger-sign',
  'pain-high',
  'pain-rising',
  'pain-lingering',
  'pain-after-ground',
  'load-jump',
  'stacked-stress',
  'new-hardest',
];

/** What the checks say together: good news held back, sore tissues inside a load jump, reasons of one cause merged. */
export function settle(view: ClientView, outcomes: readonly Outcome[], limits: Limits): Outcome[] {
  const held = outcomes.map((outcome) => holdGoodNews(view, outcome, outcomes, limits));
  return mergeReasons(held.map((outcome) => hasten(view, outcome, limits)));
}

/** A step earned waits while a load or pain reason is open on a tissue its rung loads. */
function holdGoodNews(view: ClientView, outcome: Outcome, all: readonly Outcome[], limits: Limits): Outcome {
  if (outcome.status !== 'flagged' || outcome.kind !== 'step-up-earned') return outcome;
  const rung = view.rungs.get(outcome.subject.rungId ?? '');
  if (!rung) return outcome;
  const loaded = loadedTissues(rung, limits);
  const held = all.some(
    (other) =>
      other.status === 'flagged' &&
      HOLDS_BACK.includes(other.kind) &&
      other.tier !== null &&
      tissuesOf(other).some(
        ({ tissue, side }) => loaded.includes(tissue) && meets(side, outcome.subject.side ?? 'both'),
      ),
  );
  return held || hasPlacelessDanger(all)
    ? { status: 'clear', kind: outcome.kind, subject: outcome.subject }
    : outcome;
}

/** A danger sign of no one place, such as chest pain, holds everything back. */
function hasPlacelessDanger(all: readonly Outcome[]): boolean {
  return all.some(
    (other) =>
      other.status === 'flagged' && other.kind === 'danger-sign' && other.subject.region === undefined,
  );
}

/** A load jump becomes today's when a place inside it was graded `reduce` or worse by its newest known morning. */
function hasten(view: ClientView, outcome: Outcome, limits: Limits): Outcome {
  if (outcome.status !== 'flagged' || outcome.kind !== 'load-jump') return outcome;
  const inside = tissuesOf(outcome);
  const sore = painSeries(view).find((series) => {
    const touches = inside.some(
      ({ tissue, side }) => tissuesOfRegion(series.region).includes(tissue) && meets(side, series.side),
    );
    if (!touches) return false;
    const known = series.points
      .map((point, at) => ({ point, grade: gradeAt(view, series, at, limits) }))
      .filter(({ grade }) => grade !== 'unknown')
      .at(-1);
    if (!known || daysBetween(known.point.date, view.asOf.date) > limits['painCauses.days']) return false;
    return known.grade === 'reduce' || known.grade === 'stop';
  });
  if (!sore) return outcome;
  const tier = compareTiers(outcome.tier, 'today') < 0 ? outcome.tier : 'today';
  return { ...outcome, tier, evidence: { ...outcome.evidence, reduceAt: sore.key } };
}

type TissueAt = { tissue: Tissue; side: string };

function tissuesOf({ subject, evidence }: Flagged): TissueAt[] {
  const side = subject.side ?? 'both';
  const told =
    typeof evidence.tissues === 'string' ? evidence.tissues.split(',').filter((each) => each !== '') : [];
  return [
    ...told.map((each) => {
      const [tissue, at] = each.split(':');
      return { tissue: tissue as Tissue, side: at ?? 'both' };
    }),
    ...(subject.tissue === undefined ? [] : [{ tissue: subject.tissue, side }]),
    ...(subject.region === undefined
      ? []
      : tissuesOfRegion(subject.region).map((tissue) => ({ tissue, side }))),
  ];
}

/** The middle and both sides meet either side. */
function meets(a: string, b: string): boolean {
  return a === b || [a, b].some((side) => side === 'both' || side === 'middle');
}
