import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { addDays, daysBetween } from './calendar.ts';
import type { Life, PlanItem, Training } from './life.ts';
import { demoRung, rungAfter } from './rungs.ts';
import { did, made } from './work.ts';

export type Ladder = {
  /** The rung on which the client starts. */
  start: string;
  session?: string;
  /** Weeks on a rung as a part of the usual weeks; under 1 is faster. */
  pace?: number;
  /** Part of the pass mark reached on the first day. */
  first?: number;
};
export type Climb = {
  ladders: Ladder[];
  skills: string[];
  perWeek: number;
  /** Days of the demo week, 1 to 7, on which the client trains. */
  days: number[];
  effort: number;
  minutes: number;
  from: string;
  to: string;
  /** Last planned day of the newest plan. */
  until?: string | null;
  /** What differs on single days. */
  change?: (date: string, done: Training) => Training;
  skip?: (date: string) => boolean;
};
type Stand = Required<Ladder> & {
  rung: string;
  since: string;
  days: number;
  passes: number;
  planned: number;
  stepOn: string | null;
};

const PLAN_DAYS = 21;
/** Days between the pass and the coach's step up. */
const ANSWER_DAYS = 3;

/**
 * Trains a life from one date to another the way a steady client does: the number grows from `first` of the pass
 * mark to the whole of it over the usual weeks, the coach follows with the plan, and steps up a few days after.
 */
export function climb(life: Life, wanted: Climb): void {
  const stands = wanted.ladders.map((ladder) => startOn(life, ladder, wanted));
  let plannedOn = '';
  let turn = 0;
  for (let date = wanted.from; date <= wanted.to; date = addDays(date, 1)) {
    const stepped = stands.filter((stand) => stepUp(life, stand, date)).length > 0;
    const ripe = stands.some((stand) => stand.planned < 1 && ability(stand, date) >= 1);
    if (stepped || ripe || plannedOn === '' || daysBetween(plannedOn, date) >= PLAN_DAYS) {
      plannedOn = date;
      for (const stand of stands) stand.planned = plannedShare(stand, date);
      life.plan(date, {
        perWeek: wanted.perWeek,
        until: wanted.until ?? null,
        skills: wanted.skills,
        items: itemsOf(stands),
      });
    }
    const demoDay = (((daysBetween(life.on(1, 1), date) % 7) + 7) % 7) + 1;
    if (!wanted.days.includes(demoDay) || wanted.skip?.(date)) continue;
    const labels = [...new Set(stands.map((stand) => stand.session))];
    const session = labels[turn++ % labels.length] ?? 'A';
    const work = stands
      .filter((stand) => stand.session === session)
      .map((stand) => trainOn(life, stand, date));
    const done: Training = {
      session,
      effort: wanted.effort + (life.random.chance(0.3) ? 1 : 0),
      minutes: wanted.minutes + life.random.whole(-4, 4),
      work,
    };
    life.train(date, wanted.change?.(date, done) ?? done);
  }
}

function startOn(life: Life, ladder: Ladder, wanted: Climb): Stand {
  life.place(ladder.start, wanted.from, { why: 'start test' });
  return {
    session: 'A',
    pace: 1,
    first: 0.7,
    ...ladder,
    rung: ladder.start,
    since: wanted.from,
    days: 0,
    passes: 0,
    planned: 0,
    stepOn: null,
  };
}

/** The share of the pass mark the client can do: grows evenly, then stays a little above. */
function ability(stand: Stand, date: string): number {
  const whole = Math.max(14, demoRung(stand.rung).usualWeeks * 7 * stand.pace);
  const grown = stand.first + (1 - stand.first) * (daysBetween(stand.since, date) / whole);
  // Who cannot be stepped up any further stays a little under the mark.
  return Math.min(grown, nextRung(stand) ? 1.02 : 0.95);
}

/** The next rung of the same ladder that is counted the same way (both hands or each side). */
function nextRung(stand: Stand): HistoryRung | undefined {
  const next = rungAfter(stand.rung);
  return next?.eachSide === demoRung(stand.rung).eachSide ? next : undefined;
}

function plannedShare(stand: Stand, date: string): number {
  return Math.min(1, ability(stand, date));
}

function targetOf(stand: Stand): number {
  const { target } = demoRung(stand.rung).pass;
  // Under the mark stays under it, also after rounding.
  return stand.planned === 1 ? target : Math.max(1, Math.min(target - 1, Math.round(target * stand.planned)));
}

function itemsOf(stands: Stand[]): PlanItem[] {
  return stands.map((stand) => [
    stand.session,
    stand.rung,
    isRange(stand) ? {} : { target: targetOf(stand) },
  ]);
}

function isRange(stand: Stand): boolean {
  return demoRung(stand.rung).measure.startsWith('range');
}

function trainOn(life: Life, stand: Stand, date: string): HistorySet[] {
  const { pass, measure } = demoRung(stand.rung);
  const able = ability(stand, date);
  stand.days += 1;
  if (isRange(stand) && able >= 1) countPass(stand, date);
  if (isRange(stand)) return did(stand.rung, [rangeOf(stand, able)], { planned: null });
  const passing = able >= 1 && stand.planned === 1;
  if (passing) countPass(stand, date);
  if (measure === 'made-tried') {
    const good = passing ? pass.target : Math.min(pass.target - 1, Math.round(pass.target * able));
    return made(stand.rung, good, pass.tries ?? pass.target);
  }
  const target = targetOf(stand);
  // One short set on every third day is what honest training looks like; more would be too hard.
  const short = !passing && stand.days % 3 === 0;
  const values = Array.from({ length: pass.sets }, (_, place) =>
    short && place === pass.sets - 1
      ? Math.max(1, target - 1 - Math.floor(target / 6))
      : passing
        ? target + life.random.whole(0, 1)
        : Math.min(target + life.random.whole(0, target >= 15 ? 1 : 0), Math.max(1, pass.target - 1)),
  );
  return did(stand.rung, values, { planned: target });
}

function rangeOf(stand: Stand, able: number): number {
  const { pass, measure } = demoRung(stand.rung);
  // Ranges close a gap of 12 degrees or 8 cm, not a share of the whole number.
  const gap = (1 - Math.min(able, 1)) / (1 - stand.first);
  return measure === 'range-up' ? Math.floor(pass.target - gap * 12) : Math.ceil(pass.target + gap * 8);
}

function countPass(stand: Stand, date: string): void {
  stand.passes += 1;
  if (stand.passes === demoRung(stand.rung).pass.days) stand.stepOn = addDays(date, ANSWER_DAYS);
}

function stepUp(life: Life, stand: Stand, date: string): boolean {
  if (stand.stepOn === null || date < stand.stepOn) return false;
  const next = nextRung(stand);
  stand.stepOn = null;
  if (!next) return false;
  life.place(next.id, date, { why: 'pass mark met' });
  life.step({
    kind: 'step-up-earned',
    takenOn: date,
    ladderId: next.ladderId,
    side: 'both',
    reviewOn: null,
    words: `Step up to ${next.name}`,
  });
  stand.rung = next.id;
  stand.since = date;
  stand.passes = 0;
  stand.days = 0;
  return true;
}
