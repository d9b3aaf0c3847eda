import { setTissueLoad } from '#lib/checks/exposure.ts';
import type { ClientHistory, HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { LoadDay } from '#lib/domain/record.ts';

/**
 * Every date from the first check-in to the last. A date without a check-in is unknown (or off, when an absence
 * says so) and has no numbers; a day of rest that was said has zeros.
 */
export function loadDays(history: ClientHistory): LoadDay[] {
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const byDate = new Map<string, HistoryCheckIn[]>();
  for (const checkIn of history.checkIns)
    byDate.set(checkIn.date, [...(byDate.get(checkIn.date) ?? []), checkIn]);
  const dates = [...byDate.keys()].sort();
  const last = dates.at(-1);
  const days: LoadDay[] = [];
  for (
    let date = dates[0];
    date !== undefined && last !== undefined && date <= last;
    date = addDays(date, 1)
  ) {
    days.push(dayOf(date, { checkIns: byDate.get(date) ?? [], rungs, off: isOff(history, date) }));
  }
  return days;
}

function dayOf(
  date: string,
  known: { checkIns: HistoryCheckIn[]; rungs: ReadonlyMap<string, HistoryRung>; off: boolean },
): LoadDay {
  const { checkIns } = known;
  if (checkIns.length === 0) {
    return { date, state: known.off ? 'off' : 'unknown', sessionLoadAu: null, tissueLoads: {} };
  }
  const trained = checkIns.filter((checkIn) => checkIn.kind === 'training');
  const loads = trained.map((checkIn) =>
    checkIn.effort === null || checkIn.minutes === null ? null : checkIn.effort * checkIn.minutes,
  );
  const tissueLoads: Record<string, number> = {};
  for (const set of trained.flatMap((checkIn) => checkIn.sets)) {
    const rung = known.rungs.get(set.rungId);
    if (!rung) continue;
    for (const [tissue, load] of Object.entries(setTissueLoad(set, rung))) {
      tissueLoads[tissue] = (tissueLoads[tissue] ?? 0) + load;
    }
  }
  return {
    date,
    state: trained.length > 0 ? 'trained' : 'rest',
    sessionLoadAu: loads.some((load) => load === null)
      ? null
      : loads.reduce<number>((sum, load) => sum + (load ?? 0), 0),
    tissueLoads: Object.fromEntries(
      Object.entries(tissueLoads).map(([key, load]) => [key, Math.round(load * 10) / 10]),
    ),
  };
}

function isOff(history: ClientHistory, date: string): boolean {
  return history.absences.some(
    (absence) => absence.from <= date && (absence.to === null || date <= absence.to),
  );
}
