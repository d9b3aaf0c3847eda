import { describe, expect, it } from 'vitest';
import type { ForecastStep } from '#lib/checks/forecast.ts';
import { drawnForecast } from '#lib/views/drawn-forecast.ts';

const step = (rungId: string, dates: [string, string, string], addsDays: number): ForecastStep => {
  const [early, middle, late] = dates;
  return { rungId, name: `Rung ${rungId}`, early, middle, late, addsDays };
};
const TODAY = '2026-03-02';
const TWO = [
  step('1', ['2026-03-12', '2026-03-22', '2026-04-11'], 30),
  step('2', ['2026-04-01', '2026-05-01', '2026-06-10'], 40),
];

describe('drawnForecast', () => {
  it('lays every range on one line from today to the last late date', () => {
    const { steps } = drawnForecast({ steps: TWO, late: '2026-06-10' }, TODAY);
    expect(steps.map(({ from, middle, to }) => [from, middle, to])).toEqual([
      [10, 20, 40],
      [30, 60, 100],
    ]);
    expect(steps.map(({ months }) => months)).toEqual([
      'March 2026 to April 2026',
      'April 2026 to June 2026',
    ]);
    expect(steps[0]?.exact).toBe(
      '1 of 10 by Thursday 12 March 2026, 5 of 10 by Sunday 22 March 2026, 9 of 10 by Saturday 11 April 2026',
    );
  });
  it('names the fewest rungs that make half of the range', () => {
    const drawn = drawnForecast({ steps: TWO, late: '2026-06-10' }, TODAY);
    expect(drawn.steps.map(({ decides }) => decides)).toEqual([false, true]);
    expect(drawn.decided).toBe('Rung 2 decides most: 6 of the 10 weeks between early and late.');
    const three = [...TWO, step('3', ['2026-05-01', '2026-06-01', '2026-08-01'], 35)];
    expect(drawnForecast({ steps: three, late: '2026-08-01' }, TODAY).decided).toBe(
      'Rung 2 and Rung 3 decide most: 11 of the 15 weeks between early and late.',
    );
  });
  it('says nothing of deciding where one rung is left, or all weigh alike', () => {
    expect(drawnForecast({ steps: TWO.slice(0, 1), late: '2026-04-11' }, TODAY)).toMatchObject({
      decided: '',
      steps: [{ decides: false }],
    });
  });
  it('draws of many rungs the next two, those that decide, and the last', () => {
    const many = Array.from({ length: 9 }, (_, index) =>
      step(String(index + 1), ['2026-04-01', '2026-05-01', '2026-06-10'], index === 4 ? 500 : 10),
    );
    const drawn = drawnForecast({ steps: many, late: '2026-06-10' }, TODAY);
    expect(drawn.steps.map(({ key }) => key)).toEqual(['1', '2', '5', '9']);
  });
  it('marks first days of months, quarters or years, six at most, with the year where it could be mistaken', () => {
    const labels = (late: string) =>
      drawnForecast({ steps: TWO, late }, TODAY).ticks.map(({ label }) => label);
    expect(labels('2026-06-10')).toEqual(['Apr', 'May', 'Jun']);
    expect(labels('2027-05-01')).toEqual(['Apr 2026', 'Jul 2026', 'Oct 2026', 'Jan 2027', 'Apr 2027']);
    expect(labels('2030-02-01')).toEqual(['Jan 2027', 'Jan 2028', 'Jan 2029', 'Jan 2030']);
    expect(drawnForecast({ steps: TWO, late: '2026-06-10' }, TODAY).ticks[0]?.at).toBe(30);
  });
});
