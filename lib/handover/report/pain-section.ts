import { counted } from '#lib/checks/words.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import type { Block } from './blocks.ts';
import { dangerBlocks } from './danger-section.ts';
import type { ReportInput } from './input.ts';
import { changedBefore, positions } from './pain-around.ts';
import { day, heading, number, table, tableOr, text } from './say.ts';
import { highestOf, type SorePlace, scoredDaysOf, sorePlaces } from './sore-places.ts';

const DAYS_LISTED = 84;
const LINES_DRAWN = 3;
const PLACES_LISTED = 6;

/** Pain by place and day, what was done around it, and the danger signs that were asked. */
export function painSection(input: ReportInput): Block[] {
  const places = sorePlaces(input);
  return [
    heading(2, 'Pain'),
    ...(places.length === 0 ? [text('No joint or tendon pain above 0 was told in the period.')] : []),
    ...painLines(input, places.slice(0, LINES_DRAWN)),
    ...places.slice(0, PLACES_LISTED).flatMap((place) => placeBlocks(input, place)),
    ...(places.length > PLACES_LISTED
      ? [text(`And ${counted(places.length - PLACES_LISTED, 'more place')}, in pain.csv.`)]
      : []),
    ...dangerBlocks(input),
  ];
}

function painLines({ period }: ReportInput, places: readonly SorePlace[]): Block[] {
  const from = addDays(period.to, 1 - DAYS_LISTED);
  const lines = places
    .map((place) => ({
      name: place.name,
      points: [...place.days]
        .filter(([date]) => date >= from)
        .map(([date, scores]) => ({ date, value: highestOf(scores) })),
    }))
    .filter((line) => line.points.length > 0);
  if (lines.length === 0) return [];
  return [
    {
      kind: 'pain',
      caption: `Joint or tendon pain 0-10, highest of the day, ${day(from)} to ${day(period.to)}`,
      alt: lines
        .map(
          (line) =>
            `${line.name}: ${line.points.map((point) => `${point.value} on ${day(point.date)}`).join(', ')}.`,
        )
        .join(' '),
      from,
      to: period.to,
      lines,
    },
  ];
}

function placeBlocks(input: ReportInput, place: SorePlace): Block[] {
  const { period, history, limits } = input;
  const from = maxOf(addDays(period.to, 1 - DAYS_LISTED), period.from);
  const known = new Set(
    history.checkIns.map((one) => one.date).filter((date) => date >= from && date <= period.to),
  );
  const length = daysBetween(from, period.to) + 1;
  const listed = [...place.days].filter(([date, scores]) => date >= from && highestOf(scores) > 0).reverse();
  const told = history.client.intakePain.find(
    (one) => one.region === place.region && one.side === place.side,
  );
  return [
    heading(3, asSentence(place.name)),
    text(
      `First told ${day(place.since)}.${told ? ` At the start: ${told.value} of 10, for ${counted(told.sinceWeeks, 'week')}.` : ''} ${tendency(input, place)} In the last ${length} days ${known.size} have a check-in and ${length - known.size} have none; ${counted(scoredDaysOf(place, from), 'day')} with a score here.`,
    ),
    text(changedBefore(input, place)),
    tableOr(
      `no score above 0 in the last ${length} days.`,
      table(
        `${asSentence(place.name)}, by day`,
        'pain.csv',
        ['Date', 'During#', 'After#', 'Next morning#', 'On a day without training#'],
        listed.map(([date, { during, after, morning, today }]) => [
          day(date),
          number(during),
          number(after),
          number(morning),
          number(today),
        ]),
      ),
    ),
    ...positions(input, place, from, limits['tissue.loaded']),
  ];
}

/** Means of nothing: the medians of the last 28 days and of the 28 before, beside each other. */
function tendency({ period }: ReportInput, place: SorePlace): string {
  const between = (from: string, to: string) =>
    median(
      [...place.days].filter(([date]) => date > from && date <= to).map(([, scores]) => highestOf(scores)),
    );
  const now = between(addDays(period.to, -28), period.to);
  const before = between(addDays(period.to, -56), addDays(period.to, -28));
  if (now === undefined) return 'Not spoken of in the last 28 days.';
  if (before === undefined) return `Median of the last 28 days ${now}; nothing is known of the 28 before.`;
  const word = now > before ? 'up from' : now < before ? 'down from' : 'the same as';
  return `Median of the last 28 days ${now}, ${word} ${before === now ? '' : `${before} in `}the 28 before.`;
}

function maxOf(a: string, b: string): string {
  return a > b ? a : b;
}
