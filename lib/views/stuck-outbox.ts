import { localDateOf } from '#lib/domain/local-date.ts';
import { clockTime } from './local-time.ts';
import { saidDate } from './say-date.ts';

export type Stuck = { kind: string; count: number; oldest: Date; attempts: number; lastError: string | null };

const WHAT: Record<string, [one: string, many: string]> = {
  mail: ['1 mail has not left', 'mails have not left'],
  morning: ['1 morning mail has not left', 'morning mails have not left'],
  push: ['1 notice to a phone has not left', 'notices to phones have not left'],
  'after-check-in': [
    '1 check-in has not been looked at by the checks',
    'check-ins have not been looked at by the checks',
  ],
};

/** What waits too long to be sent, in a sentence each, with what the last try said. */
export function stuckInWords(stuck: readonly Stuck[], at: { today: string; zone: string }): string[] {
  return stuck.map(({ kind, count, oldest, attempts, lastError }) => {
    const [one, many] = WHAT[kind] ?? [`1 thing (${kind}) has not left`, `things (${kind}) have not left`];
    const since = `${saidDate(localDateOf(oldest, at.zone), at.today)} ${clockTime(oldest, at.zone)}`;
    const tried =
      attempts === 0 ? 'not tried yet' : attempts === 1 ? 'tried once' : `tried ${attempts} times`;
    const said = lastError ? `; the last try said “${lastError}”` : '';
    return `${count === 1 ? one : `${count} ${many}`} since ${since}, ${tried}${said}.`;
  });
}
