import { describe, expect, test } from 'vitest';
import { morningQuestion } from '#lib/views/phone-morning.ts';
import { aCheckIn, aPain, aRestDay, day } from '#tests/fixtures/history-builders.ts';

const TODAY = day(10);
const hurt = (value: number, over = {}) => aPain(value, { region: 'elbow-inner', side: 'right', ...over });

describe('how is it this morning', () => {
  test('is asked after a training with pain, about each place once with its highest score', () => {
    const yesterday = aCheckIn(9, {
      pain: [
        hurt(2, { moment: 'during' }),
        hurt(5, { moment: 'after' }),
        hurt(6, { region: 'wrist-back', side: 'left', kind: 'muscle' }),
      ],
    });
    expect(morningQuestion([yesterday], TODAY)).toMatchObject({
      date: day(9),
      why: 'pain',
      places: [
        { region: 'wrist-back', side: 'left', kind: 'muscle', value: 6 },
        { region: 'elbow-inner', side: 'right', value: 5 },
      ],
    });
  });

  test('is not asked after pain of 0, a day without training, or two days later', () => {
    expect(morningQuestion([aCheckIn(9, { pain: [hurt(0)] })], TODAY)).toBeNull();
    expect(morningQuestion([aRestDay(9, { pain: [hurt(5, { moment: 'today' })] })], TODAY)).toBeNull();
    expect(morningQuestion([aCheckIn(8, { pain: [hurt(5)] })], TODAY)).toBeNull();
  });

  test('is not asked again once this morning was told, by a score or by "nothing hurts"', () => {
    const yesterday = aCheckIn(9, { pain: [hurt(5)] });
    const told = aRestDay(10, { pain: [hurt(1, { moment: 'morning' })] });
    expect(morningQuestion([told, yesterday], TODAY)).toBeNull();
    expect(morningQuestion([aRestDay(10, { nothingHurts: true }), yesterday], TODAY)).toBeNull();
    const trained = aCheckIn(10, { pain: [hurt(4, { moment: 'during' })] });
    expect(morningQuestion([trained, yesterday], TODAY)).not.toBeNull();
  });
});

describe('after a load far above the usual', () => {
  const usual = [1, 3, 5, 7].map((at) => aCheckIn(at));
  test('it is asked from half again on: 450 AU beside the usual 300', () => {
    expect(morningQuestion([aCheckIn(9, { minutes: 90 }), ...usual], TODAY)).toEqual({
      date: day(9),
      why: 'load',
      places: [],
    });
    expect(morningQuestion([aCheckIn(9, { minutes: 89 }), ...usual], TODAY)).toBeNull();
  });

  test('two sessions of a day are one load', () => {
    const second = aCheckIn(9, { session: 'B', minutes: 30 });
    expect(morningQuestion([second, aCheckIn(9), ...usual], TODAY)?.why).toBe('load');
  });

  test('an unknown load, or fewer than four trainings to compare with, is no reason to ask', () => {
    expect(morningQuestion([aCheckIn(9, { effort: null, minutes: 200 }), ...usual], TODAY)).toBeNull();
    expect(morningQuestion([aCheckIn(9, { minutes: 200 }), ...usual.slice(1)], TODAY)).toBeNull();
  });
});
