import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packFacts, rungIdsIn, unpackDays, unpackFacts } from '#lib/db/packed-facts.ts';
import type { HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';

const SET: HistorySet = {
  rungId: 'a',
  side: 'left',
  index: 0,
  planned: 20,
  value: 12,
  tried: null,
  how: 'typed',
  clean: true,
  faults: [],
  support: null,
  addedKg: null,
};
const CHECK_IN: HistoryCheckIn = {
  id: '00000000-0000-7000-8000-000000000001',
  date: '2026-03-01',
  zone: 'Europe/Lisbon',
  sentAt: '2026-03-01T18:00:00.000Z',
  kind: 'training',
  session: 'A',
  effort: 6,
  minutes: 50,
  ground: 'grass',
  sleepHours: 7.5,
  nothingHurts: false,
  sets: [SET],
  pain: [{ region: 'wrist-back', side: 'right', moment: 'after', value: 3, kind: 'joint', usual: true }],
  dangerSigns: [{ sign: 'numb-or-tingling', goneWithinMinute: false, region: 'neck', side: 'middle' }],
  words: 'slept badly',
};

const again = (checkIns: HistoryCheckIn[]) => unpackFacts('2026-03-01', packFacts(checkIns), new Map());

const maybe = <T>(values: fc.Arbitrary<T>) => fc.option(values, { nil: null });
const onFilm = fc.constantFrom<HistorySet['onFilm']>(
  { verdict: 'not-clean', faults: ['hips-turn'], told: { clean: true, faults: [] } },
  { verdict: 'cannot-see', faults: [], told: { clean: false, faults: ['ribs-open'] } },
);
const aSet: fc.Arbitrary<HistorySet> = fc.record(
  {
    rungId: fc.constantFrom('a', 'b'),
    side: fc.constantFrom('both' as const, 'left' as const, 'right' as const),
    index: fc.nat(4),
    planned: maybe(fc.constantFrom(20, 12.5)),
    value: maybe(fc.constantFrom(0, 12, 0.5, -10)),
    tried: maybe(fc.nat(3)),
    how: fc.constantFrom('typed' as const, 'timed' as const, 'as-planned' as const, 'not-done' as const),
    clean: fc.boolean(),
    faults: fc.constantFrom<HistorySet['faults'][]>([], ['hips-turn']),
    support: maybe(fc.constantFrom('bar' as const, 'rings' as const)),
    addedKg: maybe(fc.constantFrom(-5, 2.5)),
    onFilm,
  },
  {
    requiredKeys: [
      'rungId',
      'side',
      'index',
      'planned',
      'value',
      'tried',
      'how',
      'clean',
      'faults',
      'support',
      'addedKg',
    ],
  },
);

describe('the facts of a day, packed', () => {
  it('come back as they were, whatever the sets are', () => {
    fc.assert(
      fc.property(fc.array(aSet, { maxLength: 12 }), (sets) => {
        const checkIns = [
          { ...CHECK_IN, sets },
          { ...CHECK_IN, id: 'other', kind: 'rest' as const, words: '' },
        ];
        expect(again(checkIns)).toEqual(checkIns);
      }),
    );
  });

  it('write sets that are alike once', () => {
    const sets = [0, 1, 2].map((index) => ({ ...SET, index, value: 10 + index }));
    expect(JSON.parse(packFacts([{ ...CHECK_IN, sets }]))[0][1]).toEqual([
      ['a', 'left', 0, 20, [10, 11, 12]],
    ]);
  });

  it('keep a gap between indexes', () => {
    const sets = [0, 2].map((index) => ({ ...SET, index }));
    expect(again([{ ...CHECK_IN, sets }])[0]?.sets.map(({ index }) => index)).toEqual([0, 2]);
  });

  it('are read in the form they had before, put in order', () => {
    const [first, second] = [CHECK_IN, { ...CHECK_IN, id: '2', sentAt: '2026-03-01T19:00:00.000Z' }];
    expect(unpackFacts('2026-03-01', JSON.stringify([second, first]), new Map())).toEqual([first, second]);
  });

  it('stop at what is no check-in', () => {
    expect(() => unpackFacts('2026-03-01', '[{"id": "broken"}]', new Map())).toThrow(TypeError);
  });
});

describe('the rungs in a text of days', () => {
  const uuid = fc.uuid({ version: 4 });
  const aDay = fc.record({
    sets: fc.array(fc.tuple(aSet, uuid), { maxLength: 6 }),
    words: fc.constantFrom('', 'I said ["a","left", and', '["11111111-1111-4111-8111-111111111111","left",3'),
    packed: fc.boolean(),
  });

  it('are those of the sets, packed or as they were written before', () => {
    fc.assert(
      fc.property(fc.array(aDay, { maxLength: 4 }), (told) => {
        const days = told.map(({ sets, words, packed }, at) => {
          const checkIn = { ...CHECK_IN, words, sets: sets.map(([set, rungId]) => ({ ...set, rungId })) };
          const facts = packed ? packFacts([checkIn]) : JSON.stringify([checkIn]);
          return `["2026-03-0${at + 1}",${facts}]`;
        });
        const text = `[${days.join()}]`;
        const read = unpackDays(text, new Map()).flatMap(({ sets }) => sets.map(({ rungId }) => rungId));
        expect(rungIdsIn(text)).toEqual(new Set(read));
      }),
      { numRuns: 500 },
    );
  });
});
