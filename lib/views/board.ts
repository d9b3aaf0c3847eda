import { compareRows, rowOf } from '#lib/checks/urgency.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { TIERS } from '#lib/domain/vocabulary.ts';
import { keeps } from './board-filter.ts';
import { toRow } from './board-row.ts';
import type {
  BoardClient,
  BoardGroup,
  BoardInput,
  BoardReason,
  BoardRow,
  BoardView,
  Waiting,
} from './board-types.ts';
import { headline, KIND_WORDS, minutesFor, TIER_TITLE } from './board-words.ts';
import { longDate, saidDate } from './say-date.ts';
import { plainSentence } from './sentence.ts';
import { STRIP_DAYS } from './strip.ts';

/** Standings whose clients have a night of their own. */
const CHECKED = ['invited', 'starting', 'in-training', 'ending', 'back'];

/**
 * The coach's morning: one row a client with everything owed, in the order of answering, and a count of
 * everybody else. Reasons without a tier (notes) stay on the client page. Missing data lowers nothing: a
 * client whom the night did not reach is counted as not checked, never as "nothing new".
 */
export function toBoard(input: BoardInput): BoardView {
  const mine = input.clients.filter((client) => ofCoach(client, input.filter.coach));
  const reasons = groupByClient(input.reasons);
  const all = mine
    .map((client) => makeRow(client, reasons.get(client.id) ?? [], input))
    .filter((row) => row !== undefined)
    .sort((a, b) => compareRows(orderOf(a), orderOf(b)) || a.clientId.localeCompare(b.clientId));
  const skills = new Map(mine.map((client) => [client.id, client.skills]));
  const shown = all.filter((row) => keeps(row, skills.get(row.clientId) ?? [], input.filter));
  const groups = toGroups(shown);
  return {
    state: stateOf(input, all.length, shown.length),
    day: longDate(input.today),
    // The morning as it is, whatever the filter shows of it.
    headline: headline(input.today, toGroups(all)),
    people: shown.length,
    minutes: minutesFor(shown),
    groups,
    hidden: all.length - shown.length,
    ...toFolds(mine, reasons, new Set(all.map((row) => row.clientId)), input.today),
    night: input.night,
    stripFrom: addDays(lastNight(input), 1 - STRIP_DAYS),
    stripTo: lastNight(input),
    options: {
      coaches: input.coaches,
      kinds: [...new Set(all.flatMap((row) => row.kinds))].sort((a, b) =>
        KIND_WORDS[a].localeCompare(KIND_WORDS[b]),
      ),
      skills: [...new Set(mine.flatMap((client) => client.skills))].sort((a, b) => a.localeCompare(b)),
    },
    filter: input.filter,
  };
}

function makeRow(client: BoardClient, reasons: BoardReason[], input: BoardInput): BoardRow | undefined {
  const open = reasons.filter((reason) => reason.state === 'open' && reason.tier !== null);
  if (open.length === 0) return undefined;
  return toRow({
    client,
    open,
    row: rowOf(open),
    today: input.today,
    lastNight: lastNight(input),
    strip: input.strips.get(client.id) ?? { days: [], absences: [], placements: [] },
  });
}

function orderOf(row: BoardRow): Parameters<typeof compareRows>[0] {
  return { tier: row.tier, points: row.points, waitingSince: row.waitingSince, name: row.name };
}

function lastNight(input: BoardInput): string {
  return input.night?.localDate ?? addDays(input.today, -1);
}

function ofCoach(client: BoardClient, coach: string | undefined): boolean {
  return coach === undefined || client.coachId === coach;
}

function groupByClient(reasons: BoardReason[]): Map<string, BoardReason[]> {
  const map = new Map<string, BoardReason[]>();
  for (const reason of reasons) {
    const list = map.get(reason.clientId);
    if (list) list.push(reason);
    else map.set(reason.clientId, [reason]);
  }
  return map;
}

function toGroups(rows: BoardRow[]): BoardGroup[] {
  return TIERS.map((tier) => ({
    tier,
    title: TIER_TITLE[tier],
    rows: rows.filter((row) => row.tier === tier),
  })).filter((group) => group.rows.length > 0);
}

function stateOf(input: BoardInput, all: number, shown: number): BoardView['state'] {
  if (input.clients.length === 0) return 'no-clients';
  if (shown > 0) return 'rows';
  if (all > 0) return 'filtered';
  const night = input.night;
  if (night && night.due > 0 && night.done === 0 && night.failed > 0) return 'night-failed';
  if (!night || night.endedAt === null) return 'night-running';
  return 'nothing-new';
}

type Folds = Pick<BoardView, 'nothingNew' | 'aside' | 'withClient' | 'questions' | 'notChecked'>;

function toFolds(
  clients: BoardClient[],
  reasons: ReadonlyMap<string, BoardReason[]>,
  onBoard: ReadonlySet<string>,
  today: string,
): Folds {
  const folds: Folds = { nothingNew: [], aside: [], withClient: [], questions: [], notChecked: [] };
  for (const client of clients) {
    const own = reasons.get(client.id) ?? [];
    const waiting = (words: string): Waiting => ({ clientId: client.id, name: client.name, words });
    if (client.notChecked) folds.notChecked.push(waiting('the last night did not reach this client'));
    if (onBoard.has(client.id)) continue;
    const [away, aside] = [inState(own, 'with-client'), inState(own, 'aside')];
    const question = client.questions[0];
    if (away) folds.withClient.push(waiting(awayWords(away, today)));
    else if (aside) folds.aside.push(waiting(asideWords(aside, today)));
    if (question) folds.questions.push({ ...waiting(`“${question.text}”`), stills: question.stills });
    else if (!away && !aside && !client.notChecked && CHECKED.includes(client.standing)) {
      folds.nothingNew.push(
        waiting(
          client.lastCheckIn ? `checked in ${saidDate(client.lastCheckIn.date, today)}` : 'no check-in yet',
        ),
      );
    }
  }
  return folds;
}

/** The reason of that state which comes back first. */
function inState(reasons: BoardReason[], state: string): BoardReason | undefined {
  const back = (reason: BoardReason) => reason.withClientUntil ?? reason.asideUntil ?? '9999-12-31';
  return reasons
    .filter((reason) => reason.state === state && reason.tier !== null)
    .sort((a, b) => back(a).localeCompare(back(b)))[0];
}

function awayWords(reason: BoardReason, today: string): string {
  const until = reason.withClientUntil;
  return `${until ? `until ${saidDate(until, today)}: ` : ''}${plainSentence(reason.sentence)}`;
}

function asideWords(reason: BoardReason, today: string): string {
  const until = reason.asideUntil ? `until ${saidDate(reason.asideUntil, today)}` : 'until it changes';
  return `${until}: ${plainSentence(reason.sentence)}`;
}
