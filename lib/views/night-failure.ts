import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from './board-words.ts';

/** What a failure says to a coach, and the place for who mends it. */
export type FailureWords = { said: string; place: string };

/**
 * A stored failure ("TypeError at lib/checks/rules/too-hard.ts:33": kind of error and place, never values) in words.
 * The client's check-ins are kept in every case: a night only reads them.
 */
export function failureInWords(failure: string): FailureWords {
  const path = / at (lib\/[\w./-]+)/.exec(failure)?.[1] ?? '';
  return { said: saidOf(failure, path), place: failure || 'no error was written down' };
}

function saidOf(failure: string, path: string): string {
  const rule = /^lib\/checks\/rules\/([\w-]+)\.ts/.exec(path)?.[1];
  const kind = CHECK_KINDS.find((each) => each === rule);
  if (kind) return `the check “${KIND_WORDS[kind]}” stopped at something in this history`;
  if (path.startsWith('lib/checks/') || path.startsWith('lib/stats/') || path.startsWith('lib/domain/'))
    return 'a check stopped at something in this history';
  if (/^ZodError|^SyntaxError/.test(failure) || path.startsWith('lib/schemas/'))
    return 'something in this history is stored in a form that the checks do not know';
  if (/^(Database)?Error|^error/i.test(failure) && path.startsWith('lib/db/'))
    return 'the database could not read this history or write what was found';
  if (path.startsWith('lib/db/')) return 'this history could not be put together from its entries';
  return 'the night stopped at this client for a reason that has no words yet';
}
