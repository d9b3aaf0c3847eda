import type { EditedItem, EditedPlan } from './edited-plan.ts';

/** A planned session on a day: which lines of the plan are due in it. */
export type PlannedSession = { date: string; label: string; items: EditedItem[] };

const WEEK_DAYS = 7;
const WHOLE = 1 - 1e-9;
/** A session of this name is a stand-in for days with little time and has no turn of its own. */
const STAND_IN = 'short';

type Turn = { label: string; perWeek: number; credit: number; lines: Line[] };
type Line = { item: EditedItem; credit: number; lastDay: number };

/**
 * Which sessions fall on which of the dates (consecutive, oldest first), if all goes as planned. The sessions of a
 * week are spread evenly over it and take turns as often as their lines ask; a line asked for less often than its
 * session is left out evenly, one not for two days running is put off. `planOn`: the plan of a date, none: no session.
 * Own rule, the same every time.
 */
export function planCalendar(
  dates: readonly string[],
  planOn: (date: string) => EditedPlan | undefined,
): PlannedSession[] {
  const sessions: PlannedSession[] = [];
  let plan: EditedPlan | undefined;
  let turns: Turn[] = [];
  dates.forEach((date, day) => {
    const there = planOn(date);
    if (there !== plan) {
      plan = there;
      turns = there ? turnsOf(there) : [];
    }
    if (!plan || turns.length === 0) return;
    for (let left = sessionsOn(day, plan.sessionsPerWeek); left > 0; left -= 1) {
      const turn = nextTurn(turns, plan.sessionsPerWeek);
      sessions.push({ date, label: turn.label, items: dueLines(turn, day) });
    }
  });
  return sessions;
}

/** Sessions on a day, counted from the first: `perWeek` of them spread evenly over each seven days. */
function sessionsOn(day: number, perWeek: number): number {
  const weekday = day % WEEK_DAYS;
  let count = 0;
  for (let nth = 0; nth < perWeek; nth += 1) {
    if (Math.floor((nth * WEEK_DAYS) / perWeek) === weekday) count += 1;
  }
  return count;
}

function turnsOf(plan: EditedPlan): Turn[] {
  const labels = [...new Set(plan.items.map((item) => item.session))];
  const regular = labels.filter((label) => label.toLowerCase() !== STAND_IN);
  const asked = (regular.length > 0 ? regular : labels).map((label) => {
    const items = plan.items.filter((item) => item.session === label);
    return { label, items, often: Math.max(...items.map((item) => item.timesPerWeek)) };
  });
  const all = asked.reduce((sum, { often }) => sum + often, 0);
  return asked.map(({ label, items, often }) => {
    const perWeek = all > 0 ? (often / all) * plan.sessionsPerWeek : 0;
    const lines = items.map((item): Line => ({ item, credit: 1 - share(item, perWeek), lastDay: -2 }));
    return { label, perWeek, credit: 0, lines };
  });
}

/** The session whose turn it is: the one furthest behind, the first in the plan of equals. */
function nextTurn(turns: Turn[], perWeek: number): Turn {
  let next = turns[0] as Turn;
  for (const turn of turns) {
    turn.credit += turn.perWeek / perWeek;
    if (turn.credit > next.credit + (1 - WHOLE)) next = turn;
  }
  next.credit -= 1;
  return next;
}

/** Part of its session's turns a line is due in. */
function share(item: EditedItem, perWeek: number): number {
  return perWeek > 0 ? Math.min(1, item.timesPerWeek / perWeek) : 0;
}

function dueLines(turn: Turn, day: number): EditedItem[] {
  return turn.lines.flatMap((line) => {
    line.credit = Math.min(1, line.credit + share(line.item, turn.perWeek));
    const tooSoon = line.item.notTwoDaysRunning === true && day - line.lastDay === 1;
    if (line.credit < WHOLE || tooSoon) return [];
    line.credit -= 1;
    line.lastDay = day;
    return [line.item];
  });
}
