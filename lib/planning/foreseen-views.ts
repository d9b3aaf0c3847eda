import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { type WeekKind, weekKind } from './easy-week.ts';
import { type EditedItem, type EditedPlan, sidesOfItem } from './edited-plan.ts';
import { planCalendar } from './plan-calendar.ts';
import { itemOnDate, plannedCheckIn, plannedRest } from './planned-check-ins.ts';
import { minutesOfItems } from './session-minutes.ts';
import { isWithoutKit, planWithoutKit } from './without-kit.ts';

const FORESEEN_WEEKS = 4;
const WEEK_DAYS = 7;
/** The middle of a week from its first day: most of it is of the kind of that day. */
const MIDDLE = 3;
/** Sessions back of which the usual effort and the usual length are the medians. Own choice, as in load-jump. */
const SESSIONS_BACK = 15;

export type ForeseenWeek = {
  from: string;
  until: string;
  kind: WeekKind;
  sessions: number;
  /** The client as the checks would see them on the last evening of the week, had all gone as planned. */
  view: ClientView;
};
/** Usual effort (0-10), and told minutes for each estimated minute; null: no session tells them. */
export type UsualSession = { effort: number | null; pace: number | null };

type Given = {
  history: ClientHistory;
  plan: EditedPlan;
  /** The last day that is over. */
  date: string;
  /** Rungs of the plan that the history does not carry. */
  rungs?: readonly HistoryRung[] | undefined;
  limits: Limits;
};

/**
 * The next four weeks done exactly as planned, each seen by the checks from its last evening. Up to the first day of
 * the edited plan the plan before it goes on; days off that were said have no session; other days between are rest.
 * Effort is the client's usual one; minutes are the estimate of the session, times how long this client usually takes
 * against that estimate. Without past sessions effort is what was told of the usual week at the start and minutes are the
 * estimate; where that was not told both are unknown, and so is the session load.
 */
export function foreseenWeeks(given: Given): { weeks: ForeseenWeek[]; usual: UsualSession } {
  const { date, limits } = given;
  const history = withPlan(given);
  const past = buildView(history, { date, instant: eveningOf(date) }, limits);
  const planOn = kitOrNot((day) => past.planOn(day) as EditedPlan | undefined);
  const usual = usualSession(history, planOn, past.rungs);
  const days = foreseenDays({ history, date, planOn, usual, rungs: past.rungs, limits });
  const after = { ...history, checkIns: [...history.checkIns, ...days] };
  const weeks = Array.from({ length: FORESEEN_WEEKS }, (_, week): ForeseenWeek => {
    const from = addDays(date, week * WEEK_DAYS + 1);
    const until = addDays(date, (week + 1) * WEEK_DAYS);
    const plan = planOn(until) ?? planOn(from);
    return {
      from,
      until,
      kind: plan ? weekKind(plan, addDays(from, MIDDLE)) : 'ordinary',
      sessions: days.filter((one) => one.kind === 'training' && one.date >= from && one.date <= until).length,
      view: buildView(after, { date: until, instant: eveningOf(until) }, limits),
    };
  });
  return { weeks, usual };
}

/** The plan of a date; in its weeks without kit as it is done without, one and the same plan each time. */
function kitOrNot(planOn: (date: string) => EditedPlan | undefined) {
  const without = new Map<EditedPlan, EditedPlan>();
  return (date: string): EditedPlan | undefined => {
    const plan = planOn(date);
    if (!plan || !isWithoutKit(plan, date)) return plan;
    const known = without.get(plan) ?? planWithoutKit(plan);
    without.set(plan, known);
    return known;
  };
}

type Coming = Pick<Given, 'history' | 'date' | 'limits'> & {
  planOn: (date: string) => EditedPlan | undefined;
  usual: UsualSession;
  rungs: ReadonlyMap<string, HistoryRung>;
};

/** The check-ins of the coming weeks: a session where one is planned, rest where none is, nothing on days off. */
function foreseenDays({ history, date, planOn, usual, rungs, limits }: Coming): HistoryCheckIn[] {
  const isOff = (day: string) =>
    history.absences.some(({ from, to }) => from <= day && (to === null || to >= day));
  const dates = Array.from({ length: FORESEEN_WEEKS * WEEK_DAYS }, (_, index) => addDays(date, index + 1));
  const client = { history, rungs, limits };
  const training = planCalendar(dates, (day) => (isOff(day) ? undefined : planOn(day))).map((session) => {
    const plan = planOn(session.date);
    const week = plan ? weekKind(plan, session.date) : 'ordinary';
    const items = session.items
      .flatMap((item) => sidesApart(item, rungs))
      .flatMap((item) => itemOnDate(item, week, session.date, client) ?? []);
    const settings = plan?.sessions?.find(({ label }) => label === session.label);
    const minutes = usual.pace === null ? null : usual.pace * minutesOfItems(items, settings, rungs);
    return plannedCheckIn(session, week, { effort: usual.effort, minutes }, client);
  });
  const trained = new Set(training.map((checkIn) => checkIn.date));
  const rest = dates.filter((day) => !trained.has(day) && !isOff(day));
  return [...training, ...rest.map((day) => plannedRest(day, history.client.zone))];
}

/** Left and right may be under different limits; minutes are of both together. */
function sidesApart(item: EditedItem, rungs: Coming['rungs']): EditedItem[] {
  const rung = rungs.get(item.rungId);
  if (!rung || item.minutes !== null) return [item];
  return sidesOfItem(item, rung).map((side) => ({ ...item, side }));
}

/** The history up to the date, with the edited plan as the newest: it takes the place of all that start as late. */
function withPlan({ history, plan, date, rungs }: Given): ClientHistory {
  const known = new Set(history.rungs.map((rung) => rung.id));
  const version = Math.max(0, ...history.plans.map((one) => one.version)) + 1;
  return {
    ...history,
    rungs: [...history.rungs, ...(rungs ?? []).filter((rung) => !known.has(rung.id))],
    plans: [...history.plans.filter((one) => one.from < plan.from), { ...plan, version }],
    checkIns: history.checkIns.filter((checkIn) => checkIn.date <= date),
  };
}

/** Usual effort, and how many minutes this client tells for each minute of the estimate of the sessions done. */
function usualSession(
  { checkIns, client }: ClientHistory,
  planOn: (date: string) => EditedPlan | undefined,
  rungs: ReadonlyMap<string, HistoryRung>,
): UsualSession {
  const recent = checkIns
    .filter((one) => one.kind === 'training' && one.effort !== null && one.minutes !== null)
    .sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? 1 : -1))
    .slice(0, SESSIONS_BACK);
  if (recent.length === 0 && client.toldEffort !== undefined) return { effort: client.toldEffort, pace: 1 };
  const effort = median(recent.flatMap((one) => one.effort ?? [])) ?? null;
  const ratios = recent.flatMap((one) => {
    const plan = planOn(one.date);
    const items = plan?.items.filter((item) => item.session === one.session) ?? [];
    const settings = plan?.sessions?.find(({ label }) => label === one.session);
    const estimate = minutesOfItems(items, settings, rungs);
    return estimate > 0 && one.minutes !== null ? [one.minutes / estimate] : [];
  });
  return { effort, pace: recent.length === 0 ? null : (median(ratios) ?? 1) };
}

function eveningOf(date: string): string {
  return `${date}T23:59:59.000Z`;
}
