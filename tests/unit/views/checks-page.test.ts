import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS, isLimitId, limitsWith, THRESHOLDS } from '#lib/checks/thresholds.ts';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import { changesInWords, checkGroups, titleOf } from '#lib/views/checks-page.ts';

const shown = (over: Partial<Parameters<typeof checkGroups>[0]> = {}) =>
  checkGroups({ without: DEFAULT_LIMITS, changed: {}, verdicts: [], ...over }).flatMap(
    ({ checks }) => checks,
  );
const check = (key: string, over: Partial<Parameters<typeof checkGroups>[0]> = {}) =>
  shown(over).find((one) => one.key === key) ?? expect.fail(`no ${key}`);

describe('checkGroups', () => {
  it('shows every check and every number once', () => {
    const all = shown();
    expect(all.map(({ key }) => key)).toEqual(expect.arrayContaining([...CHECK_KINDS]));
    const ids = all.flatMap(({ numbers }) => numbers.map(({ id }) => id));
    expect([...ids].sort()).toEqual(Object.keys(THRESHOLDS).filter(isLimitId).sort());
    for (const id of ids) expect(titleOf(id)).not.toBe(id.split('.')[0]);
  });

  it('says what is in force, what would be without a change, and how many differ', () => {
    const over = {
      without: limitsWith({ 'sideGap.actPercent': 20 }),
      changed: { 'sideGap.watchPercent': 12.5 },
    };
    const side = check('side-gap', over);
    expect(side.changed).toBe(1);
    expect(side.numbers.find(({ id }) => id === 'sideGap.watchPercent')).toMatchObject({
      value: '12.5',
      without: '10',
    });
    expect(side.numbers.find(({ id }) => id === 'sideGap.actPercent')).toMatchObject({
      value: '20',
      without: '20',
    });
    expect(check('stalled', over).changed).toBe(0);
  });

  it('says why a number cannot be changed, or only to one side', () => {
    expect(check('danger-sign').numbers[0]?.kept).toBe('what is urgent is the same for everybody');
    expect(check('pain-high').numbers[0]?.bounds).toContain('pain of 6 or more is high for everybody');
  });

  it('suggests a look once fewer than one in three of thirty were right to tell, never for what is urgent', () => {
    const said = (kind: 'stalled' | 'pain-high', right: number, notNeeded: number) =>
      check(kind, { verdicts: [{ kind, right, notNeeded }] });
    expect(said('stalled', 9, 21)).toMatchObject({ verdicts: '9 right to tell, 21 not needed', look: true });
    expect(said('stalled', 10, 20).look).toBe(false);
    expect(said('stalled', 2, 27).look).toBe(false);
    expect(said('pain-high', 1, 40).look).toBe(false);
  });
});

describe('changesInWords', () => {
  it('names the check, the number, from what to what, back to the default too', () => {
    const words = (before: object, after: object) => changesInWords(before, after, DEFAULT_LIMITS);
    expect(words({}, { 'sideGap.watchPercent': 12 })).toEqual([
      'One side behind, median gap: watch: 10 to 12 %',
    ]);
    expect(words({ 'sideGap.watchPercent': 12 }, {})).toEqual([
      'One side behind, median gap: watch: 12 to 10 %',
    ]);
    expect(words({ 'week.usualAtLeast': 4 }, {})).toEqual([]);
  });
});
