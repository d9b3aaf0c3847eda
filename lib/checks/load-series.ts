import { oncePerView } from './once-per-view.ts';
import { TISSUE_SIDES } from './tissue-sides.ts';
import type { ClientView, TissueSide } from './types.ts';
import { viewWork } from './view-work.ts';

/** One amount for each day of a view. `known` is 0 where nothing is known: its value then counts for nothing. */
export type LoadSeries = { values: Float64Array; known: Uint8Array };
export type Loads = { session: LoadSeries; tissues: ReadonlyMap<TissueSide, LoadSeries> };

/** Session load (AU) and the load of every tissue and side that was ever loaded (BW s), day by day. */
export const loadsOf: (view: ClientView) => Loads = oncePerView((view) => ({
  session: sessionSeries(view),
  tissues: tissueSeries(view),
}));

function sessionSeries({ days }: ClientView): LoadSeries {
  const session: LoadSeries = { values: new Float64Array(days.length), known: new Uint8Array(days.length) };
  days.forEach(({ sessionLoad }, index) => {
    if (sessionLoad === undefined) return;
    session.values[index] = sessionLoad;
    session.known[index] = 1;
  });
  return session;
}

/** In order of their names. All share one list of known days, and lie in one block of memory. */
function tissueSeries(view: ClientView): Map<TissueSide, LoadSeries> {
  const length = view.days.length;
  const known = new Uint8Array(length);
  view.days.forEach(({ state }, index) => {
    if (state !== 'unknown') known[index] = 1;
  });
  const all = new Float64Array(length * TISSUE_SIDES.length);
  const loaded = new Uint8Array(TISSUE_SIDES.length);
  for (const { at, seconds, perSecond } of viewWork(view).alike) {
    for (let each = 0; each < perSecond.length; each += 1) {
      const load = perSecond[each];
      if (!load) continue;
      const cell = load.index * length + at;
      all[cell] = (all[cell] ?? 0) + seconds * load.factor;
      loaded[load.index] = 1;
    }
  }
  const series = new Map<TissueSide, LoadSeries>();
  TISSUE_SIDES.forEach(({ key }, index) => {
    if (loaded[index] === 1)
      series.set(key, { values: all.subarray(index * length, (index + 1) * length), known });
  });
  return series;
}
