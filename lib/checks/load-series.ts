import type { Tissue } from '#lib/domain/vocabulary.ts';
import { oncePerView } from './once-per-view.ts';
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

/** Amounts day by day, in the rows of `TISSUE_SIDES`; undefined: never loaded. Only what is new is added up. */
const amountsOf = oncePerView((view, before?: (Float64Array | undefined)[]) => {
  const { length } = view.days;
  const work = viewWork(view);
  const rows = TISSUE_SIDES.map((_, index) => longer(before?.[index], length));
  for (let next = before ? work.before.alike : 0; next < work.alike.length; next += 1) {
    const alike = work.alike[next];
    if (!alike) continue;
    for (const { index, factor } of alike.perSecond) {
      let row = rows[index];
      if (!row) {
        row = new Float64Array(length);
        rows[index] = row;
      }
      row[alike.at] = (row[alike.at] ?? 0) + alike.seconds * factor;
    }
  }
  return rows;
});

function longer(row: Float64Array | undefined, length: number): Float64Array | undefined {
  if (!row) return undefined;
  const made = new Float64Array(length);
  made.set(row);
  return made;
}
