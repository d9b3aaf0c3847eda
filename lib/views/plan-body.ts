import { PLAN_BOUNDS } from '#lib/domain/plan-bounds.ts';
import { PLAN_SESSIONS } from '#lib/domain/plan-sessions.ts';
import type { EditedPlan } from '#lib/planning/edited-plan.ts';
import type { FormSession, PlanTyped } from './plan-form.ts';
import { type FormRow, typedNumber } from './plan-rows.ts';
import { weeksOf } from './plan-weeks.ts';

/** What the form knows beside what is typed: skills by id, and the rungs that need kit. */
export type PlanNames = { skills: ReadonlyMap<string, string>; needsKit: ReadonlySet<string> };

/** The part of a plan that a template keeps, as it is sent. */
export function templateBody(typed: Pick<PlanTyped, 'sessionsPerWeek' | 'notes' | 'sessions' | 'rows'>) {
  const { sessionsPerWeek, notes, rows } = typed;
  const used = new Set(rows.map((row) => row.session));
  return {
    sessionsPerWeek,
    notes,
    sessions: typed.sessions.filter(({ label }) => used.has(label)),
    items: rows.map(({ key: _key, ladderId: _ladderId, ...item }) => item),
  };
}

/** A new version as it is sent. Weeks that the dates no longer hold are left out; the server reads the numbers. */
export function planBody(typed: PlanTyped, about: { baseVersion: number; draftId: string | null }) {
  const weeks = new Set(weeksOf(typed.from, typed.until).map(({ date }) => date));
  const within = (kind: string[]) => kind.filter((week) => weeks.has(week));
  return {
    ...about,
    ...templateBody(typed),
    from: typed.from,
    until: typed.until,
    why: typed.why,
    easyWeeks: within(typed.easyWeeks),
    testWeeks: within(typed.testWeeks),
    noKitWeeks: within(typed.noKitWeeks),
    goals: typed.goals,
    acceptedWeekAu: typed.acceptedWeekAu,
  };
}

/**
 * The plan as far as it can be read while it is typed: lines without a rung, or without a dose that is a number, are not
 * in it. Undefined: no first day, no sessions a week, or not one
 * whole line.
 */
export function editedPlan(typed: PlanTyped, names: PlanNames): EditedPlan | undefined {
  const weeks = weeksOf(typed.from, typed.until);
  const items = inOrder(typed).flatMap((row) => readRow(row, names));
  const sessionsPerWeek = within(typed.sessionsPerWeek, 1, PLAN_BOUNDS.sessionsPerWeek);
  if (weeks.length === 0 || items.length === 0 || !sessionsPerWeek) return undefined;
  const body = planBody(typed, { baseVersion: 0, draftId: null });
  return {
    version: 1,
    from: typed.from,
    until: typed.until || null,
    sessionsPerWeek: Math.round(sessionsPerWeek),
    items,
    easyWeeks: body.easyWeeks,
    testWeeks: body.testWeeks,
    noKitWeeks: body.noKitWeeks,
    acceptedWeekAu: typed.acceptedWeekAu,
    skillsInFocus: typed.goals.flatMap(({ skillId }) => names.skills.get(skillId) ?? []),
    sessions: typed.sessions.map(({ label, restSeconds, warmUpMinutes }) => ({
      label,
      restSeconds: within(restSeconds, 0, PLAN_BOUNDS.restSeconds) ?? null,
      warmUpMinutes: within(warmUpMinutes, 0, PLAN_BOUNDS.warmUpMinutes) ?? 0,
    })),
  };
}

/** Rows in the order of the sessions. */
function inOrder({ sessions, rows }: PlanTyped): FormRow[] {
  const place = (row: FormRow) => sessions.findIndex(({ label }) => label === row.session);
  return [...rows].sort((a, b) => place(a) - place(b));
}

function readRow(row: FormRow, names: PlanNames): EditedPlan['items'] {
  const sets = within(row.sets, 1, PLAN_BOUNDS.sets);
  const timesPerWeek = within(row.timesPerWeek, 0, PLAN_BOUNDS.timesPerWeek);
  const target = within(row.target, PLAN_BOUNDS.targetFrom, PLAN_BOUNDS.targetTo);
  const minutes = within(row.minutes, 0, PLAN_BOUNDS.minutes);
  if (!row.rungId || !sets || !timesPerWeek || target === undefined || minutes === undefined) return [];
  if (target === null && minutes === null) return [];
  return [
    {
      session: row.session,
      rungId: row.rungId,
      side: row.side,
      sets: Math.round(sets),
      target,
      minutes,
      timesPerWeek,
      support: row.support || null,
      notTwoDaysRunning: row.notTwoDaysRunning,
      noKitRungId: row.noKitRungId || null,
      needsKit: names.needsKit.has(row.rungId),
    },
  ];
}

/** A typed number between two bounds; null: empty; undefined: not such a number. */
function within(text: string, least: number, most: number): number | null | undefined {
  const value = typedNumber(text);
  return value === null || (value !== undefined && value >= least && value <= most) ? value : undefined;
}

/** Sessions that the plan does not have yet, in their usual order. */
export function sessionsLeft(sessions: readonly FormSession[]): string[] {
  return PLAN_SESSIONS.filter((label) => !sessions.some((one) => one.label === label));
}
