import type { ClientView, TissueSide } from './types.ts';

/** One amount for each day of a view. `known` is 0 where nothing is known: its value then counts for nothing. */
export type LoadSeries = { values: Float64Array; known: Uint8Array };
export type Loads = { session: LoadSeries; tissues: ReadonlyMap<TissueSide, LoadSeries> };

/** A view never changes, and a dozen checks ask for the same series: made once for each view. */
const made = new WeakMap<ClientView, Loads>();

/** Session load (AU) and the load of every tissue and side that was ever loaded (BW s), day by day. */
export function loadsOf(view: ClientView): Loads {
  const known = made.get(view);
  if (known) return known;
  const loads = makeLoads(view);
  made.set(view, loads);
  return loads;
}

function makeLoads(view: ClientView): Loads {
  const { days } = view;
  const session: LoadSeries = { values: new Float64Array(days.length), known: new Uint8Array(days.length) };
  const dayKnown = new Uint8Array(days.length);
  const tissues = new Map<TissueSide, LoadSeries>();
  days.forEach((day, index) => {
    dayKnown[index] = day.state === 'unknown' ? 0 : 1;
    if (day.sessionLoad !== undefined) {
      session.values[index] = day.sessionLoad;
      session.known[index] = 1;
    }
    for (const name in day.tissueLoad) {
      const key = name as TissueSide;
      let series = tissues.get(key);
      if (!series) {
        series = { values: new Float64Array(days.length), known: dayKnown };
        tissues.set(key, series);
      }
      series.values[index] = day.tissueLoad[key] ?? 0;
    }
  });
  return { session, tissues: new Map([...tissues].sort(([a], [b]) => (a < b ? -1 : 1))) };
}
