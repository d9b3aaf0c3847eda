import { describe, expect, test } from 'vitest';
import { cautionsOf, isUrgent } from '#lib/domain/caution.ts';
import { DANGER_SIGNS } from '#lib/domain/vocabulary.ts';

function aScore(value: number, changes: object = {}) {
  return { region: 'elbow-inner', side: 'right', kind: 'joint', value, ...changes } as const;
}

describe('caution before anything is sent', () => {
  test('6 is the first score that asks for it, 5 is not', () => {
    expect(cautionsOf({ pain: [aScore(5)], dangerSigns: [] })).toEqual([]);
    expect(cautionsOf({ pain: [aScore(6)], dangerSigns: [] })).toEqual([
      {
        title: 'Right elbow, inner: 6 of 10',
        text: 'Stop pulling and pushing work and see a licensed clinician. Don’t wait for this to be sent.',
      },
    ]);
    expect(isUrgent({ pain: [aScore(5)], dangerSigns: [] })).toBe(false);
    expect(isUrgent({ pain: [aScore(5)], dangerSigns: [] }, true)).toBe(true);
    expect(isUrgent({ pain: [aScore(4)], dangerSigns: [] }, true)).toBe(false);
    expect(cautionsOf({ pain: [aScore(5)], dangerSigns: [] }, true)).toHaveLength(1);
    expect(isUrgent({ pain: [aScore(6)], dangerSigns: [] })).toBe(true);
  });
  test('one caution a place, with its worst score', () => {
    const cautions = cautionsOf({
      pain: [aScore(6), aScore(8), aScore(7, { side: 'left' })],
      dangerSigns: [],
    });
    expect(cautions.map((caution) => caution.title)).toEqual([
      'Right elbow, inner: 8 of 10',
      'Left elbow, inner: 7 of 10',
    ]);
  });
  test('sore muscle of 9 is no caution', () => {
    expect(cautionsOf({ pain: [aScore(9, { kind: 'muscle' })], dangerSigns: [] })).toEqual([]);
  });
  test.each(DANGER_SIGNS)('%s always is one, with a clinician or help at once', (sign) => {
    const told = { pain: [], dangerSigns: [{ sign, region: null, side: null }] };
    expect(isUrgent(told)).toBe(true);
    expect(cautionsOf(told)).toEqual([
      {
        title: expect.stringMatching(/^[A-Z]/),
        text: expect.stringMatching(/licensed clinician|medical help at once/),
      },
    ]);
  });
  test('the six signs that wait for nobody', () => {
    const atOnce = DANGER_SIGNS.filter((sign) =>
      cautionsOf({ pain: [], dangerSigns: [{ sign, region: null, side: null }] })[0]?.text.includes(
        'at once',
      ),
    );
    expect(atOnce).toEqual([
      'chest-pain',
      'fainting-or-breath',
      'arm-swollen-blue',
      'worst-headache',
      'flashes-or-curtain',
      'hot-joint-fever',
    ]);
  });
});
