import { describe, expect, it } from 'vitest';
import { PLACED, type Placed } from '#lib/balance/landmarks.ts';
import { readStill, type Still } from '#lib/balance/read-still.ts';
import { sameSpread, stillErrors } from '#lib/balance/still-errors.ts';
import { stillFrame } from '#lib/schemas/still-frame.ts';
import {
  firstPlacing,
  movedTo,
  nextSpot,
  SPOTS,
  spotAt,
  turnedOver,
  uprightThrough,
} from '#lib/views/still/placing.ts';
import { keptFigures } from '#lib/views/still/since-before.ts';
import { impossibleInWords, stillLines } from '#lib/views/still/still-lines.ts';

const SIZE = { width: 900, height: 1200 };
const linesOf = (placed: Placed, spread = 4, stature: number | null = null) => {
  const { plumb } = firstPlacing(SIZE);
  const scale =
    stature === null
      ? ({ by: 'hand', metres: 0.18 } as const)
      : ({ by: 'stature', metres: stature } as const);
  const still: Still = { placed, plumb, scale, model: 'winter' };
  const [reading, errors] = [readStill(still), stillErrors(still, sameSpread(spread))];
  if (!reading || !errors) throw new Error('no reading');
  return stillLines(reading, errors, stature);
};

describe('placing', () => {
  it('starts with a body inside the picture that can be read', () => {
    const { placed } = firstPlacing(SIZE);
    for (const { x, y } of Object.values(placed)) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(SIZE.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(SIZE.height);
    }
    expect(linesOf(placed).find(({ name }) => name === 'hip')?.value).toMatch(/^1[78]\d°$/);
  });

  it('moves one point and keeps it inside', () => {
    const start = firstPlacing(SIZE);
    for (const spot of SPOTS) {
      const moved = movedTo(start, spot, { x: -40, y: 5000 }, SIZE);
      expect(spotAt(moved, spot)).toEqual({ x: 0, y: 1200 });
      const others = SPOTS.filter((other) => other !== spot);
      for (const other of others) expect(spotAt(moved, other)).toEqual(spotAt(start, other));
    }
  });

  it('goes round all points and back, and turns a body over twice into itself', () => {
    let spot: (typeof SPOTS)[number] = 'heel';
    const met = new Set(
      SPOTS.map(() => {
        spot = nextSpot(spot, 1);
        return spot;
      }),
    );
    expect(met.size).toBe(SPOTS.length);
    expect(nextSpot('heel', -1)).toBe('plumb bottom');
    const start = firstPlacing(SIZE);
    expect(turnedOver(turnedOver(start, SIZE), SIZE)).toEqual(start);
    expect(turnedOver(start, SIZE).placed.fingertip.x).toBe(SIZE.width - start.placed.fingertip.x);
  });
});

describe('what a still says', () => {
  it('is no more exact than its error, and gives no side when that is in doubt', () => {
    const { placed } = firstPlacing(SIZE);
    const [rough] = linesOf(placed, 30);
    const [fine] = linesOf(placed, 0.2);
    expect(rough?.means).toContain('too near an edge');
    expect(fine?.means).toMatch(/balance|middle/);
    expect(fine?.value).toMatch(/^\d+\.\d %/);
    expect(rough?.value).toMatch(/^-?\d+0 %/);
  });

  it('tells moments only where the stature is known, and leaves out an angle without a limb', () => {
    const { placed } = firstPlacing(SIZE);
    expect(linesOf(placed).some(({ name }) => name.startsWith('gravity'))).toBe(false);
    expect(linesOf(placed, 4, 1.7).find(({ name }) => name.startsWith('gravity'))?.value).toContain(
      'of a full planche',
    );
    expect(linesOf({ ...placed, elbow: placed.shoulder }).some(({ name }) => name === 'elbow')).toBe(false);
  });

  it('names joints that cannot be right', () => {
    expect(impossibleInWords([])).toBeNull();
    expect(impossibleInWords([{ segment: 'forearm', times: 3 }])).toContain('forearm too long');
  });

  it('is kept only with points in a picture, a line that has a length, and a scale of a person', () => {
    const { placed, plumb } = firstPlacing(SIZE);
    const good = { placed, plumb, scale: { by: 'hand', metres: 0.18 }, model: 'winter' };
    expect(stillFrame.parse(good).second).toBeNull();
    const faulty: [string, object][] = [
      ['placed', { ...good, placed: { ...placed, hip: { x: -1, y: 2 } } }],
      [
        'placed',
        { ...good, placed: Object.fromEntries(PLACED.slice(1).map((name) => [name, placed[name]])) },
      ],
      ['plumb', { ...good, plumb: { top: { x: 1, y: 1 }, bottom: { x: 2, y: 2 } } }],
      ['scale', { ...good, scale: { by: 'hand', metres: 1.8 } }],
      ['scale', { ...good, scale: { by: 'stature', metres: Number.NaN } }],
      ['model', { ...good, model: 'other' }],
    ];
    for (const [field, body] of faulty) {
      const refused = stillFrame.safeParse(body);
      expect([field, refused.error?.issues[0]?.path[0]]).toEqual([field, field]);
    }
  });
});

describe('kept placings over time', () => {
  const { placed, plumb } = firstPlacing(SIZE);
  const bent = (by: number): Placed => ({ ...placed, ankle: { x: placed.ankle.x + by, y: placed.ankle.y } });
  const kept = (of: Placed, second: Placed | null = null) => ({
    stillId: 's',
    placed: of,
    second,
    plumb,
    scale: { by: 'hand', metres: 0.18 } as const,
    model: 'winter' as const,
  });

  it('say what changed since the one before only where it is more than placing', () => {
    const [now, before] = keptFigures([
      kept(bent(0)),
      kept({ ...placed, hip: { x: placed.hip.x + 90, y: placed.hip.y } }),
    ]);
    expect(now?.find(({ name }) => name === 'hip')?.since).toMatch(/^\+\d+° ± \d/);
    expect(before?.every(({ since }) => since === '')).toBe(true);
    const [same] = keptFigures([kept(placed), kept(bent(1))]);
    expect(same?.map(({ since }) => since)).toEqual(Array(3).fill('no change that placing can show'));
    expect(same?.[1]?.told).toMatch(/^1[78]\d(\.\d)?° ± \d/);
  });

  it('take the error from placing twice where that was done, and say nothing of what cannot be read', () => {
    const [twice] = keptFigures([kept(placed, bent(0.4)), kept(placed)]);
    const [once] = keptFigures([kept(placed)]);
    expect(twice?.[2]?.told).not.toBe(once?.[2]?.told);
    const flat = { ...kept(placed), plumb: { top: plumb.top, bottom: plumb.top } };
    expect(keptFigures([flat])[0]?.map(({ told }) => told)).toEqual(['not known', 'not known', 'not known']);
    expect(keptFigures([])).toEqual([]);
  });
});

it('draws the upright through the wrist along the plumb line', () => {
  const start = firstPlacing(SIZE);
  const straight = uprightThrough(start, SIZE);
  expect([straight.top.x, straight.bottom.x]).toEqual([start.placed.wrist.x, start.placed.wrist.x]);
  const leaning = { ...start, plumb: { top: { x: 0, y: 0 }, bottom: { x: 300, y: 400 } } };
  const line = uprightThrough(leaning, SIZE);
  expect((line.bottom.x - line.top.x) / (line.bottom.y - line.top.y)).toBeCloseTo(0.75, 9);
  expect(
    uprightThrough({ ...start, plumb: { top: start.plumb.top, bottom: start.plumb.top } }, SIZE).top,
  ).toEqual(start.placed.wrist);
});
