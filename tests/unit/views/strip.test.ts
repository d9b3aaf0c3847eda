import { describe, expect, it } from 'vitest';
import { addDays } from '#lib/domain/local-date.ts';
import { type StripDay, type StripDays, toStrip } from '#lib/views/strip.ts';
import { stripPaths } from '#lib/views/strip-paths.ts';
import { LAST_NIGHT } from './board-fixture.ts';

const FROM = addDays(LAST_NIGHT, -83);
const options = { lastNight: LAST_NIGHT, earned: false };

/** Every second day trained with this load; the days between are a regular client's rest. */
function steady(
  load: number,
  over: (date: string, index: number) => Partial<StripDay> | null = () => ({}),
): StripDays {
  const days = Array.from({ length: 84 }, (_, index) => {
    const date = addDays(FROM, index);
    const more = over(date, index);
    return more === null || index % 2 === 0 ? [] : [{ date, state: 'trained', load, pain: 0, ...more }];
  }).flat();
  return { days, absences: [], placements: [] };
}

describe('load', () => {
  it('makes twelve blocks of seven days, the last one ending on the last night', () => {
    const { weeks, from, to } = toStrip(steady(100), options);
    expect(weeks).toHaveLength(12);
    expect([from, to]).toEqual(['2026-09-02', '2026-11-24']);
    expect(weeks[11]?.from).toBe('2026-11-18');
    // Days 1, 3, 5 … are trained: 3 or 4 in a block of seven.
    expect(weeks.map((week) => week.load)).toEqual([3, 4, 3, 4, 3, 4, 3, 4, 3, 4, 3, 4].map((n) => n * 100));
  });

  it('shows only what lies above the usual week and two spreads', () => {
    const every = { days: [] as StripDay[], absences: [], placements: [] };
    for (let index = 0; index < 84; index += 1) {
      every.days.push({ date: addDays(FROM, index), state: 'trained', load: index >= 77 ? 30 : 10, pain: 0 });
    }
    const strip = toStrip(every, options);
    // Ordinary weeks are all 70 AU: median 70, spread 0.
    expect(strip.ceiling).toBe(70);
    expect(strip.weeks.map((week) => week.over)).toEqual([...Array(11).fill(0), 140]);
  });

  it('never makes zero of an unknown week, and does not draw a bar there', () => {
    const strip = toStrip(
      steady(100, (_, index) => (index >= 28 && index < 49 ? null : {})),
      options,
    );
    expect(strip.weeks.slice(4, 7).map((week) => week.load)).toEqual([undefined, undefined, undefined]);
    const { bodies, unknown } = stripPaths(strip);
    expect(bodies.match(/M/g)).toHaveLength(9);
    expect(unknown.match(/M/g)).toHaveLength(3);
    expect(strip.spoken).toContain('3 of 12 weeks unknown');
  });

  it('takes a holiday as known and without load', () => {
    const input = steady(100, (_, index) => (index >= 28 && index < 49 ? null : {}));
    const strip = toStrip(
      { ...input, absences: [{ from: addDays(FROM, 28), to: addDays(FROM, 48) }] },
      options,
    );
    expect(strip.weeks[5]?.load).toBe(0);
  });

  it('leaves the newest seven days out of the usual week', () => {
    // 35 known days are five blocks; without the newest seven days four remain, with 28 only three.
    const since = (first: number) =>
      toStrip(
        steady(100, (_, index) => (index < first ? null : {})),
        options,
      ).ceiling;
    expect(since(47)).toBeDefined();
    expect(since(55)).toBeUndefined();
  });

  it('has no usual week under four ordinary ones', () => {
    const strip = toStrip(
      steady(100, (_, index) => (index < 56 ? null : {})),
      options,
    );
    expect(strip.ceiling).toBeUndefined();
    expect(strip.spoken).toContain('usual week not known yet');
  });
});

describe('pain', () => {
  it('names the newest of equal peaks from 3 on, none below', () => {
    const with4 = steady(100, (_, index) => ({ pain: index === 61 || index === 81 ? 4 : 1 }));
    expect(toStrip(with4, options).peak).toEqual({ day: 81, value: 4 });
    expect(
      toStrip(
        steady(100, () => ({ pain: 2 })),
        options,
      ).peak,
    ).toBeUndefined();
  });

  it('draws thick only where a value is 3 or more', () => {
    const quiet = stripPaths(
      toStrip(
        steady(100, () => ({ pain: 2 })),
        options,
      ),
    );
    expect([quiet.loud, quiet.points]).toEqual(['', []]);
    const loud = stripPaths(
      toStrip(
        steady(100, (_, index) => ({ pain: index >= 79 ? 3 : 0 })),
        options,
      ),
    );
    expect(loud.points).toHaveLength(3);
    expect(loud.peak?.text).toBe('3');
  });

  it('breaks the line at unknown days', () => {
    const strip = toStrip(
      steady(100, (_, index) => (index >= 28 && index < 49 ? null : {})),
      options,
    );
    const first = strip.pain.find((point) => point.day >= 49);
    expect(first?.joined).toBe(false);
    expect(strip.pain.filter((point) => !point.joined)).toHaveLength(2);
  });
});

describe('steps', () => {
  const placements = [
    { ladderId: 'l1', side: 'both', from: addDays(FROM, -40), position: 2 },
    { ladderId: 'l1', side: 'both', from: addDays(FROM, 30), position: 3 },
    { ladderId: 'l2', side: 'both', from: addDays(FROM, 60), position: 1 },
  ];
  it('starts with where the client stood and rises where the rung changed', () => {
    const strip = toStrip({ ...steady(100), placements }, { ...options, ladderId: 'l1' });
    expect(strip.steps).toEqual([
      { day: 0, position: 2 },
      { day: 30, position: 3 },
    ]);
    expect(stripPaths(strip).steps).toBe('M0 9H81.4V4H228');
  });

  it('takes the ladder that changed last when the reason names none', () => {
    expect(toStrip({ ...steady(100), placements }, options).steps).toEqual([{ day: 60, position: 1 }]);
  });

  it('has a dashed riser only for a rung that is earned', () => {
    const of = (earned: boolean) =>
      stripPaths(toStrip({ ...steady(100), placements }, { ...options, earned }));
    expect(of(false).earned).toBeUndefined();
    expect(of(true).earned).toMatch(/^M214 /);
  });
});

it('says the strip in one sentence', () => {
  const strip = toStrip(
    steady(100, (_, index) => ({ pain: index === 83 ? 5 : 0 })),
    options,
  );
  expect(strip.spoken).toBe(
    '12 weeks to Tuesday 24 November 2026; load of the last 7 days 400 AU; usual week 350 AU; pain up to 5 of 10 on 24 Nov; last pain 5 of 10.',
  );
});
