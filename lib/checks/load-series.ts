import type { Tissue } from '#lib/domain/vocabulary.ts';
import type { Factor } from './exposure.ts';
import { oncePerView } from './once-per-view.ts';
import type { AlikeSets } from './rung-work.ts';
import { TISSUE_SIDES } from './tissue-sides.ts';
import type { ClientView, TissueSide } from './types.ts';
import { viewWork } from './view-work.ts';

/** One amount for each day of a view. `known` is 0 where nothing is known: its value then counts for nothing. */
export type LoadSeries = { values: Float64Array; known: Uint8Array };
export type Loads = {
  session: LoadSeries;
  tissues: ReadonlyMap<TissueSide, LoadSeries>;
  /** The same by tissue: one or two sides each. */
  sides: ReadonlyMap<Tissue, readonly { side: 'left' | 'right'; series: LoadSeries }[]>;
};

/** Session load (AU) and the load of every tissue and side that was ever loaded (BW s), day by day. */
export const loadsOf: (view: ClientView) => Loads = oncePerView((view) => {
  const tissues = tissueSeries(view);
  return { session: sessionSeries(view), tissues, sides: sidesOf(tissues) };
});

function sidesOf(tissues: Loads['tissues']): Loads['sides'] {
  const sides = new Map<Tissue, { side: 'left' | 'right'; series: LoadSeries }[]>();
  for (const { key, tissue, side } of TISSUE_SIDES) {
    const series = tissues.get(key);
    if (!series) continue;
    const there = sides.get(tissue);
    if (there) there.push({ side, series });
    else sides.set(tissue, [{ side, series }]);
  }
  return sides;
}

function sessionSeries({ days }: ClientView): LoadSeries {
  const session: LoadSeries = { values: new Float64Array(days.length), known: new Uint8Array(days.length) };
  days.forEach(({ sessionLoad }, index) => {
    if (sessionLoad === undefined) return;
    session.values[index] = sessionLoad;
    session.known[index] = 1;
  });
  return session;
}

/** In order of their names. All share one list of known days. */
function tissueSeries(view: ClientView): Map<TissueSide, LoadSeries> {
  const known = new Uint8Array(view.days.length);
  view.days.forEach(({ state }, index) => {
    if (state !== 'unknown') known[index] = 1;
  });
  const series = new Map<TissueSide, LoadSeries>();
  amountsOf(view).forEach((values, index) => {
    const place = TISSUE_SIDES[index];
    if (values && place) series.set(place.key, { values, known });
  });
  return series;
}

/**
 * Amounts day by day, in the rows of `TISSUE_SIDES`; undefined: never loaded. Only what is new is added up. All rows lie
 * in one array: this is the innermost loop of the checks.
 */
const amountsOf = oncePerView((view, before?: (Float64Array | undefined)[]) => {
  const { length } = view.days;
  const work = viewWork(view);
  const all = new Float64Array(TISSUE_SIDES.length * length);
  const isLoaded = new Uint8Array(TISSUE_SIDES.length);
  before?.forEach((row, index) => {
    if (!row) return;
    all.set(row, index * length);
    isLoaded[index] = 1;
  });
  for (let next = before ? work.before.alike : 0; next < work.alike.length; next += 1) {
    const { at, seconds, perSecond } = work.alike[next] as AlikeSets;
    for (let each = 0; each < perSecond.length; each += 1) {
      const { index, factor } = perSecond[each] as Factor;
      all[index * length + at] = (all[index * length + at] as number) + seconds * factor;
      isLoaded[index] = 1;
    }
  }
  return TISSUE_SIDES.map((_, index) =>
    isLoaded[index] === 1 ? all.subarray(index * length, (index + 1) * length) : undefined,
  );
});
