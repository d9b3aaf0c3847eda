import { describe, expect, it } from 'vitest';
import { painRising } from '#lib/checks/rules/pain-rising.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain, threeAWeek } from '#tests/fixtures/history-builders.ts';

const WEEKS = 10;
/** Ten weeks, three check-ins each; the last ones carry the given worst pain, the ones before none. */
function ending(worst: readonly number[]) {
  const calm = WEEKS * 3 - worst.length;
  return threeAWeek(WEEKS, (days, session) =>
    aCheckIn(days, session < calm ? {} : { pain: [aPain(worst[session - calm] ?? 0)] }),
  );
}
const flagged = (worst: readonly number[]) =>
  judge(painRising, aHistory({ checkIns: ending(worst) }), 68).filter(
    (outcome) => outcome.status === 'flagged',
  );

describe('pain-rising', () => {
  // C = max(0, C + worst - usual - 1) over 21 days, usual 0: watch at 5, act at 8 (CUSUM after Page 1954; numbers own).
  it.each([
    [[3, 3], 'none'], // 2 + 2 = 4
    [[3, 4], 'watch'], // 2 + 3 = 5, just there
    [[4, 4], 'watch'], // 6
    [[4, 4, 2], 'watch'], // 7
    [[4, 4, 3], 'act'], // 8, just there
    [[5, 5, 5], 'act'], // 12
    [[1, 1, 1, 1, 1, 1, 1], 'none'], // never above usual + 1
  ] as [number[], string][])('worst of %j gives %s', (worst, level) => {
    expect(flagged(worst)[0]?.level ?? 'none').toBe(level);
  });
  it('asks that one of the last two check-ins is 2 or more above usual', () => {
    expect(flagged([4, 4, 4, 1, 1])).toEqual([]);
    expect(flagged([4, 4, 4, 2, 1])).toHaveLength(1);
  });
  it('is today at act and this week at watch, with its numbers in the sentence', () => {
    const [finding] = flagged([4, 4, 3]);
    expect(finding).toMatchObject({ tier: 'today', subject: { region: 'elbow-inner', side: 'right' } });
    expect(finding?.sentence).toContain('**8**');
    expect(flagged([4, 4])[0]?.tier).toBe('this-week');
  });
  it('does not take sore muscles for rising pain', () => {
    const checkIns = ending([4, 4, 4]).map((one) => ({
      ...one,
      pain: one.pain.map((score) => ({ ...score, kind: 'muscle' as const })),
    }));
    expect(judge(painRising, aHistory({ checkIns }), 68).filter((one) => one.status === 'flagged')).toEqual(
      [],
    );
  });
});
