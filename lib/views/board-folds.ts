import { daysBetween } from '#lib/domain/local-date.ts';
import type { BoardClient, BoardReason, BoardView, Waiting } from './board-types.ts';
import { daysKnown, FIRST_DAYS, gettingToKnowWords } from './getting-to-know.ts';
import { saidDate } from './say-date.ts';
import { plainSentence } from './sentence.ts';

/** Standings whose clients have a night of their own. */
const CHECKED = ['invited', 'starting', 'in-training', 'ending', 'back'];

export type Folds = Pick<
  BoardView,
  'nothingNew' | 'gettingToKnow' | 'gettingToKnowWords' | 'aside' | 'withClient' | 'questions' | 'notChecked'
>;

/** Everybody who has no row, each in one fold; not checked are counted beside, never hidden in "nothing new". */
export function toFolds(
  clients: readonly BoardClient[],
  reasons: ReadonlyMap<string, BoardReason[]>,
  onBoard: ReadonlySet<string>,
  today: string,
): Folds {
  const folds = {
    nothingNew: [],
    gettingToKnow: [],
    aside: [],
    withClient: [],
    questions: [],
    notChecked: [],
  };
  const lists: Record<keyof typeof folds, Waiting[]> = folds;
  const known: number[] = [];
  for (const client of clients) {
    const own = reasons.get(client.id) ?? [];
    const add = (list: keyof typeof folds, words: string, stills?: string[]) =>
      lists[list].push({ clientId: client.id, name: client.name, words, ...(stills && { stills }) });
    if (client.notChecked) add('notChecked', NOT_CHECKED[client.notChecked]);
    if (onBoard.has(client.id)) continue;
    const [away, aside] = [inState(own, 'with-client'), inState(own, 'aside')];
    const [question] = client.questions;
    if (away) add('withClient', heldWords(away.withClientUntil, away, today));
    else if (aside) add('aside', heldWords(aside.asideUntil, aside, today));
    if (question) add('questions', `“${question.text}”`, question.stills);
    else if (!away && !aside && !client.notChecked && CHECKED.includes(client.standing)) {
      if (client.firstDay !== null && daysBetween(client.firstDay, today) < FIRST_DAYS) {
        const days = daysKnown(client.dates, today);
        known.push(days);
        add('gettingToKnow', `${days} of ${FIRST_DAYS} days known`);
      } else add('nothingNew', '');
    }
  }
  return { ...lists, gettingToKnowWords: gettingToKnowWords(known) };
}

const NOT_CHECKED = {
  failed: 'the last night failed for this client',
  'not-reached': 'the last night has not reached this client',
  'no-consent': 'took the consent to checks back: no night until it is given again',
} as const;

/** The reason of that state which comes back first. */
function inState(reasons: BoardReason[], state: string): BoardReason | undefined {
  const back = (reason: BoardReason) => reason.withClientUntil ?? reason.asideUntil ?? '9999-12-31';
  return reasons
    .filter((reason) => reason.state === state && reason.tier !== null)
    .sort((a, b) => back(a).localeCompare(back(b)))[0];
}

function heldWords(until: string | null, reason: BoardReason, today: string): string {
  const when = until ? `until ${saidDate(until, today)}` : 'until it changes';
  return `${when}: ${plainSentence(reason.sentence)}`;
}
