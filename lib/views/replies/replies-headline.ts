import { countWords } from '../board-words.ts';
import type { WaitingReply } from './reply-types.ts';

/** "Five questions wait, the longest 31 h in answering hours." `more`: those that are not on the page. */
export function repliesHeadline(
  waiting: readonly Pick<WaitingReply, 'hours' | 'waited'>[],
  more: number,
): string {
  const count = waiting.length + more;
  if (count === 0) return 'No question waits.';
  const [first, ...others] = waiting;
  const longest = others.reduce((most, one) => (one.hours > (most?.hours ?? 0) ? one : most), first);
  if (count === 1) return `One question waits: ${longest?.waited ?? ''}.`;
  const words = countWords(count);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)} questions wait, the longest ${longest?.waited ?? ''}.`;
}
