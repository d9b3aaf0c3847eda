import { painSeries } from '#lib/checks/pain-series.ts';
import { scoredDays } from '#lib/checks/score.ts';
import { type Standing, standingsOf } from '#lib/checks/standings.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { asPercent, passInWords } from '#lib/checks/words.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { LoadPanel } from './client-load.ts';
import { isGoalLadder } from './ladder-forecast.ts';
import { shortDate } from './say-date.ts';

const WINDOW_DAYS = 28;

/** The last week's load against the usual one, and the worst pain of 28 days: one phrase each, none where unknown. */
export function nowInPhrases(view: ClientView, session: LoadPanel | undefined): string[] {
  return [...loadPhrase(session), ...painPhrase(view)];
}

function loadPhrase(session: LoadPanel | undefined): string[] {
  const now = session?.blocks.at(-1);
  if (!now || now.total === null || !session?.usual || session.usual.week <= 0) return [];
  const ratio = (now.total / session.usual.week).toFixed(1);
  return [`the week is ${now.printed.endsWith('+') ? 'at least ' : ''}**${ratio} ×** usual`];
}

function painPhrase(view: ClientView): string[] {
  const from = addDays(view.asOf.date, 1 - WINDOW_DAYS);
  let worst: { value: number; place: string } | undefined;
  let asked = false;
  for (const series of painSeries(view)) {
    for (const point of series.points) {
      if (point.date < from) continue;
      asked = true;
      if (point.highest > (worst?.value ?? 0))
        worst = { value: point.highest, place: placeInWords(series.region, series.side) };
    }
  }
  const saidCalm = view.days.slice(-WINDOW_DAYS).some((day) => day.checkIns.some((one) => one.nothingHurts));
  if (worst) return [`the worst pain of ${WINDOW_DAYS} days ${worst.value} of 10 (${worst.place})`];
  return asked || saidCalm ? [`no joint hurt in ${WINDOW_DAYS} days`] : [];
}

/** Where the client stands: ladders of a goal first, mobility last, then those that moved last. One sentence each. */
export function laddersInSentences(view: ClientView, limits: Limits): string[] {
  const isGoal = isGoalLadder(view);
  const planned = new Set(
    (view.planOn(view.asOf.date)?.items ?? []).flatMap((item) => view.rungs.get(item.rungId)?.ladderId ?? []),
  );
  const rank = ({ rung }: Standing) =>
    Number(isGoal(rung.ladderId)) * 4 +
    Number(planned.has(rung.ladderId)) * 2 +
    Number(rung.family !== 'mobility');
  return [...standingsOf(view)]
    .sort(
      (a, b) => rank(b) - rank(a) || (a.from < b.from ? 1 : a.from > b.from ? -1 : a.key < b.key ? -1 : 1),
    )
    .map((standing) => inSentence(view, standing, limits));
}

function inSentence(view: ClientView, { rung, side, from }: Standing, limits: Limits): string {
  const sides = side !== 'both' ? `, ${side} side` : rung.eachSide ? ', both sides' : '';
  const last = scoredDays(view, rung, side, limits).at(-1);
  const share = last ? `, **${asPercent(last.score)}** of the pass mark on ${shortDate(last.date)}` : '';
  return `On ${rung.name}${sides}, ${passInWords(rung)}, since ${shortDate(from)}${share}.`;
}
