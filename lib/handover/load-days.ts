import { dayFacts } from '#lib/checks/day-facts.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { LoadDay } from '#lib/domain/record.ts';

/**
 * Every date from the first check-in to the last. A date without a check-in is unknown (or off, when an absence
 * says so) and has no numbers; a day of rest that was said has zeros. Session load in AU, tissues in BW s.
 */
export function loadDays(history: ClientHistory): LoadDay[] {
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const byDate = new Map<string, HistoryCheckIn[]>();
  for (const checkIn of history.checkIns) {
    byDate.set(checkIn.date, [...(byDate.get(checkIn.date) ?? []), checkIn]);
  }
  const dates = [...byDate.keys()].sort();
  const last = dates.at(-1);
  const days: LoadDay[] = [];
  for (
    let date = dates[0];
    date !== undefined && last !== undefined && date <= last;
    date = addDays(date, 1)
  ) {
    const checkIns = byDate.get(date);
    if (!checkIns) {
      days.push({
        date,
        state: isOff(history, date) ? 'off' : 'unknown',
        sessionLoadAu: null,
        tissueLoads: {},
      });
      continue;
    }
    const facts = dayFacts(checkIns, rungs, history.client.bodyMassKg);
    days.push({
      date,
      state: facts.trained ? 'trained' : 'rest',
      sessionLoadAu: facts.sessionLoad ?? null,
      tissueLoads: toTenths(facts.tissueLoad),
    });
  }
  return days;
}

function toTenths(loads: Partial<Record<string, number>>): Partial<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(loads).map(([key, load]) => [key, Math.round((load ?? 0) * 10) / 10]),
  );
}

function isOff(history: ClientHistory, date: string): boolean {
  return history.absences.some(
    (absence) => absence.from <= date && (absence.to === null || date <= absence.to),
  );
}
