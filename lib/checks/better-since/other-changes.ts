import type { ClientHistory, HistoryAbsence, HistoryLimit, HistoryPlan } from '#lib/domain/history.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Limits } from '../thresholds.ts';
import { TISSUE_LABELS } from '../tissues.ts';
import { dayInWords } from '../words.ts';
import type { Followed } from './types.ts';

type Span = { from: string; to: string };

/**
 * What else changed from 7 days before the step to the end of the window: other steps, plan versions, limits that began or
 * ended, days away. In words with the date, oldest first. What the step itself wrote is not among them. With one of
 * these beside it nobody can say which of the two it was.
 */
export function otherChanges(
  history: ClientHistory,
  followed: Followed,
  until: string,
  limits: Limits,
): string[] {
  const span = { from: addDays(followed.from, -limits['betterSince.changesBeforeDays']), to: until };
  return [
    ...otherSteps(history, followed, span),
    ...history.plans.flatMap((plan) => planInWords(plan, followed, span)),
    ...history.limits.flatMap((limit) => limitInWords(limit, followed, span)),
    ...history.absences.flatMap((absence) => absenceInWords(absence, span)),
  ]
    .sort((a, b) => compare(a.date, b.date) || compare(a.words, b.words))
    .map((change) => change.words);
}

type Change = { date: string; words: string };

function otherSteps({ steps }: ClientHistory, { step, from }: Followed, span: Span): Change[] {
  const left = [...steps];
  if (step) {
    const own = left.findIndex(
      (one) =>
        one.kind === step.kind &&
        one.takenOn === from &&
        one.ladderId === step.ladderId &&
        one.side === step.side,
    );
    if (own !== -1) left.splice(own, 1);
  }
  return left
    .filter((one) => isIn(one.takenOn, span))
    .map((one) => ({
      date: one.takenOn,
      words: `another step on ${dayInWords(one.takenOn)}${one.words ? `: ${one.words}` : ''}`,
    }));
}

/** A step that wrote no version itself is carried out by the one of its own day. */
function planInWords({ version, from }: HistoryPlan, { step, from: day }: Followed, span: Span): Change[] {
  const isOwn = step?.planVersions.includes(version) || (step?.planVersions.length === 0 && from === day);
  if (!isIn(from, span) || isOwn) return [];
  return [{ date: from, words: `plan version ${version} from ${dayInWords(from)}` }];
}

function limitInWords(limit: HistoryLimit, { step, from }: Followed, span: Span): Change[] {
  const place = limit.tissue
    ? TISSUE_LABELS[limit.tissue]
    : limit.region
      ? placeInWords(limit.region, limit.side)
      : 'all work';
  const isOwn = step?.setLimit === true && limit.from === from;
  return [
    ...(isIn(limit.from, span) && !isOwn
      ? [{ date: limit.from, words: `a limit for ${place} from ${dayInWords(limit.from)}` }]
      : []),
    ...(limit.until !== null && isIn(limit.until, span) && limit.until >= limit.from
      ? [{ date: limit.until, words: `the limit for ${place} ended ${dayInWords(limit.until)}` }]
      : []),
  ];
}

function absenceInWords({ from, to, kind }: HistoryAbsence, span: Span): Change[] {
  if (from > span.to || (to !== null && to < span.from)) return [];
  const end = to === null ? ', open' : to === from ? '' : ` to ${dayInWords(to)}`;
  return [{ date: from, words: `away (${kind}) ${dayInWords(from)}${end}` }];
}

function isIn(date: string, { from, to }: Span): boolean {
  return date >= from && date <= to;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
