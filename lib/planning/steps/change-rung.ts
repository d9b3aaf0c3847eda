import { rungDays } from '#lib/checks/rung-days.ts';
import { hasResult, isOfSide } from '#lib/checks/set-result.ts';
import { inMeasure, rungInWords } from '#lib/checks/words.ts';
import type { HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { DayResult, Dose } from '../dose.ts';
import type { DraftReason, StepContext } from './step-types.ts';

/** The rung a reason is about, and on which side. */
export function rungOf(
  { subject }: DraftReason,
  { rungs }: StepContext,
): { rung: HistoryRung; side: Side } | undefined {
  const rung = subject.rungId === undefined ? undefined : rungs.get(subject.rungId);
  const side = subject.side === 'left' || subject.side === 'right' ? subject.side : 'both';
  return rung && { rung, side };
}

/** The nearest rung of the same ladder above (1) or below (-1) that can be planned. */
export function rungBeside(rung: HistoryRung, way: 1 | -1, { rungs }: StepContext): HistoryRung | undefined {
  return [...rungs.values()]
    .filter((one) => one.ladderId === rung.ladderId && (one.position - rung.position) * way > 0)
    .sort((a, b) => (a.position - b.position) * way)[0];
}

/** Lines of the plan with this rung, on this side. */
export function isLineOf(item: HistoryPlanItem, rung: HistoryRung, side: Side): boolean {
  return item.rungId === rung.id && isOfSide(item, side);
}

/** What the last days on a rung gave on a side, the newest first. */
export function resultsOn(rung: HistoryRung, side: Side, { view }: Pick<StepContext, 'view'>): DayResult[] {
  return rungDays(view, rung.id)
    .filter((day) => day.counts)
    .map(({ sets }) => {
      const ours = sets.filter((set) => isOfSide(set, side));
      const clean = ours.filter(hasResult).filter((set) => set.clean);
      const whole =
        ours.length > 0 && ours.every((set) => set.clean && (set.value ?? 0) >= (set.planned ?? 0));
      return { values: clean.map((set) => set.value), whole };
    })
    .filter(({ values }) => values.length > 0)
    .reverse();
}

/** A line moved to another rung of its ladder with a dose; what belonged to the old rung alone is left out. */
export function onRung(item: HistoryPlanItem, rung: HistoryRung, dose: Dose): HistoryPlanItem {
  const byMinutes = item.target === null;
  return {
    ...item,
    rungId: rung.id,
    side: rung.eachSide ? item.side : 'both',
    sets: dose.sets,
    target: byMinutes ? null : dose.target,
    pairedWith: null,
    noKitRungId: null,
  };
}

/** Lines without doubles of one rung, side and session, and without pairs that lost their partner. */
export function tidied(items: readonly HistoryPlanItem[]): HistoryPlanItem[] {
  const seen = new Set<string>();
  const kept = items.filter(({ session, rungId, side }) => {
    const taken = [`${session} ${rungId} ${side}`, `${session} ${rungId} both`].some((key) => seen.has(key));
    seen.add(`${session} ${rungId} ${side}`);
    return !taken;
  });
  const isThere = (item: HistoryPlanItem) =>
    kept.some((one) => one.session === item.session && one.rungId === item.pairedWith);
  return kept.map((item) => (item.pairedWith && !isThere(item) ? { ...item, pairedWith: null } : item));
}

/** "Toe pull, left, 4 × 8 s". */
export function lineInWords(rung: HistoryRung, side: Side, { sets, target }: Dose): string {
  const { tries } = rung.pass;
  if (rung.measure === 'made-tried' && tries !== null) {
    return `${rungInWords(rung, side)}, ${sets > 1 ? `${sets} × ` : ''}${target} of ${tries}`;
  }
  return `${rungInWords(rung, side)}, ${sets} × ${inMeasure(target, rung)}`;
}
