import { describe, expect, it } from 'vitest';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { limitInPlan } from '#lib/views/limit-in-plan.ts';
import { limitInWords, limitLines, untilInWords } from '#lib/views/limit-lines.ts';
import { aPlan, aPlanItem, aRung } from '#tests/fixtures/history-builders.ts';

const TODAY = '2026-11-25';
function limit(over: Partial<HistoryLimit> = {}): HistoryLimit {
  return {
    tissue: null,
    region: null,
    side: null,
    rule: 'none',
    percent: null,
    from: '2026-11-20',
    until: '2026-12-11',
    who: 'the physiotherapist',
    ...over,
  };
}

describe('a limit in words', () => {
  it('says what is ruled out or reduced, and where', () => {
    const said = [
      limit(),
      limit({ tissue: 'wrist-back', side: 'right' }),
      limit({ region: 'elbow-inner', side: 'left' }),
      limit({ rule: 'reduced', percent: 50 }),
      limit({ rule: 'reduced', percent: 40, tissue: 'wrist-back' }),
      limit({ rule: 'no-floor', side: 'left' }),
      limit({ rule: 'no-overhead' }),
    ].map(limitInWords);
    expect(said).toEqual([
      'No training',
      'Nothing for the right wrist bent back',
      'Nothing for the left elbow, inner',
      'Everything at 50 % of the sets',
      'Wrist bent back: 40 % of the sets',
      'No hands on the floor, left',
      'Nothing overhead',
    ]);
  });

  it('says its last day, or that it has none', () => {
    expect(untilInWords(limit(), TODAY)).toBe('until Fri 11 Dec');
    expect(untilInWords(limit({ until: null }), TODAY)).toBe('until further word');
  });
});

describe('limits as lines', () => {
  const row = (id: string, over: Partial<HistoryLimit>) => ({ ...limit(over), id, words: '' });

  it('stand in force first, then to come, then over; one ended on its first day is over', () => {
    const lines = limitLines(
      [
        row('over', { until: '2026-11-24' }),
        row('coming', { from: '2026-11-26' }),
        row('mistake', { from: TODAY, until: '2026-11-24' }),
        row('today', { until: TODAY }),
      ],
      TODAY,
      () => ['Heel pull out'],
    );
    expect(lines.map(({ id, state }) => `${id}: ${state}`)).toEqual([
      'today: in force',
      'coming: to come',
      'over: over',
      'mistake: over',
    ]);
    expect(lines.map(({ touches }) => touches.length)).toEqual([1, 0, 0, 0]);
    expect(lines[0]?.when).toBe('from Fri 20 Nov until Wed 25 Nov, said by the physiotherapist');
  });

  it('name the lines of the plan they take out or cut, once', () => {
    const rungs = new Map([aRung(), aRung({ id: 'free', weights: {} })].map((rung) => [rung.id, rung]));
    const plan = aPlan({
      items: [aPlanItem({ sets: 4 }), aPlanItem({ session: 'B', sets: 4 }), aPlanItem({ rungId: 'free' })],
    });
    const out = limit({ tissue: 'elbow-bending' });
    expect(limitInPlan(out, plan, rungs, TODAY)).toEqual(['Pull-up out']);
    expect(limitInPlan({ ...out, rule: 'reduced', percent: 50 }, plan, rungs, TODAY)).toEqual([
      'Pull-up 4 sets to 2',
    ]);
    expect(limitInPlan(out, undefined, rungs, TODAY)).toEqual([]);
  });
});
