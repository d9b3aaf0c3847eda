import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { isUnderLimit } from './limits-on-rung.ts';
import { plannedSince } from './plan-items.ts';
import { hasResult, isOfSide } from './rung-days.ts';
import type { Standing } from './standings.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

export type PlannedPractice = {
  /** Logged sessions in which the plan has the rung. */
  planned: number;
  /** Of these, sessions in which it was trained. */
  trained: number;
  /** All training check-ins of the window. */
  logged: number;
};

/**
 * Sessions logged in 28 days, against those of them in which the rung was trained. A forgotten log is no
 * skipped drill. The first week of a plan with the rung, and days under a limit, do not count.
 */
export function plannedPractice(view: ClientView, { rung, side }: Standing, limits: Limits): PlannedPractice {
  const counts = { planned: 0, trained: 0, logged: 0 };
  // Counted back from the last logged session: days of silence make neither sessions nor skipped drills.
  const end =
    view.days.findLastIndex((day) => day.checkIns.some((checkIn) => checkIn.kind === 'training')) + 1;
  for (const day of view.days.slice(Math.max(0, end - limits['tooLittleTime.days']), end)) {
    for (const checkIn of day.checkIns) {
      if (checkIn.kind !== 'training') continue;
      counts.logged += 1;
      if (!isPlanned(view, checkIn, { rungId: rung.id, side, date: day.date })) continue;
      const since = plannedSince(view, rung.id, day.date);
      if (since === undefined || day.date < addDays(since, limits['tooLittleTime.planFromDays'])) continue;
      if (isUnderLimit(view, rung, day.date, limits)) continue;
      counts.planned += 1;
      if (checkIn.sets.some((set) => set.rungId === rung.id && hasResult(set) && isOfSide(set, side)))
        counts.trained += 1;
    }
  }
  return counts;
}

/** Whether practice is under half of what the plan asks; the first sign, before any test can be sure. */
export function isHardlyTrained({ planned, trained }: PlannedPractice, limits: Limits): boolean {
  return planned > 0 && trained < planned * limits['tooLittleTime.share'];
}

type Asked = { rungId: string; side: Standing['side']; date: string };

/** Without a session's name the rung counts as planned only when every session of the plan has it. */
function isPlanned(view: ClientView, checkIn: HistoryCheckIn, { rungId, side, date }: Asked): boolean {
  const items = view.planOn(date)?.items ?? [];
  const having = new Set(
    items
      .filter((item) => item.rungId === rungId && item.target !== null && isOfSide(item, side))
      .map((item) => item.session),
  );
  if (checkIn.session !== null) return having.has(checkIn.session);
  return having.size > 0 && items.every((item) => having.has(item.session));
}
