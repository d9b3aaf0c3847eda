import type { HistoryCheckIn, HistoryPlan } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { isUnderLimit } from './limits-on-rung.ts';
import { oncePerView } from './once-per-view.ts';
import { plannedSince } from './plan-items.ts';
import { hasResult, isOfSide } from './set-result.ts';
import type { Standing } from './standings.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { workByRung } from './view-work.ts';

export type PlannedPractice = {
  /** Logged sessions in which the plan has the rung. */
  planned: number;
  /** Of these, sessions in which it was trained. */
  trained: number;
  /** All training check-ins of the window. */
  logged: number;
};

// Two rules ask for the same counts.
const practiceOf = oncePerView(() => new Map<Standing, { limits: Limits; practice: PlannedPractice }>());

/**
 * Sessions logged in 28 days, against those of them in which the rung was trained. A forgotten log is no
 * skipped drill. The first week of a plan with the rung, and days under a limit, do not count.
 */
export function plannedPractice(view: ClientView, standing: Standing, limits: Limits): PlannedPractice {
  const known = practiceOf(view);
  const there = known.get(standing);
  if (there?.limits === limits) return there.practice;
  const practice = count(view, standing, limits);
  known.set(standing, { limits, practice });
  return practice;
}

/** Whether practice is under half of what the plan asks; the first sign, before any test can be sure. */
export function isHardlyTrained({ planned, trained }: PlannedPractice, limits: Limits): boolean {
  return trained < planned * limits['tooLittleTime.share'];
}

function count(view: ClientView, standing: Standing, limits: Limits): PlannedPractice {
  const { rung, side } = standing;
  const sessions = recentSessions(view, limits);
  const counts = { planned: 0, trained: 0, logged: sessions.length };
  const trained = trainedIn(view, rung.id, side, sessions[0]?.at ?? 0);
  let plan: HistoryPlan | undefined;
  let asked: Asked | undefined;
  let from = '';
  for (const session of sessions) {
    const { date, checkIn } = session;
    if (!asked || plan !== session.plan) {
      plan = session.plan;
      asked = askedIn(plan, rung.id, side);
      from = addDays(plannedSince(view, rung.id, date) ?? date, limits['tooLittleTime.planFromDays']);
    }
    if (!isPlanned(checkIn, asked) || date < from || isUnderLimit(view, standing, date, limits)) continue;
    counts.planned += 1;
    if (trained.has(checkIn)) counts.trained += 1;
  }
  return counts;
}

type Session = { at: number; date: string; checkIn: HistoryCheckIn; plan: HistoryPlan | undefined };
const recentOf = oncePerView((): { known?: { limits: Limits; sessions: Session[] } } => ({}));

/**
 * Training check-ins of the window, oldest first, with the plan of their day. Counted back from the last one: days of
 * silence make neither sessions nor skipped drills.
 */
function recentSessions(view: ClientView, limits: Limits): readonly Session[] {
  const held = recentOf(view);
  if (held.known?.limits === limits) return held.known.sessions;
  const sessions: Session[] = [];
  let first = 0;
  for (let at = view.days.length - 1; at >= first; at -= 1) {
    const { date, checkIns } = view.days[at] ?? { date: '', checkIns: [] };
    for (const checkIn of checkIns.toReversed()) {
      if (checkIn.kind !== 'training') continue;
      if (sessions.length === 0) first = at - limits['tooLittleTime.days'] + 1;
      sessions.push({ at, date, checkIn, plan: view.planOn(date) });
    }
  }
  held.known = { limits, sessions: sessions.reverse() };
  return held.known.sessions;
}

/** Check-ins from a day on with a result of the rung on the side. */
function trainedIn(view: ClientView, rungId: string, side: Side, first: number): ReadonlySet<HistoryCheckIn> {
  const trained = new Set<HistoryCheckIn>();
  for (const { at, checkIn, sets } of workByRung(view).get(rungId) ?? []) {
    if (at >= first && sets.some((set) => hasResult(set) && isOfSide(set, side))) trained.add(checkIn);
  }
  return trained;
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
