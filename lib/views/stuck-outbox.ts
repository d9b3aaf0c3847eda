import { localDateOf } from '#lib/domain/local-date.ts';
import { clockTime } from './local-time.ts';
import { failureInWords } from './night-failure.ts';
import { saidDate } from './say-date.ts';

export type Stuck = { kind: string; count: number; oldest: Date; attempts: number; lastError: string | null };
export type GivenUp = { kind: string; count: number; why: string };
type At = { today: string; zone: string };

const WHAT: Record<string, [one: string, many: string]> = {
  mail: ['1 mail has not left', 'mails have not left'],
  morning: ['1 morning mail has not left', 'morning mails have not left'],
  push: ['1 notice to a phone has not left', 'notices to phones have not left'],
  'check-clip': ['1 film has not been decoded', 'films have not been decoded'],
  'after-check-in': [
    '1 check-in has not been looked at by the checks',
    'check-ins have not been looked at by the checks',
  ],
};

/** What waits too long to be sent, in a sentence each, with what the last try said. */
export function stuckInWords(stuck: readonly Stuck[], at: At): { kind: string; words: string }[] {
  return stuck.map(({ kind, count, oldest, attempts, lastError }) => {
    const since = `${saidDate(localDateOf(oldest, at.zone), at.today)} ${clockTime(oldest, at.zone)}`;
    const tried =
      attempts === 0 ? 'not tried yet' : attempts === 1 ? 'tried once' : `tried ${attempts} times`;
    const said = lastError ? `; the last try said “${plain(lastError)}”` : '';
    return { kind, words: `${whatOf(kind, count)} since ${since}, ${tried}${said}.` };
  });
}

/** What is not tried any more, in a sentence each. */
export function givenUpInWords(givenUp: readonly GivenUp[]): string[] {
  return givenUp.map(({ kind, count, why }) => `${whatOf(kind, count)} in the last 7 days: ${why}.`);
}

function whatOf(kind: string, count: number): string {
  const [one, many] = WHAT[kind] ?? [`1 thing (${kind}) has not left`, `things (${kind}) have not left`];
  return count === 1 ? one : `${count} ${many}`;
}

/** Senders say what happened in words of ours; what stopped a check is the kind of an error and a place. */
function plain(lastError: string): string {
  return / at lib\//.test(lastError) ? failureInWords(lastError).said : lastError;
}
