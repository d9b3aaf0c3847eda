import { loadedTissues } from '#lib/checks/limits-on-rung.ts';
import { recentPain } from '#lib/checks/recent-pain.ts';
import { rungDays } from '#lib/checks/rung-days.ts';
import { scoreOf } from '#lib/checks/score.ts';
import { hasResult, isOfSide } from '#lib/checks/set-result.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { HistorySet } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { PAIN_DAYS } from './gap-numbers.ts';
import type { Ask, GapRung, SideSeen } from './gap-types.ts';

/** Days back from which a result still speaks. Own. */
const RESULT_DAYS = 56;

/** What the history already shows of a part: one entry a side where each side is asked. */
export function prefillOf(ask: Ask, view: ClientView, numbers: Limits): SideSeen[] {
  const sides: Side[] = ask.rung.eachSide && !ask.rung.eachIsLeg ? ['left', 'right'] : ['both'];
  return sides.map((side) => {
    const result = newestResult(ask, side, view, numbers);
    const rung = result?.rung ?? placedRung(ask, side, view);
    return {
      side,
      film: 'not-seen',
      rungId: rung?.id ?? null,
      sets: result?.sets ?? null,
      value: result?.value ?? null,
      clean: result?.clean ?? null,
      pain: painOf(rung ?? ask.rung, side, view, numbers),
    };
  });
}

type Result = { rung: GapRung; sets: number | null; value: number; clean: boolean };

/** Of the hardest rung trained in the last eight weeks its best day: as many of the best sets as the pass mark asks, and the least of them. */
function newestResult(ask: Ask, side: Side, view: ClientView, numbers: Limits): Result | undefined {
  const from = addDays(view.asOf.date, -RESULT_DAYS);
  for (const rung of [...ask.ladder.rungs].reverse()) {
    if (!view.rungs.has(rung.id)) continue;
    const days = rungDays(view, rung.id).filter((day) => day.counts && day.date >= from);
    const scored = days
      .map((day) => ({
        sets: day.sets.filter((set) => isOfSide(set, side) && hasResult(set)),
        score: scoreOf(rung, day.sets, side, numbers) ?? -1,
      }))
      .filter(({ sets }) => sets.length > 0);
    const best = scored.reduce<(typeof scored)[number] | undefined>(
      (known, one) => (!known || one.score >= known.score ? one : known),
      undefined,
    );
    if (best) return resultOf(rung, best.sets);
  }
  return undefined;
}

function resultOf(rung: GapRung, sets: readonly HistorySet[]): Result {
  if (rung.measure === 'made-tried') {
    const tried = sets.reduce((sum, set) => sum + (set.tried ?? 0), 0);
    const made = sets.reduce((sum, set) => sum + (set.value ?? 0), 0);
    return { rung, sets: tried > 0 ? tried : null, value: made, clean: sets.every(({ clean }) => clean) };
  }
  const down = rung.measure === 'range-down';
  const best = [...sets]
    .sort((a, b) => (down ? 1 : -1) * ((a.value ?? 0) - (b.value ?? 0)))
    .slice(0, rung.pass.sets);
  return {
    rung,
    sets: best.length,
    value: best.at(-1)?.value ?? 0,
    clean: best.every(({ clean }) => clean),
  };
}

function placedRung(ask: Ask, side: Side, view: ClientView): GapRung | undefined {
  const placed = view.standing.filter((one) => one.ladderId === ask.ladder.id);
  const on =
    placed.find((one) => one.side === side) ?? placed.find((one) => one.side === 'both') ?? placed[0];
  return ask.ladder.rungs.find((rung) => rung.id === on?.rungId);
}

function painOf(rung: GapRung, side: Side, view: ClientView, numbers: Limits): number | null {
  const told = recentPain(view, loadedTissues(rung, numbers), PAIN_DAYS);
  if (!told || (side !== 'both' && told.side !== 'middle' && told.side !== side)) return null;
  return told.value;
}
