import { dayFacts } from '#lib/checks/day-facts.ts';
import { DEFAULT_LIMITS, type Limits } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import type { LoadDay } from '#lib/domain/record.ts';
import { median } from '#lib/stats/median.ts';

/**
 * Every date from the first check-in to the last. Between two check-ins that are near each other a date counts as rest, as
 * in the checks; farther apart it is unknown (or off, when an absence says so) and has no numbers. Rest has zeros. Session
 * load in AU, tissues in BW s.
 */
export function loadDays(history: ClientHistory, limits: Limits = DEFAULT_LIMITS): LoadDay[] {
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const byDate = new Map<string, HistoryCheckIn[]>();
  for (const checkIn of history.checkIns) {
    byDate.set(checkIn.date, [...(byDate.get(checkIn.date) ?? []), checkIn]);
  }
  const dates = [...byDate.keys()].sort();
  const last = dates.at(-1);
  const taken = takenAsRest(dates, limits);
  const days: LoadDay[] = [];
  for (
    let date = dates[0];
    date !== undefined && last !== undefined && date <= last;
    date = addDays(date, 1)
  ) {
    const checkIns = byDate.get(date);
    if (!checkIns) {
      const state = isOff(history, date) ? 'off' : taken.has(date) ? 'taken-as-rest' : 'unknown';
      days.push({ date, state, sessionLoadAu: state === 'taken-as-rest' ? 0 : null, tissueLoads: {} });
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

/** Dates between two check-ins (dates in order) that are no farther apart than a client who logs leaves between two. */
function takenAsRest(dates: readonly string[], limits: Limits): Set<string> {
  const gaps = dates.slice(1).map((date, index) => daysBetween(dates[index] ?? date, date));
  const bridged = Math.max(limits['day.restGapDays'], limits['day.restGapOwnMedian'] * (median(gaps) ?? 0));
  return new Set(
    gaps.flatMap((gap, index) =>
      gap > bridged ? [] : Array.from({ length: gap - 1 }, (_, nth) => addDays(dates[index] ?? '', nth + 1)),
    ),
  );
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
