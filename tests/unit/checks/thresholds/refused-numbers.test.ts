import { describe, expect, it } from 'vitest';
import { boundsOf } from '#lib/checks/thresholds/bounds.ts';
import { refusedNumbers } from '#lib/checks/thresholds/refused-numbers.ts';
import { isLimitId, THRESHOLDS } from '#lib/checks/thresholds.ts';

const ids = Object.keys(THRESHOLDS).filter(isLimitId);
const open = ids.filter((id) => boundsOf(id).kept === undefined);

describe('bounds', () => {
  it('of every number hold its default', () => {
    for (const id of ids) {
      const { min, max, whole } = boundsOf(id);
      const { value } = THRESHOLDS[id];
      expect([id, value >= min, value <= max, !whole || Number.isInteger(value)]).toEqual([
        id,
        true,
        true,
        true,
      ]);
    }
  });

  it('and of the numbers of a check no two mean the same words', () => {
    const named = ids.map((id) => `${id.split('.')[0]} ${THRESHOLDS[id].meaning}`);
    expect(named.filter((one, at) => named.indexOf(one) !== at)).toEqual([]);
  });

  it('keep what is urgent and what is a definition the same for everybody', () => {
    const kept = ids.filter((id) => boundsOf(id).kept !== undefined);
    expect(kept).toEqual(expect.arrayContaining(['dangerSign.twiceDays', 'points.danger', 'ewma.shortDays']));
    expect(refusedNumbers({ 'points.danger': 1 }).get('points.danger')).toBe(
      'cannot be changed: what is urgent is the same for everybody',
    );
  });
});

describe('refusedNumbers', () => {
  it('takes every default', () => {
    const defaults = Object.fromEntries(open.map((id) => [id, THRESHOLDS[id].value]));
    expect([...refusedNumbers(defaults)]).toEqual([]);
  });

  it.each([
    ['painHigh.from', 7, 'must be between 0 and 6: pain of 6 or more is high for everybody'],
    ['painHigh.clearCheckIns', 1, 'must be between 2 and 60: one check-in alone does not clear high pain'],
    ['noLetUp.restDaysUnder18', 9, 'must be between 1 and 7: under 18 one rest day a week'],
    ['goneQuiet.watchDays', 7.5, 'must be a whole number'],
    ['goneQuiet.watchDays', 0, 'must be between 1 and 400'],
    ['goneQuiet.watchDays', Number.NaN, 'must be a number'],
    ['goneQuiet.watchDays', '8', 'must be a number'],
    ['sideGap.p', 0.5, 'must be between 0.0001 and 0.2'],
    ['goneQuiet.nothing', 1, 'is not a number of these checks'],
    ['__proto__x', 1, 'is not a number of these checks'],
  ])('refuses %s at %s', (id, value, why) => {
    expect(refusedNumbers({ [id]: value }).get(id)).toBe(why);
  });

  it('refuses a pair the wrong way round at the number that was changed, by what the other means', () => {
    expect(refusedNumbers({ 'sideGap.watchPercent': 20 }).get('sideGap.watchPercent')).toBe(
      'must not be over 15: “median gap: act”',
    );
    expect(refusedNumbers({ 'sideGap.actPercent': 5 }).get('sideGap.actPercent')).toBe(
      'must not be under 10: “median gap: watch”',
    );
    expect([...refusedNumbers({ 'sideGap.watchPercent': 20, 'sideGap.actPercent': 30 })]).toEqual([]);
  });

  it('looks at what the numbers are laid over', () => {
    const base = { 'sideGap.actPercent': 30 };
    expect([...refusedNumbers({ 'sideGap.watchPercent': 20 }, base)]).toEqual([]);
    expect(refusedNumbers({ 'sideGap.watchPercent': 31 }, base).has('sideGap.watchPercent')).toBe(true);
  });
});
