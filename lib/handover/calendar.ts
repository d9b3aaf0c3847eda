import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryPlan } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { limitOnItem } from '#lib/planning/limit-on-item.ts';
import { planCalendar } from '#lib/planning/plan-calendar.ts';
import { planItemInWords } from '#lib/views/plan-words.ts';

const LONGEST_LINE = 75;
const WEEKS_OF_OPEN_PLAN = 4;

/**
 * The plan that is in force and those to come as iCalendar (RFC 5545): an all-day event a session, on the days that an
 * even spread gives. Titles say "Training A" and nothing of anybody's health; the drills stand in the description.
 */
export function planAsCalendar(history: ClientHistory, about: { today: string; made: Date }): string {
  const { today, made } = about;
  const plans = history.plans.filter((plan) => plan.until === null || plan.until >= today);
  const last = plans
    .map((plan) => plan.until ?? addDays(maxOf(plan.from, today), WEEKS_OF_OPEN_PLAN * 7))
    .sort()
    .at(-1);
  // Counted from the first day of the plans, so that a day keeps its session whenever the file is made.
  const first = plans.map((plan) => plan.from).sort()[0] ?? today;
  const dates: string[] = [];
  for (let date = first; last !== undefined && date <= last; date = addDays(date, 1)) dates.push(date);
  const planOn = (date: string) =>
    plans
      .filter((plan) => plan.from <= date && (plan.until === null || date <= plan.until))
      .sort((a, b) => b.version - a.version)[0];
  const stamp = `${made.toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
  const events = planCalendar(dates, planOn)
    .map((session, at, all) => ({
      session,
      nth: all.slice(0, at).filter((one) => one.date === session.date).length,
    }))
    .filter(({ session }) => session.date >= today)
    .map(({ session, nth }) =>
      event({
        uid: `${history.client.id}-${session.date}-${nth}@plumbline`,
        stamp,
        session,
        text: description(history, planOn(session.date), session),
      }),
    );
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Plumbline//Handover pack//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    'X-WR-CALNAME:Training plan',
    ...events.flat(),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

type Session = ReturnType<typeof planCalendar>[number];

function event(about: { uid: string; stamp: string; session: Session; text: string }): string[] {
  const { uid, stamp, session, text } = about;
  return [
    'BEGIN:VEVENT',
    `UID:${uid}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${session.date.replaceAll('-', '')}`,
    `DTEND;VALUE=DATE:${addDays(session.date, 1).replaceAll('-', '')}`,
    `SUMMARY:${escapedText(`Training ${session.label}`)}`,
    `DESCRIPTION:${escapedText(text)}`,
    'TRANSP:TRANSPARENT',
    'CLASS:PRIVATE',
    'END:VEVENT',
  ];
}

function description(history: ClientHistory, plan: HistoryPlan | undefined, session: Session): string {
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const drills = session.items.map((item) => {
    const rung = rungs.get(item.rungId);
    const said = planItemInWords(item, rung);
    if (!rung) return said;
    const { side, support } = item;
    const { share } = limitOnItem(history.limits, { rung, side, support }, session.date, DEFAULT_LIMITS);
    return share === 0
      ? `${said}: left out while a limit holds`
      : share < 1
        ? `${said}: fewer sets while a limit holds`
        : said;
  });
  const which = plan
    ? [`Plan version ${plan.version}. The days are an even spread; another day of the week will do.`]
    : [];
  return [...drills, ...which].join('\n');
}

/** RFC 5545 3.3.11. */
function escapedText(text: string): string {
  return text
    .replace(/[\\;,]/g, (sign) => `\\${sign}`)
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/\p{Cc}/gu, '');
}

/** RFC 5545 3.1: at most 75 octets a line, never inside a character. */
function folded(line: string): string {
  const pieces: string[] = [];
  let piece = '';
  let octets = 0;
  for (const sign of line) {
    const size = Buffer.byteLength(sign);
    if (octets + size > LONGEST_LINE) {
      pieces.push(piece);
      piece = '';
      octets = 1; // the space that marks the fold
    }
    piece += sign;
    octets += size;
  }
  return [...pieces, piece].join('\r\n ');
}

function maxOf(a: string, b: string): string {
  return a > b ? a : b;
}
