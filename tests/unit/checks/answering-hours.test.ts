import { describe, expect, it } from 'vitest';
import { hoursWaited } from '#lib/checks/answering-hours.ts';

const WORKDAYS = { zone: 'Europe/Madrid', days: [1, 2, 3, 4, 5], from: '09:00', to: '17:00' };
const hours = (from: string, to: string, answering: typeof WORKDAYS | undefined = WORKDAYS) =>
  hoursWaited(from, to, answering);

describe('hours waited in answering hours', () => {
  it('runs round the clock where the team has told none', () => {
    expect(hoursWaited('2026-03-06T16:30:00.000Z', '2026-03-07T16:30:00.000Z', undefined)).toBe(24);
    expect(hours('2026-03-06T16:30:00.000Z', '2026-03-07T16:30:00.000Z', { ...WORKDAYS, days: [] })).toBe(24);
  });
  it('leaves nights and the weekend out: Friday 16:00 to Monday 10:00 in Madrid is 2 h', () => {
    expect(hours('2026-03-06T15:00:00.000Z', '2026-03-09T09:00:00.000Z')).toBe(2);
  });
  it('counts a question asked before opening from opening on, and nothing after closing', () => {
    expect(hours('2026-03-04T03:00:00.000Z', '2026-03-04T10:00:00.000Z')).toBe(2);
    expect(hours('2026-03-04T18:00:00.000Z', '2026-03-05T02:00:00.000Z')).toBe(0);
  });
  it('keeps the wall clock over a clock change: the week of 29 March has 40 answering hours', () => {
    expect(hours('2026-03-27T16:00:00.000Z', '2026-04-03T15:00:00.000Z')).toBe(40);
  });
  it('goes to midnight, in zones far from UTC too', () => {
    const always = { zone: 'Pacific/Kiritimati', days: [1, 2, 3, 4, 5, 6, 7], from: '00:00', to: '24:00' };
    expect(hours('2026-03-02T00:00:00.000Z', '2026-03-04T00:00:00.000Z', always)).toBe(48);
  });
  it('is 0 when the end is not after the start', () => {
    expect(hours('2026-03-04T10:00:00.000Z', '2026-03-04T10:00:00.000Z')).toBe(0);
    expect(hours('2026-03-05T10:00:00.000Z', '2026-03-04T10:00:00.000Z')).toBe(0);
  });
});
