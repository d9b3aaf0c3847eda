import { compareRows } from '#lib/checks/urgency.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { TIERS, type Tier } from '#lib/domain/vocabulary.ts';
import { keeps } from './board-filter.ts';
import { toFolds } from './board-folds.ts';
import { packPrints } from './board-print.ts';
import { type Owed, owedTo, toRow } from './board-row.ts';
import type {
  BoardBrief,
  BoardClient,
  BoardGroup,
  BoardInput,
  BoardReason,
  BoardView,
} from './board-types.ts';
import { headline, KIND_WORDS, minutesFor, TIER_TITLE } from './board-words.ts';
import { isDoneSoFar } from './night-so-far.ts';
import { longDate } from './say-date.ts';
import { STRIP_DAYS } from './strip.ts';

/**
 * The coach's morning: one row a client with everything owed, in the order of answering, and a count of
 * everybody else. Reasons without a tier (notes) stay on the client page. Missing data lowers nothing: a
 * client whom the night did not reach is counted as not checked, never as "nothing new".
 */
export function toBoard(input: BoardInput, cut: Cut = everyRow): BoardView {
  const mine = input.clients.filter((client) => ofCoach(client, input));
  const reasons = groupByClient(input.reasons);
  const all = mine
    .map((client) => owedTo(client, reasons.get(client.id) ?? []))
    .filter((row) => row !== undefined)
    .sort(compareBoardRows);
  const shown = all.filter((row) => keeps(row, input));
  const toAnswer = shown.filter((row) => row.known === null);
  return {
    state: stateOf(input, all.length, shown.length),
    day: longDate(input.today),
    // The morning as it is, whatever the filter shows of it.
    headline: headline(input.today, all),
    people: toAnswer.length,
    minutes: minutesFor(toAnswer),
    groups: toGroups(shown, cut, input.today),
    hidden: all.length - shown.length,
    ...toFolds(mine, reasons, new Set(all.map((row) => row.clientId)), input.today),
    night: input.night,
    clients: mine.length,
    order: shown,
    prints: packPrints(shown),
    stripFrom: addDays(lastNightOf(input), 1 - STRIP_DAYS),
    stripTo: lastNightOf(input),
    options: {
      coaches: input.coaches,
      kinds: [...new Set(all.flatMap((row) => row.kinds))].sort((a, b) =>
        KIND_WORDS[a].localeCompare(KIND_WORDS[b]),
      ),
      skills: input.skills,
    },
    filter: input.filter,
  };
}

/** Which rows of a group are put into words: `from` up to `to`, of those in order. `total`: rows of all groups. */
export type Cut = (tier: Tier, rows: readonly BoardBrief[], total: number) => { from: number; to: number };

function everyRow(_: Tier, rows: readonly BoardBrief[]): { from: number; to: number } {
  return { from: 0, to: rows.length };
}

/** The order of answering, the same for the same rows; what is folded as known comes last in its group. */
function compareBoardRows(a: BoardBrief, b: BoardBrief): number {
  if (a.tier !== b.tier) return TIERS.indexOf(a.tier) - TIERS.indexOf(b.tier);
  const folded = Number(a.known !== null) - Number(b.known !== null);
  return folded || compareRows(a, b) || (a.clientId < b.clientId ? -1 : Number(a.clientId > b.clientId));
}

/** The date of the last night, where none has run yesterday's. */
function lastNightOf(input: BoardInput): string {
  return input.night?.localDate ?? addDays(input.today, -1);
}

function ofCoach({ coachId }: BoardClient, { filter: { coach }, covered = [] }: BoardInput): boolean {
  return coach === undefined || coachId === coach || covered.includes(coachId);
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

function toGroups(rows: readonly Owed[], cut: Cut, today: string): BoardGroup[] {
  return TIERS.map((tier) => {
    const all = rows.filter((row) => row.tier === tier);
    const { from, to } = cut(tier, all, rows.length);
    return {
      tier,
      title: TIER_TITLE[tier],
      rows: all.slice(from, to).map((row) => toRow(row, today)),
      count: all.length,
      more: all.length - to,
    };
  }).filter((group) => group.count > 0);
}

function stateOf(input: BoardInput, all: number, shown: number): BoardView['state'] {
  if (input.clients.length === 0) return 'no-clients';
  if (shown > 0) return 'rows';
  if (all > 0) return 'filtered';
  const night = input.night;
  if (night && night.due > 0 && night.done === 0 && night.failed > 0) return 'night-failed';
  if (!night || night.late || (night.endedAt === null && !isDoneSoFar(night))) return 'night-running';
  return 'nothing-new';
}
