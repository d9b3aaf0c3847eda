import { inMeasure } from '#lib/checks/words.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { estimateFromOwn, estimateHold, type HeldAt, type HoldEstimate } from './hold-estimate.ts';
import { resultsOn } from './steps/change-rung.ts';
import type { StepContext } from './steps/step-types.ts';

/** A tissue whose weights follow the moment about the shoulder, so that two rungs can be laid beside each other. */
const MOMENT_TISSUE = 'shoulder-forward';
const LAST_DAYS = 3;

/**
 * How long a harder hold may be on a side: by the slope between the two nearest easier rungs of its ladder that were
 * held of late, else by published models from the nearest. Undefined for other measures, for balance, where the rung
 * was held itself, and where nothing easier was.
 */
export function estimateOnRung(
  rung: HistoryRung,
  side: Side,
  { view, rungs }: { view: StepContext['view']; rungs: Iterable<HistoryRung> },
): HoldEstimate | undefined {
  if (rung.measure !== 'hold' || resultsOn(rung, side, { view }).length > 0) return undefined;
  const held = [...rungs]
    .filter((one) => one.ladderId === rung.ladderId && one.position < rung.position && one.measure === 'hold')
    .sort((a, b) => b.position - a.position)
    .map((one): HeldAt => ({ seconds: bestOf(one, side, view), load: loadOf(one) }))
    .filter(({ seconds }) => seconds > 0);
  const [nearest, easier] = held;
  if (!nearest) return undefined;
  const own = easier && estimateFromOwn(rung, [easier, nearest], loadOf(rung));
  return own ?? estimateHold(rung, nearest, loadOf(rung));
}

/** "Best hold there, by models: 2 to 6 s; one model says 8 % of strength is missing. An estimate, ..." */
export function estimateInWords({ low, high, gap, basis, doubt }: HoldEstimate, rung: HistoryRung): string {
  const missing = gap === null ? '' : `; one model says ${Math.round(gap * 100)} % of strength is missing`;
  const by = basis === 'models' ? 'by models' : 'by two rungs held of late';
  return `Best hold there, ${by}: ${low} to ${inMeasure(high, rung)}${missing}. ${doubt}`;
}

function bestOf(rung: HistoryRung, side: Side, view: StepContext['view']): number {
  return Math.max(
    0,
    ...resultsOn(rung, side, { view })
      .slice(0, LAST_DAYS)
      .flatMap(({ values }) => values),
  );
}

function loadOf({ share, weights }: HistoryRung): number {
  return (share ?? 0) * (weights[MOMENT_TISSUE] ?? 0);
}
