import type { StayChange } from '#lib/checks/replay/compare-stays.ts';
import type { Stay } from '#lib/checks/replay/replay-reasons.ts';
import { KIND_WORDS, TIER_TITLE } from './board-words.ts';
import { exactDate, shortDate } from './say-date.ts';

/** How many nights back other numbers are tried out on. */
export const REPLAY_NIGHTS = 90;

export type ReplaySums = { reasons: number; clientMornings: number };
type Part = {
  total: number;
  next: number | null;
  clients: number;
  before: ReplaySums;
  after: ReplaySums;
  changes: readonly (StayChange & { clientId: string; name: string })[];
};

export type ReplayLine = {
  key: string;
  clientId: string;
  name: string;
  /** "stalled, Tuck planche" */
  reason: string;
  what: StayChange['what'];
  /** The day it came onto the board under the numbers in force, and under the others; "not at all". */
  was: string;
  is: string;
  exact: string;
};
/** What some clients' nights said, as it travels to the page. */
export type ReplayShown = Omit<Part, 'changes'> & { lines: ReplayLine[] };

export function replayPart({ changes, ...part }: Part): ReplayShown {
  return { ...part, lines: changes.map(toLine) };
}

/** Two parts of one question as one. */
export function addParts(a: ReplayShown, b: ReplayShown): ReplayShown {
  return {
    total: b.total,
    next: b.next,
    clients: a.clients + b.clients,
    before: addSums(a.before, b.before),
    after: addSums(a.after, b.after),
    lines: [...a.lines, ...b.lines],
  };
}

/** What it comes to, in two sentences. */
export function replayInWords({ clients, before, after, lines }: ReplayShown): string {
  const people = clients === 1 ? 'one client' : `${clients} clients`;
  const count = (what: StayChange['what']) => lines.filter((line) => line.what === what).length;
  const parts = [
    [count('gone'), 'would not have come'],
    [count('came'), 'would have come as well'],
    [count('moved'), 'on another day'],
    [count('weighs-differently'), 'with another weight'],
  ] as const;
  const said = parts.filter(([n]) => n > 0).map(([n, words]) => `${n} ${words}`);
  const sum = `The last ${REPLAY_NIGHTS} nights of ${people}: ${before.reasons === 1 ? '1 reason that goes' : `${before.reasons} reasons that go`} by these numbers came onto the board; with the new numbers ${after.reasons}${said.length > 0 ? ` (${said.join(', ')})` : ', the same ones'}.`;
  return `${sum} On an ordinary morning ${aMorning(before)} had one of them; it would be ${aMorning(after)}.`;
}

function aMorning({ clientMornings }: ReplaySums): string {
  const clients = Math.round((clientMornings / REPLAY_NIGHTS) * 10) / 10;
  return clients === 1 ? '1 client' : `${clients} clients`;
}

function addSums(a: ReplaySums, b: ReplaySums): ReplaySums {
  return { reasons: a.reasons + b.reasons, clientMornings: a.clientMornings + b.clientMornings };
}

function toLine(change: StayChange & { clientId: string; name: string }): ReplayLine {
  const { clientId, name, what, stay } = change;
  const was = change.what === 'came' ? undefined : change.what === 'gone' ? stay : change.was;
  const is = change.what === 'gone' ? undefined : stay;
  const label = stay.label === '' ? '' : `, ${stay.label}`;
  return {
    key: `${clientId} ${stay.kind} ${stay.key} ${was?.from} ${is?.from}`,
    clientId,
    name,
    reason: `${KIND_WORDS[stay.kind]}${label}`,
    what,
    was: dayInWords(was, what),
    is: dayInWords(is, what),
    exact: [was, is].flatMap((one) => (one?.onBoard ? [exactDate(one.onBoard)] : [])).join(' / '),
  };
}

function dayInWords(stay: Stay | undefined, what: StayChange['what']): string {
  if (!stay?.onBoard) return 'not at all';
  const weight =
    what === 'weighs-differently' && stay.tier !== null ? `, ${TIER_TITLE[stay.tier]}, ${stay.level}` : '';
  return `${shortDate(stay.onBoard)}${weight}`;
}
