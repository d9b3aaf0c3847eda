import type { HistoryCheckIn, HistoryPlan } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { isUnderLimit } from './limits-on-rung.ts';
import { plannedSince } from './plan-items.ts';
import { hasResult, isOfSide } from './set-result.ts';
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

// Kept with the standing, which lives as long as its view: two rules ask for the same counts.
const known = new WeakMap<Standing, { limits: Limits; practice: PlannedPractice }>();

/**
 * Sessions logged in 28 days, against those of them in which the rung was trained. A forgotten log is no
 * skipped drill. The first week of a plan with the rung, and days under a limit, do not count.
 */
export function plannedPractice(view: ClientView, standing: Standing, limits: Limits): PlannedPractice {
  const there = known.get(standing);
  if (there?.limits === limits) return there.practice;
  const practice = count(view, standing, limits);
  known.set(standing, { limits, practice });
  return practice;
}

/** Whether practice is under half of what the plan asks; the first sign, before any test can be sure. */
export function isHardlyTrained({ planned, trained }: PlannedPractice, limits: Limits): boolean {
  return planned > 0 && trained < planned * limits['tooLittleTime.share'];
}

function count(view: ClientView, { rung, side }: Standing, limits: Limits): PlannedPractice {
  const counts = { planned: 0, trained: 0, logged: 0 };
  const asked = new Map<HistoryPlan | undefined, Asked & { from: string }>();
  // Counted back from the last logged session: days of silence make neither sessions nor skipped drills.
  const end =
    view.days.findLastIndex((day) => day.checkIns.some((checkIn) => checkIn.kind === 'training')) + 1;
  for (const day of view.days.slice(Math.max(0, end - limits['tooLittleTime.days']), end)) {
    const sessions = day.checkIns.filter((checkIn) => checkIn.kind === 'training');
    counts.logged += sessions.length;
    if (sessions.length === 0) continue;
    const plan = view.planOn(day.date);
    let sessionsWithIt = asked.get(plan);
    if (!sessionsWithIt) {
      const since = plannedSince(view, rung.id, day.date) ?? day.date;
      sessionsWithIt = {
        ...askedIn(plan, rung.id, side),
        from: addDays(since, limits['tooLittleTime.planFromDays']),
      };
      asked.set(plan, sessionsWithIt);
    }
    const { from } = sessionsWithIt;
    const planned = sessions.filter((checkIn) => isPlanned(checkIn, sessionsWithIt));
    if (planned.length === 0 || day.date < from) continue;
    if (isUnderLimit(view, rung, day.date, limits)) continue;
    counts.planned += planned.length;
    counts.trained += planned.filter((checkIn) =>
      checkIn.sets.some((set) => set.rungId === rung.id && hasResult(set) && isOfSide(set, side)),
    ).length;
  }
  return counts;
}

/** Sessions of a plan that have the rung in sets, and whether all of them do. */
type Asked = { sessions: ReadonlySet<string>; inAll: boolean };

function askedIn(plan: HistoryPlan | undefined, rungId: string, side: Side): Asked {
  const items = plan?.items ?? [];
  const sessions = new Set(
    items
      .filter((item) => item.rungId === rungId && item.target !== null && isOfSide(item, side))
      .map((item) => item.session),
  );
  return { sessions, inAll: sessions.size > 0 && items.every((item) => sessions.has(item.session)) };
}

/** Without a session's name the rung counts as planned only when every session of the plan has it. */
function isPlanned({ session }: HistoryCheckIn, { sessions, inAll }: Asked): boolean {
  return session === null ? inAll : sessions.has(session);
}
