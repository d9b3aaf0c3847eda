import { describe, expect, it } from 'vitest';
import { localDateOf } from '#lib/domain/local-date.ts';
import { localHourOf } from '#lib/domain/local-hour.ts';
import { morningMailDue } from '#lib/domain/morning-mail-due.ts';

const HOUR = 3_600_000;
const TICK = HOUR / 4;
// Gaps at 01, 02 and 03, at midnight and before it; half an hour, two hours; Ramadan; a date that a zone left out.
const ZONES = [
  ['Europe/Berlin', '2026-01-01'],
  ['America/New_York', '2026-01-01'],
  ['America/Nuuk', '2026-01-01'],
  ['America/Santiago', '2026-01-01'],
  ['America/Havana', '2026-01-01'],
  ['Asia/Beirut', '2026-01-01'],
  ['Africa/Cairo', '2026-01-01'],
  ['Africa/Casablanca', '2026-01-01'],
  ['Australia/Lord_Howe', '2026-01-01'],
  ['Antarctica/Troll', '2026-01-01'],
  ['Pacific/Apia', '2011-06-01'],
  ['Asia/Kathmandu', '2026-01-01'],
] as const;

/** How far the wall clock of a zone is ahead of UTC, in quarters of an hour. */
function offset(at: number, zone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', { timeZone: zone, timeStyle: 'short', dateStyle: 'short' });
  const [, day = 0, month = 0, year = 0, hour = 0, minute = 0] =
    /(\d+)\/(\d+)\/(\d+), (\d+):(\d+)/.exec(parts.format(at))?.map(Number) ?? [];
  return Math.round((Date.UTC(year, month - 1, day, hour, minute) - at) / TICK);
}

/** Instants within a year at whose hour the clock of the zone was changed. */
function changes(zone: string, from: string): number[] {
  const start = Date.parse(`${from}T00:00:00Z`);
  const found: number[] = [];
  let before = offset(start, zone);
  for (let hours = 6; hours < 24 * 370; hours += 6) {
    const now = offset(start + hours * HOUR, zone);
    if (now !== before) found.push(start + hours * HOUR);
    before = now;
  }
  return found;
}

/** What a worker that asks every quarter of an hour sends around an instant. */
function simulate(zone: string, hour: number, around: number, asleep: (at: number) => boolean = () => false) {
  const sent: { date: string; at: number }[] = [];
  for (let at = around - 42 * HOUR; at <= around + 42 * HOUR; at += TICK) {
    if (asleep(at)) continue;
    const date = morningMailDue({ zone, hour, decidedOn: sent.at(-1)?.date ?? null }, new Date(at));
    if (date !== null) sent.push({ date, at });
  }
  return sent;
}

describe.each(ZONES)('%s', (zone, from) => {
  const found = changes(zone, from);
  it('changes its clock as often as expected', () => {
    expect(found.length).toBeGreaterThanOrEqual(zone === 'Asia/Kathmandu' ? 0 : 2);
  });
  it.each([0, 2, 3, 23])('one mail a local date at %i:00, whatever the clock does', (hour) => {
    for (const change of [...found, Date.parse(`${from}T12:00:00Z`)]) {
      const sent = simulate(zone, hour, change);
      const dates = sent.map(({ date }) => date);
      expect(new Set(dates).size).toBe(dates.length);
      // The first and the last date are cut off by the window.
      const whole = new Set<string>();
      for (let at = change - 42 * HOUR; at <= change + 42 * HOUR; at += TICK)
        whole.add(localDateOf(new Date(at), zone));
      const inner = [...whole].sort().slice(1, -1);
      expect(dates.filter((date) => inner.includes(date))).toEqual(inner);
      for (const { date, at } of sent) {
        expect(localDateOf(new Date(at), zone)).toBe(date);
        const early = localHourOf(new Date(at), zone) < hour;
        // Only on a day that has no such hour any more.
        if (early) expect(localDateOf(new Date(at + HOUR), zone)).not.toBe(date);
      }
    }
  });
});

it('an hour that does not exist is due at the first moment after it', () => {
  // Berlin, 29 March 2026: 02:00 is 03:00.
  const [first] = simulate('Europe/Berlin', 2, Date.parse('2026-03-29T01:00:00Z')).filter(
    ({ date }) => date === '2026-03-29',
  );
  expect(new Date(first?.at ?? 0).toISOString()).toBe('2026-03-29T01:00:00.000Z');
});

it('a day that ends before the hour has its mail in its last hour', () => {
  // Nuuk, 28 March 2026: 23:00 is 00:00 of the 29th.
  const [last] = simulate('America/Nuuk', 23, Date.parse('2026-03-29T01:00:00Z')).filter(
    ({ date }) => date === '2026-03-28',
  );
  expect(new Date(last?.at ?? 0).toISOString()).toBe('2026-03-29T00:00:00.000Z');
});

it('an hour that comes twice counts once, the first time', () => {
  const sent = simulate('Europe/Berlin', 2, Date.parse('2026-10-25T01:00:00Z'));
  const ofDay = sent.filter(({ date }) => date === '2026-10-25');
  expect(ofDay.map(({ at }) => new Date(at).toISOString())).toEqual(['2026-10-25T00:00:00.000Z']);
});

it('a machine that slept for three days sends today’s, not three', () => {
  const woke = Date.parse('2026-11-25T15:07:00Z');
  const sent = simulate('Europe/Berlin', 6, woke, (at) => at > woke - 3 * 24 * HOUR && at < woke);
  expect(sent.filter(({ at }) => at >= woke && at < woke + 12 * HOUR).map(({ date }) => date)).toEqual([
    '2026-11-25',
  ]);
});

it('a member who moves west is not sent the same date again, and an unknown zone counts as UTC', () => {
  const now = new Date('2026-11-25T12:00:00Z'); // Auckland 01:00 of the 26th, Honolulu 02:00 of the 25th
  expect(morningMailDue({ zone: 'Pacific/Auckland', hour: 1, decidedOn: '2026-11-25' }, now)).toBe(
    '2026-11-26',
  );
  expect(morningMailDue({ zone: 'Pacific/Honolulu', hour: 1, decidedOn: '2026-11-26' }, now)).toBe(null);
  expect(morningMailDue({ zone: 'Nowhere/Else', hour: 12, decidedOn: null }, now)).toBe('2026-11-25');
});
