import { describe, expect, it } from 'vitest';
import { dangerSign } from '#lib/checks/rules/danger-sign.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { DANGER_SIGNS } from '#lib/domain/vocabulary.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory } from '#tests/fixtures/history-builders.ts';

type Told = HistoryCheckIn['dangerSigns'][number];
const sign = (over: Partial<Told> = {}): Told => ({
  sign: 'weakness',
  goneWithinMinute: false,
  region: 'elbow-inner',
  side: 'right',
  ...over,
});
const told = (days: number, ...dangerSigns: Told[]) => aCheckIn(days, { dangerSigns });
const flagged = (checkIns: HistoryCheckIn[], days = 12) =>
  judge(dangerSign, aHistory({ checkIns }), days).filter((outcome) => outcome.status === 'flagged');

// The list of signs and "stop, see a clinician": common practice, no source.
describe('danger-sign', () => {
  it.each(DANGER_SIGNS)('speaks now for %s', (name) => {
    const [finding] = flagged([told(11, sign({ sign: name }))]);
    expect(finding).toMatchObject({ tier: 'now', points: 3, step: { kind: 'send-to-clinician' } });
  });
  it('is silent without one', () => {
    expect(flagged([told(9), told(11)])).toEqual([]);
  });
  it('takes tingling that was gone within a minute, the first time, for today; twice in 14 days for now', () => {
    const brief = sign({ sign: 'numb-or-tingling', goneWithinMinute: true });
    expect(flagged([told(11, brief)])[0]).toMatchObject({ tier: 'today' });
    expect(flagged([told(2, brief), told(11, brief)])[0]).toMatchObject({ tier: 'now' });
    expect(flagged([told(11, { ...brief, goneWithinMinute: false })])[0]).toMatchObject({ tier: 'now' });
  });
});
