import type { Outcome } from '#lib/domain/finding.ts';
import type { HistorySet } from '#lib/domain/history.ts';
import { FAULT_LABELS } from '#lib/domain/labels.ts';
import type { Fault } from '#lib/domain/vocabulary.ts';
import { fisherExact } from '#lib/stats/fisher-exact.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { recentDays, rungDays } from '../rung-days.ts';
import { hasResult } from '../set-result.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import { stepBeingTried } from '../steps-tried.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';

const KIND = 'one-side-fault';

export const oneSideFault: Check = {
  kind: KIND,
  title: 'Fault on one side',
  question: 'Does a fault that matters on this rung happen on one side far more than on the other?',
  evaluate: (view, limits) =>
    standingsOf(view)
      .filter(({ rung, side }) => side === 'both' && rung.eachSide && rung.faults.length > 0)
      .map((standing) => judge(view, standing, limits)),
};

type Uneven = {
  fault: Fault;
  side: 'left' | 'right';
  hits: number;
  of: number;
  otherHits: number;
  otherOf: number;
  p: number;
};

function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  const days = recentDays(view, rungDays(view, standing.rung.id), limits['oneSideFault.days']);
  const left: HistorySet[] = [];
  const right: HistorySet[] = [];
  for (const day of days) {
    if (!day.counts || day.date < standing.from) continue;
    for (const set of day.sets) {
      if (!hasResult(set)) continue;
      if (set.side === 'left') left.push(set);
      else if (set.side === 'right') right.push(set);
    }
  }
  const needed = limits['oneSideFault.sets'];
  if (left.length < needed || right.length < needed) {
    const missing = `${left.length} and ${right.length} of ${needed} sets left and right in ${limits['oneSideFault.days']} days`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const worst = mostUneven(standing.rung.faults, left, right);
  if (!worst || reaches(worst.p, limits['oneSideFault.p'])) return { status: 'clear', kind: KIND, subject };
  if (stepBeingTried(view, standing, limits))
    return { status: 'clear', kind: KIND, subject, lowerBound: true };
  const onFilm = [...left, ...right].filter(
    (set) => set.onFilm && set.onFilm.verdict !== 'cannot-see',
  ).length;
  return found(standing, { ...worst, onFilm }, days[0]?.date ?? standing.from, limits);
}

/** Of faults that are as uneven as each other, the first by name, in whatever order the rung lists them. */
function mostUneven(
  faults: readonly Fault[],
  left: readonly HistorySet[],
  right: readonly HistorySet[],
): Uneven | undefined {
  return [...faults]
    .sort()
    .flatMap((fault) => [uneven(fault, 'left', left, right), uneven(fault, 'right', right, left)])
    .sort((a, b) => a.p - b.p)[0];
}

function uneven(
  fault: Fault,
  side: 'left' | 'right',
  sets: readonly HistorySet[],
  others: readonly HistorySet[],
): Uneven {
  const hits = setsWith(fault, sets);
  const counts = { hits, of: sets.length, otherHits: setsWith(fault, others), otherOf: others.length };
  // No set with the fault or more is certain: nothing to work out.
  return { fault, side, ...counts, p: hits === 0 ? 1 : (fisherExact(counts) ?? 1) };
}

function setsWith(fault: Fault, sets: readonly HistorySet[]): number {
  let count = 0;
  for (const { faults } of sets) if (faults.length > 0 && faults.includes(fault)) count += 1;
  return count;
}

function found(
  standing: Standing,
  worst: Uneven & { onFilm: number },
  since: string,
  limits: Limits,
): Outcome {
  const { rung } = standing;
  const { fault, side, hits, of, otherHits, otherOf, p, onFilm } = worst;
  const other = side === 'left' ? 'right' : 'left';
  const label = `${rung.name}, ${side}`;
  return findingOf(
    {
      kind: KIND,
      subject: { ...subjectOf(standing), label, side },
      level: 'watch',
      sentence: `${rung.name}: ${FAULT_LABELS[fault]} on **${hits} of ${of}** sets ${side}, on ${otherHits} of ${otherOf} ${other}.`,
      short: `${rung.name}: ${FAULT_LABELS[fault]}, ${side}`,
      since,
      step: {
        kind: 'ask-film',
        text: `Ask for a film from behind, ${side} side; look at the base, compare with the side that holds`,
      },
      clears: `the fault no longer more often on one side in the sets of ${limits['oneSideFault.days']} days`,
      evidence: {
        fault,
        side,
        hits,
        of,
        otherHits,
        otherOf,
        p: roundTo(p, 5),
        ...(onFilm === 0 ? {} : { onFilm }),
      },
      inputs: [
        { name: `${FAULT_LABELS[fault]}, ${side}`, value: `${hits} of ${of}`, unit: 'sets' },
        { name: `${FAULT_LABELS[fault]}, ${other}`, value: `${otherHits} of ${otherOf}`, unit: 'sets' },
        { name: "Fisher's exact test, one-sided", value: roundTo(p, 4), unit: 'p' },
      ],
      formula: "Fisher's exact test on sets with and without the fault, left against right, in 42 days",
      thresholds: ['oneSideFault.days', 'oneSideFault.p', 'oneSideFault.sets'],
      doubt:
        onFilm === 0
          ? 'Faults are what the client noticed; a film from behind says more.'
          : `Faults are what the client noticed; ${onFilm} of these sets were looked at on film, and there what the coach saw counts too.`,
    },
    limits,
  );
}
