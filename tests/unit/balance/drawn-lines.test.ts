import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnAngle, helpedPart, leanOfLine, placingSpread } from '#lib/balance/drawn-lines.ts';

const point = fc.record({ x: fc.integer({ min: 0, max: 1000 }), y: fc.integer({ min: 0, max: 1000 }) });

describe('an angle drawn over a picture', () => {
  it('is what it is, mirrored, scaled or with its ends changed', () => {
    fc.assert(
      fc.property(point, point, point, fc.integer({ min: 2, max: 5 }), (at, a, b, times) => {
        const drawn = drawnAngle({ at, a, b }, 3);
        fc.pre(drawn !== undefined);
        const flip = ({ x, y }: { x: number; y: number }) => ({ x: 1000 - x, y });
        const larger = ({ x, y }: { x: number; y: number }) => ({ x: x * times, y: y * times });
        expect(drawnAngle({ at: flip(at), a: flip(a), b: flip(b) }, 3)?.degrees).toBeCloseTo(
          drawn?.degrees ?? -1,
          6,
        );
        expect(drawnAngle({ at, a: b, b: a }, 3)?.degrees).toBeCloseTo(drawn?.degrees ?? -1, 6);
        const big = drawnAngle({ at: larger(at), a: larger(a), b: larger(b) }, 3 * times);
        expect(big?.degrees).toBeCloseTo(drawn?.degrees ?? -1, 6);
        expect(big?.error).toBeCloseTo(drawn?.error ?? -1, 6);
      }),
    );
  });

  it('has the error of arms of 100 pixels placed within 4: 4.6 degrees at a right angle, less with longer arms', () => {
    const right = (arm: number) =>
      drawnAngle({ at: { x: 0, y: 0 }, a: { x: 0, y: arm }, b: { x: arm, y: 0 } }, 4)?.error ?? 0;
    // Each end turns by atan(4/100) across its arm, and the middle by both on each axis: 2 x 2.29 as squares of four.
    expect(right(100)).toBeCloseTo(4.6, 1);
    expect(right(400)).toBeCloseTo(1.15, 1);
    expect(drawnAngle({ at: { x: 1, y: 1 }, a: { x: 1, y: 1 }, b: { x: 5, y: 5 } }, 4)).toBeUndefined();
  });
});

describe('a line drawn over a picture', () => {
  it('leans by its ends, to the right where its top is to the right', () => {
    const lean = leanOfLine({ top: { x: 110, y: 0 }, bottom: { x: 100, y: 573 } }, 4);
    expect(lean?.degrees).toBeCloseTo(1, 2);
    expect(lean?.error).toBeCloseTo(0.57, 2);
    expect(leanOfLine({ top: { x: 90, y: 0 }, bottom: { x: 100, y: 573 } }, 4)?.degrees).toBeCloseTo(-1, 2);
    const one = { x: 1, y: 1 };
    expect(leanOfLine({ top: one, bottom: one }, 4)).toBeUndefined();
  });

  it('is placed as well as a still of that height', () => {
    expect(placingSpread(800)).toBe(4);
    expect(placingSpread(1920)).toBeCloseTo(9.6, 6);
  });
});

describe('two hands drawn over a picture', () => {
  it('C33, statics of two supports: 50 mm of 350 mm from the carrying hand, 0.1429 of the weight is helped', () => {
    const hands = { carrying: { x: 0, y: 0 }, helping: { x: 350, y: 0 } };
    expect(helpedPart(hands, 50, 0)).toEqual({ part: expect.closeTo(0.1429, 4), error: 0 });
    expect(70 * (helpedPart(hands, 50, 0)?.part ?? 0)).toBeCloseTo(10, 1); // kg of 70
  });

  it('the hands told the other way round carry the rest; mirrored and scaled it is the same', () => {
    fc.assert(
      fc.property(point, point, fc.integer({ min: 0, max: 1000 }), (carrying, helping, centre) => {
        fc.pre(carrying.x !== helping.x);
        const helped = helpedPart({ carrying, helping }, centre, 4);
        const other = helpedPart({ carrying: helping, helping: carrying }, centre, 4);
        expect((helped?.part ?? 0) + (other?.part ?? 0)).toBeCloseTo(1, 6);
        expect(other?.error).toBeCloseTo(helped?.error ?? -1, 6);
        const to = ({ x, y }: { x: number; y: number }) => ({ x: 3 * (1000 - x), y });
        const there = helpedPart({ carrying: to(carrying), helping: to(helping) }, 3 * (1000 - centre), 12);
        expect(there?.part).toBeCloseTo(helped?.part ?? -1, 6);
        expect(there?.error).toBeCloseTo(helped?.error ?? -1, 6);
      }),
    );
  });

  it('has the error of moving each point, and none where both stand in one place', () => {
    const hands = { carrying: { x: 100, y: 0 }, helping: { x: 300, y: 0 } };
    const by = (moved: typeof hands, centre: number) => (helpedPart(moved, centre, 0)?.part ?? 0) - 0.25;
    const changes = [
      by(hands, 150.01),
      by({ ...hands, carrying: { x: 100.01, y: 0 } }, 150),
      by({ ...hands, helping: { x: 300.01, y: 0 } }, 150),
    ];
    expect(helpedPart(hands, 150, 0.01)?.error).toBeCloseTo(Math.hypot(...changes), 8);
    expect(helpedPart({ carrying: hands.carrying, helping: hands.carrying }, 150, 4)).toBeUndefined();
  });
});
