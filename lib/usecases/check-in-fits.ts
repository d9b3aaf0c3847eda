import type { HistoryRung } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { CheckInBody } from '#lib/schemas/check-in.ts';

/** Older than this many days: asked to confirm (own choice: a quarter of a year). */
const ASK_FROM_DAYS = 90;
/** Older than this: not by the form (own choice, one year). */
const REFUSE_FROM_DAYS = 365;
/** A hold longer than this is asked about: seconds (own choice). */
const LONG_HOLD_S = 600;
const MOST_COUNTED = 1_000;

type Fields = Record<string, string>;

/** Refuses a training day that is not yet there, or so old that a slip of the finger is likelier. */
export function assertDateFits(body: CheckInBody, now: Date): void {
  const today = localDateOf(now, body.zone);
  if (body.date > today) {
    refuse({ date: `must be today (${today} in ${body.zone}) or in the past` });
  }
  if (body.date < addDays(today, -REFUSE_FROM_DAYS)) {
    refuse({ date: 'is more than a year ago: ask your coach to import older training' });
  }
  if (body.date < addDays(today, -ASK_FROM_DAYS) && !body.confirmed.includes('old-date')) {
    refuse({ date: `is more than ${ASK_FROM_DAYS} days ago: correct it, or confirm "old-date"` });
  }
}

/** Refuses sets whose drill is not in the team's ladders, or whose side or amount does not fit the drill. */
export function assertSetsFit(body: CheckInBody, rungs: HistoryRung[]): void {
  const byId = new Map(rungs.map((rung) => [rung.id, rung]));
  const fields: Fields = {};
  body.sets.forEach((set, at) => {
    const rung = byId.get(set.rungId);
    if (!rung) {
      fields[`sets.${at}.rungId`] = 'is not a drill of your team’s ladders: choose one from the plan';
      return;
    }
    const side = sideProblem(rung, set.side);
    if (side) fields[`sets.${at}.side`] = side;
    const value = valueProblem(rung, set, body.confirmed);
    if (value) fields[`sets.${at}.value`] = value;
  });
  refuse(fields);
}

function sideProblem(rung: HistoryRung, side: string): string | undefined {
  if (rung.eachSide && side === 'both') return `must be left or right: "${rung.name}" is done on each side`;
  if (!rung.eachSide && side !== 'both')
    return `must be both: "${rung.name}" is done with both sides together`;
  return undefined;
}

type SetOfBody = CheckInBody['sets'][number];

function valueProblem(rung: HistoryRung, set: SetOfBody, confirmed: string[]): string | undefined {
  const { value } = set;
  if (value === null) return undefined;
  if (rung.measure === 'range-up' || rung.measure === 'range-down') {
    return Math.abs(value) > 360 ? 'must be between -360 and 360 (degrees or cm)' : undefined;
  }
  if (value < 0) return 'must not be less than 0: 0 is a try that did not come off';
  if (rung.measure === 'hold' || rung.measure === 'lowering') {
    const long = value > LONG_HOLD_S && set.how !== 'as-planned' && !confirmed.includes('long-hold');
    return long ? `is ${value} s, more than 10 minutes: correct it, or confirm "long-hold"` : undefined;
  }
  if (value > MOST_COUNTED || !Number.isInteger(value)) return `must be a whole number 0 to ${MOST_COUNTED}`;
  return undefined;
}

function refuse(fields: Fields): void {
  const [first] = Object.entries(fields);
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
}
