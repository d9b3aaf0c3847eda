import fc from 'fast-check';
import type { AsOf } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { aRestDay, evening } from '#tests/fixtures/history-builders.ts';
import type { Draft } from './draft.ts';
import { STORIES, type Story } from './stories.ts';
import { type Base, emptyHistory, usualCheckIn, ZONES } from './world.ts';

/** How a random client came about: few numbers, that a failure shows and that shrink. */
export type Life = { base: Base; stories: Story[] };
/** That client's history and the evening looked from, `last` days after the first. */
export type Case = { history: ClientHistory; asOf: AsOf; last: number; base: Base };

const base: fc.Arbitrary<Base> = fc.record({
  weeks: fc.oneof(
    { weight: 1, arbitrary: fc.integer({ min: 2, max: 8 }) },
    { weight: 4, arbitrary: fc.integer({ min: 9, max: 13 }) },
  ),
  zone: fc.constantFrom(...ZONES),
  under18: fc.constantFrom(false, false, false, false, true),
  bodyMassKg: fc.constantFrom(60, 72.5, null),
  toldWeekAu: fc.constantFrom(null, 400, 900),
  perWeek: fc.integer({ min: 2, max: 5 }),
  twoSessions: fc.boolean(),
  ladders: fc.integer({ min: 3, max: 10 }),
  asked: fc.constantFrom(0.6, 0.8, 1),
  reached: fc.constantFrom(0.9, 1.1, 1.15, 1.2),
  growth: fc.constantFrom(0, 0.01, 0.03),
  effort: fc.integer({ min: 2, max: 8 }),
  minutes: fc.constantFrom(30, 45, 60, 75),
  tellsRest: fc.boolean(),
  seed: fc.nat(9_999),
});
const ALL = Object.keys(STORIES) as Story['name'][];
/** Rules that need several things at once are told of more often. */
const OFTEN: Story['name'][] = [
  'pain',
  'pain',
  'grass',
  'grass',
  'high',
  'danger',
  'films',
  'behind',
  'fault',
  'stacked',
];
const story: fc.Arbitrary<Story> = fc.record({
  name: fc.constantFrom(...ALL, ...OFTEN),
  size: fc.nat(9),
  back: fc.nat(9),
  side: fc.constantFrom('left' as const, 'right' as const),
  one: fc.boolean(),
  other: fc.boolean(),
});

/** Clients whose life a few stories bend: together they make every check speak. */
export const anyLife: fc.Arbitrary<Life> = fc.record({
  base,
  stories: fc.array(story, { maxLength: 6, size: 'max' }),
});

export function told({ base: of, stories }: Life): Case {
  const last = of.weeks * 7 - 1;
  const draft: Draft = {
    base: of,
    last,
    calendar: calendarOf(of, last),
    history: emptyHistory(of),
    changes: [],
  };
  for (const each of stories) STORIES[each.name](draft, each);
  const { history, calendar, changes } = draft;
  let trained = 0;
  calendar.forEach((what, at) => {
    if (what === 'rest') history.checkIns.push(aRestDay(at, { zone: of.zone }));
    if (what !== 'train') return;
    const usual = usualCheckIn(of, at, of.twoSessions && trained % 2 === 1 ? 'B' : 'A');
    trained += 1;
    history.checkIns.push(changes.reduce((checkIn, change) => change(checkIn, at), usual));
  });
  return { history: withNamedRungs(history), asOf: evening(last), last, base: of };
}

function calendarOf({ perWeek, tellsRest }: Base, last: number): Draft['calendar'] {
  const days = [0, 2, 4, 5, 1].slice(0, perWeek);
  return Array.from({ length: last + 1 }, (_, at) =>
    days.includes(at % 7) ? 'train' : tellsRest ? 'rest' : 'none',
  );
}

/** Placements and sets of ladders the client does not train are left out. */
function withNamedRungs(history: ClientHistory): ClientHistory {
  const known = new Set(history.rungs.map((rung) => rung.id));
  return { ...history, placements: history.placements.filter(({ rungId }) => known.has(rungId)) };
}
