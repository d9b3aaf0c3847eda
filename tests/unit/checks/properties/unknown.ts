import type { AsOf } from '#lib/domain/finding.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { aRestDay } from '#tests/fixtures/history-builders.ts';

/** A day on which the client says: rest, and nothing about what hurts. */
export function withRestOn(history: ClientHistory, date: string): ClientHistory {
  const told = { id: `rest-${date}`, date, sentAt: `${date}T21:00:00.000Z`, nothingHurts: false };
  return { ...history, checkIns: [...history.checkIns, aRestDay(0, { ...told, zone: history.client.zone })] };
}

/** The same client so many days later, with not a word since. */
export function laterOf({ date, instant }: AsOf, days: number): AsOf {
  return { date: addDays(date, days), instant: `${addDays(instant.slice(0, 10), days)}${instant.slice(10)}` };
}

/** Every other day the last training again, told without effort, minutes or a word about what hurts. */
export function withBareTraining(history: ClientHistory, { date }: AsOf, days: number): ClientHistory {
  const last = history.checkIns.findLast((each) => each.kind === 'training');
  if (!last) return history;
  const more: HistoryCheckIn[] = [];
  for (let at = 1; at <= days; at += 2) {
    const on = addDays(date, at);
    const told = { id: `bare-${on}`, date: on, sentAt: `${on}T12:00:00.000Z`, dangerSigns: [], pain: [] };
    more.push({ ...last, ...told, effort: null, minutes: null, nothingHurts: false });
  }
  return { ...history, checkIns: [...history.checkIns, ...more] };
}

/** Effort and minutes of one training of the last 7 days are not told; the history itself where there is none. */
export function withoutEffort(history: ClientHistory, { date }: AsOf, seed: number): ClientHistory {
  const recent = history.checkIns.filter(
    (each) => each.kind === 'training' && each.date > addDays(date, -7) && each.date <= date,
  );
  const one = recent[seed % Math.max(1, recent.length)];
  if (!one) return history;
  const bare = { ...one, effort: null, minutes: null };
  return { ...history, checkIns: history.checkIns.map((each) => (each === one ? bare : each)) };
}
