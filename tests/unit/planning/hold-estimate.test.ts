import { describe, expect, it } from 'vitest';
import { estimateFromOwn, estimateHold, intensityOf, personalSlope } from '#lib/planning/hold-estimate.ts';

const STRENGTH = { family: 'straight-arm-push' as const };
/**
 * Moments of the planche about the shoulder, body weight x height (own statics with the body-segment masses of Winter):
 * tuck, advanced tuck with level shins, straddle 45 degrees a side, full.
 */
const [TUCK, ADVANCED, STRADDLE, FULL] = [0.14, 0.1739, 0.2047, 0.225] as const;
const estimate = (seconds: number, load: number, to: number) => estimateHold(STRENGTH, { seconds, load }, to);

describe('a hold on the next rung, as a range', () => {
  // Three-compartment model of Frey-Law, Looft and Heitsman 2012 (shoulder F 0.0182, R 0.00168), worked by hand.
  it('takes a hold of 20 s for 0.736 of the maximum', () => {
    expect(intensityOf(20)).toBeCloseTo(0.7364, 3);
  });

  // Low end the general model, high end the power law of Frey-Law and Avin 2010: 20 s x (0.1739/0.1400)^-1.83 = 13.4 s.
  it.each([
    [20, TUCK, ADVANCED, 0, 14],
    [30, TUCK, ADVANCED, 3, 21],
    [60, TUCK, ADVANCED, 27, 41],
    [30, ADVANCED, STRADDLE, 9, 23],
    [20, ADVANCED, FULL, 0, 13],
    [30, ADVANCED, FULL, 0, 19],
  ])('of %d s at %d is for %d between %d and %d s', (seconds, from, to, low, high) => {
    expect(estimate(seconds, from, to)).toMatchObject({ low, high, basis: 'models' });
  });

  it('says how much strength is missing where a model calls it not feasible', () => {
    // General model (F 0.0097, R 0.00091): 1 / (1 + 10.659 x (1 - e^-0.0182)) = 0.8388, x 1.2421 = 1.0419.
    expect(estimate(20, TUCK, ADVANCED)?.gap).toBeCloseTo(0.0419, 3);
    expect(estimate(60, TUCK, ADVANCED)?.gap).toBeNull();
  });

  it('is never given for balance, for an easier rung, or without a hold', () => {
    expect(estimateHold({ family: 'balance' }, { seconds: 20, load: 1 }, 1.1)).toBeUndefined();
    expect(estimate(20, ADVANCED, TUCK)).toBeUndefined();
    expect(estimate(0, TUCK, ADVANCED)).toBeUndefined();
    expect(estimate(20, 0, ADVANCED)).toBeUndefined();
  });

  it('carries its doubt with it', () => {
    expect(estimate(20, TUCK, ADVANCED)?.doubt).toContain('An estimate');
  });
});

describe('a hold from two rungs of one person', () => {
  const easier = { seconds: 40, load: TUCK };
  const harder = { seconds: 12, load: ADVANCED };
  it('follows their own slope: -5.55, and 4.85 s in the straddle', () => {
    expect(personalSlope(easier, harder)).toBeCloseTo(-5.55, 2);
    // 4.85 s, 30 % to either side
    expect(estimateFromOwn(STRENGTH, [easier, harder], STRADDLE)).toMatchObject({
      low: 3,
      high: 7,
      basis: 'own results',
    });
  });

  it('needs a harder rung that was held for less, and is never given for balance', () => {
    expect(estimateFromOwn(STRENGTH, [harder, easier], STRADDLE)).toBeUndefined();
    expect(estimateFromOwn(STRENGTH, [easier, { ...harder, seconds: 40 }], STRADDLE)).toBeUndefined();
    expect(estimateFromOwn({ family: 'balance' }, [easier, harder], STRADDLE)).toBeUndefined();
  });
});
