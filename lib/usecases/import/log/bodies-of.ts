import type { HistoryRung } from '#lib/domain/history.ts';
import { AppError } from '#lib/errors.ts';
import { type CheckInBody, type CheckInInput, checkInSchema } from '#lib/schemas/check-in.ts';
import { assertSetsFit } from '../../check-in-fits.ts';
import type { LogDay, LogMapping, LogProblem } from './shape-log.ts';

type Facts = { mapping: LogMapping; zone: string; rungs: HistoryRung[]; newId: () => string };

/** Days of a log as check-ins, held to the same rules as what a phone sends; what they refuse is named by its line. */
export function bodiesOf(
  days: readonly LogDay[],
  facts: Facts,
): { bodies: CheckInBody[]; problems: LogProblem[] } {
  const bodies: CheckInBody[] = [];
  const problems: LogProblem[] = [];
  for (const day of days) {
    const say = (path: string, message: string) => {
      const at = /^sets\.(\d+)/.exec(path)?.[1];
      const line = at === undefined ? day.lines[0] : day.sets[Number(at)]?.line;
      problems.push({ line: line ?? 0, column: path.split('.').at(-1) ?? '', message });
    };
    const parsed = checkInSchema.safeParse(bodyOf(day, facts));
    if (!parsed.success) {
      for (const { path, message } of parsed.error.issues) say(path.join('.'), message);
      continue;
    }
    try {
      assertSetsFit(parsed.data, facts.rungs);
      bodies.push(parsed.data);
    } catch (error) {
      if (!(error instanceof AppError)) throw error;
      for (const [path, message] of Object.entries(error.fields)) say(path, message);
    }
  }
  return { bodies, problems };
}

function bodyOf(day: LogDay, { mapping, zone, newId }: Facts): CheckInInput {
  const trained = day.trained || day.effort !== null || day.minutes !== null;
  const counts = new Map<string, number>();
  const score = day.pain ?? 0;
  return {
    id: newId(),
    date: day.date,
    zone,
    // Only words and pain: a day without training, as far as the log says.
    kind: trained || day.pain === null ? 'training' : 'rest',
    effort: day.effort,
    minutes: day.minutes,
    nothingHurts: day.pain === 0,
    sets: day.sets.map(({ rungId, side, value, tried, addedKg }) => {
      const index = (counts.get(`${rungId} ${side}`) ?? 0) + 1;
      counts.set(`${rungId} ${side}`, index);
      return { rungId, side, index, planned: null, value, tried, how: 'typed' as const, addedKg };
    }),
    pain:
      score > 0 && mapping.pain
        ? [{ ...mapping.pain, moment: trained ? 'after' : 'today', value: score, kind: 'joint', usual: null }]
        : [],
    words: day.words.join('; '),
    confirmed: ['old-date'],
  };
}
